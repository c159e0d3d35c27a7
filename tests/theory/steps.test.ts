/** When what a step does shows: edges heal for the delay that the plan names, steps act in their order, and not at all. */
import { describe, expect, it } from 'vitest';
import { read } from '../../src/measure/read';
import { grow } from '../../src/model/grow';
import { hashState } from '../../src/model/hash';
import type { State } from '../../src/model/state';
import { compile } from '../../src/plan/compile';
import type { Step, Xy } from '../../src/plan/plan';
import { rectanglePiece, smallPlan, squarePiece } from '../fixtures/small-plan';
import { areaMm2, near, planOf, ring, square, sum, through, tileOn } from '../fixtures/step-tile';

const HEALING_DAYS = 30;

/** A tile that is full of one colour, of a grown rim: nothing can grow but over a cut. */
const FULL = { ...squarePiece('p1', 'a', 0, 0, 40), edge: 'rim' as const };

const CUTS: readonly Step[] = [
  { id: 's', day: 20, kind: 'trim', widthMm: 3 },
  { id: 's', day: 20, kind: 'recut', lines: [through([0, 0], 90), through([0, 3], 20)], kerfMm: 1, then: [] },
  { id: 's', day: 20, kind: 'isolate', around: square([3, 2], 9) },
  { id: 's', day: 20, kind: 'scrape', along: through([0, 0], 70), widthMm: 2 },
];

describe('healing', () => {
  it.each(CUTS)('over the cut of a $kind nothing grows before the delay, then it does', (step) => {
    const areas: number[] = [];
    for (const state of grow(compile(planOf([FULL], [step], { months: 3 }), 0.25), '1'))
      areas[state.day] = areaMm2(state);
    expect(areas[step.day]).toBeLessThan(areas[step.day - 1]);
    expect(areas[step.day + HEALING_DAYS - 1]).toBe(areas[step.day]);
    expect(areas[step.day + HEALING_DAYS + 10]).toBeGreaterThan(areas[step.day]);
  });

  it('a kerf too thin to take a cell parts all the same: moved off, the edges rest for the delay', () => {
    for (const kerfMm of [0, 0.3])
      for (const tiltDeg of [90, 67]) {
        const then = [{ piece: 's.1', at: [-16, 0], turnDeg: 0 }] as const;
        const step: Step = {
          id: 's',
          day: 20,
          kind: 'recut',
          lines: [through([0, 0], tiltDeg)],
          kerfMm,
          then,
        };
        const piece = { ...squarePiece('p1', 'a', 0, 0, 16), edge: 'rim' as const };
        const plan = planOf([piece], [step], { months: 2, tile: { shape: 'square', sizeMm: 60 } });
        const state = tileOn(plan, 20 + HEALING_DAYS / 2);
        const healing = state.arrival.filter((day) => day > state.day && day < Infinity).length;
        // both sides of a cut 16 mm long and more, a cell of 0.5 mm wide at least
        expect(healing).toBeGreaterThan(2 * 16 * 2 * 0.9);
      }
  });

  /** First day on which a contact counts as touched after `day`. */
  function firstTouch({ seam }: State, day: number): number {
    let first = Infinity;
    for (let r = 1; r < seam.count; r++)
      if (seam.cell[r] >= 0 && seam.touched[r] > day) first = Math.min(first, seam.touched[r]);
    return first;
  }

  it('along a scraped seam nobody joins before both sides have healed', () => {
    const pieces = [rectanglePiece('p1', 'a', [-10, 0], 20, 40), rectanglePiece('p2', 'b', [10, 0], 20, 40)];
    const step: Step = { id: 's', day: 50, kind: 'scrape', along: through([0, 0], 90), widthMm: 1 };
    const state = tileOn(planOf(pieces, [step], { months: 4 }), 115);
    expect(firstTouch(state, 50)).toBeGreaterThanOrEqual(50 + HEALING_DAYS);
    expect(firstTouch(state, 50)).toBeLessThan(115);
  });

  it('a rim that reaches a healing edge waits for it', () => {
    const varieties = smallPlan().varieties.map((one, k) => ({ ...one, rimMmPerMonth: k === 0 ? 0.5 : 9 }));
    const pieces = [
      { ...rectanglePiece('p1', 'a', [-10, 0], 20, 40), edge: 'rim' as const },
      { ...rectanglePiece('p2', 'b', [12, 0], 16, 40), edge: 'rim' as const },
    ];
    const step: Step = { id: 's', day: 10, kind: 'trim', widthMm: 1, along: [[0, -20], [0, 20]], piece: 'p1' }; // prettier-ignore
    for (const cellMm of [0.5, 0.25]) {
      const state = tileOn(planOf(pieces, [step], { varieties, months: 3 }), 80, cellMm);
      expect(firstTouch(state, 10)).toBeGreaterThanOrEqual(10 + HEALING_DAYS);
      expect(firstTouch(state, 10)).toBeLessThan(80);
    }
  });

  it('a piece that was broken off counts as freshly cut', () => {
    const pieces = [
      rectanglePiece('p1', 'a', [-5, 0], 10, 20),
      rectanglePiece('p2', 'b', [5, 0], 10, 20),
    ].map((piece) => ({ ...piece, edge: 'rim' as const }));
    const step: Step = { id: 'm', day: 20, kind: 'move', piece: 'p1', at: [-12, 0], turnDeg: 0 };
    const { pieces: after } = tileOn(planOf(pieces, [step]), 20);
    expect(after.count).toBe(3);
    expect([after.freshUntilDay[2], after.freshUntilDay[3]]).toEqual([80, 80]);
  });

  it('a whole piece in a face of a recut that did not touch it has nothing to heal', () => {
    const pieces = [squarePiece('p1', 'a', -10, 0, 10), squarePiece('p2', 'b', 10, 0, 10)];
    const step: Step = {
      id: 's',
      day: 5,
      kind: 'recut',
      lines: [through([-10, 0], 90)],
      kerfMm: 1,
      then: [],
    };
    const { pieces: after } = tileOn(planOf(pieces, [step]), 5);
    const healed = [1, 2]
      .map((v) => Array.from(after.variety.keys()).filter((o) => o > 2 && after.variety[o] === v))
      .map((made) => made.map((o) => after.healedDay[o]));
    expect(healed).toEqual([[35, 35], [30]]);
  });
});

