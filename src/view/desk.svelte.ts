/**
 * The state of the page: the plan and its draft, the run that is shown, the month, the selection, the tool.
 * Whole values are replaced, never proxied: plans cross to a worker and frames are megabytes.
 * No Pixi and no worker here: effects elsewhere read this and carry it out.
 */
import type { Frame, PolypSites } from '../model/frame';
import type { Reading } from '../measure/reading';
import type { Drawn } from '../picture/scene';
import type { Edit } from '../plan/edit';
import { commit, EMPTY_HISTORY, redo, undo, type History, type PlanMoment, type Step } from '../plan/history';
import type { Plan, Refusal } from '../plan/plan';
import { refuse } from '../plan/refuse';
import type { Trial } from '../trials/trial';

export const TOOLS = ['choose', 'set', 'outline', 'cut', 'ruler', 'section'] as const;
export type Tool = (typeof TOOLS)[number];

export const STAMP_SHAPES = ['disc', 'square', 'strip'] as const;

/** What 'set a piece' puts down. A strip is four times as long as it is wide; sizeMm is its width. */
export interface Stamp {
  readonly shape: (typeof STAMP_SHAPES)[number];
  readonly sizeMm: number;
  readonly variety: string;
}

/** What has been grown of the plan that is shown, by month; a frame may have been dropped to save memory. */
export interface ShownRun {
  readonly cellMm: number;
  readonly sites: PolypSites | null;
  readonly frames: readonly (Frame | null)[];
  readonly readings: readonly Reading[];
}

/** A tile of the log whose readings stand beside the model's months. */
export interface LoggedTile {
  readonly trial: Trial;
  readonly nameOf: (variety: string) => string;
  readonly photoUrl: (id: string) => Promise<string | null>;
}

interface Held {
  readonly frame: Frame | null;
  readonly readings: readonly Reading[];
}

const NOTHING_HELD: Held = { frame: null, readings: [] };
const FIRST_SEED = 'one';

const NOTHING_GROWN: ShownRun = { cellMm: 0.25, sites: null, frames: [], readings: [] };

export class Desk {
  #plan = $state.raw<Plan>() as Plan;
  #seed = $state(FIRST_SEED);
  #history = $state.raw<History<PlanMoment>>(EMPTY_HISTORY);
  #draft = $state.raw<Edit | null>(null);
  /** The last picture and reading of the run before, kept until the new run reaches the month. */
  #held = $state.raw<Held>(NOTHING_HELD);

  month = $state(0);
  run = $state.raw<ShownRun>(NOTHING_GROWN);
  /** Of the run on screen; kept until the next run tells its own. */
  sites = $state.raw<PolypSites | null>(null);
  /** What stands on the canvas: lines over the tile follow the picture. */
  drawn = $state.raw<Drawn | null>(null);
  selection = $state.raw<readonly string[]>([]);
  /** The step of the plan whose fields are open. */
  step = $state<string | null>(null);
  /** Of that step, the part that hand and keys move on the tile. */
  part = $state<string | null>(null);
  tool = $state<Tool>('choose');
  stamp = $state.raw<Stamp>({ shape: 'disc', sizeMm: 12, variety: '' });
  /** Overlays: seams by outcome, outlines of the pieces as they were set. */
  seams = $state(true);
  /** In School: what seams are is for the learner to say, and told nowhere before. */
  isJudging = $state(false);
  outlines = $state(false);
  /** Where the picture's light comes from, degrees clockwise from the right. */
  lightDeg = $state(225);
  /** Gap that a moved piece snaps to, or null. */
  snapGapMm = $state<number | null>(null);
  playing = $state(false);
  logged = $state.raw<LoggedTile | null>(null);
  /** How many plans have come onto the desk in place of another. */
  opened = $state(0);
  /** What was done last: 'Done: Move piece p3', 'Undone: ...', 'Done again: ...'. */
  told = $state('');
  /** Why the last edit was not kept; empty once the plan changes, or once the tile has said it. */
  refused = $state.raw<readonly Refusal[]>([]);

