/**
 * The log of trials: which varieties were set on which tile, what was seen of them by date, what was done in the tanks.
 * The schema of a log's records, and their types. Dates are calendar days ('2026-03-31') of where the farm is.
 * What a schema cannot say (a reading before its tile was set, a variety that is not listed) is in trials/log-faults.ts.
 */
import * as v from 'valibot';
import * as form from '../plan/plan';
import type { ReadonlyDeep } from '../plan/plan';

export const MAX_LOG_VARIETIES = 500;
export const MAX_TRIALS = 20_000;
export const MAX_READINGS = 1000;
export const MAX_SEEN = 28;
export const MAX_MEASURED = 8;
export const MAX_EVENTS = 20_000;

/**
 * What a seam was seen to be. 'not-met' and 'cant-tell' are what was seen, and count as undecided.
 * The first five are outcomes of the model.
 */
export const SAW = ['fused', 'ridge', 'lapped', 'dead', 'undecided', 'not-met', 'cant-tell'] as const;

const LogVarietySchema = v.strictObject({
  id: form.id,
  name: form.text(200),
  /** Only varieties of one group (a species, or what the grower takes for one) are expected to fuse. Empty: not said. */
  group: form.text(200),
  colour: v.optional(form.colour),
  /** What the grower would pay for a merge with it, in any unit; 1 when left out. */
  worth: v.optional(form.number(0, 1_000_000)),
});

/** Two or more pieces side by side, where no plan was drawn. */
export const SideBySideSchema = v.strictObject({
  pieceMm: v.optional(form.number(1, 300)),
  gapMm: v.optional(form.number(0, 100)),
});

export const PlannedSchema = v.strictObject({
  /** A plan from Grow, read by the door of plan files. */
  plan: v.unknown(),
  seed: form.SeedSchema,
});

/** One pair on a tile as it was seen on a day. */
const SeenSchema = v.strictObject({
  a: form.id,
  b: form.id,
  saw: v.picklist(SAW),
  /** Of a lapped or dead seam: the variety that lies over the other or killed it. */
  over: v.optional(form.id),
  /** Part of the pair's seam that was so, 0 to 1; the whole when left out. */
  share: v.optional(form.number(0, 1)),
  ridgeMm: v.optional(form.number(0, 50)),
});

/** One variety on a tile as it was measured on a day. A size is one of radius, area and outline. */
const MeasuredSchema = v.strictObject({
  variety: form.id,
  /** Radius of a disc, or half the mean width, of all of the variety on the tile. */
  radiusMm: v.optional(form.number(0, 1000)),
  areaMm2: v.optional(form.number(0, 1_000_000)),
  outline: v.optional(form.list(form.xy, 3, 2000, 'corners [x, y]')),
  state: v.optional(v.picklist(['alive', 'died', 'lost'])),
});

export const ReadingSchema = v.strictObject({
  id: form.id,
  on: form.date,
  /** Initials of who read it. */
  by: v.optional(form.text(20)),
  seen: form.list(SeenSchema, 0, MAX_SEEN, 'pairs'),
  measured: form.list(MeasuredSchema, 0, MAX_MEASURED, 'varieties'),
  /** A photo kept beside the log, by its id. */
  photo: v.optional(form.id),
  note: v.optional(form.text(2000)),
});

const TrialSchema = v.strictObject({
  id: form.id,
  /** What stands on the tile's tag. */
  tag: form.text(100),
  setOn: form.date,
  varieties: form.list(form.id, 1, form.MAX_VARIETIES, 'varieties'),
  layout: v.union([SideBySideSchema, PlannedSchema]),
  tank: form.text(200),
  light: v.optional(form.text(200)),
  flow: v.optional(form.text(200)),
  temperature: v.optional(form.text(200)),
  note: v.optional(form.text(2000)),
  readings: form.list(ReadingSchema, 0, MAX_READINGS, 'readings'),
});

/** Something that happened to a tank, or to some of its tiles. */
export const EVENT_KINDS = ['dip', 'pest', 'move', 'fault', 'light', 'other'] as const;

export const TankEventSchema = v.strictObject({
  id: form.id,
  on: form.date,
  tank: form.text(200),
  kind: v.picklist(EVENT_KINDS),
  /** Tags of the tiles it touched; all of the tank when empty. */
  tags: form.list(form.text(100), 0, 1000, 'tags'),
  note: v.optional(form.text(2000)),
});

export const LogSchema = v.strictObject({
  seambenchLog: v.literal(1),
  name: form.text(200),
  varieties: form.list(LogVarietySchema, 0, MAX_LOG_VARIETIES, 'varieties'),
  trials: form.list(TrialSchema, 0, MAX_TRIALS, 'trials'),
  events: form.list(TankEventSchema, 0, MAX_EVENTS, 'events'),
  /** Words of the maker: whether it is invented. */
  note: v.optional(form.text(2000)),
});

export type Log = ReadonlyDeep<v.InferOutput<typeof LogSchema>>;
export type LogVariety = Log['varieties'][number];
export type Trial = Log['trials'][number];
export type TrialReading = Trial['readings'][number];
export type Seen = TrialReading['seen'][number];
export type Measured = TrialReading['measured'][number];
export type Saw = Seen['saw'];
export type TankEvent = Log['events'][number];

export const EMPTY_LOG: Log = {
  seambenchLog: 1,
  name: 'My trials',
  varieties: [],
  trials: [],
  events: [],
};

/** As its maker says: nothing in it was seen. */
export function isInvented({ note }: Log): boolean {
  return note?.includes('invented') ?? false;
}
