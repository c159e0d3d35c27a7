/** What the files that hold plans have in common (a bench, a log, a lesson): how they are told apart, and their plans. */
import { entry } from './fault-words';
import { checkPlan, readJson } from './file';
import { migrate, type NumberedBy } from './migrate';
import type { Plan, Refusal } from './plan';
import { shown } from './schema-faults';

export interface FileKind {
  /** 'bench' */
  readonly word: string;
  /** The name in the file that says its kind and numbers its shape. */
  readonly sign: Exclude<NumberedBy, 'seambench'>;
  readonly mostLetters: number;
}

/** Whether an opened file says of itself that it is of the kind. */
export function isOfKind(text: string, { sign }: FileKind): boolean {
  const read = readJson(text);
  return 'value' in read && entry(read.value, sign) !== undefined;
}

/** The value of a file of the kind, in today's shape; its schema has not been asked yet. */
export function readKind(
  text: string,
  { word, sign, mostLetters }: FileKind,
): { readonly value: unknown } | { readonly refusals: readonly Refusal[] } {
  const not = (where: string, found: string, allowed: string, why: string) => {
    const cure = `This is not a Seambench ${word}, for the file ${why}. Choose a file that Seambench has saved`;
    return { refusals: [{ where, found, allowed, cure }] };
  };
  const allowed = `a ${word} as Seambench saves it, in JSON`;
  if (text.length > mostLetters)
    return not('the file', `${text.length} letters`, allowed, `is far longer than any ${word}`);
  const read = readJson(text);
  if (!('value' in read)) return not(read.where, read.found, allowed, read.why);
  if (entry(read.value, sign) === undefined) {
    const kind = shown(read.value);
    const found = kind === 'an object' ? `an object without "${sign}"` : kind;
    return not(`the ${word}`, found, `an object with "${sign}": 1`, 'holds something else');
  }
  return migrate(read.value, [], sign);
}

/** A plan that stands in another file, at `where`; `whose` names it in a sentence: 'the tile “Reef 2”'. */
export function heldPlan(
  value: unknown,
  where: string,
  whose: string,
): { readonly plan: Plan } | { readonly refusals: readonly Refusal[] } {
  const opened = checkPlan(value);
  if ('refusals' in opened) {
    const refusals = opened.refusals.map((refusal) => ({
      ...refusal,
      where: refusal.where === 'the plan' ? where : `${where}.${refusal.where}`,
      cure: `In ${whose}: ${refusal.cure}`,
    }));
    return { refusals };
  }
  if (opened.seed === null) return { plan: opened.plan };
  const twice = {
    where: `${where}.seed`,
    found: 'a seed inside the plan',
    allowed: 'the seed beside the plan',
    cure: `In ${whose} the seed stands inside the plan: take it out there`,
  };
  return { refusals: [twice] };
}
