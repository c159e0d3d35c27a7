/**
 * Bytes a cell that a run holds: every typed array, list and map that its State reaches, on the day when that is most.
 * What Node says of all array buffers after a collection must agree: else something is held that the State does not
 * reach, such as the Layout's grids.
 */
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import type { Layout } from '../../src/model/layout';
import type { State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import { dayOfMonth } from '../../src/units/quantity';
import { fourPieces } from './bench-plan';
import type { Section } from './row';

const MONTHS = 12;
const CELL_MM = 0.25;
/** A number in a list or a map, and an entry of a map, as V8 keeps them (from memory). */
const NUMBER_BYTES = 8;
const MAP_ENTRY_BYTES = 40;

interface Held {
  /** By name, such as 'layout.startDay'. */
  readonly parts: Map<string, number>;
  readonly total: number;
}

function heldBy(root: State | Layout): Held {
  const parts = new Map<string, number>();
  const seen = new Set<object>();
  const visit = (value: unknown, name: string): void => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return;
    seen.add(value);
    if (ArrayBuffer.isView(value)) {
      if (seen.has(value.buffer)) return;
      seen.add(value.buffer);
      parts.set(name, value.buffer.byteLength);
    } else if (value instanceof Map) {
      parts.set(name, value.size * MAP_ENTRY_BYTES);
    } else if (Array.isArray(value) && value.every((item) => typeof item === 'number')) {
      parts.set(name, value.length * NUMBER_BYTES);
    } else {
      for (const [key, part] of Object.entries(value)) visit(part, name === '' ? key : `${name}.${key}`);
    }
  };
  visit(root, '');
  return { parts, total: [...parts.values()].reduce((sum, bytes) => sum + bytes, 0) };
}

interface Most {
  readonly sizeMm: number;
  readonly cells: number;
  readonly held: Held;
  /** By Node, on the last day. */
  readonly buffers: number;
  /** The Layout's own, held while the pieces are set. */
  readonly layoutBytes: number;
  /** What one reading allocates besides, given back after it. */
  readonly readingBytes: number;
}

function buffersNow(): number {
  if (!globalThis.gc) throw new Error('start it by npm run bench: node needs --expose-gc');
  globalThis.gc();
  globalThis.gc();
  return process.memoryUsage().arrayBuffers;
}

function mostHeld(sizeMm: number): Most {
  const plan = fourPieces(sizeMm, MONTHS);
  const before = buffersNow();
  let held: Held = { parts: new Map(), total: 0 };
  let cells = 0;
  let buffers = 0;
  let readingBytes = 0;
  let month = 0;
  for (const state of grow(compile(plan, CELL_MM), '1')) {
    const now = heldBy(state);
    if (now.total > held.total) held = now;
    cells = state.variety.length;
    if (state.day !== dayOfMonth(month)) continue;
    const beforeReading = process.memoryUsage().arrayBuffers;
    read(state, ['', ...plan.varieties.map(({ id }) => id)], '1', month++);
    readingBytes = Math.max(readingBytes, process.memoryUsage().arrayBuffers - beforeReading);
    if (month > MONTHS) buffers = buffersNow() - before;
  }
  // last, or it would still be about when Node is first asked
  const layoutBytes = heldBy(compile(plan, CELL_MM)).total;
  return { sizeMm, cells, held, buffers, layoutBytes, readingBytes };
}

function notesOf({ sizeMm, cells, held, buffers, layoutBytes, readingBytes }: Most): string[] {
  const perCell = (bytes: number): string => (bytes / cells).toFixed(1);
  const each = [...held.parts]
    .filter(([, bytes]) => bytes / cells >= 0.1)
    .sort(([, a], [, b]) => b - a)
    .map(([name, bytes]) => `${name} ${perCell(bytes)}`);
  return [
    `${sizeMm} mm: ${each.join(', ')}`,
    `${sizeMm} mm: array buffers by Node on the last day ${perCell(buffers)}; the Layout while pieces are set ${perCell(layoutBytes)} besides; a reading ${perCell(readingBytes)} besides`,
  ];
}

export function benchMemory(): Section {
  const found = [100, 300].map(mostHeld);
  return {
    title: `Memory held by a run at its most, ${MONTHS} months, bytes a cell (border cells count as cells)`,
    rows: [],
    bars: found.map(({ sizeMm, cells, held, buffers }) => ({
      words: `${sizeMm} mm tile`,
      found: Math.max(held.total, buffers) / cells,
      bar: 24,
      bound: 'most',
      unit: 'bytes a cell',
    })),
    notes: found.flatMap(notesOf),
  };
}
