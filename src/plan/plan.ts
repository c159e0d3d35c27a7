/**
 * The plan a grower makes: the schema of the plan file, and its types.
 * Millimetres from the tile's centre, x right, y down; days; mm per month.
 * Pairs, steps and turns may be left out of a file written by hand; a plan always has them.
 * What a schema cannot say (overlaps, unknown varieties) is in plan/refuse.ts.
 * The messages say what is allowed, in words that fit 'Change months to …'; plan/schema-faults.ts does the rest.
 */
import * as v from 'valibot';
import { dayOfDate } from '../units/quantity';

export const MAX_VARIETIES = 8;
export const LARGEST_TILE_MM = 300;
/** Letters of a seed, on the page and in the command line. */
export const MAX_SEED_LETTERS = 100;
export const MAX_PIECES = 2000;
export const MAX_STEPS = 200;
/** Faces of all recuts of a plan together. */
export const MAX_FACES = 10_000;
export const LONGEST_MONTHS = 36;
export const LAST_DAY = 1095;

export const number = (least: number, most: number, kind = 'a number') => {
  const allowed = `${kind} from ${least} to ${most}`;
  return v.pipe(v.number(allowed), v.finite(allowed), v.minValue(least, allowed), v.maxValue(most, allowed));
};

export const whole = (least: number, most: number) =>
  v.pipe(number(least, most, 'a whole number'), v.integer(`a whole number from ${least} to ${most}`));

export const text = (most: number) => {
  const allowed = `words of at most ${most} letters`;
  return v.pipe(v.string(allowed), v.maxLength(most, allowed));
};

const pattern = (form: RegExp, allowed: string) => v.pipe(v.string(allowed), v.regex(form, allowed));

const ID_WORDS = 'a letter or digit, then at most 39 letters, digits, "-", "_" or "."';
const XY_WORDS = 'two numbers: x and y in mm, each from -1000 to 1000';

export const id = pattern(/^[a-z\d][\w.-]{0,39}$/iu, ID_WORDS);
export const xy = v.pipe(v.strictTuple([number(-1000, 1000), number(-1000, 1000)], XY_WORDS), v.readonly());

export const list = <T extends v.GenericSchema>(item: T, least: number, most: number, of: string) => {
  const allowed = least === 0 ? `a list of at most ${most} ${of}` : `a list of ${least} to ${most} ${of}`;
  return v.pipe(
    v.array(item, allowed),
    v.minLength(least, allowed),
    v.maxLength(most, allowed),
    v.readonly(),
  );
};

const DATE_WORDS = 'a date such as "2026-03-31"';

/** A day of the calendar. */
export const date = v.pipe(
  v.string(DATE_WORDS),
  v.check((text) => !Number.isNaN(dayOfDate(text)), DATE_WORDS),
);

