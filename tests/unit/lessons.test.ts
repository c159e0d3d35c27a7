/** What every lesson is made of: a plan that grows, one right answer, things to try that change it, marks with sources. */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { lessonText, openLesson } from '../../src/lessons/lesson-file';
import { LESSONS } from '../../src/lessons/order';
import { PlanSchema } from '../../src/plan/plan';
import { refuse } from '../../src/plan/refuse';

it('lessons are known by their addresses, which are all different', () => {
  const ids = LESSONS.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[a-z-]+$/u);
});

describe.each(LESSONS.map((lesson) => [lesson.id, lesson] as const))('%s', (_id, lesson) => {
  it('stands on a plan that a file may hold and nothing refuses', () => {
    expect(v.parse(PlanSchema, JSON.parse(JSON.stringify(lesson.plan)))).toEqual(lesson.plan);
    expect(refuse(lesson.plan)).toEqual([]);
    expect(lesson.month).toBeLessThanOrEqual(lesson.plan.months);
    // it is to grow while a sentence is read
    expect(lesson.plan.tile.sizeMm).toBeLessThanOrEqual(60);
  });

  it('each thing to try changes the plan into another that grows', () => {
    for (const { plan } of lesson.tries) {
      expect(plan).not.toEqual(lesson.plan);
      expect(refuse(plan)).toEqual([]);
    }
  });

  it('has one right answer, and what is published names its source', () => {
    expect(lesson.questions.length).toBeGreaterThan(0);
    for (const { answers } of lesson.questions)
      expect(answers.filter(({ isRight }) => isRight)).toHaveLength(1);
    for (const paragraph of lesson.text) {
      if (paragraph.sure === 'published') expect(paragraph.source).toMatch(/\d{4}/u);
    }
    // no lesson is without what is only practice or only a guess
    expect(new Set(lesson.text.map(({ sure }) => sure)).size).toBeGreaterThan(1);
  });

  it('is data: its file is read back as the same lesson, and has the same text again', () => {
    const file = lessonText(lesson);
    const opened = openLesson(file);
    if (!('lesson' in opened)) throw new Error(JSON.stringify(opened.refusals));
    expect(opened.lesson).toEqual(lesson);
    expect(lessonText(opened.lesson)).toBe(file);
  });

  it('has one word for each outcome', () => {
    const { title, idea, watch, text, questions, tries, claims } = lesson;
    const all = [
      ...[title, idea, watch],
      ...claims.map(({ words }) => words),
      ...text.map(({ words }) => words),
      ...questions.flatMap(({ words, answers }) => [
        words,
        ...answers.flatMap((answer) => [answer.words, answer.earns]),
      ]),
      ...tries.flatMap(({ label, look }) => [label, look]),
    ];
    // fused, ridge, lapped, dead, undecided, and where two meet a seam; the plain words for them stand beside them once
    for (const words of all) expect(words).not.toMatch(/merg|wall(s|ed|ing)? up|run together|\bjoints?\b/iu);
  });
});

describe('a lesson that a grower wrote', () => {
  const file = lessonText(LESSONS[2] ?? LESSONS[0]);
  const refused = (change: (text: string) => string): string[] => {
    const changed = change(file);
    expect(changed).not.toBe(file);
    const opened = openLesson(changed);
    return 'refusals' in opened ? opened.refusals.map(({ where, cure }) => `${where}: ${cure}`) : [];
  };

  it('is told what it is not', () => {
    expect(refused(() => 'Fern')[0]).toContain('This is not a Seambench lesson, for the file cannot be read');
    expect(refused(() => '{"seambench": 1}')[0]).toContain('holds something else');
    expect(refused((text) => text.replace('"seambenchLesson": 1', '"seambenchLesson": 2'))[0]).toContain(
      'newer',
    );
  });

  it('is told each fault by its place, and in words', () => {
    const cases: readonly [string, string, string][] = [
      ['"month": 9', '"month": 90', 'month: '],
      ['"month": 9,\n', '"month": 20,\n', 'month: The lesson tells its tile at month 20, and its plan ends at month 12'],
      ['"isRight": true', '"isRight": false', 'questions[0].answers: Of the answers to'],
      ['"title"', '"titel"', 'titel'],
      ['"source": "Kikuzawa et al. 2021, J. Mar. Sci. Eng. 9: 1377"', '"source": " "', 'text[0].source: Paragraph 1 is called published'],
      ['"pair": ["fern", "amber"]', '"pair": ["fern", "gold"]', 'claims[0].amount: A claim speaks of the variety gold'],
      ['"from": 0.95', '"from": 2', 'claims[0].from: '],
      ['"acceptance": 1', '"acceptance": 3', 'plan.pairs[0]'],
      ['"of": "fused"', '"of": "tissue"', 'claims[0].amount.variety: A claim on a share of tissue has to say of which'],
      ['"of": "fused"', '"try": 4, "of": "fused"', 'claims[0].amount.try: A claim speaks of thing to try 4'],
    ]; // prettier-ignore
    for (const [from, to, told] of cases)
      expect(refused((text) => text.replace(from, to)).join('\n'), `${from} -> ${to}`).toContain(told);
  });

  it('never throws, whatever part of the file is lost', () => {
    for (let cut = 0; cut < file.length; cut += 97)
      expect('refusals' in openLesson(file.slice(0, cut)), String(cut)).toBe(true);
  });
});
