/** Tiles kept as they stood on earlier days, so that a changed step grows only what comes after it. */
import { bytesOf, copyState } from '../src/model/copy';
import type { Layout } from '../src/model/layout';
import { rulesOf, type State } from '../src/model/state';
import { pastDigest } from '../src/plan/past';
import type { Plan } from '../src/plan/plan';
import { isOn } from '../src/plan/steps';
import { dayOfMonth } from '../src/units/quantity';

const BUDGET_BYTES = 160_000_000;
/** A tile larger than this is kept every third month only: copying it takes as long as growing it. */
const LARGE_BYTES = 12_000_000;

interface Kept {
  readonly key: string;
  readonly state: State;
  readonly bytes: number;
}

export interface RunName {
  readonly plan: Plan;
  readonly seed: string;
  readonly cellMm: number;
}

export class Past {
  /** In order of use, the last used at the end. */
  readonly #kept: Kept[] = [];
  readonly #budgetBytes: number;

  constructor(budgetBytes = BUDGET_BYTES) {
    this.#budgetBytes = budgetBytes;
  }

  /** Keeps the tile as it stands where that is worth it: at the end of a month, or on the eve of a step. */
  keep(run: RunName, state: State): void {
    if (state.day === 0 || !isWorthKeeping(run.plan, state)) return;
    const key = keyOf(run, state.day);
    if (this.#kept.some((one) => one.key === key)) return;
    const copy = copyState(state, state.layout);
    this.#kept.push({ key, state: copy, bytes: bytesOf(copy) });
    let sum = this.#kept.reduce((bytes, one) => bytes + one.bytes, 0);
    while (sum > this.#budgetBytes && this.#kept.length > 1) sum -= this.#kept.shift()?.bytes ?? 0;
  }

  /** The latest kept tile of this run on or before `day`, ready to be grown on; null where none is kept. */
  find(run: RunName, layout: Layout, day: number): State | null {
    const keys = new Map<number, string>();
    let best = -1;
    for (const [k, { key, state }] of this.#kept.entries()) {
      if (state.day > day || (best >= 0 && state.day <= this.#kept[best].state.day)) continue;
      const own = keys.get(state.day) ?? keyOf(run, state.day);
      keys.set(state.day, own);
      if (key === own) best = k;
    }
    if (best < 0) return null;
    const [found] = this.#kept.splice(best, 1);
    this.#kept.push(found);
    return copyState(found.state, rulesOf(layout));
  }
}

function keyOf({ plan, seed, cellMm }: RunName, day: number): string {
  return `${day} ${cellMm} ${pastDigest(plan, day)} ${seed}`;
}

function isWorthKeeping(plan: Plan, state: State): boolean {
  if (plan.steps.some((step) => isOn(step) && step.day === state.day + 1)) return true;
  const isLarge = 24 * state.variety.length > LARGE_BYTES;
  for (let month = 1; dayOfMonth(month) <= state.day; month++)
    if (dayOfMonth(month) === state.day) return !isLarge || month % 3 === 0;
  return false;
}
