/** Claims about rims of unlike rates or starts: circle of Apollonius, logarithmic spiral, hyperbola, triple point. */
import type { State } from '../model/state';
import { meanOf } from '../stats/intervals';
import { lineThrough } from '../stats/line';
import { type BenchTile, disc, grownTile, seamPoints, type SeamPoint } from './bench-tile';
import { type Check, once, type Topic } from './check';
import { type MeetingDiscs, meetingRadiusMm, turnOf } from './meeting-curve';
import { curve } from './plot';

const DEGREES = Math.PI / 180;
const CRYSTALS =
  'weighted crystal growth: Schaudt & Drysdale 1991 (7th ACM Symp. Comput. Geom.); Okabe, Boots, Sugihara & Chiu 2000, Spatial Tessellations';

/** A seam point about the slow disc's centre, which lies right of the fast one's. */
interface Polar {
  /** Degrees from the direction towards the fast centre, 0 to 180. */
  readonly deg: number;
  readonly radiusMm: number;
}

function polar(points: readonly SeamPoint[], slowX: number): Polar[] {
  return points.map(({ xMm, yMm }) => ({
    deg: Math.atan2(Math.abs(yMm), slowX - xMm) / DEGREES,
    radiusMm: Math.hypot(xMm - slowX, yMm),
  }));
}

/** Discs as wide as their rates would have made them from points that began together: 10 and 5 mm for 2 : 1. */
const apollonius = once(() => {
  const pieces = [disc('a', [-25, 0], 20), disc('b', [5, 0], 10)];
  return seamPoints(grownTile({ sizeMm: 110, months: 10, rims: [4, 2], pieces }, 0.125, '1'));
});

const circle: Check = {
  name: 'circle of Apollonius',
  claim:
    'seeds 30 mm apart of rates 2 : 1 that began together meet on the circle |PF| = 2 |PS|, of radius d k / (k^2 - 1) = 20 mm, up to 90 degrees; greatest distance',
  source: 'Apollonius of Perga, Plane Loci (from memory: by Pappus, book 7); ' + CRYSTALS,
  unit: 'mm',
  expected: 0,
  tolerance: 0.25,
  because: 'cell 0.125 mm; a first-order solver errs by 0.15 mm at most there up to 90 degrees',
  run: () => {
    const near = apollonius().filter(({ xMm }) => xMm <= 5);
    return Math.max(...near.map(({ xMm, yMm }) => Math.abs(Math.hypot(xMm - 15, yMm) - 20)));
  },
};

/** Fast and slow disc of 10 mm, 20 mm apart, the slow one at the middle. */
function unequalTile(fast: number, slow: number, months: number): BenchTile {
  const pieces = [disc('a', [-20, 0], 10), disc('b', [0, 0], 10)];
  return { sizeMm: 110, months, rims: [fast, slow], pieces };
}

interface Wrap {
  readonly words: string;
  readonly discs: MeetingDiscs;
  readonly points: () => readonly Polar[];
}

function wrapOf(fast: number, slow: number, months: number): Wrap {
  return {
    words: `${fast} : ${slow}`,
    discs: { ratio: fast / slow, apartMm: 20, radiusMm: 5 },
    // cells at the tile's edge see half their neighbours
    points: once(() =>
      polar(
        seamPoints(grownTile(unequalTile(fast, slow, months), 0.125, '1')).filter(
          ({ xMm, yMm }) => Math.max(Math.abs(xMm), Math.abs(yMm)) < 54,
        ),
        0,
      ),
    ),
  };
}

const WRAPS = [wrapOf(3, 2, 20), wrapOf(4, 2, 16), wrapOf(8, 2, 12)];

function wrapChecks({ words, discs, points }: Wrap): Check[] {
  const turnDeg = turnOf(discs).angle / DEGREES;
  const pitch = 1 / Math.sqrt(discs.ratio * discs.ratio - 1);
  return [
    {
      name: `arc of discs at rates ${words}`,
      claim: `near side: (k^2 - 1) r^2 + 2 (d cos a - k c) r + c^2 - d^2 = 0, c = (k - 1) R, up to ${turnDeg.toFixed(1)} degrees; greatest distance along the ray`,
      source: CRYSTALS,
      unit: 'mm',
      expected: 0,
      tolerance: 0.3,
      because: 'cell 0.125 mm; a first-order solver errs by 0.15 mm there, and a ray may cut the seam aslant',
      run: () => {
        const near = points().filter(({ deg }) => deg <= turnDeg);
        return Math.max(
          ...near.map(({ deg, radiusMm }) => Math.abs(radiusMm - meetingRadiusMm(discs, deg * DEGREES))),
        );
      },
    },
    {
      name: `spiral wrap at rates ${words}`,
      claim:
        'behind the arc the fast rim creeps round: d ln r / d angle = 1 / sqrt(k^2 - 1), from 5 degrees beyond the arc to 150',
      source: CRYSTALS,
      unit: 'per radian',
      expected: pitch,
      tolerance: 0.03 * pitch,
      because: '3 %: a first-order solver at 0.125 mm errs by 0.2 to 0.5 mm at 150 degrees, always outward',
      run: () => {
        const far = points().filter(({ deg }) => deg >= turnDeg + 5 && deg <= 150);
        return lineThrough(
          far.map(({ deg }) => deg * DEGREES),
          far.map(({ radiusMm }) => Math.log(radiusMm)),
        ).slope;
      },
    },
  ];
}

