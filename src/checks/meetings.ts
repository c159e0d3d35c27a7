/** Claims about where rims meet, and when. All without noise unless the name says otherwise. */
import { takeCensus } from '../measure/census';
import { areasMm2 } from '../measure/cover';
import { seamByFate, seamLengths, touchingPairOfRow } from '../measure/seam';
import { firstTouchDay } from '../measure/settled';
import { meanOf } from '../stats/intervals';
import { DAYS_PER_MONTH } from '../units/quantity';
import { type BenchTile, block, disc, grownTile, seamPoints, seedWords } from './bench-tile';
import { type Check, once, type Topic } from './check';
import { meetingRadiusMm } from './meeting-curve';

const DEGREES = Math.PI / 180;

/** Equal discs of radius 5, centres 30 mm apart, on a line tilted by `degrees`. */
function equalDiscs(degrees: number, rim: number, months: number, roughness = 0): BenchTile {
  const x = 15 * Math.cos(degrees * DEGREES);
  const y = 15 * Math.sin(degrees * DEGREES);
  const pieces = [disc('a', [-x, -y], 10), disc('b', [x, y], 10)];
  return { sizeMm: 100, months, rims: [rim, rim], pieces, settings: { roughness } };
}

const bisector: readonly Check[] = [0.25, 0.5].map((cellMm) => ({
  name: `equal discs meet on the bisector, cell ${cellMm} mm`,
  claim: 'the seam of two equal discs is the line midway: greatest distance of a contact from it',
  source: 'symmetry',
  unit: 'mm',
  expected: 0,
  tolerance: cellMm / 2,
  because: 'half a cell',
  run: () => {
    const points = seamPoints(grownTile(equalDiscs(0, 3, 8), cellMm, '1'));
    return Math.max(...points.map((point) => Math.abs(point.xMm)));
  },
}));

const noisyBisector: Check = {
  name: 'equal discs with noise meet on the bisector in the mean',
  claim: 'roughness 0.1 moves the seam of two equal discs to neither side',
  source: 'symmetry',
  unit: 'mm',
  expected: 0,
  tolerance: 0.15,
  because: 'mean over 10 seeds; a single run strays by 0.6 mm at most in the mean square',
  run: () => {
    const means = seedWords(10).map((seed) => {
      const points = seamPoints(grownTile(equalDiscs(0, 3, 8, 0.1), 0.25, seed));
      return meanOf(points.map((point) => point.xMm)).mean;
    });
    return meanOf(means);
  },
};

const touch: Check = {
  name: 'first touch of equal discs',
  claim: 'discs of radius 5 mm, 30 mm apart, at 3 mm/month touch after (d - 2a) / (2v) = 3.3333 months',
  source: 'geometry',
  unit: 'days',
  expected: (10 / 3) * DAYS_PER_MONTH,
  tolerance: 1.3,
  because: 'half a cell of 0.25 mm at that rate',
  run: () => firstTouchDay(grownTile(equalDiscs(0, 3, 4), 0.25, '1')) ?? Number.NaN,
};

/** Radius reached, length of seam, area of each: closed form, and again by a two-front solver. */
const LENSES = [
  { radiusMm: 17, seamMm: 16, areaMm2: 886.3226 },
  { radiusMm: 23, seamMm: 34.8712, areaMm2: 1468.3125 },
  { radiusMm: 29, seamMm: 49.6387, areaMm2: 2150.5181 },
];

function lensChecks({ radiusMm, seamMm, areaMm2 }: (typeof LENSES)[number]): Check[] {
  // the rate is set so that the radius is reached on a whole day; tilted by 22.5 degrees, where a line reads its length
  const day = 120;
  const state = once(() =>
    grownTile(equalDiscs(22.5, ((radiusMm - 5) / day) * DAYS_PER_MONTH, 4), 0.25, '1', day),
  );
  const common = { source: 'chord and segment of two circles: geometry' };
  return [
    {
      ...common,
      name: `seam of equal discs at radius ${radiusMm} mm`,
      claim: 'seam length 2 sqrt(R^2 - d^2/4)',
      unit: 'mm',
      expected: seamMm,
      tolerance: 0.02 * seamMm + 0.3,
      because:
        'each end moves R / sqrt(R^2 - d^2/4) times as fast as the rim, which is up to 1 % slow; ends 0.93 cells',
      run: () => {
        const keys = touchingPairOfRow(state());
        return seamByFate(state(), seamLengths(state(), keys), keys, 0).lengthMm;
      },
    },
    {
      ...common,
      name: `area of equal discs at radius ${radiusMm} mm`,
      claim: 'area of each is the circle less the segment beyond the seam',
      unit: 'mm2',
      expected: areaMm2,
      tolerance: 0.015 * areaMm2,
      because: 'twice the rim rate error of 0.7 %',
      run: () => areasMm2(takeCensus(state()))[1],
    },
  ];
}

