import { expect, test } from 'vitest';
import type { PairReading, Reading } from '../../../src/measure/reading';
import { describe, pieceWords, sentence } from '../../../src/view/tile/describe';
import { HALVES } from '../../fixtures/halves';

type Lengths = Partial<Omit<PairReading, 'a' | 'b' | 'lengthMm'>>;
const NONE = { fusedMm: 0, ridgeMm: 0, lappedMm: 0, deadMm: 0, undecidedMm: 0 };

function pair(a: string, b: string, lengths: Lengths): PairReading {
  const all = { ...NONE, ...lengths };
  return { a, b, ...all, lengthMm: Object.values(all).reduce((sum, mm) => sum + mm, 0) };
}

function reading(...pairs: PairReading[]): Reading {
  return {
    seed: '1',
    month: 8,
    coverMm2: 1234,
    varieties: {},
    seam: { ...NONE, lengthMm: 0 },
    pairs,
    balance: null,
    swirl: null,
    veinWidthMm: null,
    ridgeHeightMm: null,
    ridgeMaxMm: null,
    firstTouchDay: null,
    settledDay: null,
    steps: [],
    hash: '',
  };
}

test('names all three pairs of a mosaic, and counts those of a larger one', () => {
  const three = [
    pair('a', 'b', { fusedMm: 90 }),
    pair('a', 'c', { fusedMm: 80 }),
    pair('b', 'c', { fusedMm: 70 }),
  ];
  expect(sentence(HALVES, reading(...three))).toBe(
    'Fern and Garnet have fused along 90 mm; Fern and Amber have fused along 80 mm; ' +
      'Garnet and Amber have fused along 70 mm.',
  );
  const fourth = pair('a', 'd', { fusedMm: 60 });
  expect(sentence(HALVES, reading(...three, fourth))).toMatch(/along 70 mm; 1 more pair has met\.$/u);
  const more = sentence(HALVES, reading(...three, fourth, pair('b', 'd', { fusedMm: 50 })));
  expect(more).toMatch(/; 2 more pairs have met\.$/u);
});

test('two have fused and the third builds a ridge with both', () => {
  const month = reading(
    pair('a', 'b', { fusedMm: 35.2, ridgeMm: 3 }),
    pair('a', 'c', { ridgeMm: 20 }),
    pair('b', 'c', { ridgeMm: 27, undecidedMm: 5 }),
  );
  expect(sentence(HALVES, month)).toBe(
    'Fern and Garnet have fused along 35 mm; Amber builds a ridge at every seam.',
  );
});

test('one pair, each outcome in its own words', () => {
  const say = (lengths: Lengths): string => sentence(HALVES, reading(pair('a', 'b', lengths)));
  expect(say({ ridgeMm: 12 })).toBe('Fern and Garnet have built a ridge along 12 mm.');
  expect(say({ deadMm: 12 })).toContain('have left a dead line along 12 mm');
  const strong = {
    ...HALVES,
    varieties: HALVES.varieties.map((v) => (v.id === 'b' ? { ...v, aggression: 0.9 } : v)),
  };
  expect(sentence(strong, reading(pair('a', 'b', { lappedMm: 12 })))).toBe(
    'Garnet has lapped Fern along 12 mm.',
  );
  expect(say({ undecidedMm: 12 })).toBe('Fern and Garnet are undecided along 12 mm.');
});

test('names each outcome of a pair that is not negligible, the longest first', () => {
  const say = (lengths: Lengths): string => sentence(HALVES, reading(pair('a', 'b', lengths)));
  expect(say({ fusedMm: 15, ridgeMm: 22 })).toBe(
    'Fern and Garnet have built a ridge along 22 mm and fused along 15 mm.',
  );
  expect(say({ fusedMm: 15, deadMm: 22, undecidedMm: 5 })).toBe(
    'Fern and Garnet have left a dead line along 22 mm and fused along 15 mm, and they are undecided along 5 mm.',
  );
  // a tenth of the seam, or 2 mm of a short one
  expect(say({ fusedMm: 40, ridgeMm: 3.9 })).not.toContain('ridge');
  expect(say({ fusedMm: 6, ridgeMm: 1.9 })).not.toContain('ridge');
  // who builds a ridge with both and fuses with one is not said to build ridges only
  const mixed = reading(pair('a', 'c', { ridgeMm: 20, fusedMm: 15 }), pair('b', 'c', { ridgeMm: 27 }));
  expect(sentence(HALVES, mixed)).toContain(
    'Fern and Amber have built a ridge along 20 mm and fused along 15 mm',
  );
});

