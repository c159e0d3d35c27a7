/** Claims about the growing rim. All without noise unless the name says otherwise. */
import { takeCensus } from '../measure/census';
import { areasMm2 } from '../measure/cover';
import type { State } from '../model/state';
import { meanOf } from '../stats/intervals';
import { DAYS_PER_MONTH } from '../units/quantity';
import { compile } from '../plan/compile';
import { benchPlan, type BenchTile, disc, grown, grownTile, seedWords } from './bench-tile';
import { type Check, once, type Topic } from './check';
import { withSteps } from './step-length';

const DIRECTIONS = 72;

/** Arrival day at a place between cell centres, bilinear. */
function arrivalAt(state: State, xMm: number, yMm: number): number {
  const { columns, rows, cellMm } = state.layout;
  const x = xMm / cellMm + (columns - 1) / 2;
  const y = yMm / cellMm + (rows - 1) / 2;
  const i = Math.floor(y) * columns + Math.floor(x);
  const fx = x - Math.floor(x);
  const fy = y - Math.floor(y);
  const { arrival } = state;
  const top = arrival[i] * (1 - fx) + arrival[i + 1] * fx;
  const bottom = arrival[i + columns] * (1 - fx) + arrival[i + columns + 1] * fx;
  return top * (1 - fy) + bottom * fy;
}

/** Rim rate over `advanceMm` from a disc of 10 mm, over the asked one, in 72 directions. */
export function rateRatios(rim: number, cellMm: number, advanceMm: number, stepDays = 1): number[] {
  const centre = [0.03, 0.05] as const;
  const months = Math.ceil(advanceMm / rim) + 1;
  const plan = benchPlan({ sizeMm: 90, months, rims: [rim], pieces: [disc('a', centre, 10)] });
  const state = grown(withSteps(compile(plan, cellMm), stepDays), '1');
  const day = ((advanceMm / rim) * DAYS_PER_MONTH) / stepDays;
  return Array.from({ length: DIRECTIONS }, (_, k) => {
    const angle = (k * 2 * Math.PI) / DIRECTIONS;
    let low = 5;
    let high = 5 + 1.1 * advanceMm;
    while (high - low > 1e-4) {
      const middle = (low + high) / 2;
      const at = arrivalAt(state, centre[0] + middle * Math.cos(angle), centre[1] + middle * Math.sin(angle));
      if (at < day) low = middle;
      else high = middle;
    }
    return (low - 5) / advanceMm;
  });
}

function rimRateChecks(rim: number, cellMm: number): Check[] {
  const ratios = once(() => rateRatios(rim, cellMm, rim === 1 ? 12 : 30));
  const common = {
    source: 'definition of the rim rate',
    unit: 'of the asked rate',
    expected: 0,
    tolerance: 0.01,
  };
  return [
    {
      ...common,
      name: `rim rate, ${rim} mm/month, cell ${cellMm} mm`,
      claim: 'the rim advances at the asked rate in each of 72 directions',
      because: 'asked for; the arrival rule is first order and 0.1 to 0.6 % slow',
      run: () =>
        ratios().reduce((worst, ratio) => (Math.abs(ratio - 1) > Math.abs(worst) ? ratio - 1 : worst), 0),
    },
    {
      ...common,
      name: `round rim, ${rim} mm/month, cell ${cellMm} mm`,
      claim: 'a disc stays a disc: fastest less slowest of 72 directions',
      because: 'asked for; the 8 neighbours of a cell show in the rim at that level',
      run: () => Math.max(...ratios()) - Math.min(...ratios()),
    },
  ];
}

/** Radius of a disc with the area that one variety holds. */
function radiusByArea(state: State): number {
  return Math.sqrt(areasMm2(takeCensus(state))[1] / Math.PI);
}

const NOISY_SEEDS = 6;

