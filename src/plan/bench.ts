/**
 * A bench: several tiles with their branches, and the mother colonies they are cut from, as one file. Text -> JSON ->
 * migrate -> schema -> each plan through the door of plan files, and back to one canonical text.
 * Whatever comes in, a bench or refusals come out; nothing is thrown.
 */
import * as v from 'valibot';
import { line, planText } from './file';
import { type FileKind, heldPlan, isOfKind, readKind } from './file-kinds';
import { repeats } from './ids';
import * as form from './plan';
import type { Plan, ReadonlyDeep, Refusal, Step } from './plan';
import { refuse } from './refuse';
import { schemaFaults } from './schema-faults';

export const MAX_TILES = 50;
export const MAX_BRANCHES = 20;
export const MAX_MOTHERS = 200;
/** As long as fifty long plans. */
const BENCH: FileKind = { word: 'bench', sign: 'seambenchBench', mostLetters: 100_000_000 };

const BranchSchema = v.strictObject({
  id: form.id,
  name: form.text(200),
  /** The first day on which the branch is its own. */
  fromDay: form.whole(0, form.LAST_DAY),
  steps: form.list(form.StepSchema, 0, form.MAX_STEPS, 'steps'),
  months: v.optional(form.PlanSchema.entries.months),
});

export const MotherSchema = v.strictObject({
  id: form.id,
  /** By name, for the plans of a bench each have ids of their own. */
  variety: form.text(200),
  /** Measured on the day `on`. */
  areaMm2: form.number(1, 10_000_000),
  on: form.date,
  tank: form.text(200),
  /** Part of `areaMm2` that is never cut. */
  keepShare: v.optional(form.number(0, 1)),
});

const BenchSchema = v.strictObject({
  seambenchBench: v.literal(1),
  name: form.text(200),
  tiles: form.list(
    v.strictObject({
      id: form.id,
      name: form.text(200),
      /** Read by the door of plan files, which knows older shapes too. */
      plan: v.unknown(),
      seed: form.SeedSchema,
      branches: v.optional(form.list(BranchSchema, 0, MAX_BRANCHES, 'branches')),
    }),
    0,
    MAX_TILES,
    'tiles',
  ),
  mothers: form.list(MotherSchema, 0, MAX_MOTHERS, 'mothers'),
});

export type Mother = ReadonlyDeep<v.InferOutput<typeof MotherSchema>>;
export type Branch = ReadonlyDeep<v.InferOutput<typeof BranchSchema>>;

export interface BenchTile {
  readonly id: string;
  readonly name: string;
  readonly plan: Plan;
  readonly seed: string;
  readonly branches?: readonly Branch[] | undefined;
}

export interface Bench {
  readonly seambenchBench: 1;
  readonly name: string;
  readonly tiles: readonly BenchTile[];
  readonly mothers: readonly Mother[];
}

export type OpenedBench = { readonly bench: Bench } | { readonly refusals: readonly Refusal[] };

/** A tile of a bench, or one of its branches. */
export interface Place {
  readonly tile: string;
  readonly branch: string | null;
}

export const EMPTY_BENCH: Bench = { seambenchBench: 1, name: 'My bench', tiles: [], mothers: [] };

/** The plan up to the branch's day, with the branch's own steps from then on. */
export function branchPlan(plan: Plan, branch: Branch): Plan {
  return {
    ...plan,
    steps: [...plan.steps.filter(({ day }) => day < branch.fromDay), ...branch.steps],
    months: branch.months ?? plan.months,
  };
}

/** What is the branch's own in a plan that may have been edited: null where the change is not one of a branch. */
export function branchOf(plan: Plan, branch: Branch, edited: Plan): Branch | null {
  const steps = edited.steps.filter(({ day }) => day >= branch.fromDay);
  const months = edited.months === plan.months ? undefined : edited.months;
  const { months: _months, ...rest } = branch;
  const changed: Branch = { ...rest, steps, ...(months === undefined ? {} : { months }) };
  return planText(branchPlan(plan, changed)) === planText(edited) ? changed : null;
}

