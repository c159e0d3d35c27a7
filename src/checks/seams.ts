/** Claims about verdicts on a seam, and about what a verdict does to it. */
import { ridgeHeights } from '../measure/ridge-height';
import type { SeamMm } from '../measure/reading';
import { seamByFate, seamLengths, touchingPairOfRow } from '../measure/seam';
import type { Layout } from '../model/layout';
import { ridgeHeightMm } from '../model/ridge';
import { FATE } from '../model/seam-table';
import type { State } from '../model/state';
import { compile } from '../plan/compile';
import type { Piece } from '../plan/plan';
import { meanOf } from '../stats/intervals';
import { DAYS_PER_MONTH } from '../units/quantity';
import {
  type BenchTile,
  benchPlan,
  block,
  disc,
  grown,
  grownTile,
  halves,
  seamPoints,
  overSeeds,
  seedWords,
} from './bench-tile';
import { type Check, once, THREE_ERRORS, type Topic } from './check';

/** Coins that are as good as independent. */
const INDEPENDENT = 1_000_000;

function seamOf(state: State): SeamMm {
  const keys = touchingPairOfRow(state);
  return seamByFate(state, seamLengths(state, keys), keys, 0);
}

/** Share of the decided seam that fused. */
function fusedShare(state: State): number {
  const seam = seamOf(state);
  return seam.fusedMm / (seam.lengthMm - seam.undecidedMm);
}

/** Two discs of 10 mm, 4 mm apart. */
const APART: readonly Piece[] = [disc('a', [-7, 0], 10), disc('b', [7, 0], 10)];

/** Small cuts of two varieties, chequered with a gap of 1 mm. */
const MOSAIC: readonly Piece[] = Array.from({ length: 16 }, (_, k) => {
  const column = k % 4;
  const row = Math.floor(k / 4);
  const x = (column - 2) * 6 + 0.5;
  const y = (row - 2) * 6 + 0.5;
  return block((column + row) % 2 === 0 ? 'a' : 'b', [x, y], [x + 5, y + 5]);
});

const GEOMETRIES: readonly { readonly name: string; readonly tile: BenchTile }[] = [
  { name: 'touching halves', tile: { sizeMm: 40, months: 3, rims: [3, 3], pieces: halves(40) } },
  { name: 'discs 4 mm apart', tile: { sizeMm: 30, months: 5, rims: [3, 3], pieces: APART } },
  { name: 'mosaic of 5 mm cuts', tile: { sizeMm: 40, months: 3, rims: [3, 3], pieces: MOSAIC } },
];

function extreme(acceptance: 0 | 1): Check {
  return {
    name: `acceptance ${acceptance}`,
    claim: acceptance === 0 ? 'no mm of seam fuses' : 'every settled mm of seam is fused',
    source: 'definition of acceptance',
    unit: 'share of the settled seam',
    expected: acceptance,
    tolerance: 0,
    because: `no exception is allowed: ${GEOMETRIES.length} geometries, 10 seeds each; the worst`,
    run: () => {
      const shares = GEOMETRIES.flatMap(({ tile }) =>
        seedWords(10).map((seed) => fusedShare(grownTile({ ...tile, pair: { acceptance } }, 0.5, seed))),
      );
      return acceptance === 0 ? Math.max(...shares) : Math.min(...shares);
    },
  };
}

const SHARE_SEEDS = 200;

function meanFusedShare(
  acceptance: number,
  consistency: number,
  geometry: (typeof GEOMETRIES)[number],
): Check {
  const coins = consistency === INDEPENDENT ? 'independent verdicts' : 'verdicts alike';
  return {
    name: `mean fused share, acceptance ${acceptance}, ${geometry.name}, ${coins}`,
    claim: 'the mean fused share over many tiles equals the acceptance, whatever the geometry',
    source: 'each point of the seam takes the coin of the nucleus that reaches it: expectation of a coin',
    unit: 'share of the decided seam',
    expected: acceptance,
    tolerance: THREE_ERRORS,
    because: `three standard errors of ${SHARE_SEEDS} seeds at cell 0.5 mm`,
    run: () => {
      const layout = compile(benchPlan({ ...geometry.tile, pair: { acceptance, consistency } }), 0.5);
      return meanOf(overSeeds(layout, SHARE_SEEDS, fusedShare));
    },
  };
}

