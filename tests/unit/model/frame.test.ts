import { describe, expect, it } from 'vitest';
import { frameOf, polypSites } from '../../../src/model/frame';
import { grow } from '../../../src/model/grow';
import { FATE } from '../../../src/model/seam-table';
import { BARE, FLAG, type State } from '../../../src/model/state';
import { compile } from '../../../src/plan/compile';
import type { Plan } from '../../../src/plan/plan';
import { dayOfMonth } from '../../../src/units/quantity';
import { rectanglePiece, smallPlan } from '../../fixtures/small-plan';

function halves(acceptance: number, aggression: number): Plan {
  const half = (id: string, variety: string, x: number) => ({
    ...rectanglePiece(id, variety, [x, 0], 10, 16),
    edge: 'rim' as const,
  });
  return smallPlan({
    tile: { shape: 'square', sizeMm: 30 },
    varieties: [
      { id: 'a', name: 'a', colour: '#336644', rimMmPerMonth: 3, aggression },
      { id: 'b', name: 'b', colour: '#884466', rimMmPerMonth: 3, aggression: 0 },
    ],
    pairs: [{ a: 'a', b: 'b', acceptance }],
    pieces: [half('p1', 'a', -5), half('p2', 'b', 5)],
    months: 8,
    settings: { deadShare: 0, zipLengthMm: 2 },
  });
}

function grown(plan: Plan): State {
  let end: State | undefined;
  for (const state of grow(compile(plan, 0.5), 'frame')) end = state;
  if (!end) throw new Error('a run yields its day 0');
  return end;
}

/** Greatest height within 1 mm of the seam, and the mean 3 mm beside it, in mm, at the tile's middle row. */
function relief(state: State): { seam: number; beside: number } {
  const frame = frameOf(state, 8);
  const row = Math.floor(frame.rows / 2) * frame.columns;
  const middle = frame.columns / 2;
  const at = (x: number): number => frame.height[row + Math.round(middle + x / frame.cellMm)] / 100;
  return { seam: Math.max(at(-0.5), at(0), at(0.5)), beside: (at(-4) + at(4)) / 2 };
}

describe('frame', () => {
  it('shows a ridge as a wall, and a fused seam as flat', () => {
    const walled = relief(grown(halves(0, 0)));
    // 0.3 mm/month for about 7 months, less the cap's bend
    expect(walled.seam - walled.beside).toBeGreaterThan(0.8);
    const fused = relief(grown(halves(1, 0)));
    expect(Math.abs(fused.seam - fused.beside)).toBeLessThan(0.2);
  });

  it('marks the side that covers where one laps the other', () => {
    const plan = { ...halves(0, 1), settings: { deadShare: 0, zipLengthMm: 30 } };
    const state = grown(plan);
    const { seam, label } = frameOf(state, 8);
    const lapped = [...seam.keys()].filter((i) => (seam[i] & 7) === FATE.lapped);
    expect(lapped.length).toBeGreaterThan(20);
    for (const i of lapped) expect((seam[i] & 8) !== 0).toBe(label[i] === 1);
  });

  it('keeps what is covered as thick as it was on that day, beneath the lip', () => {
    const plan = { ...halves(0, 1), settings: { deadShare: 0, zipLengthMm: 30 } };
    const state = grown(plan);
    const { beneath, height, label, cellMm, columns } = frameOf(state, 8);
    const { covered } = state;
    expect(beneath.cell.length).toBe(covered.count);
    expect(covered.count).toBeGreaterThan(200);
    const day = new Map(Array.from({ length: covered.count }, (_, k) => [covered.cell[k], k]));
    beneath.cell.forEach((cell, at) => {
      if (at > 0) expect(cell).toBeGreaterThan(beneath.cell[at - 1]);
      const k = day.get(cell) ?? -1;
      const months = (covered.day[k] - covered.since[k]) / 30.4375;
      // the crust by age, and at least 0.9 mm of a piece as it was set
      const grown = 0.2 + 2.5 * (1 - Math.exp(-Math.max(0, months) / 5));
      const wasSet = (state.flags[cell] & FLAG.set) !== 0;
      // straight between half months, to 0.01 mm
      expect(Math.abs(beneath.top[at] / 100 - Math.max(grown, wasSet ? 0.9 : 0))).toBeLessThan(0.01);
      expect([label[cell], beneath.variety[at]]).toEqual([1, 2]);
      expect(height[cell] - beneath.top[at]).toBeGreaterThan(20);
    });
    const middle = Math.floor(columns / 2) * columns;
    const over = [...beneath.cell].filter((cell) => Math.floor(cell / columns) * columns === middle);
    const lip = Math.max(...over);
    expect(height[lip] - height[lip + 1]).toBeGreaterThan(60);
    // where two layers begin the colony's own skeleton has risen to them, over 3 mm
    const start = Math.min(...over);
    expect(Math.abs(height[start] - height[start - 1])).toBeLessThan(15);
    expect(height[start] - height[start - 4 / cellMm]).toBeGreaterThan(40);
  });

  it('lets skeleton that died back stay as thick as it was on that day, while living tissue beside it goes on', () => {
    const plan = { ...halves(0, 0), settings: { deadShare: 1, stingMm: 2, zipLengthMm: 30 } };
    const bareOf = new Map<number, number>();
    const living: number[] = [];
    for (const state of grow(compile(plan, 0.5), 'frame')) {
      if (![dayOfMonth(4), dayOfMonth(8)].includes(state.day)) continue;
      const { label, height, columns, rows } = frameOf(state, 4);
      living.push(height[Math.floor(rows / 2) * columns + Math.round(columns / 2 - 4 / 0.5)]);
      if (state.day === dayOfMonth(4)) {
        label.forEach((of, cell) => of === BARE && bareOf.set(cell, height[cell]));
        expect(bareOf.size).toBeGreaterThan(40);
      } else for (const [cell, then] of bareOf) expect(height[cell]).toBe(then);
    }
    expect(living[1] - living[0]).toBeGreaterThan(30);
  });

  it('ages tissue from the day it came, in half months', () => {
    const state = grown(halves(1, 0));
    const { age, label } = frameOf(state, 8);
    for (let i = 0; i < age.length; i++) {
      if (label[i] === 0) expect(age[i]).toBe(255);
      else expect(age[i]).toBeLessThan(255);
    }
    const row = Math.floor(state.layout.rows / 2) * state.layout.columns;
    const rim = row + Math.round(state.layout.columns / 2 - 14.5 / 0.5);
    const days = dayOfMonth(8) - state.arrival[rim];
    expect(age[rim]).toBe(Math.floor((days / 30.4375) * 2));
  });

  it('tells where the polyps sit to 1/255 of their spacing', () => {
    const state = grown(halves(1, 0));
    const sites = polypSites(state);
    for (let p = 0; p < sites.columns * sites.rows; p += 97) {
      const x = sites.originMm + ((p % sites.columns) + sites.offset[2 * p] / 255) * sites.spacingMm;
      expect(Math.abs(x - state.polyps.xMm[p])).toBeLessThanOrEqual(0.5 / 255 + 1e-9);
    }
  });
});
