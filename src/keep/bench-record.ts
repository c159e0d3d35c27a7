/** How the bench is stored: plans and tiles as the texts of their files, so that all are read through one door. */
import * as v from 'valibot';
import { benchText, openBench, type Bench as Tiles, type Place } from '../plan/bench';
import { openPlan, planText } from '../plan/file';
import { MAX_SEED_LETTERS, type Plan } from '../plan/plan';
import type { Kind } from './autosave';
import { whyRefused } from './why-refused';

export interface Bench {
  readonly plan: Plan;
  readonly seed: string;
  readonly month: number;
  /** The tiles and mothers beside the plan, and which tile or branch of them the plan is. */
  readonly rest?: {
    readonly tiles: Tiles;
    readonly at: Place | null;
  };
}

const BenchSchema = v.object({
  shape: v.literal(1),
  planText: v.string(),
  seed: v.pipe(v.string(), v.minLength(1), v.maxLength(MAX_SEED_LETTERS)),
  month: v.pipe(v.number(), v.integer(), v.minValue(0)),
  rest: v.optional(
    v.object({
      benchText: v.string(),
      at: v.nullable(v.object({ tile: v.string(), branch: v.nullable(v.string()) })),
    }),
  ),
});

export type BenchRecord = v.InferOutput<typeof BenchSchema>;

export const BENCH_KIND: Kind<Bench, BenchRecord> = {
  lock: 'seambench-writer',
  afterMs: 500,
  recordOf,
  workOf: benchOf,
  isSameWork,
};

/** The bench in a stored record, or the words that say why it cannot be read. */
function benchOf(found: unknown): Bench | string {
  const record = v.safeParse(BenchSchema, found);
  if (!record.success) return 'its form is not known to this version';
  const { planText: text, seed, month, rest } = record.output;
  const opened = openPlan(text);
  if ('refusals' in opened) return whyRefused(opened.refusals);
  const bench = { plan: opened.plan, seed, month: Math.min(month, opened.plan.months) };
  if (!rest) return bench;
  const tiles = openBench(rest.benchText);
  if ('refusals' in tiles) return whyRefused(tiles.refusals);
  return { ...bench, rest: { tiles: tiles.bench, at: rest.at } };
}

function isSameWork(one: BenchRecord, other: BenchRecord): boolean {
  return (
    one.planText === other.planText &&
    one.seed === other.seed &&
    one.rest?.benchText === other.rest?.benchText
  );
}

function recordOf(bench: Bench): BenchRecord {
  const { plan, seed, month, rest } = bench;
  const record: BenchRecord = { shape: 1, planText: planText(plan), seed, month };
  return rest ? { ...record, rest: { benchText: benchText(rest.tiles), at: rest.at } } : record;
}
