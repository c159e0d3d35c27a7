/** What the schema finds wrong, in the words of a refusal: place, what was found, what is allowed, the cure. */
import * as v from 'valibot';
import { entry, faultWords, shortened } from './fault-words';
import {
  DiscPieceSchema,
  GraftPieceSchema,
  MINGLE_NAMES,
  MingleSchema,
  OutlinePieceSchema,
  STEP_KINDS,
  TookOfTriedSchema,
} from './plan';
import type { Refusal } from './plan';

type Issue = v.BaseIssue<unknown>;
type Key = string | number;

/** The schema itself could tell of each corner of each outline; a person reads the first few. */
const MOST_FAULTS = 50;

/** What is known of a kind of file beside its schema. */
export interface FileForm {
  /** Where several forms are allowed: the one that was meant. */
  readonly formMeant: (input: unknown, path: readonly Key[]) => v.GenericSchema | null;
  /** What may stand at a place that the schema only names, by the last name of its path. */
  readonly wanted: Readonly<Record<string, string>>;
}

export function schemaFaults(
  root: unknown,
  issues: readonly Issue[],
  form: FileForm = { formMeant, wanted: WANTED },
): Refusal[] {
  const byPlace = new Map<string, Refusal>();
  for (const issue of issues.slice(0, MOST_FAULTS)) {
    const path = keysOf(issue);
    for (const { keys, fault } of chosenForm(issue, path, form)) {
      const whole = [...path, ...keys];
      const told = listForObject(root, whole) ?? refusal(root, whole, fault, form);
      if (!byPlace.has(told.where)) byPlace.set(told.where, told);
    }
  }
  return [...byPlace.values()];
}

/** The schema takes a list for an object without the right names; a person wants to hear that it is a list. */
function listForObject(root: unknown, path: readonly Key[]): Refusal | null {
  let value = root;
  for (const [depth, key] of path.entries()) {
    if (Array.isArray(value) && typeof key === 'string') {
      const where = placeOf(root, path.slice(0, depth));
      const allowed = 'an object';
      const fault = { kind: 'wrong', path: path.slice(0, depth), input: value, allowed } as const;
      return { where, found: shown(value), allowed, cure: faultWords(root, fault) };
    }
    value = entry(value, key);
  }
  return null;
}

function keysOf(issue: Issue): Key[] {
  return (issue.path ?? []).map((item) => (typeof item.key === 'number' ? item.key : String(item.key)));
}

/** Where several forms are allowed, the schema only says that none fits: ask the one that was meant. */
function chosenForm(issue: Issue, path: readonly Key[], form: FileForm): { keys: Key[]; fault: Issue }[] {
  const meant = issue.type === 'union' ? form.formMeant(issue.input, path) : null;
  const again = meant && v.safeParse(meant, issue.input);
  if (!again?.issues) return [{ keys: [], fault: issue }];
  return again.issues.map((fault) => ({ keys: keysOf(fault), fault }));
}

function formMeant(input: unknown, path: readonly Key[]): v.GenericSchema | null {
  if (typeof input !== 'object' || input === null) return null;
  if (path[0] === 'pieces' || path[2] === 'piece') {
    if ('patches' in input && !('outline' in input)) return GraftPieceSchema;
    return 'disc' in input && !('outline' in input) ? DiscPieceSchema : OutlinePieceSchema;
  }
  return path[path.length - 1] === 'acceptance' ? TookOfTriedSchema : MingleSchema;
}

function refusal(root: unknown, path: readonly Key[], fault: Issue, { wanted }: FileForm): Refusal {
  const where = placeOf(root, path);
  const last = String(path[path.length - 1] ?? '');
  const { input } = fault;
  if (fault.expected === 'never') return notKnown(root, path, input);
  const allowed = allowedBy(fault, last, wanted);
  return {
    where,
    found: shown(input),
    allowed,
    cure: faultWords(root, { kind: 'wrong', path, input, allowed }),
  };
}

