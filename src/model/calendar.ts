/**
 * Cells filed by the day something is due to happen to them. A cell may be filed more than once: whoever takes a day's
 * cells compares with State.due and passes over what is out of date.
 */
import { createList, doubled, push, type CellList } from './cell-list';

export interface Calendar {
  /** First entry of each day's chain, -1 for none. */
  readonly head: Int32Array;
  /** Entries: a cell and the next entry of its day. Spent ones are chained from `spent`. */
  next: Int32Array;
  cell: Int32Array;
  used: number;
  spent: number;
  /** Cells whose due day must be worked out again. */
  readonly stale: CellList;
  /** Cells that may be due today. */
  readonly today: CellList;
  /** Cells taken in this sub-step. */
  readonly taken: CellList;
}

export function createCalendar(days: number): Calendar {
  const size = 1024;
  return {
    head: new Int32Array(days + 1).fill(-1),
    next: new Int32Array(size),
    cell: new Int32Array(size),
    used: 0,
    spent: -1,
    stale: createList(),
    today: createList(),
    taken: createList(),
  };
}

/** The day in which a due time falls: day d is (d, d + 1]. */
export function dayOf(due: number): number {
  return Math.ceil(due) - 1;
}

/** Files a cell under the day of `due`, or among today's. Days past the end are not kept. */
export function file(calendar: Calendar, cell: number, due: number, today: number): void {
  const day = dayOf(due);
  if (day <= today) {
    push(calendar.today, cell);
    return;
  }
  if (!(day < calendar.head.length)) return;
  let entry = calendar.spent;
  if (entry >= 0) calendar.spent = calendar.next[entry];
  else {
    entry = calendar.used++;
    if (entry === calendar.cell.length) {
      calendar.cell = doubled(calendar.cell);
      calendar.next = doubled(calendar.next);
    }
  }
  calendar.cell[entry] = cell;
  calendar.next[entry] = calendar.head[day];
  calendar.head[day] = entry;
}

/** Files a cell whose due time was `old` and is now `due`, unless it stands under that day already. */
export function refile(calendar: Calendar, cell: number, old: number, due: number, today: number): void {
  if (!(due < Infinity)) return;
  const day = dayOf(due);
  if (old === Infinity || day <= today || day !== dayOf(old)) file(calendar, cell, due, today);
}

/** Moves the day's cells to `today`. */
export function openDay(calendar: Calendar, day: number): void {
  calendar.today.count = 0;
  let entry = calendar.head[day];
  calendar.head[day] = -1;
  while (entry >= 0) {
    push(calendar.today, calendar.cell[entry]);
    const next = calendar.next[entry];
    calendar.next[entry] = calendar.spent;
    calendar.spent = entry;
    entry = next;
  }
}
