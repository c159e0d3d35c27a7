/** What every lesson is made of: a plan that grows, one right answer, things to try that change it, marks with sources. */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
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
    for (const { change } of lesson.tries) {
      const { plan } = change(lesson.plan);
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

  it('has one word for each outcome', () => {
    const { title, idea, watch, text, questions, tries, claim } = lesson;
    const all = [
      ...[title, idea, watch, claim.words],
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