const noisyRim: Check = {
  name: 'rim rate with noise',
  claim: 'roughness 0.1 leaves the mean rate over 12 months as asked, by area',
  source:
    'definition; noise makes fronts faster (Krug & Meakin 1990, J. Phys. A 23: L987) and is divided out',
  unit: 'of the asked rate',
  expected: 0,
  tolerance: 0.01,
  because: `asked for; mean of ${NOISY_SEEDS} seeds at cell 0.5 mm`,
  run: () => {
    const tile: BenchTile = { sizeMm: 100, months: 12, rims: [3], pieces: [disc('a', [0, 0], 10)] };
    const noisy = { ...tile, settings: { roughness: 0.1 } };
    const rates = seedWords(NOISY_SEEDS).map((seed) => {
      const state = grownTile(noisy, 0.5, seed);
      return (radiusByArea(state) - 5) / (3 * (state.day / DAYS_PER_MONTH)) - 1;
    });
    return meanOf(rates);
  },
};

const area: Check = {
  name: 'area of a disc',
  claim: 'a piece of 10 mm at 3 mm/month covers pi 23^2 mm2 after 6 months',
  source: 'geometry',
  unit: 'mm2',
  expected: 1661.9,
  tolerance: 16.6,
  because: '1 %, as the rim rate',
  run: () => {
    // day 183 holds month 6 (182.625 days): cells reached by then are counted
    const state = grownTile(
      { sizeMm: 60, months: 7, rims: [3], pieces: [disc('a', [0, 0], 10)] },
      0.25,
      '1',
      183,
    );
    const cells = state.arrival.reduce((count, day) => (day <= 6 * DAYS_PER_MONTH ? count + 1 : count), 0);
    return cells * 0.25 * 0.25;
  },
};

const healing: Check = {
  name: 'healing delay',
  claim: 'a cut piece stands still for 30 days and then grows at its rate',
  source: 'rule; healing lip within the first month (van Woesik 1998, Mar. Ecol. Prog. Ser. 164: 213-220)',
  unit: 'mm radius at day 91',
  expected: 5 + (3 * 61) / DAYS_PER_MONTH,
  tolerance: 0.06,
  because: '1 % of the advance',
  run: () => {
    const tile = {
      sizeMm: 40,
      months: 3,
      rims: [3],
      pieces: [disc('a', [0, 0], 10)],
      settings: { healingDays: 30 },
    };
    return radiusByArea(grownTile(tile, 0.25, '1', 91));
  },
};

/** Preview and exact run share noise and pattern: each cell of 0.5 mm against the four of 0.25 mm that it covers. */
const agreement: Check = {
  name: 'preview and exact run are alike',
  claim: 'three discs with noise, 12 months: share of the tile that has one variety at cell 0.5 and 0.25 mm',
  source: 'polyps carry identity and do not depend on the cell (definition)',
  unit: 'share of cells',
  expected: 1,
  tolerance: 0.05,
  because: 'asked for: at least 95 % on two to four discs',
  run: () => {
    const pieces = [disc('a', [-14, -9], 12), disc('b', [13, -11], 12), disc('a', [2, 15], 12)];
    const tile = { sizeMm: 60, months: 12, rims: [2, 2.4], pieces, settings: { roughness: 0.1 } };
    const [fine, coarse] = [0.25, 0.5].map((cellMm) => grownTile(tile, cellMm, '1'));
    const { columns } = coarse.layout;
    let alike = 0;
    for (let r = 1; r < columns - 1; r++)
      for (let c = 1; c < columns - 1; c++) {
        const corner = (2 * r - 1) * fine.layout.columns + 2 * c - 1;
        for (const cell of [
          corner,
          corner + 1,
          corner + fine.layout.columns,
          corner + fine.layout.columns + 1,
        ])
          if (fine.variety[cell] === coarse.variety[r * columns + c]) alike++;
      }
    return alike / (4 * (columns - 2) ** 2);
  },
};

export const RIMS: Topic = {
  title: 'Rims',
  quick: true,
  checks: [
    ...[1, 3, 6, 12].flatMap((rim) => [0.25, 0.5].flatMap((cellMm) => rimRateChecks(rim, cellMm))),
    noisyRim,
    area,
    healing,
    agreement,
  ],
};
