/**
 * A lesson is data: a tile that grows while one reads, a text, questions, things to try, and claims that are held
 * against the engine over seeds. Ours lie in pages/ and order.ts; a grower's own come as files (lesson-file.ts).
 */
import * as v from 'valibot';
import type { Plan, ReadonlyDeep } from '../plan/plan';
import * as form from '../plan/plan';
import { CALLS } from './seam-kinds';

/** Letters of a title or label, and of all other words. */
export const MOST_TITLE = 200;
export const MOST_WORDS = 2000;
/** Paragraphs, questions, things to try, claims. */
export const MOST = 20;
export const MOST_ANSWERS = 8;

const words = form.text(MOST_WORDS);
const month = form.whole(0, form.LONGEST_MONTHS);

const ParagraphSchema = v.strictObject({
  /** Printed in a study, told among growers, or a guess of the model. */
  sure: v.picklist(['published', 'practice', 'guess']),
  words,
  /** Where it is printed. */
  source: v.optional(words),
});

const questionOf = (leastAnswers: number) =>
  v.strictObject({
    words,
    /** One of them is right. */
    answers: form.list(
      v.strictObject({
        words,
        isRight: v.boolean(),
        /** What is said to whoever chose it: why it is right, or what it overlooks. */
        earns: words,
      }),
      leastAnswers,
      MOST_ANSWERS,
      'answers',
    ),
  });

/** A number read off a tile at a month. */
const AmountSchema = v.strictObject({
  /**
   * An outcome, or 'looks-fused': share of the seam, from 0 to 1. 'tissue': share of the tissue that is of a variety.
   * 'cut': the same of what was cut out. 'vein-width': mm. 'radius': of a disc as large as all tissue, mm.
   */
  of: v.picklist([...CALLS, 'looks-fused', 'tissue', 'cut', 'vein-width', 'radius']),
  month,
  /** Of an outcome: on the seam of these two varieties; left out: of all seams. */
  pair: v.optional(v.pipe(v.strictTuple([form.id, form.id]), v.readonly())),
  /** Of 'tissue' and 'cut'. */
  variety: v.optional(form.id),
  /** On the tile of the n-th thing to try, from 1; left out: of the lesson's own. */
  try: v.optional(form.whole(1, MOST)),
});

/** Bounds of a claim reach from here to as much above nothing. */
export const LEAST = -1e6;

/** What a lesson says of the model: a mean over seeds that lies between two numbers. */
const ClaimSchema = v.strictObject({
  words,
  amount: AmountSchema,
  /** Taken off it, or what it is divided by. */
  less: v.optional(AmountSchema),
  by: v.optional(AmountSchema),
  from: form.number(LEAST, -LEAST),
  to: form.number(LEAST, -LEAST),
  /** Why these bounds. */
  because: words,
});

/** All of a lesson but its plans, which are read by the door of plan files. */
export const LessonSchema = v.strictObject({
  seambenchLesson: v.literal(1),
  /** Its address: '#/school/lapped'. */
  id: form.id,
  title: form.text(MOST_TITLE),
  /** What it says, in one sentence. */
  idea: words,
  plan: v.unknown(),
  seed: form.SeedSchema,
  /** The month at which the tile tells it: play stops there. */
  month,
  /** Where the tile is cut open; left out: across its middle. */
  cut: v.optional(v.strictObject({ from: form.xy, to: form.xy })),
  /** True where the lesson is in the bare picture: seams are drawn only once they are asked for. */
  isBare: v.optional(v.boolean()),
  /** What to watch on the tile. */
  watch: words,
  text: form.list(ParagraphSchema, 0, MOST, 'paragraphs'),
  /** Each has to be answered right. */
  questions: form.list(questionOf(2), 0, MOST, 'questions'),
  /** Changes offered as buttons: the tile grows anew. */
  tries: form.list(
    v.strictObject({
      /** 'Set the gap to 6 mm' */
      label: form.text(MOST_TITLE),
      /** What to look for afterwards. */
      look: words,
      plan: v.unknown(),
    }),
    0,
    MOST,
    'things to try',
  ),
  claims: form.list(ClaimSchema, 0, MOST, 'claims'),
});

/** A lesson that is being written: no name yet, and answers still to come. */
export const DraftSchema = v.strictObject({
  ...LessonSchema.entries,
  id: v.union([v.literal(''), form.id]),
  questions: form.list(questionOf(0), 0, MOST, 'questions'),
});

type Data = ReadonlyDeep<v.InferOutput<typeof LessonSchema>>;

export type Question = Data['questions'][number];
export type Answer = Question['answers'][number];
export type Claim = Data['claims'][number];
export type Amount = Claim['amount'];
export type Try = Data['tries'][number] & { readonly plan: Plan };
export type Lesson = Omit<Data, 'seambenchLesson' | 'plan' | 'tries'> & {
  readonly plan: Plan;
  readonly tries: readonly Try[];
};
