/** What the drawing of a section says of a joint: where skeletons are one and where they end. */
import { describe, expect, it } from 'vitest';
import { section } from '../../../src/measure/section';
import { FATE, VEILED } from '../../../src/model/seam-table';
import { growthLine } from '../../../src/view/section/growth-line';
import { bodies, colourStops, films, type Scale } from '../../../src/view/section/outlines';
import { sectionFrame } from '../../fixtures/section-frame';

const CELL_MM = 0.25;
const FROM = [-5, 0.1] as const;
const TO = [5, 0.1] as const;
/** 10 px a mm, the tile at 100 px. */
const SCALE: Scale = { x: (mm) => 10 * mm, y: (mm) => 100 - 10 * mm, fromMm: 0, toMm: 10 };

interface Ask {
  readonly fate: number;
  readonly heightMm: (xMm: number) => number;
  readonly label?: (xMm: number) => number;
  readonly beneath?: (xMm: number) => readonly (readonly [number, number])[];
  /** Where the seam stands, from the middle of the tile. */
  readonly seamMm?: number;
  /** Bit of Frame.seam that says that this side covers. */
  readonly covers?: 1 | 2;
}

/** Two varieties that meet in the middle of the line, 5 mm along it. */
function cut({ fate, heightMm, label, beneath, seamMm = 0, covers }: Ask) {
  const sideOf = (x: number): 1 | 2 => (x < seamMm ? 1 : 2);
  const frame = sectionFrame({
    sizeMm: 20,
    cellMm: CELL_MM,
    label: label ?? sideOf,
    heightMm,
    seam: (x) =>
      Math.abs(x - seamMm) > CELL_MM ? 0 : fate | (covers === sideOf(x) ? 8 : 0) | (sideOf(x) << 4),
    ...(beneath && { beneath }),
  });
  return section(frame, FROM, TO);
}

/** Subpaths as points in px. */
function pathsOf(d: string): number[][][] {
  return d
    .split('M')
    .slice(1)
    .map((path) => path.split('L').map((point) => point.split(' ').map(Number)));
}

describe('growth lines', () => {
  const lineAt = (fate: number): number[][][] =>
    pathsOf(growthLine(cut({ fate, heightMm: () => 2 }), cut({ fate, heightMm: () => 1.2 }), SCALE));

  it('run through a fused joint in one stroke', () => {
    const paths = lineAt(FATE.fused);
    expect(paths).toHaveLength(1);
    expect(paths[0].every(([, y]) => y === 88)).toBe(true);
  });

  it.each([FATE.ridge, FATE.dead, FATE.undecided, VEILED])(
    'end on both sides of a joint of kind %d, at it',
    (fate) => {
      const paths = lineAt(fate);
      expect(paths).toHaveLength(2);
      expect(paths[0].at(-1)?.[0]).toBe(50);
      expect(paths[1].at(0)?.[0]).toBe(50);
    },
  );

  it('run through what has fused since, and end at what was still two and is lapped by now', () => {
    const then = cut({ fate: FATE.undecided, heightMm: () => 1.2 });
    expect(pathsOf(growthLine(cut({ fate: FATE.fused, heightMm: () => 2 }), then, SCALE))).toHaveLength(1);
    const lapped = cut({
      fate: FATE.lapped,
      heightMm: () => 2,
      seamMm: 3,
      covers: 1,
      beneath: (x) => (x > 0 && x < 3 ? [[2, 1.3]] : []),
    });
    const paths = pathsOf(growthLine(lapped, then, SCALE));
    expect(paths).toHaveLength(2);
    // under the lip, 8 mm along, the covered one's line runs on
    expect(paths[1].at(0)?.[0]).toBe(50);
    expect(paths[1].at(-1)?.[0]).toBe(100);
  });

  it('go down to the tile where the rim was then, and do not cross what was bare then', () => {
    const now = cut({ fate: FATE.dead, heightMm: () => 2 });
    const young = cut({ fate: FATE.dead, heightMm: () => 1, label: (x) => (x < -2 ? 1 : x > 2 ? 2 : 0) });
    const rims = pathsOf(growthLine(now, young, SCALE));
    expect(rims).toHaveLength(2);
    expect(rims[0].at(-1)).toEqual([30, 100]);
    expect(rims[1].at(0)).toEqual([70, 100]);
    const bare = cut({
      fate: FATE.dead,
      heightMm: () => 1,
      label: (x) => (Math.abs(x) < 1 ? 255 : x < 0 ? 1 : 2),
    });
    const sides = pathsOf(growthLine(now, bare, SCALE));
    expect(sides).toHaveLength(2);
    expect(sides[0].at(-1)?.[0]).toBeLessThanOrEqual(40);
    expect(sides[1].at(0)?.[0]).toBeGreaterThanOrEqual(60);
  });

  it('drop upright where a lip stood', () => {
    const now = cut({ fate: FATE.fused, heightMm: () => 3 });
    const then = cut({ fate: FATE.lapped, covers: 1, heightMm: (x) => (x < 0 ? 2 : 1) });
    const [line] = pathsOf(growthLine(now, then, SCALE));
    expect(line.filter(([x]) => x === 50)).toEqual([
      [50, 80],
      [50, 90],
    ]);
  });
});

