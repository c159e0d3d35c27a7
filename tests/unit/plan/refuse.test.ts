import { describe, expect, it } from 'vitest';
import type { Plan, Refusal } from '../../../src/plan/plan';
import { refuse } from '../../../src/plan/refuse';
import { discPiece, smallPlan, squarePiece } from '../../fixtures/small-plan';

function only(plan: Plan): Refusal {
  const refusals = refuse(plan);
  expect(refusals).toHaveLength(1);
  return refusals[0];
}

function withPieces(...pieces: Plan['pieces']): Plan {
  return smallPlan({ pieces });
}

describe('pieces', () => {
  it('lets a sound plan pass, also with edges that touch each other and the tile', () => {
    expect(refuse(smallPlan())).toEqual([]);
    expect(refuse(withPieces(squarePiece('p1', 'a', -15, 0, 30), squarePiece('p2', 'b', 15, 0, 30)))).toEqual(
      [],
    );
    expect(refuse(withPieces(discPiece('p1', 'a', -5, 0, 10), discPiece('p2', 'b', 5, 0, 10)))).toEqual([]);
  });

  it('says how far a piece reaches beyond a square tile, and what would hold it', () => {
    const refusal = only(withPieces(squarePiece('p3', 'a', 27.1, 0, 10)));
    expect(refusal).toEqual({
      where: 'pieces[0] (p3)',
      found: 'an edge 2.1 mm beyond the tile',
      allowed: 'a piece wholly on the square of 60 mm',
      cure: 'The Fern piece of 10 by 10 mm, 27 mm right of the middle, reaches 2.1 mm beyond the tile: move it in or choose a tile of at least 65 mm',
    });
    expect(only(withPieces(discPiece('p3', 'a', 0, -27.1, 10))).cure).toContain('at least 65 mm');
  });

  it('measures a disc tile by its radius, corners of pieces included', () => {
    const plan: Plan = { ...smallPlan(), tile: { shape: 'disc', sizeMm: 60 } };
    // The corner lies at sqrt(25^2 + 5^2) = 25.5 and at sqrt(27^2 + 27^2) = 38.2 mm.
    expect(refuse({ ...plan, pieces: [squarePiece('p1', 'a', 20, 0, 10)] })).toEqual([]);
    expect(only({ ...plan, pieces: [squarePiece('p1', 'a', 22, 22, 10)] }).found).toContain('8.2 mm');
    expect(only({ ...plan, pieces: [discPiece('p1', 'a', 18, 24, 10)] }).found).toContain('5.0 mm');
  });

  it('does not offer a tile larger than there is', () => {
    const huge = only(smallPlan({ pieces: [discPiece('p1', 'a', 100, 0, 250)] }));
    expect(huge.cure).toContain('make the piece smaller');
  });

  it('names both pieces of an overlap, the later one first', () => {
    const refusal = only(withPieces(squarePiece('p1', 'a', 5, 0, 10), discPiece('p2', 'b', 0, 0, 10)));
    expect(refusal.where).toBe('pieces[1] (p2)');
    expect(refusal.found).toContain('on top of pieces[0] (p1)');
    expect(refusal.cure).toMatch(
      /^The Garnet disc of 10 mm, in the middle, lies on the Fern piece of 10 by 10 mm, 5 mm right of the middle:/u,
    );
  });

  it('sees an overlap of a piece wholly inside another and one at either side of the 0.05 mm2', () => {
    expect(
      refuse(withPieces(squarePiece('p1', 'a', 0, 0, 20), squarePiece('p2', 'b', 0, 0, 4))),
    ).toHaveLength(1);
    const lapped = (mm: number) =>
      refuse(withPieces(squarePiece('p1', 'a', 0, 0, 10), squarePiece('p2', 'b', 10 - mm, 0, 10)));
    expect(lapped(0.004)).toHaveLength(0);
    expect(lapped(0.006)).toHaveLength(1);
  });

  it('stops telling of a pile after a hundred overlaps', () => {
    const pile = Array.from({ length: 200 }, (_, k) => discPiece(`p${k}`, 'a', 0, 0, 10));
    expect(refuse(withPieces(...pile))).toHaveLength(100);
  });

  it('refuses no area, a line that crosses itself, an unknown variety', () => {
    const flat = { ...squarePiece('p1', 'a', 0, 0, 10), outline: [[0, 0], [0.2, 0], [0, 0.2]] as const }; // prettier-ignore
    expect(only(withPieces(flat)).found).toBe('an area of 0.020 mm2');
    const bow = { ...squarePiece('p1', 'a', 0, 0, 10), outline: [[-5, -5], [5, 5], [5, -5], [-5, 5]] as const }; // prettier-ignore
    expect(only(withPieces(bow)).found).toBe('an outline that crosses or touches itself');
    const line = { ...squarePiece('p1', 'a', 0, 0, 10), outline: [[0, 0], [5, 0], [9, 0]] as const }; // prettier-ignore
    expect(only(withPieces(line)).found).toBe('an outline that crosses or touches itself');
    const stranger = only(withPieces(squarePiece('p1', 'z', 0, 0, 10)));
    expect(stranger.found).toBe('the variety z, which is not there');
    expect(stranger.allowed).toBe('one of a, b');
  });

  it('refuses ids twice', () => {
    const twice = only(withPieces(squarePiece('p1', 'a', -10, 0, 10), squarePiece('p1', 'b', 10, 0, 10)));
    expect(twice.where).toBe('pieces[1] (p1)');
    const { varieties } = smallPlan();
    expect(only(smallPlan({ varieties: [...varieties, { ...varieties[0], name: 'Moss' }] })).where).toBe(
      'varieties[2] (a)',
    );
  });
});

