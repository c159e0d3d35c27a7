/** The words without which a lesson cannot be read, in the order of its page, and what is said where one is missing. */
import type { Lesson } from './lesson';

export interface LessonWords {
  /** 'questions[0].words' */
  readonly at: string;
  readonly words: string;
  readonly cure: string;
  /** 'Paragraph 2' */
  readonly name: string;
  /** No two of the same kind may have the same words: the page tells them apart by these. */
  readonly among?: string;
}

export function wordsOf({ title, idea, watch, text, questions, tries, claims }: Lesson): LessonWords[] {
  const one = (at: string, words: string, cure: string): LessonWords => ({ at, words, cure, name: at });
  const of = (at: string, words: string, name: string, among: string): LessonWords => ({
    at,
    words,
    cure: `${name} has no words`,
    name,
    among,
  });
  return [
    one('title', title, 'The lesson has no title'),
    one('idea', idea, 'The lesson does not say its one sentence'),
    one('watch', watch, 'The lesson does not say what to watch on the tile'),
    ...text.map(({ words }, at) => of(`text[${at}].words`, words, `Paragraph ${at + 1}`, 'text')),
    ...questions.flatMap(({ words, answers }, at) => [
      of(`questions[${at}].words`, words, `Question ${at + 1}`, 'questions'),
      ...answers.map((answer, k) =>
        of(
          `questions[${at}].answers[${k}].words`,
          answer.words,
          `Answer ${k + 1} to question ${at + 1}`,
          `answers ${at}`,
        ),
      ),
    ]),
    ...tries.map(({ label }, at) => of(`tries[${at}].label`, label, `Thing to try ${at + 1}`, 'tries')),
    ...claims.map(({ words }, at) =>
      one(`claims[${at}].words`, words, `Claim ${at + 1} does not say what it claims`),
    ),
  ];
}
