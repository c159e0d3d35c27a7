/** Bytes a cell that a run holds: every typed array, list and map that the State reaches, its Layout included. */
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
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

function heldBy(state: State): Held {
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
  visit(state, '');
  return { parts, total: [...parts.values()].reduce((sum, bytes) => sum + bytes, 0) };
}

interface Most {
  readonly sizeMm: number;
  readonly cells: number;
  readonly held: Held;
  /** What one reading allocates besides, given back after it. */
  readonly readingBytes: number;
}

function mostHeld(sizeMm: number): Most {
  const plan = fourPieces(sizeMm, MONTHS);
  let held: Held = { parts: new Map(), total: 0 };
  let cells = 0;
  let readingBytes = 0;
  let month = 0;
  for (const state of grow(compile(plan, CELL_MM), '1')) {
    const now = heldBy(state);
    if (now.total > held.total) held = now;
    cells = state.variety.length;
    if (state.day !== dayOfMonth(month)) continue;
    const before = process.memoryUsage().arrayBuffers;
    read(state, ['', ...plan.varieties.map(({ id }) => id)], '1', month++);
    readingBytes = Math.max(readingBytes, process.memoryUsage().arrayBuffers - before);
  }
  return { sizeMm, cells, held, readingBytes };
}

function noteOf({ sizeMm, cells, held, readingBytes }: Most): string {
  const each = [...held.parts]
    .map(([name, bytes]) => ({ name, perCell: bytes / cells }))
    .filter(({ perCell }) => perCell >= 0.1)
    .sort((a, b) => b.perCell - a.perCell)
    .map(({ name, perCell }) => `${name} ${perCell.toFixed(1)}`);
  return `${sizeMm} mm: ${(held.total / cells).toFixed(1)} bytes a cell: ${each.join(', ')}; a reading allocates ${(readingBytes / cells).toFixed(1)} besides`;
}

export function benchMemory(): Section {
  const found = [100, 300].map(mostHeld);
  return {
    title: `Memory held by a run at its most, ${MONTHS} months, Layout included, frames not`,
    rows: [],
    bars: found.map(({ sizeMm, cells, held }) => ({
      words: `${sizeMm} mm tile`,
      found: held.total / cells,
      bar: 24,
      bound: 'most',
      unit: 'bytes a cell',
    })),
    notes: found.map(noteOf),
  };
}