const closing: Check = {
  name: 'where the two arms close',
  claim:
    'discs of 10 mm, 30 mm apart, at 4 and 2 mm/month: the arms meet behind the slow one 51.354 mm from its middle (the full circle would put it at 30)',
  source: CRYSTALS,
  unit: 'mm',
  expected: meetingRadiusMm({ ratio: 2, apartMm: 30, radiusMm: 5 }, Math.PI),
  tolerance: 1.5,
  because: 'a first-order solver at 0.25 mm errs by 0.8 to 1.2 mm behind the slow disc, always outward',
  run: () => {
    const pieces = [disc('a', [-55, 0], 10), disc('b', [-25, 0], 10)];
    const points = seamPoints(grownTile({ sizeMm: 130, months: 26, rims: [4, 2], pieces }, 0.25, '1'));
    const onAxis = points.filter(({ xMm, yMm }) => Math.abs(yMm) < 1 && xMm > -25);
    return Math.max(...onAxis.map(({ xMm }) => xMm + 25));
  },
};

/** Equal rates, radii 3 and 7 mm: as if the larger had begun earlier. */
const hyperbola: Check = {
  name: 'equal rates, unlike starts',
  claim:
    'discs of radius 7 and 3 mm at one rate meet on the hyperbola |PF| - |PS| = 4 mm; greatest difference',
  source: 'Okabe, Boots, Sugihara & Chiu 2000, Spatial Tessellations: additively weighted',
  unit: 'mm',
  expected: 0,
  tolerance: 0.3,
  because: 'cell 0.125 mm; the difference of two distances moves twice as fast as the seam',
  run: () => {
    const pieces = [disc('a', [-12, 0], 14), disc('b', [12, 0], 6)];
    const points = seamPoints(grownTile({ sizeMm: 80, months: 10, rims: [3, 3], pieces }, 0.125, '1'));
    return Math.max(
      ...points.map(({ xMm, yMm }) => Math.abs(Math.hypot(xMm + 12, yMm) - Math.hypot(xMm - 12, yMm) - 4)),
    );
  },
};

/** Mean place of the corners at which three origins meet, mm. */
function triplePoint(state: State): { xMm: number; yMm: number } {
  const { origin, layout } = state;
  const { columns, rows, cellMm } = layout;
  const xs: number[] = [];
  const ys: number[] = [];
  for (let r = 1; r < rows - 2; r++)
    for (let c = 1; c < columns - 2; c++) {
      const i = r * columns + c;
      const around = new Set([origin[i], origin[i + 1], origin[i + columns], origin[i + columns + 1]]);
      around.delete(0);
      if (around.size < 3) continue;
      xs.push((c + 0.5 - (columns - 1) / 2) * cellMm);
      ys.push((r + 0.5 - (rows - 1) / 2) * cellMm);
    }
  return { xMm: meanOf(xs).mean, yMm: meanOf(ys).mean };
}

const triple: readonly Check[] = [0.25, 0.125].map((cellMm) => ({
  name: `three discs meet in the circumcentre, cell ${cellMm} mm`,
  claim:
    'three equal discs at (-10, 6), (14, 6) and (-4, -16) mm meet at the point as far from all three: (2, -2.545)',
  source: 'Voronoi 1908; Okabe, Boots, Sugihara & Chiu 2000, Spatial Tessellations',
  unit: 'mm off',
  expected: 0,
  tolerance: cellMm,
  because: 'one cell',
  run: () => {
    const pieces = [disc('a', [-10, 6], 6), disc('b', [14, 6], 6), disc('c', [-4, -16], 6)];
    const state = grownTile({ sizeMm: 60, months: 8, rims: [3, 3, 3], pieces }, cellMm, '1');
    const { xMm, yMm } = triplePoint(state);
    return Math.hypot(xMm - 2, yMm + 28 / 11);
  },
}));

export const UNEQUAL_RATES: Topic = {
  title: 'Unlike rates and three seeds',
  quick: false,
  checks: [circle, ...WRAPS.flatMap(wrapChecks), closing, hyperbola, ...triple],
  plots: () => [
    {
      title: 'Distance of the seam from the slow centre, by angle',
      x: { label: 'degrees from the direction of the fast one' },
      y: { label: 'mm', log: true },
      expected: WRAPS.map(({ words, discs }) =>
        curve(`exact, ${words}`, 0, 150, (deg) => meetingRadiusMm(discs, deg * DEGREES)),
      ),
      found: WRAPS.map(({ words, points }) => ({
        name: `found, ${words}`,
        points: points()
          .filter(({ deg }, k) => deg <= 150 && k % 40 === 0)
          .map(({ deg, radiusMm }) => [deg, radiusMm] as const),
      })),
    },
  ],
};
