/**
 * The log as CSV (RFC 4180): the log's name, its varieties, each tile with its readings below it, events. One row for
 * one thing that was seen, in the columns that trials/log-csv-row.ts reads.
 */
import type { Plan } from '../plan/plan';
import { LOG_COLUMNS, type LogColumn } from './log-csv-columns';
import { guarded } from './log-csv-guard';
import { readerKey } from './log-csv-tile';
import type { Log, LogVariety, Measured, Seen, TankEvent, Trial, TrialReading } from './trial';

type Value = string | number | undefined;
type Cells = Partial<Record<LogColumn, Value>>;

/** Without it spreadsheets take the letters for those of an older code. */
const BYTE_ORDER_MARK = '\uFEFF';

export function logCsv(log: Log): string {
  const names = new Map(log.varieties.map(({ id, name }) => [id, oneLine(name)]));
  const nameOf = (id: string) => names.get(id) ?? id;
  const rows: Cells[] = [
    { log: oneLine(log.name) === '' ? 'Log' : log.name, note: log.note },
    ...log.varieties.map(varietyRow),
    ...log.trials.flatMap((trial) => tileRows(trial, nameOf)),
    ...log.events.map(eventRow),
  ];
  const lines = [LOG_COLUMNS.join(','), ...rows.map(rowText)];
  return `${BYTE_ORDER_MARK}${lines.join('\r\n')}\r\n`;
}

function rowText(cells: Cells): string {
  return LOG_COLUMNS.map((column) => fieldText(column, cells[column])).join(',');
}

function fieldText(column: LogColumn, value: Value): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(value);
  const text = guarded(column === 'note' ? value.trim() : oneLine(value));
  // other marks too: a spreadsheet of another language parts fields by them
  return /[",;\t\n\r]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function oneLine(text: string): string {
  return text.trim().replaceAll(/\s*[\n\r]\s*/gu, ' ');
}

function listText(names: readonly string[]): string {
  const isPlain = names.every((name) => !name.includes(';') && !name.startsWith('[') && name !== '');
  return isPlain ? names.join('; ') : JSON.stringify(names);
}

function varietyRow({ name, group, colour, worth }: LogVariety): Cells {
  return { variety: name, group, colour, worth };
}

function eventRow({ on, tank, kind, tags, note }: TankEvent): Cells {
  return { event: kind, on, tank, tag: listText(tags.map(oneLine)), note };
}

type NameOf = (id: string) => string;

function tileRows(trial: Trial, nameOf: NameOf): Cells[] {
  const { tag, setOn, varieties, layout, tank, light, flow, temperature, note } = trial;
  const pieces =
    'plan' in layout
      ? { plan: JSON.stringify({ ...(layout.plan as Plan), seed: layout.seed }) }
      : { piece_mm: layout.pieceMm, gap_mm: layout.gapMm };
  const conditions = { tank, light, flow, temperature };
  const readings = new Map<string, number>();
  const numbered = trial.readings.map((reading) => {
    const key = readerKey(reading);
    const nth = (readings.get(key) ?? 0) + 1;
    readings.set(key, nth);
    return { reading, nth };
  });
  const own = { tag, set_on: setOn };
  return [
    { ...own, varieties: listText(varieties.map(nameOf)), ...conditions, ...pieces, note },
    ...numbered.flatMap(({ reading, nth }) =>
      readingRows(reading, nameOf).map((row) => ({ ...own, reading: nth === 1 ? undefined : nth, ...row })),
    ),
  ];
}

/** Photo and note stand in the first row; a reading without anything seen has one row for them. */
function readingRows({ on, by, seen, measured, photo, note }: TrialReading, nameOf: NameOf): Cells[] {
  const rows = [
    ...seen.map((one) => seenRow(one, nameOf)),
    ...measured.map((one) => measuredRow(one, nameOf)).filter((row) => Object.keys(row).length > 1),
  ];
  return (rows.length === 0 ? [{}] : rows).map((row, at) => ({
    on,
    by,
    ...row,
    ...(at === 0 ? { photo, note } : {}),
  }));
}

function seenRow({ a, b, saw, over, share, ridgeMm }: Seen, nameOf: NameOf): Cells {
  return {
    variety: nameOf(a),
    with: nameOf(b),
    saw,
    over: over === undefined ? undefined : nameOf(over),
    share,
    ridge_mm: ridgeMm,
  };
}

function measuredRow({ variety, radiusMm, areaMm2, outline, state }: Measured, nameOf: NameOf): Cells {
  return {
    variety: nameOf(variety),
    ...(radiusMm === undefined ? {} : { radius_mm: radiusMm }),
    ...(areaMm2 === undefined ? {} : { area_mm2: areaMm2 }),
    ...(outline === undefined ? {} : { outline: outline.map((corner) => corner.join(' ')).join('; ') }),
    ...(state === undefined ? {} : { state }),
  };
}
