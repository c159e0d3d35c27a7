/** Claims about how verdicts spread along a seam: coverage, stretches, contact that opens like a zip, spread of results. */
import { seamByFate, seamLengths, touchingPairOfRow } from '../measure/seam';
import type { State } from '../model/state';
import { compile } from '../plan/compile';
import type { Pair, Piece, Xy } from '../plan/plan';
import { meanOf, type Mean } from '../stats/intervals';
import { DAYS_PER_MONTH, perDay } from '../units/quantity';
import { benchPlan, disc, grown, halves, overSeeds, seamPoints, seedWords } from './bench-tile';
import { type Check, once, THREE_ERRORS, type Topic } from './check';
import { curve } from './plot';
import { withSteps } from './step-length';
import { meanNuclei } from './time-cone';

const KJMA = 'Kolmogorov 1937, Johnson & Mehl 1939, Avrami 1939-41, in one dimension';
const MEIJERING = 'Meijering 1953, Philips Res. Rep. 8: 270-290';
const INDEPENDENT: Omit<Pair, 'a' | 'b'> = { acceptance: 0.5, consistency: 1_000_000 };
const DELAY_DAYS = 10;
const ZIP_MM_PER_DAY = 1;
const RIM = 3;

function nucleiPerMmDay(zipLengthMm: number): number {
  return (4 * ZIP_MM_PER_DAY) / (Math.PI * zipLengthMm * zipLengthMm);
}

const TILT_WORDS =
  'nuclei are drawn per contact cell at the mean length over all tilts, 1.122 cells: edges along the lattice take 12 % more, diagonal ones 21 % fewer, and stretches go with the root';

/** The tilt at which a contact cell stands for its mean length: 1 / cos = 1.122. */
const FAIR_DEG = 27;

/** Two halves that touch along a line through the middle, tilted from the upright. */
function tiltedHalves(deg: number): Piece[] {
  const far = 200;
  const left: readonly Xy[] = [
    [-far, -far],
    [0, -far],
    [0, far],
    [-far, far],
  ];
  const right: readonly Xy[] = [
    [0, -far],
    [far, -far],
    [far, far],
    [0, far],
  ];
  return [left, right].map((outline, k) => ({
    id: 'half',
    variety: 'ab'.charAt(k),
    at: [0, 0],
    turnDeg: deg,
    outline,
  }));
}

/** Days since verdicts could first fall. They fall at the end of days, so time counts from half a day before. */
const AGES_DAYS = [3, 6, 10];
const LONG_MM = 200;
const COVER_SEEDS = 40;

/** Share of a seam of touching edges that is decided, by seed and age. */
const covered = once(() => {
  const tile = {
    sizeMm: LONG_MM,
    months: 1,
    rims: [RIM, RIM],
    pieces: tiltedHalves(FAIR_DEG),
    pair: INDEPENDENT,
  };
  const layout = compile(benchPlan(tile), 0.5);
  return seedWords(COVER_SEEDS).map((seed) => {
    const { seam } = grown(layout, seed);
    const rows = seam.settled.subarray(1, seam.count);
    return AGES_DAYS.map((age) => rows.filter((settled) => settled <= DELAY_DAYS + age).length / rows.length);
  });
});

function coverLaw(age: number): number {
  return 1 - Math.exp(-nucleiPerMmDay(8) * ZIP_MM_PER_DAY * (age + 0.5) ** 2);
}

const coverage: readonly Check[] = AGES_DAYS.map((age, k) => ({
  name: `seam decided ${age} days after the first chance`,
  claim: `edges that touch all along, ${FAIR_DEG} degrees from the upright: decided share 1 - exp(-J c t^2), t from half a day before the first chance`,
  source: KJMA,
  unit: 'share of the seam',
  expected: coverLaw(age),
  tolerance: 0.035,
  because: `three errors of ${COVER_SEEDS} seeds on ${LONG_MM} mm, and the tile's edges, from beyond which no verdict comes`,
  run: () => meanOf(covered().map((shares) => shares[k])),
}));