/** Fast disc at x = -45, slow one at x = -15, radius 5 mm, rates 8 and 4 mm/month: 2 : 1. */
const unequal = once(() => {
  const pieces = [disc('a', [-45, 0], 10), disc('b', [-15, 0], 10)];
  return grownTile({ sizeMm: 100, months: 9, rims: [8, 4], pieces }, 0.25, '1');
});

const spiral: Check = {
  name: 'two rates meet on the exact curve',
  claim:
    'discs of rates 2 : 1 meet on the weighted curve and behind it on a logarithmic spiral, up to 150 degrees',
  source: 'Schaudt & Drysdale 1991 (7th ACM Symp. Comput. Geom.); Okabe et al. 2000, Spatial Tessellations',
  unit: 'mm, greatest distance',
  expected: 0,
  tolerance: 1,
  because: 'a first-order solver at 0.25 mm errs by 0.5 to 0.8 mm at 150 degrees, always outward',
  run: () => {
    const discs = { ratio: 2, apartMm: 30, radiusMm: 5 };
    const curve = Array.from({ length: 1601 }, (_, k) => {
      const angle = k * 0.1 * DEGREES;
      const r = meetingRadiusMm(discs, angle);
      return [-15 - r * Math.cos(angle), r * Math.sin(angle)] as const;
    });
    const near = seamPoints(unequal()).filter(
      ({ xMm, yMm }) => Math.atan2(Math.abs(yMm), -15 - xMm) <= 150 * DEGREES && Math.abs(yMm) < 49,
    );
    const distances = near.map(({ xMm, yMm }) =>
      Math.min(...curve.map(([x, y]) => Math.hypot(xMm - x, Math.abs(yMm) - y))),
    );
    return Math.max(...distances);
  },
};

/** Full-height blocks with edges 6 mm apart, 4 and 2 mm/month. */
const parallel = once(() => {
  const pieces = [block('a', [-20, -20], [-3, 20]), block('b', [3, -20], [20, 20])];
  return seamPoints(grownTile({ sizeMm: 40, months: 2, rims: [4, 2], pieces }, 0.25, '1'));
});

const edges: readonly Check[] = [
  {
    name: 'parallel edges meet at g v1 / (v1 + v2)',
    claim: 'edges 6 mm apart at 4 and 2 mm/month meet 4 mm from the first',
    source: 'geometry',
    unit: 'mm',
    expected: 1,
    tolerance: 0.125,
    because: 'half a cell',
    run: () => meanOf(parallel().map((point) => point.xMm)).mean,
  },
  {
    name: 'parallel edges meet all at once',
    claim: 'they touch along the whole length after g / (v1 + v2) = 1 month; latest contact',
    source: 'geometry',
    unit: 'days',
    expected: DAYS_PER_MONTH,
    tolerance: 2,
    because: 'a contact is dated by the later of its two cells: half a cell at the slower rate',
    run: () => Math.max(...parallel().map((point) => point.touchedDay)),
  },
  {
    name: 'parallel edges meet nowhere earlier',
    claim: 'earliest contact less latest contact',
    source: 'geometry',
    unit: 'days',
    expected: 0,
    tolerance: 0.1,
    because: 'the rim of a straight edge is straight',
    run: () => {
      const days = parallel().map((point) => point.touchedDay);
      return Math.min(...days) - Math.max(...days);
    },
  },
];

export const MEETINGS: Topic = {
  title: 'Where rims meet',
  quick: true,
  checks: [...bisector, noisyBisector, touch, ...LENSES.flatMap(lensChecks), spiral, ...edges],
};
