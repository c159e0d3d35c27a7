/**
 * No colour crosses a seam that has not fused: rule I reads a stray only where tissue leads to it. Two that never fuse,
 * on one tile with a third that fuses with both, are one colony; round the tip of their ridge there is only empty ground.
 */
import { expect, it } from 'vitest';
import { seamMarks } from '../../src/lessons/seam-marks';
import { specksMm2 } from '../../src/lessons/seam-signs';
import { frameOf } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { openWay } from '../../src/model/inherit';
import { FATE } from '../../src/model/seam-table';
import { compile } from '../../src/plan/compile';
import type { PlainPiece, Plan } from '../../src/plan/plan';
import { dayOfMonth } from '../../src/units/quantity';

const IDS = ['a', 'b', 'c'];
const MONTH = 10;

const plan: Plan = {
  seambench: 1,
  name: 'Two strangers and a friend of both',
  note: '',
  tile: { shape: 'square', sizeMm: 50 },
  varieties: IDS.map((id) => ({ id, name: id, colour: '#808080', rimMmPerMonth: 3, aggression: 0.2 })),
  pairs: [
    { a: 'a', b: 'b', acceptance: 0, mingle: 'veins' },
    { a: 'b', b: 'c', acceptance: 1, mingle: 'veins' },
    { a: 'a', b: 'c', acceptance: 1, mingle: 'veins' },
  ],
  pieces: IDS.map((variety, k): PlainPiece => {
    const angle = (k * 2 * Math.PI) / IDS.length;
    const at = [10 * Math.cos(angle), 10 * Math.sin(angle)] as const;
    return { id: `p${k}`, variety, at, turnDeg: 0, disc: { diameterMm: 14 } };
  }),
  steps: [],
  months: MONTH,
  settings: { veiledShare: 0 },
};

it('of 24 tiles at most one has a speck across its ridge, while nearly all have them across what has fused', () => {
  let [crossed, mixed, seams] = [0, 0, 0];
  for (let seed = 1; seed <= 24; seed++) {
    for (const state of grow(compile(plan, 0.5), String(seed))) {
      if (state.day !== dayOfMonth(MONTH)) continue;
      const frame = frameOf(state, MONTH);
      for (const { pair, is } of seamMarks(frame)) {
        const hasSpecks = specksMm2(frame, pair) >= 3;
        if (is === 'fused') {
          seams++;
          if (hasSpecks) mixed++;
        } else if (hasSpecks) crossed++;
      }
    }
  }
  expect(crossed).toBeLessThanOrEqual(1);
  expect(mixed).toBeGreaterThan(0.8 * seams);
  expect(seams).toBeGreaterThan(40);
});

it('a way that runs behind a wall does not start across it', () => {
  let walls = 0;
  for (const state of grow(compile({ ...plan, settings: { veiledShare: 0, deadShare: 0 } }, 0.25), '1')) {
    if (state.day !== dayOfMonth(MONTH)) continue;
    const { seam, origin, row, layout } = state;
    for (let r = 1; r < seam.count; r++) {
      if (seam.cell[r] < 0 || seam.fate[r] !== FATE.ridge) continue;
      const step = seam.partner[r] - seam.cell[r];
      const [from, to] = [seam.cell[r] - 3 * step, seam.partner[r] + 3 * step];
      if (origin[from] !== seam.own[r] || origin[to] !== seam.other[r] || row[from] + row[to] !== 0) continue;
      const [x, y] = Math.abs(step) === 1 ? [step, 0] : [0, Math.sign(step)];
      const [column, line] = [to % layout.columns, Math.floor(to / layout.columns)];
      // the line lies 2 mm on, wholly in the tissue across the wall
      expect(openWay(state, from, column, line, -2 * x, -2 * y)).toBe(false);
      walls++;
    }
  }
  expect(walls).toBeGreaterThan(20);
});
