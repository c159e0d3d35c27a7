import { describe, expect, it } from 'vitest';
import { layOut, type LayoutAsk, type LayoutName } from '../../../src/plan/layouts';
import { gapMm } from '../../../src/plan/outline';
import type { Plan } from '../../../src/plan/plan';
import { refuse } from '../../../src/plan/refuse';
import { smallPlan } from '../../fixtures/small-plan';

const NAMES: readonly LayoutName[] = ['halves', 'strips', 'chequer', 'ring', 'hexes', 'mosaic'];
const ask: LayoutAsk = {
  tile: { shape: 'square', sizeMm: 60 },
  varieties: ['a', 'b'],
  cutMm: 6,
  gapMm: 1.5,
  spanMm: 40,
};

function leastGap(pieces: Plan['pieces']): number {
  return Math.min(...pieces.flatMap((one, k) => pieces.slice(k + 1).map((other) => gapMm(one, other))));
}

describe('layouts', () => {
  it.each(NAMES)('%s: pieces that a plan may have, no two nearer than the gap and some just so', (name) => {
    const pieces = layOut(name, ask);
    expect(pieces.length).toBeGreaterThanOrEqual(2);
    expect(refuse(smallPlan({ pieces }))).toEqual([]);
    expect(leastGap(pieces)).toBeGreaterThan(1.498);
    expect(leastGap(pieces)).toBeLessThan(1.502);
  });

  it.each(NAMES)('%s: all on the tile, also where the span is larger than a disc tile', (name) => {
    const tile = { shape: 'disc', sizeMm: 30 } as const;
    const pieces = layOut(name, { ...ask, tile, spanMm: 80 });
    expect(refuse(smallPlan({ tile, pieces }))).toEqual([]);
  });

  it('deals the varieties out', () => {
    expect(layOut('halves', ask).map((piece) => piece.variety)).toEqual(['a', 'b']);
    expect(layOut('strips', ask).map((piece) => piece.variety)).toEqual(['a', 'b', 'a', 'b', 'a']);
    const five = layOut('ring', { ...ask, varieties: ['a', 'b', 'c', 'd', 'e'], spanMm: 28 });
    expect(five.map((piece) => piece.variety)).toEqual(['a', 'b', 'c', 'd', 'e']);
  });

  it('fills a span of 40 mm with 5 x 5 squares of 6 mm, 1.5 mm apart', () => {
    const pieces = layOut('chequer', ask);
    expect(pieces).toHaveLength(25);
    expect(pieces[0].at).toEqual([-15, -15]);
    expect(pieces[24].at).toEqual([15, 15]);
  });

  it('deals a mosaic in equal shares, the same each time', () => {
    const three = { ...ask, varieties: ['a', 'b', 'c'] };
    const pieces = layOut('mosaic', three);
    const count = (id: string) => pieces.filter((piece) => piece.variety === id).length;
    expect([count('a'), count('b'), count('c')]).toEqual([9, 8, 8]);
    expect(layOut('mosaic', three)).toEqual(pieces);
    expect(pieces.map((piece) => piece.variety)).not.toEqual(
      layOut('chequer', three).map((piece) => piece.variety),
    );
  });

  it('keeps hexagons of one kind apart when there are three kinds', () => {
    const pieces = layOut('hexes', { ...ask, varieties: ['a', 'b', 'c'] });
    for (const [k, one] of pieces.entries()) {
      for (const other of pieces.slice(k + 1)) {
        if (gapMm(one, other) < 2) expect(other.variety).not.toBe(one.variety);
      }
    }
  });
});