export const colour = pattern(/^#[\da-f]{6}$/iu, 'a colour such as "#2f7d4f"');

const TileSchema = v.strictObject({
  shape: v.picklist(['square', 'disc']),
  sizeMm: number(20, LARGEST_TILE_MM),
});

const VarietySchema = v.strictObject({
  id,
  name: text(200),
  colour,
  rimMmPerMonth: number(0.2, 15),
  aggression: number(0, 1),
});

export const MingleSchema = v.strictObject({
  /** Sideways wander of a colour border, mm per square root of mm of advance. */
  interleave: number(0, 2),
  /** Share of births from farther off, and how far. */
  stray: number(0, 1),
  strayReachMm: number(0, 50),
  /** Share of births that take the locally rarer colour, and from how far. */
  weave: number(0, 1),
  weaveReachMm: number(0.5, 20),
  /** Sideways drift, mm per mm of advance. */
  lean: number(-1, 1),
  turnoverPerMonth: number(0, 1),
});

export const MINGLE_NAMES = ['hardly', 'veins', 'through'] as const;
export const RELATED_NAMES = ['unrelated', 'unknown', 'kin', 'self'] as const;

export const TookOfTriedSchema = v.strictObject({
  took: whole(0, 10_000),
  tried: whole(0, 10_000),
});

const PairSchema = v.strictObject({
  a: id,
  b: id,
  acceptance: v.optional(v.union([number(0, 1), TookOfTriedSchema])),
  /** In place of acceptance. */
  related: v.optional(v.picklist(RELATED_NAMES)),
  /** How alike repeats of the pair turn out: 1 mostly all or nothing, large for independent coins. */
  consistency: v.optional(number(0.01, 1_000_000)),
  revertPerMonth: v.optional(number(0, 1)),
  mingle: v.optional(v.union([v.picklist(MINGLE_NAMES), MingleSchema])),
});

const placed = {
  id,
  at: xy,
  turnDeg: v.optional(number(-360, 360), 0),
  edge: v.optional(v.picklist(['cut', 'rim'])),
};

export const OutlinePieceSchema = v.strictObject({
  ...placed,
  variety: id,
  outline: list(xy, 3, 2000, 'corners [x, y]'),
});

export const DiscPieceSchema = v.strictObject({
  ...placed,
  variety: id,
  disc: v.strictObject({ diameterMm: number(0.5, 300) }),
});

/** Piece of several varieties that came grown together: a tile as it stands today, or what was cut from one. */
export const GraftPieceSchema = v.strictObject({
  ...placed,
  patches: list(
    v.strictObject({ variety: id, outline: list(xy, 3, 2000, 'corners [x, y]') }),
    1,
    500,
    'patches',
  ),
  /** What is known of the seams between patches; where nothing is said they are fused. */
  seams: v.optional(
    list(
      v.strictObject({
        along: list(xy, 2, 500, 'points [x, y]'),
        is: v.picklist(['ridge', 'lapped', 'dead']),
        /** Of a lapped one: the variety that lies over the other. Left out, the more aggressive one. */
        over: v.optional(id),
      }),
      0,
      200,
      'seams',
    ),
  ),
});

const PieceSchema = v.union([OutlinePieceSchema, DiscPieceSchema, GraftPieceSchema]);

const dated = {
  id,
  /** Acts at the start of this day; day 0 is the tile as set. */
  day: whole(0, LAST_DAY),
  /** False for a step that is switched off; on when left out. */
  on: v.optional(v.boolean()),
};

const path = (least: number) => list(xy, least, 1000, 'points [x, y]');

const PlacementSchema = v.strictObject({
  piece: id,
  /** Where the piece's own origin goes: of a face its centroid, of a piece set by hand its 'at'. */
  at: xy,
  turnDeg: v.optional(number(-360, 360), 0),
});

/** What can be done to a tile at a date, by kind. What each means is in DEVELOPERS.md. */
const STEP_SCHEMAS = {
  trim: v.strictObject({
    ...dated,
    kind: v.literal('trim'),
    widthMm: number(0.1, 100),
    along: v.optional(path(2)),
    piece: v.optional(id),
  }),
  recut: v.strictObject({
    ...dated,
    kind: v.literal('recut'),
    lines: list(path(2), 1, 400, 'lines'),
    kerfMm: number(0, 5),
    then: v.optional(list(PlacementSchema, 0, MAX_FACES, 'placements'), []),
    /** True: parts of one colony meet again as strangers do; else they rejoin without a coin. */
    coin: v.optional(v.boolean()),
  }),
  move: v.strictObject({ ...dated, kind: v.literal('move'), ...PlacementSchema.entries }),
  lift: v.strictObject({ ...dated, kind: v.literal('lift'), piece: id }),
  add: v.strictObject({ ...dated, kind: v.literal('add'), piece: PieceSchema }),
  isolate: v.strictObject({
    ...dated,
    kind: v.literal('isolate'),
    around: path(3),
    kerfMm: v.optional(number(0, 5)),
  }),
  scrape: v.strictObject({ ...dated, kind: v.literal('scrape'), along: path(2), widthMm: number(0.1, 50) }),
} as const;

export const STEP_KINDS = ['trim', 'recut', 'move', 'lift', 'add', 'isolate', 'scrape'] as const;

export const StepSchema = v.variant('kind', [
  STEP_SCHEMAS.trim,
  STEP_SCHEMAS.recut,
  STEP_SCHEMAS.move,
  STEP_SCHEMAS.lift,
  STEP_SCHEMAS.add,
  STEP_SCHEMAS.isolate,
  STEP_SCHEMAS.scrape,
]);

export const SettingsSchema = v.partial(
  v.strictObject({
    zipLengthMm: number(2, 40),
    healingDays: number(0, 60),
    stingMm: number(0, 10),
    deadShare: number(0, 1),
    /** Of ridges, those that look fused from above for their first 2 to 8 months. */
    veiledShare: number(0, 1),
    rimFactor: number(0, 1),
    roughness: number(0, 0.3),
    polypMm: number(0.6, 3),
  }),
);

/** Chance that a cutting lives, fitted to the grower's own: logit p = atOneMm2 + perDecade log10(area in mm2). */
const SurvivalSchema = v.strictObject({
  atOneMm2: number(-100, 100),
  perDecade: number(-100, 100),
});

export const PlanSchema = v.strictObject({
  seambench: v.literal(1),
  name: text(200),
  tile: TileSchema,
  varieties: list(VarietySchema, 1, MAX_VARIETIES, 'varieties'),
  pairs: v.optional(list(PairSchema, 0, 28, 'pairs'), []),
  pieces: list(PieceSchema, 0, MAX_PIECES, 'pieces'),
  /** In any order of days; steps of one day act in the order of the list. */
  steps: v.optional(list(StepSchema, 0, MAX_STEPS, 'steps'), []),
  months: whole(1, LONGEST_MONTHS),
  settings: v.optional(SettingsSchema),
  survival: v.optional(SurvivalSchema),
  /** Words of the maker: what the plan shows, whether it is invented. */
  note: v.optional(text(2000)),
});

const SEED_WORDS = `words of 1 to ${MAX_SEED_LETTERS} letters`;

/** The word that all chance of a tile follows from. */
export const SeedSchema = v.pipe(
  v.string(SEED_WORDS),
  v.minLength(1, SEED_WORDS),
  v.maxLength(MAX_SEED_LETTERS, SEED_WORDS),
);

/** What a file may say beside its plan. */
export const PlanFileSchema = v.strictObject({ ...PlanSchema.entries, seed: v.optional(SeedSchema) });

export type ReadonlyDeep<T> = T extends readonly unknown[]
  ? { readonly [K in keyof T]: ReadonlyDeep<T[K]> }
  : T extends object
    ? { readonly [K in keyof T]: ReadonlyDeep<T[K]> }
    : T;

export type Plan = ReadonlyDeep<v.InferOutput<typeof PlanSchema>>;
export type Tile = Plan['tile'];
export type Variety = Plan['varieties'][number];
export type Pair = Plan['pairs'][number];
export type Piece = Plan['pieces'][number];
export type GraftPiece = Extract<Piece, { readonly patches: unknown }>;
/** A piece of one variety. */
export type PlainPiece = Exclude<Piece, GraftPiece>;
export type Step = Plan['steps'][number];
export type StepKind = Step['kind'];
export type StepOf<K extends StepKind> = Extract<Step, { readonly kind: K }>;
export type Mingle = ReadonlyDeep<v.InferOutput<typeof MingleSchema>>;
export type MingleName = (typeof MINGLE_NAMES)[number];
export type Related = (typeof RELATED_NAMES)[number];
export type Survival = ReadonlyDeep<v.InferOutput<typeof SurvivalSchema>>;
export type Settings = ReadonlyDeep<v.InferOutput<typeof SettingsSchema>>;
export type Xy = readonly [number, number];

/** The pair as it stands in the plan, in whichever order; undefined if the plan does not list it. */
export function pairOf(plan: Plan, a: string, b: string): Pair | undefined {
  return plan.pairs.find((pair) => (pair.a === a && pair.b === b) || (pair.a === b && pair.b === a));
}

/** Why a plan cannot be, in words for a person. */
export interface Refusal {
  /** The place: 'pieces[2] (p3)'. */
  readonly where: string;
  readonly found: string;
  readonly allowed: string;
  readonly cure: string;
}