/** Nuclei that hold seam. */
function stretches({ seam }: State): number {
  return new Set(seam.nucleus.subarray(1, seam.count).filter((nucleus) => nucleus >= 0)).size;
}

const STRETCH_SEEDS = 160;

interface Edges {
  readonly zipLengthMm: number;
  readonly stepDays: number;
  readonly tiltDeg: number;
}

function stretchesOnEdges({ zipLengthMm, stepDays, tiltDeg }: Edges): Mean {
  const tile = { sizeMm: 100, months: 4, rims: [RIM, RIM], pieces: tiltedHalves(tiltDeg), pair: INDEPENDENT };
  const layout = withSteps(compile(benchPlan({ ...tile, settings: { zipLengthMm } }), 0.5), stepDays);
  return meanOf(overSeeds(layout, STRETCH_SEEDS, stretches));
}

function edgesLaw({ zipLengthMm, tiltDeg }: Edges): number {
  return meanNuclei({
    halfLengthMm: 50 / Math.cos((tiltDeg * Math.PI) / 180),
    touchedDay: () => 0,
    days: 121,
    delayDays: DELAY_DAYS,
    nucleiPerMmDay: nucleiPerMmDay(zipLengthMm),
    zipMmPerDay: ZIP_MM_PER_DAY,
  });
}

const ZIP_LENGTHS_MM = [4, 8, 16, 32];

const allAtOnce: readonly Check[] = [
  ...ZIP_LENGTHS_MM.map((zipLengthMm) => ({ zipLengthMm, stepDays: 1, tiltDeg: FAIR_DEG })),
  { zipLengthMm: 8, stepDays: 0.5, tiltDeg: FAIR_DEG },
  { zipLengthMm: 8, stepDays: 2, tiltDeg: FAIR_DEG },
  { zipLengthMm: 8, stepDays: 1, tiltDeg: 0 },
  { zipLengthMm: 8, stepDays: 1, tiltDeg: 45 },
].map((edges) => ({
  name: `stretches on touching edges, zip length ${edges.zipLengthMm} mm, tilt ${edges.tiltDeg} degrees, step ${edges.stepDays} days`,
  claim: `mean stretch 2 sqrt(c / (pi J)) = ${edges.zipLengthMm} mm, on ${(100 / Math.cos((edges.tiltDeg * Math.PI) / 180)).toFixed(0)} mm between the tile's two edges`,
  source: `${MEIJERING}; ${KJMA}`,
  unit: 'stretches',
  expected: edgesLaw(edges),
  tolerance: 0.12 * edgesLaw(edges),
  because: `asked for 12 %; ${TILT_WORDS}; ${STRETCH_SEEDS} seeds leave 2 to 4 %`,
  run: () => stretchesOnEdges(edges),
}));

const SPEED_SEEDS = 20;

/** Rate at which one verdict runs, mm/day, over stretches of more than 8 mm of a tilted edge. */
function runningRate(tiltDeg: number): number {
  const cellMm = 0.5;
  const settings = { zipLengthMm: 40 };
  const tile = { sizeMm: 100, months: 3, rims: [RIM, RIM], pieces: tiltedHalves(tiltDeg), pair: INDEPENDENT };
  const layout = compile(benchPlan({ ...tile, settings }), cellMm);
  const tilt = (tiltDeg * Math.PI) / 180;
  const rates: number[] = [];
  for (const seed of seedWords(SPEED_SEEDS)) {
    const state = grown(layout, seed);
    const { seam, nuclei } = state;
    const along = seamPoints(state).map(({ xMm, yMm }) => yMm * Math.cos(tilt) - xMm * Math.sin(tilt));
    const born = new Map<number, number>();
    along.forEach((place, k) => {
      const nucleus = seam.nucleus[k + 1];
      if (nucleus >= 0 && seam.settled[k + 1] === nuclei.day[nucleus]) born.set(nucleus, place);
    });
    along.forEach((place, k) => {
      const nucleus = seam.nucleus[k + 1];
      const from = born.get(nucleus);
      if (from === undefined || Math.abs(place - from) < 8) return;
      rates.push(Math.abs(place - from) / (seam.settled[k + 1] - nuclei.day[nucleus]));
    });
  }
  return meanOf(rates).mean;
}