describe('order', () => {
  const trim: Step = { id: 't', day: 0, kind: 'trim', widthMm: 3 };
  const recut: Step = { id: 'c', day: 0, kind: 'recut', lines: [through([0, 0], 90)], kerfMm: 2, then: [] };
  const piece = squarePiece('p1', 'a', 0, 0, 30);

  it('two steps of one day act in the order of the list', () => {
    const first = tileOn(planOf([piece], [trim, recut]), 0);
    near(areaMm2(first), (24 - 2) * 24, ring(4 * 24, 0.5));
    const second = tileOn(planOf([piece], [recut, trim]), 0);
    // each half, 14 mm by 30 mm, loses a rim of its own
    near(areaMm2(second), 2 * (14 - 6) * 24, ring(4 * 32, 0.5));
    expect(first.works.map(({ step }) => step)).toEqual(['t', 'c']);
    expect(second.works.map(({ step }) => step)).toEqual(['c', 't']);
  });

  it('by day before the list', () => {
    const plan = planOf(
      [piece],
      [
        { ...recut, day: 2 },
        { ...trim, day: 1 },
      ],
    );
    const state = tileOn(plan, 3);
    expect(state.works.map(({ step, day }) => [step, day])).toEqual([['t', 1], ['c', 2]]); // prettier-ignore
  });
});