const DOMAIN_SEEDS = 30;

/** Stretches of seam by the nucleus that took them, on 100 mm of touching edges. */
const domainLength: Check = {
  name: 'stretches of seam that one verdict takes',
  claim:
    'nuclei at J per mm and day, running at c: mean stretch 2 sqrt(c / (pi J)), here the zip length of 8 mm, so 12.5 on 100 mm',
  source:
    'Meijering 1953, Philips Res. Rep. 8: 270-290; Kolmogorov 1937, Johnson & Mehl 1939, Avrami 1939-41',
  unit: 'stretches on 100 mm',
  expected: 12.5,
  tolerance: 1.5,
  because: `12 %: ${DOMAIN_SEEDS} seeds; a polyp holds about 1 mm of seam, and the tile's edges add half a stretch`,
  run: () => {
    const tile: BenchTile = { sizeMm: 100, months: 2, rims: [3, 3], pieces: halves(100) };
    const layout = compile(benchPlan({ ...tile, pair: { acceptance: 0.5, consistency: INDEPENDENT } }), 0.5);
    return meanOf(overSeeds(layout, DOMAIN_SEEDS, stretchesOf));
  },
};

/** Nuclei that hold seam. */
function stretchesOf({ seam }: State): number {
  return new Set(seam.nucleus.subarray(1, seam.count).filter((nucleus) => nucleus >= 0)).size;
}

const URN_SEEDS = 400;
const URN_DRAWS = 8;

const urn: Check = {
  name: 'how alike the verdicts of one pair are',
  claim: 'fused among the first n verdicts has variance n A (1 - A) (k + n) / (k + 1), k = consistency',
  source: "Polya's urn, the beta-binomial: Eggenberger & Polya 1923, Z. Angew. Math. Mech. 3: 279-289",
  unit: 'verdicts squared',
  expected: (URN_DRAWS * 0.4 * 0.6 * (1 + URN_DRAWS)) / 2,
  tolerance: THREE_ERRORS,
  because: `three standard errors of ${URN_SEEDS} seeds, n = ${URN_DRAWS}, A = 0.4, k = 1`,
  run: () => {
    const tile: BenchTile = { sizeMm: 100, months: 3, rims: [3, 3], pieces: halves(100) };
    const layout = compile(benchPlan({ ...tile, pair: { acceptance: 0.4, consistency: 1 } }), 1);
    const squares: number[] = [];
    for (const seed of seedWords(URN_SEEDS)) {
      const { nuclei } = grown(layout, seed);
      if (nuclei.count < URN_DRAWS) continue;
      const fused = nuclei.fate.subarray(0, URN_DRAWS).filter((fate) => fate === FATE.fused).length;
      squares.push((fused - URN_DRAWS * 0.4) ** 2);
    }
    return meanOf(squares);
  },
};

const REVERT_SEEDS = 60;

function reversion(months: number): Check {
  return {
    name: `late turning, month ${months}`,
    claim: 'a fused stretch that turns at rate r stays fused with chance exp(-r t), r = 0.1 a month',
    source: 'exponential decay; turning within 2 to 8 months: Hidaka et al. 1997, Coral Reefs 16: 13-20',
    unit: 'fused share less expected',
    expected: 0,
    tolerance: 0.06,
    because: `3 standard errors: ${REVERT_SEEDS} seeds of about 12 stretches each; at cell 1 mm`,
    run: () => {
      const pair = { acceptance: 1, revertPerMonth: 0.1 };
      const layout = compile(benchPlan({ sizeMm: 100, months, rims: [3, 3], pieces: halves(100), pair }), 1);
      const differences = seedWords(REVERT_SEEDS).map((seed) => {
        const state = grown(layout, seed);
        const keys = touchingPairOfRow(state);
        const lengths = seamLengths(state, keys);
        const total = lengths.reduce((sum, length) => sum + length, 0);
        const left = lengths.reduce((sum, length, row) => {
          const sinceVerdict = state.day - state.nuclei.day[state.seam.nucleus[row]];
          return length === 0 ? sum : sum + length * Math.exp((-0.1 * sinceVerdict) / DAYS_PER_MONTH);
        }, 0);
        return (seamOf(state).fusedMm - left) / total;
      });
      return meanOf(differences);
    },
  };
}

