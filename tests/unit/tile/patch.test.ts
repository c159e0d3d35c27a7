/** Patches of a made-up frame: a round one of 6 mm radius, with a speck in it, amid tissue of another colour. */
import { describe, expect, it } from 'vitest';
import type { Frame } from '../../../src/model/frame';
import { nothingBeneath } from '../../../src/model/layers';
import type { Xy } from '../../../src/plan/plan';
import { ringOf } from '../../../src/view/steps/drafts';
import { cutOutOf, outlineAround, patchAt } from '../../../src/view/cut/patch';
import { tissueRings } from '../../../src/view/cut/tissue';
import { isThin, patchWords } from '../../../src/view/cut/words';
import { HALVES } from '../../fixtures/halves';
import { area, signedDistance } from '../../../src/units/polygon';

const CELL_MM = 0.25;
const COLUMNS = 162;

function frameOf(labelAt: (x: number, y: number) => number): Frame {
  const label = new Uint8Array(COLUMNS * COLUMNS);
  for (let row = 1; row < COLUMNS - 1; row++)
    for (let column = 1; column < COLUMNS - 1; column++)
      label[row * COLUMNS + column] = labelAt(
        (column - (COLUMNS - 1) / 2) * CELL_MM,
        (row - (COLUMNS - 1) / 2) * CELL_MM,
      );
  const cells = label.length;
  return {
    month: 1,
    columns: COLUMNS,
    rows: COLUMNS,
    cellMm: CELL_MM,
    label,
    seam: new Uint8Array(cells),
    age: new Uint8Array(cells),
    height: new Uint16Array(cells),
    beneath: nothingBeneath(),
  };
}

/** The patch about (4, 0), its speck of 1 mm in the middle, and a field of 16 mm radius around the tile's middle. */
const frame = frameOf((x, y) => {
  const fromPatch = Math.hypot(x - 4, y);
  if (fromPatch < 1) return 3;
  if (fromPatch < 6) return 2;
  return Math.hypot(x, y) < 16 ? 1 : 0;
});

/** Distances run from cell to cell: off by a cell at most. */
const WITHIN_MM = CELL_MM;

describe('a patch of one colour', () => {
  it('is found by a place in it, and is not there on bare tile or beside the tile', () => {
    const cells = patchAt(frame, [8, 0]);
    const areaMm2 = (cells ?? new Uint8Array()).reduce((sum, is) => sum + is, 0) * CELL_MM * CELL_MM;
    expect(Math.abs(areaMm2 - Math.PI * 35)).toBeLessThan(2 * Math.PI * 7 * CELL_MM);
    expect(patchAt(frame, [-19, -19])).toBeNull();
    expect(patchAt(frame, [50, 0])).toBeNull();
  });

  it('is outlined at the margin asked for, its holes left out', () => {
    const patch = patchAt(frame, [8, 0]) as Uint8Array;
    for (const mm of [0, 1, 3, 6]) {
      const outline = outlineAround(frame, patch, mm);
      for (const [x, y] of outline)
        expect(Math.abs(Math.hypot(x - 4, y) - 6 - mm)).toBeLessThan(1.5 * WITHIN_MM);
      expect(area(outline)).toBeGreaterThan(Math.PI * (5.7 + mm) ** 2);
    }
  });

  it('may be outlined beyond the edge of the tile', () => {
    const atEdge = frameOf((x, y) => (x > 15 && Math.abs(y) < 3 ? 2 : 1));
    const outline = outlineAround(atEdge, patchAt(atEdge, [18, 0]) as Uint8Array, 4);
    expect(Math.max(...outline.map(([x]) => x))).toBeGreaterThan(23);
  });
});

describe('what a cut around takes', () => {
  const ring = (at: Xy, acrossMm: number): Xy[] => ringOf(at, acrossMm, true);

  it('is the tissue inside less half the kerf, with the largest patch that lies whole in it', () => {
    const cut = cutOutOf(frame, ring([4, 0], 18), 1, null);
    expect(cut.patch?.variety).toBe(2);
    expect(Math.abs((cut.patch?.marginMm ?? 0) - 2.5)).toBeLessThan(WITHIN_MM);
    expect(Math.abs(cut.areaMm2 - Math.PI * 8.5 ** 2)).toBeLessThan(2 * Math.PI * 9 * CELL_MM);
  });

  it('has no patch where none lies whole in it, and no margin where the patch meant reaches over the line', () => {
    const off = ring([10, 0], 6);
    expect(cutOutOf(frame, off, 0.8, null).patch).toBeNull();
    expect(cutOutOf(frame, off, 0.8, patchAt(frame, [8, 0])).patch?.marginMm).toBe(0);
  });

  it('agrees with the outline that was made for a margin', () => {
    const patch = patchAt(frame, [8, 0]) as Uint8Array;
    const outline = outlineAround(frame, patch, 3 + 0.4);
    const cut = cutOutOf(frame, outline, 0.8, patch);
    expect(Math.abs((cut.patch?.marginMm ?? 0) - 3)).toBeLessThan(WITHIN_MM);
    expect(signedDistance(outline, [4, 0])).toBeLessThan(-9);
  });
});

describe('in words', () => {
  const around = (marginMm: number) => ({ areaMm2: 60, patch: { variety: 1, areaMm2: 12.34, marginMm } });

  it('a margin under 3 mm is thin, but for what cells cannot tell', () => {
    expect([2.7, 2.85, 3].map((mm) => isThin(around(mm)))).toEqual([true, false, false]);
    expect(isThin({ areaMm2: 60, patch: null })).toBe(false);
  });

  it('the chance is that of the survival curve, and never sure', () => {
    const name = HALVES.varieties[0].name;
    expect(patchWords(HALVES, around(3))).toBe(
      `${name} 12.3 mm², margin 3 mm. Cutting of 60 mm²: lives with a chance of 90 %.`,
    );
    expect(patchWords(HALVES, { areaMm2: 5000, patch: null })).toContain('over 99 %');
    // logit p = -4 + 2 log10(100) = 0
    const own = { ...HALVES, survival: { atOneMm2: -4, perDecade: 2 } };
    expect(patchWords(own, { areaMm2: 100, patch: null })).toContain(
      'a chance of 50 %, by your own cuttings.',
    );
    expect(patchWords(HALVES, { areaMm2: 0, patch: null })).toContain('under 1 %');
  });
});

it('the outline of all tissue runs along its rim', () => {
  const [rim, ...more] = tissueRings(frame);
  expect(more).toEqual([]);
  for (const [x, y] of rim) expect(Math.abs(Math.hypot(x, y) - 16)).toBeLessThan(1.5 * WITHIN_MM);
});
