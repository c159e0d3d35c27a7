/** Claims about borders between colours inside a fused colony: how they wander at the rim and fray behind it. */
import { compile } from '../plan/compile';
import { meanOf } from '../stats/intervals';
import { lineThrough } from '../stats/line';
import type { State } from '../model/state';
import { benchPlan, block, grown, halves, PLAIN_MINGLE, seedWords } from './bench-tile';
import { type Check, once, type Topic } from './check';

const TILE_MM = 60;
const WANDER_SEEDS = 128;
/** The rim has left the cut and the two pieces have fused by here, mm of advance. */
const FROM_MM = 4;
const ADVANCES_MM = [5, 10, 20, 40];

/** Place of the border between the two colours, averaged over a mm of advance about `advanceMm` above the cut. */
function borderMm(state: State, advanceMm: number): number {
  const { columns, rows, cellMm } = state.layout;
  const middle = Math.round((TILE_MM / 2 - 10 - advanceMm) / cellMm + (rows - 1) / 2);
  const half = Math.round(0.5 / cellMm);
  let second = 0;
  for (let r = middle - half; r < middle + half; r++)
    for (let c = 1; c < columns - 1; c++) if (state.variety[r * columns + c] === 2) second++;
  return TILE_MM / 2 - (second * cellMm) / (2 * half);
}

/** Variance over seeds of the border's sideways shift after each advance, mm2. */
function wander(interleave: number, cellMm: number): number[] {
  const low = TILE_MM / 2 - 10;
  const pieces = [
    block('a', [-TILE_MM / 2, low], [0, TILE_MM / 2]),
    block('b', [0, low], [TILE_MM / 2, TILE_MM / 2]),
  ];
  const pair = { acceptance: 1, mingle: { ...PLAIN_MINGLE, interleave } };
  const layout = compile(benchPlan({ sizeMm: TILE_MM, months: 16, rims: [3, 3], pieces, pair }), cellMm);
  const shifts = seedWords(WANDER_SEEDS).map((seed) => {
    const state = grown(layout, seed);
    const start = borderMm(state, FROM_MM);
    return ADVANCES_MM.map((advance) => borderMm(state, FROM_MM + advance) - start);
  });
  return ADVANCES_MM.map((_, k) => meanOf(shifts.map((shift) => shift[k] ** 2)).mean);
}

function wanderChecks(interleave: number, cellMm: number): Check[] {
  const variances = once(() => wander(interleave, cellMm));
  return [
    {
      name: `how a border wanders, interleave ${interleave}, cell ${cellMm} mm`,
      claim: 'the sideways shift grows as the square root of the advance: exponent 1/2',
      source: 'sector borders walk at random: Hallatschek & Nelson 2010, Evolution 64: 193-206',
      unit: 'exponent over 5 to 40 mm',
      expected: 0.5,
      tolerance: 0.1,
      because: `${WANDER_SEEDS} seeds give the exponent a standard error of 0.04`,
      run: () => lineThrough(ADVANCES_MM.map(Math.log), variances().map(Math.log)).slope / 2,
    },
    {
      name: `how far a border wanders, interleave ${interleave}, cell ${cellMm} mm`,
      claim: 'standard deviation of the shift after 1 mm of advance is the interleave asked for',
      source: 'definition of interleave',
      unit: 'mm per root mm',
      expected: interleave,
      tolerance: 0.2 * interleave,
      because: `asked for; ${WANDER_SEEDS} seeds know it to 6 %. Below 0.3 the control does nothing: the polyps alone give 0.23`,
      run: () => Math.sqrt(meanOf(variances().map((variance, k) => variance / ADVANCES_MM[k])).mean),
    },
  ];
}

const FRAY_SEEDS = 12;
const FRAY_MONTHS = 24;
const TURNOVER_PER_MONTH = 0.4;
const FRAY_TILE_MM = 40;

/** Share of the second colour by column of cells, over all seeds, and its share of each tile. */
const frayed = once(() => {
  const mingle = { ...PLAIN_MINGLE, turnoverPerMonth: TURNOVER_PER_MONTH };
  const pair = { acceptance: 1, mingle };
  const layout = compile(
    benchPlan({
      sizeMm: FRAY_TILE_MM,
      months: FRAY_MONTHS,
      rims: [3, 3],
      pieces: halves(FRAY_TILE_MM),
      pair,
    }),
    0.5,
  );
  const { columns } = layout;
  const profile = new Float64Array(columns);
  const shares: number[] = [];
  for (const seed of seedWords(FRAY_SEEDS)) {
    const { variety } = grown(layout, seed);
    let second = 0;
    for (let i = 0; i < variety.length; i++) {
      if (variety[i] !== 2) continue;
      profile[i % columns] += 1 / (columns - 2) / FRAY_SEEDS;
      second++;
    }
    shares.push(second / (columns - 2) ** 2);
  }
  return { profile: profile.subarray(1, columns - 1), cellMm: layout.cellMm, shares };
});

/** Standard deviation of the zone in which a profile rises from 0 to 1, mm. */
function zoneMm(profile: Float64Array, cellMm: number): number {
  const rises = Array.from(profile.subarray(1), (share, k) => share - profile[k]);
  const place = (k: number): number => (k + 1 - profile.length / 2) * cellMm;
  const mean = rises.reduce((sum, rise, k) => sum + rise * place(k), 0);
  return Math.sqrt(rises.reduce((sum, rise, k) => sum + rise * (place(k) - mean) ** 2, 0));
}

const fray: readonly Check[] = [
  {
    name: 'how a border frays behind the rim',
    claim: 'turnover at rate r makes a zone of standard deviation p sqrt(r t / 2), p = 1 mm between polyps',
    source: 'voter model, duality with random walks: Cox & Griffeath 1986, Ann. Prob. 14: 347-370',
    unit: 'mm',
    expected: Math.sqrt((TURNOVER_PER_MONTH * (FRAY_MONTHS - 0.7)) / 2),
    tolerance: 0.45,
    because: `20 %: ${FRAY_SEEDS} seeds, irregular polyps add some; the halves have fused after about 0.7 months`,
    run: () => zoneMm(frayed().profile, frayed().cellMm),
  },
  {
    name: 'turnover favours no colour',
    claim: 'the mean share of each colour does not drift',
    source: 'the voter model is a martingale: Cox & Griffeath 1986, Ann. Prob. 14: 347-370',
    unit: 'share of the second colour',
    expected: 0.5,
    tolerance: 0.01,
    because: `3 standard errors over ${FRAY_SEEDS} seeds`,
    run: () => meanOf(frayed().shares),
  },
];

export const BORDERS: Topic = {
  title: 'Borders between fused colours',
  quick: true,
  checks: [...[0.5, 1].flatMap((interleave) => wanderChecks(interleave, 0.5)), ...fray],
};

export const FINE_BORDERS: Topic = {
  title: 'Borders at other interleaves and cells',
  quick: false,
  checks: [
    ...wanderChecks(0.4, 0.5),
    ...[0.4, 0.5, 1].flatMap((interleave) => wanderChecks(interleave, 0.25)),
  ],
};
