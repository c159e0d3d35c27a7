/** Plays the months: one after another at a steady pace, waiting where the engine is behind. */
import type { Desk } from './desk.svelte';

const MONTH_MS = 600;
export const SPEEDS = [0.5, 1, 2, 4] as const;

export class Player {
  speed = $state<number>(1);
  /** Where play stops; null for the plan's last month. */
  #until = $state<number | null>(null);
  readonly #desk: Desk;
  readonly #last = $derived.by(() => Math.min(this.#until ?? Infinity, this.#desk.shown.months));
  readonly #nextIsGrown = $derived.by(() => this.#desk.run.readings[this.#desk.month + 1] !== undefined);

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  play(until: number | null = null): void {
    this.#until = until;
    if (this.#desk.month >= this.#last) this.#desk.showMonth(0);
    this.#desk.playing = true;
  }

  pause(): void {
    this.#desk.playing = false;
  }

  /** One month on (1) or back (-1); whoever steps has taken over from the player. */
  step(by: number): void {
    this.pause();
    this.#desk.showMonth(this.#desk.month + by);
  }

  toggle(): void {
    if (this.#desk.playing) this.pause();
    else this.play();
  }

  /** To be called while a component starts. It rests while the plan is not shown, and ends where no further month can come. */
  follow(isShown: () => boolean, hasFailed: () => boolean): void {
    $effect(() => {
      if (!this.#desk.playing || !isShown()) return;
      if (this.#desk.month >= this.#last || hasFailed()) {
        this.pause();
        return;
      }
      if (!this.#nextIsGrown) return;
      const next = this.#desk.month + 1;
      const timer = setTimeout(() => {
        this.#desk.showMonth(next);
        if (next >= this.#last) this.pause();
      }, MONTH_MS / this.speed);
      return () => clearTimeout(timer);
    });
  }
}
