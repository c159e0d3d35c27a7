/**
 * A lesson is data: a tile that grows while one reads, a text, a question, a thing to try, and a claim that a test holds
 * against the engine over seeds. A new one is a file in pages/ and a line in order.ts.
 */
import type { Reading } from '../measure/reading';
import type { Frame } from '../model/frame';
import type { Edit } from '../plan/edit';
import type { Plan, Xy } from '../plan/plan';

/** Each paragraph says how sure it is: printed in a study, told among growers, or a guess of the model. */
export type Paragraph =
  | { readonly sure: 'published'; readonly words: string; readonly source: string }
  | { readonly sure: 'practice' | 'guess'; readonly words: string };

export interface Answer {
  readonly words: string;
  readonly isRight: boolean;
  /** What is said to whoever chose it: why it is right, or what it overlooks. */
  readonly earns: string;
}

export interface Question {
  readonly words: string;
  /** One of them is right. */
  readonly answers: readonly Answer[];
}

/** A change offered as a button: the tile grows anew. */
export interface Try {
  /** 'Set the gap to 6 mm' */
  readonly label: string;
  /** What to look for afterwards. */
  readonly look: string;
  readonly change: (plan: Plan) => Edit;
}

/** A run that a claim reads: the lesson's plan or one like it, and the months at which it is looked at. */
export interface ClaimRun {
  readonly plan: Plan;
  readonly months: readonly number[];
}

/** A tile at a month: its numbers, and what its picture is drawn from. */
export interface Look {
  readonly reading: Reading;
  readonly frame: Frame;
}

/** What the lesson says of the model, as a mean over seeds that lies between two numbers. */
export interface Claim {
  readonly words: string;
  readonly unit: string;
  readonly runs: readonly ClaimRun[];
  /** One number a seed, from the looks at each run, month by month; null where there is none. */
  readonly measure: (looks: readonly (readonly Look[])[]) => number | null;
  readonly from: number;
  readonly to: number;
  /** Why these bounds. */
  readonly because: string;
}

export interface Lesson {
  /** Its address: '#/school/lapped'. */
  readonly id: string;
  readonly title: string;
  /** What it says, in one sentence. */
  readonly idea: string;
  readonly plan: Plan;
  readonly seed: string;
  /** The month at which the tile tells it: play stops there. */
  readonly month: number;
  /** Where the tile is cut open; left out where there is nothing to see from the side. */
  readonly cut?: { readonly from: Xy; readonly to: Xy };
  /** True where the lesson is in the bare picture: seams are drawn only once they are asked for. */
  readonly isBare?: true;
  /** What to watch on the tile. */
  readonly watch: string;
  readonly text: readonly Paragraph[];
  /** One or more; each has to be answered right. */
  readonly questions: readonly Question[];
  readonly tries: readonly Try[];
  readonly claim: Claim;
}
