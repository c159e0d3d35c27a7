/** A graft out of a frame is a piece like any other: it compiles to the cells that it was cut from. */
import { areaD, FillRule, unionD } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/model/frame';
import { grow } from '../../src/model/grow';
import { FATE } from '../../src/model/seam-table';
import { compile } from '../../src/plan/compile';
import { graftOf } from '../../src/plan/graft';
import type { GraftFrame } from '../../src/plan/graft-seams';
import { openPlan, planText } from '../../src/plan/file';
import type { GraftPiece, Plan, Xy } from '../../src/plan/plan';
import { refuse } from '../../src/plan/refuse';
import { area, signedDistance } from '../../src/units/polygon';
import { rectanglePiece, smallPlan } from '../fixtures/small-plan';
import { randomPlan } from '../fixtures/random-plan';

const IDS = ['', 'a', 'b', 'c'];

function planWith(piece: GraftPiece, sizeMm: number): Plan {
  const [a, b] = smallPlan().varieties;
  const varieties = [a, b, { ...a, id: 'c', name: 'Amber' }];
  return smallPlan({ tile: { shape: 'square', sizeMm }, varieties, pairs: [], pieces: [piece], months: 1 });
}

/** Labels of the tile as the piece alone sets it. */
function setLabels(plan: Plan, cellMm: number): Uint8Array {
  const layout = compile(plan, cellMm);
  return Uint8Array.from(layout.piece, (piece) => layout.pieces.variety[piece]);
}

/** Cells of one label that hang together by their sides and are fewer than a polyp of 1 mm2. */
function specks(label: Uint8Array, columns: number, least: number): Set<number> {
  const found = new Set<number>();
  const seen = new Set<number>();
  label.forEach((own, first) => {
    if (own === 0 || seen.has(first)) return;
    const cells = [first];
    seen.add(first);
    for (let k = 0; k < cells.length; k++)
      for (const step of [1, -1, columns, -columns]) {
        const next = cells[k] + step;
        if (label[next] !== own || seen.has(next)) continue;
        seen.add(next);
        cells.push(next);
      }
    if (cells.length < least) for (const cell of cells) found.add(cell);
  });
  return found;
}

/** What the cut takes, by the signed distance to its outline; border cells within a hair of it left to either side. */
function labelsWithin(
  { columns, cellMm, label }: GraftFrame,
  around: readonly Xy[],
  half: number,
): Uint8Array {
  return label.map((own, i) => {
    const x = ((i % columns) - (columns - 1) / 2) * cellMm;
    const y = (Math.floor(i / columns) - (columns - 1) / 2) * cellMm;
    return own < 9 && signedDistance(around, [x, y]) <= -half ? own : 0;
  });
}

function expectFaithful(piece: GraftPiece, frame: GraftFrame, around: readonly Xy[], kerfMm: number): void {
  const { columns, cellMm } = frame;
  const plan = planWith(piece, (columns - 2) * cellMm);
  expect(refuse(plan)).toEqual([]);
  const opened = openPlan(planText(plan));
  expect('plan' in opened && opened.plan).toEqual(plan);
  const wanted = labelsWithin(frame, around, kerfMm / 2);
  const set = setLabels(plan, cellMm);
  const small = specks(wanted, columns, 1 / (cellMm * cellMm));
  const wrong = Array.from(set.keys()).filter((i) => set[i] !== wanted[i] && !small.has(i));
  expect(wrong).toEqual([]);
  // patches fit each other: together they are as large as their union, and as their cells but for corners drawn in
  const paths = piece.patches.map(({ outline }) => outline.map(([x, y]) => ({ x, y })));
  const union = unionD(paths, [], FillRule.NonZero, 6).reduce((sum, path) => sum + areaD(path), 0);
  const sum = piece.patches.reduce((total, { outline }) => total + area(outline), 0);
  expect(Math.abs(sum - union)).toBeLessThan(1e-3);
  const cells = set.filter((own) => own !== 0).length * cellMm * cellMm;
  expect(Math.abs(sum - cells)).toBeLessThan(0.01 * cells);
}

/** A frame painted with blocks and single cells: holes, pinches, islands in islands. */
const painted: fc.Arbitrary<GraftFrame> = fc
  .record({
    blocks: fc.array(
      fc.tuple(
        fc.nat(35),
        fc.nat(35),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 20 }),
        fc.nat(3),
      ),
      { minLength: 1, maxLength: 25 },
    ),
    // of 1 mm2 each: corner to corner they touch themselves, and are no specks
    quads: fc.array(fc.tuple(fc.nat(19), fc.nat(19), fc.nat(3)), { maxLength: 150 }),
    dots: fc.array(fc.tuple(fc.nat(39), fc.nat(39), fc.nat(4)), { maxLength: 200 }),
  })
  .map(({ blocks, quads, dots }) => {
    const columns = 42;
    const label = new Uint8Array(columns * columns);
    const paint = (x: number, y: number, v: number): void => {
      if (x < 40 && y < 40) label[(y + 1) * columns + x + 1] = v;
    };
    const all = [...blocks, ...quads.map(([x, y, v]) => [2 * x, 2 * y, 2, 2, v] as const)];
    for (const [x0, y0, w, h, v] of all)
      for (let y = y0; y < y0 + h; y++) for (let x = x0; x < x0 + w; x++) paint(x, y, v);
    for (const [x, y, v] of dots) paint(x, y, v === 4 ? 255 : v);
    return { columns, rows: columns, cellMm: 0.5, label, seam: new Uint8Array(label.length) };
  });