describe('skeletons', () => {
  it('are one where fused, with both colours, and two at what parts them', () => {
    const fused = bodies(cut({ fate: FATE.fused, heightMm: () => 2 }), SCALE);
    expect(fused).toHaveLength(1);
    expect(fused[0].stretches.map(({ fromMm, toMm, variety }) => [fromMm, toMm, variety])).toEqual([
      [0, 5, 1],
      [5, 10, 2],
    ]);
    for (const fate of [FATE.ridge, FATE.dead, FATE.undecided, VEILED])
      expect(bodies(cut({ fate, heightMm: () => 2 }), SCALE)).toHaveLength(2);
  });

  it('are two at a lapped seam under whose edge nothing is covered yet, and growth lines end there', () => {
    const young = cut({ fate: FATE.lapped, heightMm: () => 2, covers: 1 });
    expect(bodies(young, SCALE)).toHaveLength(2);
    const then = cut({ fate: FATE.undecided, heightMm: () => 1.2 });
    expect(pathsOf(growthLine(young, then, SCALE))).toHaveLength(2);
  });

  it('are two at a wall though a fused colony shows one colour on both sides', () => {
    expect(bodies(cut({ fate: FATE.ridge, heightMm: () => 2, label: () => 1 }), SCALE)).toHaveLength(2);
  });

  it('show where a covered one stood against the other before it was lapped', () => {
    const lapped = cut({
      fate: FATE.lapped,
      heightMm: () => 2,
      seamMm: 3,
      covers: 1,
      beneath: (x) => (x > 0 && x < 3 ? [[2, 1.5]] : []),
    });
    const covered = bodies(lapped, SCALE).filter(({ is }) => is === 'covered');
    expect(covered).toHaveLength(1);
    const [top, face, ...more] = pathsOf(covered[0].top);
    expect([top.at(0), top.at(-1)]).toEqual([
      [50, 85],
      [80, 85],
    ]);
    // on the side of the lip its own skeleton goes on
    expect(face).toEqual([
      [50, 85],
      [50, 100],
    ]);
    expect(more).toEqual([]);
  });
});

describe('tissue', () => {
  it('is one film over a fused joint and over a look-alike, and two at a wall and at a lip', () => {
    const films2 = (fate: number): number => films(cut({ fate, heightMm: () => 2 }), SCALE, []).length;
    expect(films2(FATE.fused)).toBe(1);
    expect(films2(VEILED)).toBe(1);
    expect(films2(FATE.ridge)).toBe(2);
    expect(films(cut({ fate: FATE.lapped, covers: 1, heightMm: () => 2 }), SCALE, [])).toHaveLength(2);
  });
});

it('tissue goes down into the notch between two walls, each side of it by its own wall', () => {
  const walls = cut({ fate: FATE.ridge, heightMm: (x) => 4 - Math.abs(x) });
  const [left, right] = films(walls, SCALE, [{ atMm: 5, halfMm: 0.5, footMm: 3, openMm: 0.2 }]);
  expect(pathsOf(left.d)[0].slice(-2)).toEqual([
    [45, 65],
    [49, 70],
  ]);
  expect(pathsOf(right.d)[0].slice(0, 2)).toEqual([
    [51, 70],
    [55, 65],
  ]);
});

it('colours pass into each other about their border, and a narrow one still has its own', () => {
  const stops = colourStops(
    [
      { fromMm: 0, toMm: 5, variety: 1 },
      { fromMm: 5, toMm: 6, variety: 2 },
      { fromMm: 6, toMm: 10, variety: 1 },
    ],
    4,
  );
  expect(stops).toEqual([
    { offset: 0, variety: 1 },
    { offset: 0.3, variety: 1 },
    { offset: 0.55, variety: 2 },
    { offset: 0.55, variety: 2 },
    { offset: 0.8, variety: 1 },
    { offset: 1, variety: 1 },
  ]);
});