const running: readonly Check[] = [0, 22.5, 45].map((tiltDeg) => ({
  name: `a verdict runs along an edge tilted by ${tiltDeg} degrees`,
  claim: 'it runs at the asked 1 mm/day whatever the tilt',
  source:
    'definition; a path of steps to 8 neighbours is up to 8.2 % long: Borgefors 1986, Comput. Vision Graph. 34: 344-371 (from memory)',
  unit: 'mm/day',
  expected: ZIP_MM_PER_DAY,
  tolerance: 0.085,
  because:
    'a verdict steps from contact to contact among 8 neighbours: exact at 0 and 45 degrees, up to 7.6 % slow between',
  run: () => runningRate(tiltDeg),
}));

const DISC_SEEDS = 400;
const DISC_MONTHS = 8;

/** Discs of 10 mm that meet after `gapMm`: their contact opens from a point. */
function openingLaw(gapMm: number): number {
  const apart = 10 + gapMm;
  const rate = perDay(RIM);
  const days = Math.floor(DISC_MONTHS * DAYS_PER_MONTH);
  return meanNuclei({
    halfLengthMm: Math.sqrt((5 + rate * days) ** 2 - (apart / 2) ** 2),
    touchedDay: (x) => (Math.sqrt(x * x + (apart / 2) ** 2) - 5) / rate,
    days,
    delayDays: DELAY_DAYS,
    nucleiPerMmDay: nucleiPerMmDay(4),
    zipMmPerDay: ZIP_MM_PER_DAY,
  });
}

const opening: readonly Check[] = [2, 10].map((gapMm) => ({
  name: `stretches where discs meet at a point, ${gapMm} mm apart`,
  claim:
    'contact that opens slower than the verdict runs takes few stretches: the time cone with the day each mm touches (40 mm of touching edges would take ten)',
  source: `${KJMA}; time cone: Cahn 1996, Mater. Res. Soc. Symp. Proc. 398: 425 (from memory)`,
  unit: 'stretches',
  expected: openingLaw(gapMm),
  tolerance: 0.08 * openingLaw(gapMm),
  because: `8 %: ${DISC_SEEDS} seeds leave 2 %; a polyp side draws once for all its contact`,
  run: () => {
    const pieces = [disc('a', [-5 - gapMm / 2, 0], 10), disc('b', [5 + gapMm / 2, 0], 10)];
    const tile = { sizeMm: 80, months: DISC_MONTHS, rims: [RIM, RIM], pieces, pair: INDEPENDENT };
    const layout = compile(benchPlan({ ...tile, settings: { zipLengthMm: 4 } }), 0.5);
    return meanOf(overSeeds(layout, DISC_SEEDS, stretches));
  },
}));

const SPREAD_SEEDS = 300;

