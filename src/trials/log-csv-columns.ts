/** The columns of the log's CSV, and which column of a grower's own table is likely which of them. */
import { nameKey } from './name-key';

export const LOG_COLUMNS = [
  ...(['tag', 'set_on', 'varieties', 'tank', 'light', 'flow', 'temperature', 'piece_mm', 'gap_mm'] as const),
  ...(['on', 'by', 'variety', 'with', 'saw', 'over', 'share', 'ridge_mm'] as const),
  ...(['radius_mm', 'area_mm2', 'outline', 'state', 'photo', 'note', 'reading'] as const),
  ...(['group', 'colour', 'worth', 'event', 'plan', 'log'] as const),
] as const;

export type LogColumn = (typeof LOG_COLUMNS)[number];

/** For each column of the table, from left to right: what it is taken for, null for one that is passed over. */
export type Mapping = readonly (LogColumn | null)[];

/** Plain words for the same thing, in small letters. */
const OTHER_NAMES: Partial<Readonly<Record<LogColumn, readonly string[]>>> = {
  tag: ['tile', 'tile tag', 'tile no', 'tile number', 'plug', 'label'],
  set_on: ['set', 'date set', 'set date', 'planted', 'planted on', 'start', 'start date', 'grafted on'],
  varieties: ['varieties on tile', 'colours on tile'],
  tank: ['system', 'raceway', 'tub'],
  light: ['par', 'lighting'],
  flow: ['current', 'water flow'],
  temperature: ['temp', 'water temperature', 'temp c', 'temperature c'],
  piece_mm: ['piece', 'piece size', 'piece size mm', 'cut size', 'cut size mm'],
  gap_mm: ['gap'],
  on: ['date', 'read on', 'date read', 'reading date', 'seen on', 'checked on'],
  by: ['initials', 'read by', 'reader', 'who'],
  variety: ['variety a', 'variety 1', 'first variety', 'morph'],
  with: ['variety b', 'variety 2', 'second variety', 'against', 'neighbour', 'neighbor', 'partner'],
  saw: ['seen', 'outcome', 'result', 'seam', 'what was seen'],
  over: ['on top', 'lapped by', 'above', 'winner'],
  share: ['share of seam', 'part of seam'],
  ridge_mm: ['ridge', 'ridge height', 'ridge height mm', 'wall mm'],
  radius_mm: ['radius', 'rim radius', 'rim radius mm'],
  area_mm2: ['area', 'area mm²', 'size mm2'],
  outline: ['corners'],
  state: ['status', 'alive or dead'],
  photo: ['picture', 'image'],
  note: ['notes', 'remark', 'remarks', 'comment', 'comments'],
  reading: ['reading no', 'reading number'],
  group: ['species', 'genus', 'species group', 'genus group'],
  colour: ['color'],
  event: ['event kind', 'what happened'],
};

/** Capitals, blanks, dashes, brackets and underscores make no difference. */
function headingKey(heading: string): string {
  return nameKey(heading.replaceAll(/[\s_\-./()[\]:#]+/gu, ' '));
}

const COLUMN_OF = new Map(
  LOG_COLUMNS.flatMap((column) =>
    [column, ...(OTHER_NAMES[column] ?? [])].map((name) => [headingKey(name), column] as const),
  ),
);

export interface Guess {
  readonly mapping: Mapping;
  /** Where the headings leave a doubt, in sentences. */
  readonly doubts: readonly string[];
}

/** A heading that is a column's own name goes before other names of it; two that are equally good are both left open. */
export function guessMapping(headings: readonly string[]): Guess {
  const meant = headings.map((heading) => COLUMN_OF.get(headingKey(heading)) ?? null);
  const doubts: string[] = [];
  const mapping = meant.map((column, at) => {
    if (column === null) return null;
    const rivals = meant.flatMap((other, k) => (other === column ? [k] : []));
    const exact = rivals.filter((k) => headingKey(headings[k]) === headingKey(column));
    const best = exact.length > 0 ? exact : rivals;
    if (best.length > 1 && best[0] === at) {
      const names = best.map((k) => `“${headings[k]}” (column ${k + 1})`).join(' and ');
      doubts.push(`${names} could each be ${column}: choose one`);
    }
    return best.length === 1 && best[0] === at ? column : null;
  });
  return { mapping, doubts };
}