  readonly plan: Plan = $derived(this.#plan);
  readonly seed: string = $derived(this.#seed);
  readonly shown: Plan = $derived(this.#draft?.plan ?? this.plan);
  readonly refusals: readonly Refusal[] = $derived(refuse(this.shown));
  /** A draft is on the tile: the run is coarse and nothing is in the history yet. */
  readonly previewing = $derived(this.#draft !== null);
  /** Readings by month: of the run shown, and until it has come that far, of the run before. */
  readonly months: readonly Reading[] = $derived(
    [...this.run.readings, ...this.#held.readings.slice(this.run.readings.length)].slice(
      0,
      this.shown.months + 1,
    ),
  );
  readonly frame: Frame | null = $derived(this.#frameShown());
  /** Neither words nor chart say what the seams are: they are not drawn, and the learner has not said it yet. */
  readonly keepsBack: boolean = $derived(this.isJudging && !this.seams);
  readonly reading: Reading | null = $derived(this.months[this.month] ?? null);
  /** Words of the entry that undo and redo would act on; null when there is none. */
  readonly undoWords: string | null = $derived(this.#history.past.at(-1)?.words ?? null);
  readonly redoWords: string | null = $derived(this.#history.future.at(0)?.words ?? null);

  constructor(plan: Plan) {
    this.#put(plan, FIRST_SEED);
  }

  /** Shows an edit without keeping it: while a handle or a slider is dragged. */
  try(edit: Edit): void {
    this.#draft = edit.plan === this.plan ? null : edit;
  }

  /** Keeps the draft as one entry of the history; a refused draft is dropped, and the reasons are returned. */
  commit(): readonly Refusal[] {
    const draft = this.#draft;
    if (draft === null) return [];
    this.refused = this.refusals;
    this.#draft = null;
    if (this.refused.length === 0) this.#keep(draft);
    return this.refused;
  }

  drop(): void {
    this.#draft = null;
  }

  allows(edit: Edit): boolean {
    return refuse(edit.plan).length === 0;
  }

  /** An edit in one go. Returns why it cannot be, or an empty list. */
  do(edit: Edit): readonly Refusal[] {
    this.commit();
    this.refused = refuse(edit.plan);
    if (this.refused.length === 0 && edit.plan !== this.plan) this.#keep(edit);
    return this.refused;
  }

  undo(): void {
    if (this.#draft !== null) this.drop();
    else this.#travel(undo(this.#history, this.#now()), 'Undone');
  }

  redo(): void {
    this.drop();
    this.#travel(redo(this.#history, this.#now()), 'Done again');
  }

  /** Other luck for the same plan; a plan object of its own, as what was said of the old one no longer holds. */
  changeSeed(seed: string): void {
    this.commit();
    if (seed !== this.seed) this.#keep({ plan: { ...this.plan }, words: `Grow with the seed ${seed}` }, seed);
  }

  /** Puts another plan on the desk (a preset, a file): one entry, so that undo brings the old one back. */
  open(edit: Edit, month = 0, seed = this.seed): void {
    this.drop();
    this.playing = false;
    this.logged = null;
    this.step = null;
    this.selection = [];
    // What is open already is not grown anew, so its picture must stay.
    if (edit.plan !== this.plan || seed !== this.seed) {
      this.forgetPicture();
      this.#keep(edit, seed);
    }
    this.opened++;
    this.month = Math.min(month, edit.plan.months);
  }

  /** A plan that was kept from the last visit: there is nothing to undo. */
  restore(plan: Plan, seed: string, month: number): void {
    this.drop();
    this.forgetPicture();
    this.#history = EMPTY_HISTORY;
    this.#put(plan, seed);
    this.month = month;
  }

  select(ids: readonly string[]): void {
    this.selection = ids;
  }

  showMonth(month: number): void {
    this.month = Math.max(0, Math.min(this.shown.months, Math.round(month)));
  }

  /** A run starts: what is on screen stays until the run reaches the month that is shown. */
  startRun(cellMm: number): void {
    this.#held = { frame: this.frame, readings: this.months };
    this.run = { ...NOTHING_GROWN, cellMm };
  }

  showRun(run: ShownRun): void {
    this.run = run;
    if (run.sites) this.sites = run.sites;
  }

  forgetPicture(): void {
    this.#held = NOTHING_HELD;
    this.run = NOTHING_GROWN;
    this.sites = null;
  }

  #frameShown(): Frame | null {
    const { frames } = this.run;
    const exact = frames[this.month];
    if (exact) return exact;
    const held = fits(this.#held.frame, this.shown) ? this.#held.frame : null;
    if (held && frames.length <= this.month) return held;
    for (let month = Math.min(this.month, frames.length - 1); month >= 0; month--) {
      const frame = frames[month];
      if (frame) return frame;
    }
    return held;
  }

  #keep(edit: Edit, seed = this.seed): void {
    this.#history = commit(this.#history, { ...this.#now(), words: edit.words });
    this.told = `Done: ${edit.words}`;
    this.#put(edit.plan, seed);
  }

  #now(): PlanMoment {
    return { plan: this.plan, seed: this.seed, month: this.month };
  }

  #travel(step: Step<PlanMoment> | null, how: string): void {
    if (step === null) return;
    this.told = `${how}: ${step.words}`;
    this.#history = step.history;
    this.#put(step.plan, step.seed);
    this.month = Math.min(step.month, step.plan.months);
  }

  #put(plan: Plan, seed: string): void {
    this.#plan = plan;
    this.#seed = seed;
    this.refused = [];
    this.#settle(plan);
  }

  /** Selection, month and stamp name only what the plan still has. */
  #settle(plan: Plan): void {
    const pieces = new Set(plan.pieces.map((piece) => piece.id));
    if (this.selection.some((id) => !pieces.has(id))) {
      this.selection = this.selection.filter((id) => pieces.has(id));
    }
    if (this.month > plan.months) this.month = plan.months;
    if (!plan.varieties.some((variety) => variety.id === this.stamp.variety)) {
      this.stamp = { ...this.stamp, variety: plan.varieties[0]?.id ?? '' };
    }
  }
}

/** Whether a picture is of a tile of the plan's size. */
function fits(frame: Frame | null, plan: Plan): boolean {
  return frame !== null && Math.abs((frame.columns - 2) * frame.cellMm - plan.tile.sizeMm) < 2 * frame.cellMm;
}