const ALL: readonly Xy[] = [[-11, -11], [11, -11], [11, 11], [-11, 11]]; // prettier-ignore

describe('a graft cut from a frame', () => {
  it('compiles to the labels it was cut from, whatever they are', () => {
    let made = 0;
    fc.assert(
      fc.property(painted, (frame) => {
        const piece = graftOf(frame, { around: ALL, kerfMm: 0 }, 'g', IDS);
        if (piece === null) {
          expect(labelsWithin(frame, ALL, 0).filter((v) => v !== 0).length).toBeLessThan(200);
          return;
        }
        made++;
        expectFaithful(piece, frame, ALL, 0);
      }),
      { numRuns: 200 },
    );
    expect(made).toBeGreaterThan(150);
  }, 60_000);

  it('so does what is cut out of a grown tile along a tilted line, less half the kerf', () => {
    const around: readonly Xy[] = [[-9.1, -7.3], [6.2, -9.9], [10.7, 3.1], [-2.3, 9.7]]; // prettier-ignore
    let made = 0;
    fc.assert(
      fc.property(randomPlan(5, 24), fc.integer(), (plan, seed) => {
        for (const state of grow(compile(plan, 0.5), String(seed))) {
          if (state.day < state.layout.days) continue;
          const frame = frameOf(state, plan.months);
          const piece = graftOf(frame, { around, kerfMm: 0.8 }, 'g', [
            '',
            'a',
            'b',
            'c',
            'a',
            'b',
            'c',
            'a',
            'b',
          ]);
          if (piece === null || plan.varieties.length > 3) return;
          made++;
          expectFaithful(piece, frame, around, 0.8);
        }
      }),
      { numRuns: 30 },
    );
    expect(made).toBeGreaterThan(5);
  }, 60_000);

  it('stays under the limits of the plan file on a fine mosaic of noise', () => {
    const columns = 202;
    let state = 7;
    const label = Uint8Array.from({ length: columns * columns }, (_, i) => {
      state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
      const edge =
        i % columns === 0 || i % columns === columns - 1 || i < columns || i >= columns * (columns - 1);
      return edge ? 0 : 1 + ((state >>> 16) % 3);
    });
    const around: readonly Xy[] = [[-26, -26], [26, -26], [26, 26], [-26, 26]]; // prettier-ignore
    const frame = { columns, rows: columns, cellMm: 0.25, label, seam: new Uint8Array(label.length) };
    const piece = graftOf(frame, { around, kerfMm: 0 }, 'g', IDS);
    if (piece === null) throw new Error('nothing was cut');
    expect(piece.patches.length).toBeGreaterThan(1);
    expect(piece.patches.length).toBeLessThanOrEqual(500);
    expect(Math.max(...piece.patches.map(({ outline }) => outline.length))).toBeLessThanOrEqual(2000);
    expect(refuse(planWith(piece, 50.5))).toEqual([]);
  });

  it('is null where there is less than a polyp', () => {
    const frame = {
      columns: 10,
      rows: 10,
      cellMm: 0.5,
      label: new Uint8Array(100),
      seam: new Uint8Array(100),
    };
    frame.label.set([1, 2], 44);
    expect(graftOf(frame, { around: ALL, kerfMm: 0 }, 'g', IDS)).toBeNull();
  });

  it('keeps walls as walls and what has fused as fused', () => {
    // two halves that refuse below, two that took above: the frame is painted, as the verdicts of a run are chance
    const plan = smallPlan({
      pieces: [rectanglePiece('p1', 'a', [-5, 0], 10, 20), rectanglePiece('p2', 'b', [5, 0], 10, 20)],
      tile: { shape: 'square', sizeMm: 30 },
      pairs: [{ a: 'a', b: 'b', acceptance: 0.5 }],
      settings: { healingDays: 0 },
      months: 4,
    });
    let [walls, fused] = [0, 0];
    for (const seed of ['1', '2', '3', '4', '5', '6', '7', '8'])
      for (const state of grow(compile(plan, 0.25), seed)) {
        if (state.day < state.layout.days) continue;
        const frame = frameOf(state, 4);
        const around: readonly Xy[] = [[-9, -9], [9, -9], [9, 9], [-9, 9]]; // prettier-ignore
        const piece = graftOf(frame, { around, kerfMm: 0 }, 'g', ['', 'a', 'b']);
        if (piece === null) throw new Error('nothing was cut');
        for (const after of grow(compile({ ...plan, pieces: [piece], pairs: [] }, 0.25), 'x')) {
          const again = frameOf(after, 0);
          again.seam.forEach((bits, i) => {
            const was = frame.seam[i] & 7;
            if (bits === 0 || was === FATE.none || was === FATE.undecided || frame.label[i] === 255) return;
            // contacts within a millimetre of where the verdict changes may take the other one
            const { columns } = frame;
            for (let dy = -5; dy <= 5; dy++)
              for (let dx = -5; dx <= 5; dx++) {
                const other = frame.seam[i + dy * columns + dx] & 7;
                if ((other !== was && other !== FATE.none) || frame.label[i + dy * columns + dx] === 255)
                  return;
              }
            expect(bits & 7).toBe(was);
            if (was === FATE.fused) fused++;
            else walls++;
          });
          break;
        }
      }
    expect(walls).toBeGreaterThan(100);
    expect(fused).toBeGreaterThan(100);
  });
});
