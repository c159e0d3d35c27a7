import { expect, it } from 'vitest';
import { FATE, VEILED } from '../../../src/model/seam-table';
import { runTogether } from '../../../src/skin/run-together';
import { seamFrame } from '../../fixtures/seam-frame';

function shown(bits: number, step: number): { label: Uint8Array; before: Uint8Array; columns: number } {
  const frame = seamFrame({ sizeMm: 30, cellMm: 0.25, isFirst: (x) => x < 0, seamAt: () => bits });
  const columns = Math.floor(frame.columns / step);
  const before = new Uint8Array(columns * columns);
  for (let i = 0; i < before.length; i++) {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    before[i] = frame.label[(row * step + step - 1) * frame.columns + column * step + step - 1];
  }
  const label = before.slice();
  runTogether(label, frame, step, columns, columns);
  return { label, before, columns };
}

it.each([1, 2])(
  'colours cross a veiled seam on both sides and near it only, read at every cell or every %d',
  (step) => {
    const { label, before, columns } = shown(VEILED, step);
    const crossed = [0, 0, 0];
    label.forEach((colour, i) => {
      if (colour === before[i]) return;
      crossed[before[i]]++;
      const x = ((i % columns) * step + step - 1 - (30 / 0.25 + 1) / 2) * 0.25;
      expect(Math.abs(x)).toBeLessThan(2.7);
    });
    // mm2 of each side: 30 mm of seam, a wobble of up to 2.2 mm that dies out
    expect(Math.min(crossed[1], crossed[2]) * step * step * 0.0625).toBeGreaterThan(4);
    expect(label.filter((colour) => colour === 0)).toHaveLength(
      before.filter((colour) => colour === 0).length,
    );
  },
);

it.each([FATE.undecided, FATE.fused, FATE.ridge, FATE.lapped, FATE.dead])(
  'colours stay where they are at a seam of fate %d',
  (fate) => {
    const { label, before } = shown(fate, 1);
    expect(label).toEqual(before);
  },
);