/** A branch that goes on as the plan does, until its steps are changed. */
export function branchAt(plan: Plan, id: string, name: string, fromDay: number): Branch {
  return { id, name, fromDay, steps: plan.steps.filter(({ day }: Step) => day >= fromDay) };
}

/** Whether an opened file says of itself that it is a bench. */
export function isBenchText(text: string): boolean {
  return isOfKind(text, BENCH);
}

export function openBench(text: string): OpenedBench {
  const read = readKind(text, BENCH);
  return 'refusals' in read ? read : checked(read.value);
}

function checked(value: unknown): OpenedBench {
  const parsed = v.safeParse(BenchSchema, value);
  if (!parsed.success) return { refusals: schemaFaults(value, parsed.issues).map(ofBench) };
  const { tiles: written, ...rest } = parsed.output;
  const refusals = [
    ...repeatedIds('tiles', written),
    ...written.flatMap(({ branches = [] }, index) => repeatedIds(`tiles[${index}].branches`, branches)),
    ...repeatedIds('mothers', rest.mothers),
  ];
  const tiles = written.flatMap((tile, index): BenchTile[] => {
    const where = `tiles[${index}] (${tile.id})`;
    const held = heldPlan(tile.plan, `${where}.plan`, `the tile “${tile.name}”`);
    if ('refusals' in held) {
      refusals.push(...held.refusals);
      return [];
    }
    refusals.push(...(tile.branches ?? []).flatMap((branch) => tooEarly(where, branch)));
    return [{ ...tile, plan: held.plan }];
  });
  return refusals.length > 0 ? { refusals } : { bench: { ...rest, tiles } };
}

/** The schema's words speak of a plan. */
function ofBench(refusal: Refusal): Refusal {
  return {
    ...refusal,
    where: refusal.where === 'the plan' ? 'the bench' : refusal.where,
    cure: `In the bench, ${refusal.where}: ${refusal.found} stands where ${refusal.allowed} must be`,
  };
}

function tooEarly(where: string, { id, name, fromDay, steps }: Branch): Refusal[] {
  const early = steps.find(({ day }) => day < fromDay);
  if (!early) return [];
  return [
    {
      where: `${where}.branches (${id})`,
      found: `a step on day ${early.day}`,
      allowed: `steps from day ${fromDay} on`,
      cure: `The branch “${name}” begins on day ${fromDay} and has a step on day ${early.day}: move one of the two`,
    },
  ];
}

function repeatedIds(list: string, things: readonly { readonly id: string }[]): Refusal[] {
  return repeats(things).map(({ thing: { id }, index }) => ({
    where: `${list}[${index}] (${id})`,
    found: `the id ${id} again`,
    allowed: 'each id once',
    cure: `Two entries of ${list} have the same id ${id} in the file: give one of them another`,
  }));
}

/**
 * Why a branch cannot grow. Not judged when a bench is opened: a change to the tile's past may leave a branch without
 * a piece that it names, and that must not cost the bench.
 */
export function branchRefusals(plan: Plan, branch: Branch): readonly Refusal[] {
  return refuse(branchPlan(plan, branch));
}

/** The canonical text: equal benches give equal text. */
export function benchText(bench: Bench): string {
  const { seambenchBench, name, tiles, mothers } = bench;
  const parts = [
    `"seambenchBench": ${seambenchBench}`,
    `"name": ${line(name)}`,
    `"tiles": ${block(tiles.map(tileText))}`,
    `"mothers": ${block(mothers.map(line))}`,
  ];
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}

function block(items: readonly string[]): string {
  if (items.length === 0) return '[]';
  return `[\n${items.map((item) => `    ${item}`).join(',\n')}\n  ]`;
}

function tileText({ id, name, plan, seed, branches }: BenchTile): string {
  const parts = [
    `"id": ${line(id)}`,
    `"name": ${line(name)}`,
    `"seed": ${line(seed)}`,
    // words of a plan hold no line breaks of their own: JSON writes them as \n
    `"plan": ${planText(plan).trimEnd().replaceAll('\n', '\n      ')}`,
    ...(branches === undefined ? [] : [`"branches": ${line(branches)}`]),
  ];
  return `{\n      ${parts.join(',\n      ')}\n    }`;
}
