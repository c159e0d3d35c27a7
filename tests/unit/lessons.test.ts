/** What every lesson is made of: a plan that grows, one right answer, things to try that change it, marks with sources. */
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { claimsAfter, claimsOn, newDraft, onTile, titleOfCopy } from '../../src/lessons/draft';
import type { Lesson } from '../../src/lessons/lesson';
import { lessonText, openDraft, openLesson } from '../../src/lessons/lesson-file';
import { lessonId } from '../../src/lessons/lesson-id';
import { LESSONS } from '../../src/lessons/order';
import { joined, NO_PROGRESS, ProgressSchema, withDraft } from '../../src/lessons/progress';
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

  it('stands once where two tabs have changed it, as it is in the tab that joins them', () => {
    const there = file.replace('"title": "', '"title": "There: ');
    const here = file.replace('"title": "', '"title": "Here: ');
    const both = joined({ ...NO_PROGRESS, own: [here] }, { ...NO_PROGRESS, own: [there, 'not to be read'] });
    expect(both.own).toEqual([here, 'not to be read']);
  });

  it('never throws, whatever part of the file is lost', () => {
    for (let cut = 0; cut < file.length; cut += 97)
      expect('refusals' in openLesson(file.slice(0, cut)), String(cut)).toBe(true);
  });
});

describe('a lesson that is being written', () => {
  const [plain] = LESSONS;
  const rich = LESSONS[2] ?? plain;
  const cures = (lesson: Lesson): string[] => {
    const opened = openLesson(lessonText(lesson));
    return 'refusals' in opened ? opened.refusals.map(({ cure }) => cure) : [];
  };

  it('has an address made of its title that no other has', () => {
    expect(lessonId('Our slow tank', [])).toBe('our-slow-tank');
    expect(lessonId('  Größe & Zeit: 6 mm? ', [])).toBe('gro-e-zeit-6-mm');
    expect(lessonId('Our slow tank', ['our-slow-tank', 'our-slow-tank-2'])).toBe('our-slow-tank-3');
    for (const title of ['', '礁', '-- --', 'a'.repeat(200), `${'a'.repeat(35)} b`]) {
      const id = lessonId(title, []);
      expect(cures({ ...plain, id }), title).toEqual([]);
      expect(id).toMatch(/^[a-z\d]+(-[a-z\d]+)*$/u);
    }
  });

  it('is kept as it is, however little of it is there, and refused as a lesson in words', () => {
    const blank = newDraft(plain.plan, 'six', 3);
    expect(openDraft(lessonText(blank))).toEqual(blank);
    const noAnswers = { ...blank, questions: [{ words: '', answers: [] }] };
    expect(openDraft(lessonText(noAnswers))).toEqual(noAnswers);
    expect(cures({ ...blank, id: 'mine' })).toEqual([
      'The lesson has no title',
      'The lesson does not say its one sentence',
      'The lesson does not say what to watch on the tile',
      'Paragraph 1 has no words',
      'Question 1 has no words',
      'Answer 1 to question 1 has no words',
      'Answer 2 to question 1 has no words',
      'Of the answers to “” one has to be right, and 0 are',
    ]);
  });

  it('is not taken in where the page could not tell two of its parts from each other', () => {
    const [first] = rich.text;
    const [question] = rich.questions;
    const [answer] = question.answers;
    const twice = {
      ...rich,
      text: [first, first],
      questions: [{ ...question, answers: [...question.answers, { ...answer, isRight: false }] }],
    };
    const last = question.answers.length + 1;
    expect(cures(twice)).toEqual([
      'Paragraph 1 and Paragraph 2 have the same words: change one, or take it out',
      `Answer 1 to question 1 and Answer ${last} to question 1 have the same words: change one, or take it out`,
    ]);
    const [attempt] = LESSONS.flatMap(({ tries }) => tries);
    expect(cures({ ...rich, tries: [attempt, { ...attempt, label: ' ' }] })).toEqual([
      'Thing to try 2 has no words',
    ]);
  });

  it('stays in the record of School until it is kept or given up, beside others', () => {
    const text = lessonText(newDraft(plain.plan, 'six', 3));
    const one = withDraft(NO_PROGRESS, '', text);
    const two = withDraft(one, 'slow-tank', lessonText(rich));
    const read = v.parse(ProgressSchema, JSON.parse(JSON.stringify(two)));
    expect(read).toEqual(two);
    expect(withDraft(read, 'slow-tank', null)).toEqual(one);
    expect(withDraft(one, '', null)).toEqual(NO_PROGRESS);
    // records of before know of no such thing
    expect(v.parse(ProgressSchema, NO_PROGRESS)).toEqual(NO_PROGRESS);
    expect(joined(one, two).drafts).toEqual(two.drafts);
    expect(joined(withDraft(NO_PROGRESS, '', 'mine'), two).drafts).toEqual({ ...two.drafts, '': 'mine' });
  });

  it('begun from another it says so once, and on another tile drops the cut of the old one', () => {
    expect(titleOfCopy({ title: 'Lapped' })).toBe('Lapped (my own)');
    expect(titleOfCopy({ title: 'Lapped (my own)' })).toBe('Lapped (my own)');
    expect(titleOfCopy({ title: 'a'.repeat(200) })).toHaveLength(200);
    const cut = { from: [0, 0], to: [5, 5] } as const;
    const moved = onTile({ ...rich, cut, month: 9 }, { ...plain.plan, months: 4 }, 'two');
    expect(moved).toMatchObject({ seed: 'two', month: 4, plan: { months: 4 } });
    expect(moved).not.toHaveProperty('cut');
  });

  it('claims follow the things to try that they speak of', () => {
    const of = { of: 'fused', month: 1 } as const;
    const claim = { words: '', from: 0, to: 1, because: '' };
    const claims = [
      { ...claim, amount: of },
      { ...claim, amount: { ...of, try: 2 }, less: { ...of, try: 3 } },
    ];
    expect([0, 1, 2].map((place) => claimsOn(claims, place))).toEqual([[], [2], [2]]);
    // the first is taken out
    const after = claimsAfter(claims, (place) => place - 1);
    expect(after).toEqual([claims[0], { ...claim, amount: { ...of, try: 1 }, less: { ...of, try: 2 } }]);
  });
});