test('who lies over is said as the plan has it, and not where it does not', () => {
  const month = reading(pair('a', 'b', { lappedMm: 12 }));
  expect(sentence(HALVES, month)).toBe('Fern or Garnet has lapped the other along 12 mm.');
  const seam = { along: [[0, 0], [0, 9]], is: 'lapped' } as const; // prettier-ignore
  const graft = (over: string, aggressionOfB: number) => ({
    ...HALVES,
    varieties: HALVES.varieties.map((v) => (v.id === 'b' ? { ...v, aggression: aggressionOfB } : v)),
    pieces: [{ id: 'g', at: [0, 0], turnDeg: 0, patches: [], seams: [{ ...seam, over }] } as const],
  });
  expect(sentence(graft('a', 0.2), month)).toBe('Fern has lapped Garnet along 12 mm.');
  expect(sentence(graft('b', 0.2), month)).toBe('Garnet has lapped Fern along 12 mm.');
  // the weaker one, where that is all there is on the tile
  expect(sentence(graft('a', 0.9), month)).toBe('Fern has lapped Garnet along 12 mm.');
});

test('what the seams are is left out where the learner is to say it', () => {
  const text = describe(HALVES, reading(pair('a', 'b', { fusedMm: 35.2, ridgeMm: 3 })), false).join(' ');
  expect(text).toContain('Month 8: what the seams are is not told yet. Fern and Garnet meet along 38 mm.');
  expect(text).not.toMatch(/fused|ridge|lapped|dead|undecided/u);
});

test('before any touch it says so', () => {
  expect(sentence(HALVES, { ...reading(), month: 0 })).toBe(
    'The pieces are set; cut edges heal before they join.',
  );
  expect(sentence(HALVES, { ...reading(), month: 3 })).toContain('no two varieties touch yet');
  expect(sentence({ ...HALVES, pieces: [] }, reading())).toContain('empty');
});

test('the full text names the tile, the month, each pair and each piece', () => {
  const text = describe(HALVES, reading(pair('a', 'b', { fusedMm: 35.2, ridgeMm: 3 })));
  expect(text[0]).toBe('A square tile of 60 mm with 3 pieces.');
  expect(text[1]).toMatch(/^Month 8: /u);
  expect(text).toContain('Fern and Garnet: fused 35 mm and ridge 3 mm.');
  expect(text.at(-1)).toBe('Piece p3 of Amber, disc of 8 mm, 20.0 mm right of the middle.');
  expect(pieceWords(HALVES, HALVES.pieces[0])).toBe(
    'Piece p1 of Fern, 10.0 by 20.0 mm, 12.0 mm left of the middle',
  );
});

test('tells what steps have done by the month, and how many are to come', () => {
  const plan = {
    ...HALVES,
    steps: [
      { id: 's1', day: 91, kind: 'trim', widthMm: 3 },
      { id: 's2', day: 91, kind: 'lift', piece: 'p1', on: false },
      { id: 's3', day: 300, kind: 'lift', piece: 'p1' },
    ],
  } as const;
  const took = { cuttings: 1, twoColoured: 1, cutMm2: { a: 120, b: 94 }, lostMm2: {}, skipped: 0 };
  const lines = describe(plan, { ...reading(), steps: [{ id: 's1', day: 91, ...took }] });
  expect(lines).toContain(
    `Day 91: trim 3 mm all round, took 1 cutting, 1 of two colours: 120 mm² ${HALVES.varieties[0].name}, 94 mm² ${HALVES.varieties[1].name}.`,
  );
  expect(lines).toContain('1 step is to come.');
  expect(lines.join(' ')).not.toContain('lift');
});