function notKnown(root: unknown, path: readonly Key[], input: unknown): Refusal {
  const where = placeOf(root, path);
  const name = String(path[path.length - 1] ?? '');
  const told = (kind: 'not-known' | 'two-forms', found: string, allowed: string) => ({
    where,
    found,
    allowed,
    cure: faultWords(root, { kind, path, input, allowed }),
  });
  // A disc is only unknown beside an outline, see formMeant.
  if (name === 'disc') return told('two-forms', 'a disc beside an outline', 'an outline or a disc, not both');
  return told('not-known', `"${shortened(name)}", which this place does not know`, 'nothing here');
}

/** 'pieces[2] (p3).at[0]' */
function placeOf(root: unknown, path: readonly Key[]): string {
  let where = '';
  let value = root;
  for (const key of path) {
    value = entry(value, key);
    if (typeof key === 'number') where += `[${key}]${named(value)}`;
    else where += where === '' ? key : `.${key}`;
  }
  return where === '' ? 'the plan' : where;
}

function named(value: unknown): string {
  if (typeof value !== 'object' || value === null) return '';
  if ('id' in value && typeof value.id === 'string') return ` (${shortened(value.id)})`;
  if ('a' in value && 'b' in value && typeof value.a === 'string' && typeof value.b === 'string') {
    return ` (${shortened(value.a)} with ${shortened(value.b)})`;
  }
  return '';
}

export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.length === 1 ? 'a list of one' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return shortened(JSON.stringify(value));
}

const EITHER_FORM = 'a list of corners [x, y] in mm, or a disc or patches in its place';
const KINDS = STEP_KINDS.map((kind) => `"${kind}"`).join(', ');

/** Of a plan. */
const WANTED: Readonly<Record<string, string>> = {
  seambench: 'the number 1',
  name: 'words',
  tile: '{ "shape": "square", "sizeMm": 100 }',
  shape: '"square" or "disc"',
  sizeMm: 'a number of mm',
  varieties: 'a list of varieties',
  colour: 'a colour such as "#2f7d4f"',
  rimMmPerMonth: 'a number of mm per month',
  aggression: 'a number from 0 to 1',
  pieces: 'a list of pieces, which may be empty',
  months: 'a whole number of months',
  id: 'a name of its own, such as "p1"',
  kind: `one of ${KINDS}`,
  day: 'a whole number of days',
  widthMm: 'a number of mm',
  kerfMm: 'a number of mm',
  lines: 'a list of lines, each a list of points [x, y] in mm',
  along: 'a list of points [x, y] in mm',
  around: 'a list of corners [x, y] in mm',
  piece: 'the id of a piece',
  is: '"ridge", "lapped" or "dead"',
  patches: 'a list of patches, each with variety and outline',
  a: 'the id of a variety',
  b: 'the id of a variety',
  variety: 'the id of a variety',
  at: 'two numbers: x and y in mm',
  outline: EITHER_FORM,
  diameterMm: 'a number of mm',
  acceptance: 'a number from 0 to 1, or { "took": 3, "tried": 10 }',
  mingle: `${MINGLE_NAMES.map((name) => `"${name}"`).join(', ')}, or an object with all its numbers`,
};

function allowedBy(fault: Issue, last: string, wanted: FileForm['wanted']): string {
  switch (fault.type) {
    case 'strict_object':
      // Either a key is missing, and its name is what was expected, or this is no object at all.
      return fault.expected === 'Object' && fault.input !== undefined
        ? 'an object'
        : (wanted[last] ?? 'a number');
    case 'variant':
      return `one of ${KINDS}`;
    case 'union':
      return wanted[last] ?? `a piece with an outline: ${EITHER_FORM}`;
    case 'picklist':
    case 'literal':
      return (fault.expected ?? '').replace(/^\(|\)$/gu, '').replaceAll(' | ', ' or ');
    default:
      return fault.message;
  }
}