describe('pairs', () => {
  it.each<[string, Plan['pairs'], string, string]>([
    ['an unknown variety', [{ a: 'a', b: 'x' }], 'pairs[0] (a with x)', 'the variety x, which is not there'],
    [
      'a variety with itself',
      [{ a: 'b', b: 'b' }],
      'pairs[0] (b with b)',
      'the variety b paired with itself',
    ],
    [
      'a pair twice, turned round',
      [
        { a: 'a', b: 'b' },
        { a: 'b', b: 'a' },
      ],
      'pairs[1] (b with a)',
      'b with a a second time',
    ],
    [
      'acceptance beside related',
      [{ a: 'a', b: 'b', acceptance: 0.5, related: 'kin' }],
      'pairs[0] (a with b)',
      'both acceptance and related',
    ],
    [
      'more that took than were tried',
      [{ a: 'a', b: 'b', acceptance: { took: 4, tried: 3 } }],
      'pairs[0] (a with b).acceptance',
      '4 took of 3 tried',
    ],
  ])('refuses %s', (_, pairs, where, found) => {
    const refusal = only(smallPlan({ pairs }));
    expect(refusal.where).toBe(where);
    expect(refusal.found).toBe(found);
  });
});

describe('cures', () => {
  const [fern, garnet] = smallPlan().varieties;
  const square = squarePiece('p1', 'a', -12, 8, 10);
  it.each<[string, Partial<Plan>, RegExp]>([
    ['a pair twice', { pairs: [{ a: 'a', b: 'b' }, { a: 'b', b: 'a' }] }, /^The pair Garnet and Fern is listed twice/u], // prettier-ignore
    ['a stranger', { pieces: [{ ...square, variety: 'z' }] }, /^The piece of 10 by 10 mm, 12 mm left of and 8 mm below the middle, is of a variety “z”/u], // prettier-ignore
    ['one id', { pieces: [square, discPiece('p1', 'b', 12, 0, 8)] }, /^The Fern piece .* and the Garnet disc of 8 mm, .* the same id p1/u], // prettier-ignore
    ['no name', { varieties: [{ ...fern, name: '' }, garnet], pieces: [squarePiece('p1', 'a', 30, 0, 10)] }, /^The piece of 10 by 10 mm, 30 mm right of the middle, reaches 5.0 mm/u], // prettier-ignore
  ])('name things by what a person sees: %s', (_, changes, cure) => {
    expect(only(smallPlan(changes)).cure).toMatch(cure);
  });

  it('never speak of ids or of places in the file where a piece has a variety', () => {
    const plan = smallPlan({ pieces: [squarePiece('p1', 'a', 0, 0, 10), squarePiece('p2', 'b', 1, 0, 80)] });
    const cures = refuse(plan).map(({ cure }) => cure);
    expect(cures.length).toBeGreaterThan(1);
    for (const cure of cures) expect(cure).not.toMatch(/\bp[12]\b|\[|varieties|pieces/u);
  });
});

describe('speed', () => {
  it('judges a drag among 1,000 turned squares well within a frame or two', () => {
    const pieces = Array.from({ length: 1000 }, (_, k) => ({
      ...squarePiece(`p${k}`, 'a', (k % 32) * 8 - 124, Math.floor(k / 32) * 8 - 124, 5.6),
      turnDeg: 45,
    }));
    let plan = smallPlan({ tile: { shape: 'square', sizeMm: 300 }, pieces });
    const tookMs: number[] = [];
    for (let move = 1; move <= 9; move++) {
      plan = {
        ...plan,
        pieces: plan.pieces.map((p, k) => (k === 500 ? { ...p, at: [p.at[0] + 0.01, p.at[1]] } : p)),
      };
      const start = process.cpuUsage();
      expect(refuse(plan)).toEqual([]);
      const used = process.cpuUsage(start);
      tookMs.push((used.user + used.system) / 1000);
    }
    // 3 to 10 ms of processor time each on 2 shared cores; the least of them, as others use the cores too.
    expect(Math.min(...tookMs)).toBeLessThan(30);
  });
});
