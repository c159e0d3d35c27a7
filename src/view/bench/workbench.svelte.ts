/**
 * The bench on the page: its tiles take what is changed on the desk while the desk shows them. Which tile or branch a
 * plan belongs to is remembered by plan, so that undo across tiles never writes one tile over another.
 */
import { untrack } from 'svelte';
import {
  branchAt,
  branchOf,
  branchPlan,
  EMPTY_BENCH,
  type Bench,
  type BenchTile,
  type Branch,
  type Mother,
  type Place,
} from '../../plan/bench';
import { nextId } from '../../plan/ids';
import type { Plan, Refusal } from '../../plan/plan';
import { dayOfMonth } from '../../units/quantity';
import type { Desk } from '../desk.svelte';

export class Workbench {
  readonly #desk: Desk;
  #bench = $state.raw<Bench>(EMPTY_BENCH);
  #at = $state.raw<Place | null>(null);
  #isAstray = $state(false);
  #places = new WeakMap<Plan, Place | null>();
  #opened: number;
  /** What was taken off the bench last, and how it comes back. */
  gone = $state.raw<{ readonly words: string; readonly bringBack: () => void } | null>(null);

  readonly bench: Bench = $derived(this.#bench);
  /** What the desk shows of the bench; null for a plan that is not on it. */
  readonly at: Place | null = $derived(this.#at);
  readonly tile: BenchTile | null = $derived(this.#tileOf(this.#at?.tile));
  /** The desk shows a branch with a change that is not one of a branch: the bench keeps the branch as it was. */
  readonly isAstray: boolean = $derived(this.#isAstray);

  constructor(desk: Desk) {
    this.#desk = desk;
    this.#opened = desk.opened;
  }

  /** To be called while a component starts. */
  follow(): void {
    $effect(() => {
      const { plan, seed, opened } = this.#desk;
      untrack(() => this.hear(plan, seed, opened));
    });
  }

  /** The desk shows this plan now. One that came by an edit belongs where the plan before belonged. */
  hear(plan: Plan, seed: string, opened: number): void {
    if (opened !== this.#opened) this.#places.set(plan, null);
    else if (!this.#places.has(plan)) this.#places.set(plan, this.#at);
    this.#opened = opened;
    this.#at = this.#places.get(plan) ?? null;
    this.#take(plan, seed);
  }

  #take(plan: Plan, seed: string): void {
    this.#isAstray = false;
    const tile = this.tile;
    if (!this.#at || !tile) {
      this.#at = null;
      return;
    }
    const branch = this.#at.branch === null ? null : branchIn(tile, this.#at.branch);
    if (this.#at.branch === null) {
      if (tile.plan !== plan || tile.seed !== seed) this.#changeTile(tile.id, { plan, seed });
    } else if (!branch) {
      this.#at = null;
    } else {
      const changed = branchOf(tile.plan, branch, plan);
      this.#isAstray = changed === null;
      if (changed && (JSON.stringify(changed) !== JSON.stringify(branch) || tile.seed !== seed))
        this.#changeTile(tile.id, { seed, branches: withBranch(tile, changed) });
    }
  }

  /** What was kept in this browser; the desk shows the place's plan already. */
  restore(bench: Bench, at: Place | null): void {
    this.#bench = bench;
    this.#at = at;
    this.#places = new WeakMap([[this.#desk.plan, at]]);
    this.#opened = this.#desk.opened;
  }

  /** Another bench in place of this one, which can be brought back. */
  replace(bench: Bench): void {
    const [old, at] = [this.#bench, this.#at];
    this.restore(bench, null);
    this.gone =
      old === EMPTY_BENCH
        ? null
        : {
            words: `“${bench.name}” came in place of “${old.name}”.`,
            bringBack: () => this.restore(old, at),
          };
  }

  rename(name: string): void {
    this.#bench = { ...this.#bench, name };
  }

  /** The plan that the desk shows, as a tile of its own. */
  addTile(): void {
    const { plan, seed } = this.#desk;
    const id = nextId('t', this.#bench.tiles);
    const tile: BenchTile = { id, name: plan.name || `Tile ${id.slice(1)}`, plan, seed };
    this.#bench = { ...this.#bench, tiles: [...this.#bench.tiles, tile] };
    this.#at = { tile: id, branch: null };
    this.#places.set(plan, this.#at);
    this.#isAstray = false;
  }

  open(place: Place): void {
    const tile = this.#tileOf(place.tile);
    const branch = tile && place.branch !== null ? branchIn(tile, place.branch) : null;
    if (!tile) return;
    const plan = branch ? branchPlan(tile.plan, branch) : tile.plan;
    this.#places.set(plan, place);
    this.#at = place;
    const words = branch ? `Open the branch ${branch.name}` : `Open ${tile.name}`;
    this.#desk.open({ plan, words }, this.#desk.month, tile.seed);
    this.#opened = this.#desk.opened;
    this.#take(plan, tile.seed);
  }

  renameTile(id: string, name: string): void {
    this.#changeTile(id, { name });
  }

  removeTile(id: string): void {
    const { tiles } = this.#bench;
    const tile = this.#tileOf(id);
    if (!tile) return;
    this.#bench = { ...this.#bench, tiles: tiles.filter((other) => other !== tile) };
    if (this.#at?.tile === id) this.#at = null;
    const bringBack = (): void => {
      this.#bench = { ...this.#bench, tiles: [...this.#bench.tiles, tile] };
    };
    this.gone = { words: `Took the tile “${tile.name}” off the bench.`, bringBack };
  }

  /** From the month shown on, the tile goes on in another way too; the desk shows that one from now on. */
  branchHere(): void {
    const { plan, month } = this.#desk;
    if (!this.#at || this.#isAstray) this.addTile();
    const tile = this.tile;
    if (!tile) return;
    const from = this.#at?.branch ? branchIn(tile, this.#at.branch) : null;
    const fromDay = Math.min(dayOfMonth(month), from?.fromDay ?? Infinity);
    const id = nextId('b', tile.branches ?? []);
    const months = plan.months === tile.plan.months ? {} : { months: plan.months };
    const branch: Branch = { ...branchAt(plan, id, `Branch ${id.slice(1)}`, fromDay), ...months };
    this.#changeTile(tile.id, { branches: [...(tile.branches ?? []), branch] });
    this.open({ tile: tile.id, branch: id });
  }

  renameBranch(tile: BenchTile, branch: Branch, name: string): void {
    this.#changeTile(tile.id, { branches: withBranch(tile, { ...branch, name }) });
  }

  dropBranch(tile: BenchTile, branch: Branch): void {
    const left = (tile.branches ?? []).filter(({ id }) => id !== branch.id);
    if (this.#at?.tile === tile.id && this.#at.branch === branch.id)
      this.open({ tile: tile.id, branch: null });
    this.#changeTile(tile.id, { branches: left });
    const bringBack = (): void => {
      const now = this.#tileOf(tile.id);
      if (now) this.#changeTile(now.id, { branches: [...(now.branches ?? []), branch] });
    };
    this.gone = { words: `Dropped the branch “${branch.name}”.`, bringBack };
  }

  /** The tile's plan takes the steps and months of the branch: an edit like any other, so that Undo takes it back. */
  adopt(tile: BenchTile, branch: Branch): readonly Refusal[] {
    if (this.#at?.tile !== tile.id || this.#at.branch !== null) this.open({ tile: tile.id, branch: null });
    return this.#desk.do({ plan: branchPlan(this.#desk.plan, branch), words: `Adopt ${branch.name}` });
  }

  setMother(mother: Mother): void {
    const { mothers } = this.#bench;
    const isNew = !mothers.some(({ id }) => id === mother.id);
    const changed = isNew
      ? [...mothers, mother]
      : mothers.map((old) => (old.id === mother.id ? mother : old));
    this.#bench = { ...this.#bench, mothers: changed };
  }

  removeMother(mother: Mother): void {
    const mothers = this.#bench.mothers.filter(({ id }) => id !== mother.id);
    this.#bench = { ...this.#bench, mothers };
    const words = `Took a mother of ${mother.variety || 'no name'} off the list.`;
    this.gone = { words, bringBack: () => this.setMother(mother) };
  }

  #tileOf(id: string | undefined): BenchTile | null {
    return this.#bench.tiles.find((tile) => tile.id === id) ?? null;
  }

  #changeTile(id: string, patch: Partial<BenchTile>): void {
    const tiles = this.#bench.tiles.map((tile) => (tile.id === id ? { ...tile, ...patch } : tile));
    this.#bench = { ...this.#bench, tiles };
  }
}

function branchIn(tile: BenchTile, id: string): Branch | null {
  return tile.branches?.find((branch) => branch.id === id) ?? null;
}

function withBranch(tile: BenchTile, changed: Branch): readonly Branch[] {
  return (tile.branches ?? []).map((branch) => (branch.id === changed.id ? changed : branch));
}