const spread: Check = {
  name: 'how widely results spread',
  claim:
    'independent coins a stretch: variance of the fused share is A (1 - A) times the sum of squared shares of the stretches, A = 0.3; difference',
  source: 'law of total variance',
  unit: 'share squared',
  expected: 0,
  tolerance: THREE_ERRORS,
  because: `three standard errors of ${SPREAD_SEEDS} seeds`,
  run: () => {
    const pair = { ...INDEPENDENT, acceptance: 0.3 };
    const layout = compile(
      benchPlan({ sizeMm: 60, months: 3, rims: [RIM, RIM], pieces: halves(60), pair }),
      0.5,
    );
    return meanOf(
      seedWords(SPREAD_SEEDS).map((seed) => {
        const state = grown(layout, seed);
        const lengths = seamLengths(state, touchingPairOfRow(state));
        const ofNucleus = new Float64Array(state.nuclei.count);
        lengths.forEach((length, row) => {
          if (length > 0) ofNucleus[state.seam.nucleus[row]] += length;
        });
        const total = lengths.reduce((sum, length) => sum + length, 0);
        const squares = ofNucleus.reduce((sum, length) => sum + (length / total) ** 2, 0);
        const fused = ofNucleus.reduce(
          (sum, length, k) => sum + (state.nuclei.fate[k] === 2 ? length / total : 0),
          0,
        );
        return (fused - 0.3) ** 2 - 0.3 * 0.7 * squares;
      }),
    );
  },
};

const RIM_SEEDS = 600;

const rimFactor: Check = {
  name: 'rims that meet less well than cuts',
  claim: 'discs 10 mm apart meet rim to rim: mean fused share is acceptance 0.8 times rim factor 0.5',
  source: 'rule; Fungia fused at cut and not at uncut edges: Jokiel & Bigger 1994, Biol. Bull. 186: 72-80',
  unit: 'share of the decided seam',
  expected: 0.4,
  tolerance: THREE_ERRORS,
  because: `three standard errors of ${RIM_SEEDS} seeds`,
  run: () => {
    const pieces = [disc('a', [-10, 0], 10), disc('b', [10, 0], 10)];
    const settings = { rimFactor: 0.5 };
    const pair = { ...INDEPENDENT, acceptance: 0.8 };
    const layout = compile(
      benchPlan({ sizeMm: 50, months: 5, rims: [RIM, RIM], pieces, pair, settings }),
      0.5,
    );
    return meanOf(
      seedWords(RIM_SEEDS).map((seed) => {
        const state = grown(layout, seed);
        const keys = touchingPairOfRow(state);
        const { fusedMm, lengthMm, undecidedMm } = seamByFate(state, seamLengths(state, keys), keys, 0);
        return fusedMm / (lengthMm - undecidedMm);
      }),
    );
  },
};

/** Every refusal is lapped. */
const lapSteps: readonly Check[] = [0.5, 2].map((stepDays) => ({
  name: `lapping at steps of ${stepDays} days`,
  claim:
    'at a difference in aggression of 1 the border moves at 1 mm/month from the verdict on, whatever the step',
  source: 'rule (judgement: the rate of lapping has not been measured)',
  unit: 'mm less expected at month 12',
  expected: 0,
  tolerance: 0.35,
  because: '3 %: verdicts differ by some days along the seam and the earliest lead, half a cell besides',
  run: () => {
    const tile = { sizeMm: 60, months: 12, rims: [RIM, RIM], aggression: [1, 0], pieces: halves(60) };
    const daily = compile(benchPlan(tile), 0.25);
    const layout = withSteps({ ...daily, rates: { ...daily.rates, lapGain: 2 } }, stepDays);
    const state = grown(layout, '1');
    const { nuclei } = state;
    const since = (state.day - meanOf([...nuclei.day.subarray(0, nuclei.count)]).mean) * stepDays;
    return meanOf(seamPoints(state).map((point) => point.xMm)).mean - since / DAYS_PER_MONTH;
  },
}));

export const ZIPPING: Topic = {
  title: 'How verdicts run along a seam',
  quick: false,
  checks: [...coverage, ...allAtOnce, ...running, ...opening, spread, rimFactor, ...lapSteps],
  plots: () => [
    {
      title: 'Seam decided over time where edges touch all along',
      x: { label: 'days after the first chance' },
      y: { label: 'share decided' },
      expected: [curve('1 - exp(-J c t^2)', 0, 14, coverLaw)],
      found: [
        {
          name: 'found',
          points: AGES_DAYS.map((age, k) => [age, meanOf(covered().map((shares) => shares[k])).mean]),
        },
      ],
    },
  ],
};
