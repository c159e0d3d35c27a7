/**
 * A lesson as a file, for growers who write their own. Text -> JSON -> schema -> what a schema cannot say -> each plan
 * through the door of plan files, and back. Whatever comes in, a lesson or refusals come out; nothing is thrown.
 */
import * as v from 'valibot';
import { line, planText } from '../plan/file';
import { type FileKind, heldPlan, readKind } from '../plan/file-kinds';
import type { Plan, Refusal } from '../plan/plan';
import { schemaFaults } from '../plan/schema-faults';
import { type Claim, DraftSchema, type Lesson, LessonSchema, type Try } from './lesson';
import { wordsOf } from './lesson-words';

const LESSON: FileKind = { word: 'lesson', sign: 'seambenchLesson', mostLetters: 20_000_000 };

export type OpenedLesson = { readonly lesson: Lesson } | { readonly refusals: readonly Refusal[] };

export function openLesson(text: string): OpenedLesson {
  const opened = openBy(LessonSchema, text);
  if ('refusals' in opened) return opened;
  const faults = lessonFaults(opened.lesson);
  return faults.length > 0 ? { refusals: faults } : opened;
}

/** A lesson that is being written, from the text that keeps it; null where that can be read no more. */
export function openDraft(text: string): Lesson | null {
  const opened = openBy(DraftSchema, text);
  return 'lesson' in opened ? opened.lesson : null;
}

function openBy(schema: typeof LessonSchema | typeof DraftSchema, text: string): OpenedLesson {
  const read = readKind(text, LESSON);
  if ('refusals' in read) return read;
  const parsed = v.safeParse(schema, read.value);
  if (!parsed.success) return { refusals: schemaFaults(read.value, parsed.issues).map(ofLesson) };
  const { seambenchLesson: _sign, plan: written, tries: writtenTries, ...rest } = parsed.output;
  const own = heldPlan(written, 'plan', 'the lesson’s tile');
  const refusals = 'refusals' in own ? [...own.refusals] : [];
  const tries = writtenTries.flatMap((one, at): Try[] => {
    const held = heldPlan(one.plan, `tries[${at}].plan`, `the tile of “${one.label}”`);
    if ('plan' in held) return [{ ...one, plan: held.plan }];
    refusals.push(...held.refusals);
    return [];
  });
  if (!('plan' in own) || refusals.length > 0) return { refusals };
  return { lesson: { ...rest, plan: own.plan, tries } };
}

/** The schema's words speak of a plan. */
function ofLesson(refusal: Refusal): Refusal {
  return {
    ...refusal,
    where: refusal.where === 'the plan' ? 'the lesson' : refusal.where,
    cure: `In the lesson, ${refusal.where}: ${refusal.found} stands where ${refusal.allowed} must be`,
  };
}

function fault(where: string, found: string, allowed: string, cure: string): Refusal {
  return { where, found, allowed, cure };
}

/** What the schema cannot say. */
function lessonFaults(lesson: Lesson): Refusal[] {
  const { plan, month, text, questions, tries, claims } = lesson;
  return [
    ...wordFaults(lesson),
    ...(month > plan.months
      ? [
          fault(
            'month',
            `month ${month}`,
            `at most ${plan.months}`,
            `The lesson tells its tile at month ${month}, and its plan ends at month ${plan.months}`,
          ),
        ]
      : []),
    ...text.flatMap(({ sure, source }, at) =>
      sure === 'published' && (source ?? '').trim() === ''
        ? [fault(`text[${at}].source`, 'no source', 'where it is printed', `Paragraph ${at + 1} is called published: say where, or call it practice or a guess`)] // prettier-ignore
        : [],
    ),
    ...questions.flatMap(({ answers, words }, at) => {
      const right = answers.filter(({ isRight }) => isRight).length;
      return right === 1
        ? []
        : [fault(`questions[${at}].answers`, `${right} right answers`, 'one right answer', `Of the answers to “${words}” one has to be right, and ${right} are`)]; // prettier-ignore
    }),
    ...claims.flatMap((claim, at) =>
      claimFaults(claim, `claims[${at}]`, [plan, ...tries.map((one) => one.plan)]),
    ),
  ];
}