describe('steps that are not done', () => {
  const pieces = [rectanglePiece('p1', 'a', [-5, 0], 10, 20), rectanglePiece('p2', 'b', [5, 0], 10, 20)];
  const late: Step = { id: 'm', day: 25, kind: 'move', piece: 'p2', at: [12, 3], turnDeg: 90 };

  it.each<Step>([
    ...CUTS.map((step) => ({ ...step, id: 'off' })),
    { id: 'off', day: 20, kind: 'lift', piece: 'p1' },
    { id: 'off', day: 20, kind: 'add', piece: squarePiece('p9', 'a', 0, 15, 6) },
  ])('a $kind that is switched off is as if it were not there', (step) => {
    const hash = (steps: Step[]): string => hashState(tileOn(planOf(pieces, steps, { months: 3 }), 91));
    expect(hash([{ ...step, on: false }, late])).toBe(hash([late]));
    expect(hash([step, late])).not.toBe(hash([late]));
  });

  it('a step after the last month changes nothing and is not told', () => {
    const day = 100;
    const reading = (steps: Step[]) =>
      read(tileOn(planOf(pieces, steps, { months: 3 }), 91), ['', 'a', 'b'], '1', 3);
    const without = reading([]);
    for (const step of CUTS) expect(reading([{ ...step, day }])).toEqual(without);
  });

  it('a face that is empty is not placed, and counted as skipped', () => {
    const then = [
      { piece: 'c.1', at: [-5, -5], turnDeg: 0 },
      { piece: 'c.2', at: [5, 5], turnDeg: 0 },
    ] as const;
    // one piece of 4 mm in the upper part of the tile: the lower face is empty
    const step: Step = { id: 'c', day: 0, kind: 'recut', lines: [through([0, 0], 0)], kerfMm: 1, then };
    const state = tileOn(planOf([squarePiece('p1', 'a', 0, -10, 4)], [step]), 0);
    expect(state.works[0].skipped).toBe(1);
    expect(areaMm2(state)).toBe(16);
  });

  it('a piece that is not there is neither moved nor lifted, and counted as skipped', () => {
    const steps: Step[] = [
      { id: 'l', day: 0, kind: 'lift', piece: 'p1' },
      { id: 'm', day: 0, kind: 'move', piece: 'p1', at: [0, 0], turnDeg: 0 },
      { id: 'n', day: 0, kind: 'lift', piece: 'p1' },
    ];
    expect(tileOn(planOf(pieces, steps), 0).works.map(({ skipped }) => skipped)).toEqual([0, 1, 1]);
  });
});

describe('names of faces and areas', () => {
  const lines = [through([1, 0], 80), through([0, -2], 10)];
  const recut: Step = { id: 'c', day: 40, kind: 'recut', lines, kerfMm: 1, then: [] };
  const pieces = [rectanglePiece('p1', 'a', [-6, 0], 12, 24), rectanglePiece('p2', 'b', [6, 0], 12, 24)];
  const plan = planOf(pieces, [recut], { months: 2 });

  /** Number of each face's name and where its tissue lies in the mean, mm. */
  function faces(cellMm: number, seed: string): Map<number, Xy> {
    const { origin, layout, pieces: made } = tileOn(plan, 40, cellMm, seed);
    const sums = new Map<number, [number, number, number]>();
    origin.forEach((o, i) => {
      if (o === 0) return;
      const [n, x, y] = sums.get(made.name[o]) ?? [0, 0, 0];
      const column = (i % layout.columns) - (layout.columns - 1) / 2;
      const line = Math.floor(i / layout.columns) - (layout.rows - 1) / 2;
      sums.set(made.name[o], [n + 1, x + column * cellMm, y + line * cellMm]);
    });
    return new Map([...sums].sort(([a], [b]) => a - b).map(([name, [n, x, y]]) => [name, [x / n, y / n]]));
  }

  it('a face has one name at every seed and cell size', () => {
    const known = faces(0.25, '1');
    expect([...known.keys()]).toHaveLength(4);
    for (const [cellMm, seed] of [
      [0.5, '1'],
      [0.25, '2'],
      [0.5, 'three'],
    ] as const)
      for (const [name, [x, y]] of faces(cellMm, seed)) {
        const [knownX, knownY] = known.get(name) ?? [Infinity, Infinity];
        expect(Math.hypot(x - knownX, y - knownY)).toBeLessThan(1.5);
      }
  });

  it('preview and exact run take the same areas, to a ring of the coarser cell', () => {
    const steps: Step[] = [
      { id: 't', day: 30, kind: 'trim', widthMm: 2 },
      recut,
      { id: 'i', day: 45, kind: 'isolate', around: square([-6, 6], 6) },
    ];
    const [coarse, fine] = [0.5, 0.25].map((cellMm) =>
      tileOn(planOf(pieces, steps, { months: 2 }), 46, cellMm),
    );
    near(areaMm2(coarse), areaMm2(fine), ring(4 * 24, 0.5));
    coarse.works.forEach((work, k) => {
      const edge = [4 * 24, 48, 4 * 6][k];
      near(sum(work.cutCells, coarse), sum(fine.works[k].cutCells, fine), ring(edge, 0.5));
      near(sum(work.lostCells, coarse), sum(fine.works[k].lostCells, fine), ring(edge, 0.5));
    });
  });
});