const RIDGE_MONTHS = [1, 3, 6, 12, 24, 36];

const ridgeCurve: Check = {
  name: 'ridge height over time',
  claim:
    'h = cap (1 - exp(-g t / cap)), cap 3 mm, first rise 0.3 mm/month; greatest difference over 36 months',
  source: 'rule (judgement: nobody has measured it); the exponential of this machine',
  unit: 'mm',
  expected: 0,
  tolerance: 1e-9,
  because: 'rounding: the engine works the exponential out by four operations',
  run: () => {
    const { rates } = ridgeLayout();
    const differences = RIDGE_MONTHS.map(
      (month) => ridgeHeightMm(month * DAYS_PER_MONTH, rates) - 3 * (1 - Math.exp((-0.3 * month) / 3)),
    );
    return Math.max(...differences.map(Math.abs));
  },
};

const ridgeLayout = once(() =>
  compile(
    benchPlan({ sizeMm: 40, months: 12, rims: [3, 3], pieces: halves(40), pair: { acceptance: 0 } }),
    0.5,
  ),
);

const ridgeReading: Check = {
  name: 'ridge height as read',
  claim: 'the reading is the height since the verdict of each mm of ridge: here all fell near day 20 of 365',
  source: 'definition',
  unit: 'mm',
  expected: 3 * (1 - Math.exp((-0.1 * 345) / DAYS_PER_MONTH)),
  tolerance: 0.05,
  because: '10 days about the mean verdict make 0.03 mm',
  run: () => {
    const state = grown(ridgeLayout(), '1');
    return ridgeHeights(state, seamLengths(state, touchingPairOfRow(state))).meanMm ?? Number.NaN;
  },
};

/** Every refusal is lapped: aggression 1 against 0, and a gain that leaves nothing else. */
function lappingLayout(cellMm: number): Layout {
  const tile: BenchTile = { sizeMm: 60, months: 12, rims: [3, 3], aggression: [1, 0], pieces: halves(60) };
  const layout = compile(benchPlan(tile), cellMm);
  return { ...layout, rates: { ...layout.rates, lapGain: 2 } };
}

const lapping: readonly Check[] = [0.25, 0.5].map((cellMm) => ({
  name: `lapping, cell ${cellMm} mm`,
  claim: 'at a difference in aggression of 1 the border moves at 1 mm/month from the verdict on',
  source: 'rule (judgement: the rate of lapping has not been measured)',
  unit: 'mm less expected at month 12',
  expected: 0,
  tolerance: 0.35,
  because: '3 %: verdicts differ by some days along the seam and the earliest lead, half a cell besides',
  run: () => {
    const state = grown(lappingLayout(cellMm), '1');
    const { nuclei } = state;
    const since = state.day - meanOf([...nuclei.day.subarray(0, nuclei.count)]).mean;
    return meanOf(seamPoints(state).map((point) => point.xMm)).mean - since / DAYS_PER_MONTH;
  },
}));

const sting: Check = {
  name: 'sting reach of a dead seam',
  claim: 'between equals half the reach dies on each side: a strip as wide as the reach, here 2 mm',
  source: 'rule (judgement: width of a dead strip not found in the literature)',
  unit: 'mm, bare area over length',
  expected: 2,
  tolerance: 0.25,
  because: 'half a cell of 0.25 mm on either side',
  run: () => {
    const settings = { deadShare: 1, stingMm: 2 };
    const state = grownTile({ sizeMm: 40, months: 3, rims: [3, 3], pieces: halves(40), settings }, 0.25, '1');
    const bare = state.variety.reduce((count, variety) => (variety === 255 ? count + 1 : count), 0);
    return (bare * 0.25 * 0.25) / 40;
  },
};

export const SEAMS: Topic = {
  title: 'Verdicts on a seam',
  quick: true,
  checks: [
    extreme(0),
    extreme(1),
    ...[0.3, 0.7].flatMap((acceptance) =>
      [1, INDEPENDENT].flatMap((consistency) =>
        GEOMETRIES.map((geometry) => meanFusedShare(acceptance, consistency, geometry)),
      ),
    ),
    domainLength,
    urn,
    ...[2, 6, 12].map(reversion),
    ridgeCurve,
    ridgeReading,
    ...lapping,
    sting,
  ],
};