/** Blank words, and what is told apart by its words and has the same. */
function wordFaults(lesson: Lesson): Refusal[] {
  const said = new Map<string, string>();
  return wordsOf(lesson).flatMap(({ at, words, cure, name, among }): Refusal[] => {
    if (words.trim() === '') return [fault(at, 'no words', 'words', cure)];
    if (among === undefined) return [];
    const key = `${among} ${words}`;
    const before = said.get(key);
    said.set(key, before ?? name);
    if (before === undefined) return [];
    return [fault(at, 'the same words again', 'words of its own', `${before} and ${name} have the same words: change one, or take it out`)]; // prettier-ignore
  });
}

/** A claim on a tile, seam or variety that the lesson does not have could never be held. */
function claimFaults(claim: Claim, where: string, tiles: readonly Plan[]): Refusal[] {
  const named = (['amount', 'less', 'by'] as const).flatMap((part) => {
    const amount = claim[part];
    return amount ? [{ amount, at: `${where}.${part}` }] : [];
  });
  const refusals = named.flatMap(({ amount, at }): Refusal[] => {
    const plan = tiles.at(amount.try ?? 0);
    if (!plan) {
      const allowed = `at most ${tiles.length - 1}`;
      return [fault(`${at}.try`, `${amount.try}`, allowed, `A claim speaks of thing to try ${amount.try}, and the lesson has ${tiles.length - 1}`)]; // prettier-ignore
    }
    const ids = plan.varieties.map(({ id }) => id);
    const asked = [...(amount.pair ?? []), ...(amount.variety === undefined ? [] : [amount.variety])];
    const strange = asked.filter((id) => !ids.includes(id));
    const needsVariety = (amount.of === 'tissue' || amount.of === 'cut') && amount.variety === undefined;
    return [
      ...strange.map((id) => fault(at, `the variety ${id}`, ids.join(', '), `A claim speaks of the variety ${id}, which its tile does not have`)), // prettier-ignore
      ...(needsVariety ? [fault(`${at}.variety`, 'nothing', ids.join(', '), `A claim on a share of ${amount.of} has to say of which variety`)] : []), // prettier-ignore
    ];
  });
  if (claim.from <= claim.to) return refusals;
  return [...refusals, fault(`${where}.from`, `${claim.from}`, `at most ${claim.to}`, `“${claim.words}” lies from ${claim.from} to ${claim.to}: the first has to be the smaller`)]; // prettier-ignore
}

/** The file's text: one line each for what belongs together, so that it can be read and written by hand. */
export function lessonText({ plan, tries, text, questions, claims, ...rest }: Lesson): string {
  const { id, title, idea, watch, seed, month, cut, isBare } = rest;
  const head = { seambenchLesson: 1, id, title, idea, watch, seed, month, cut, isBare };
  const parts = [
    ...Object.entries(head).flatMap(([key, value]) =>
      value === undefined ? [] : [`"${key}": ${line(value)}`],
    ),
    `"plan": ${planIn(plan, 2)}`,
    `"text": ${rows(text)}`,
    `"questions": ${rows(questions)}`,
    `"tries": [${tries.map((one) => `\n    {\n      "label": ${line(one.label)},\n      "look": ${line(one.look)},\n      "plan": ${planIn(one.plan, 6)}\n    }`).join(',')}\n  ]`, // prettier-ignore
    `"claims": ${rows(claims)}`,
  ];
  return `{\n  ${parts.join(',\n  ')}\n}\n`;
}

/** Words of a plan hold no line breaks of their own: JSON writes them as \n. */
function planIn(plan: Plan, indent: number): string {
  return planText(plan)
    .trimEnd()
    .replaceAll('\n', `\n${' '.repeat(indent)}`);
}

function rows(things: readonly unknown[]): string {
  return things.length === 0 ? '[]' : `[\n${things.map((one) => `    ${line(one)}`).join(',\n')}\n  ]`;
}
