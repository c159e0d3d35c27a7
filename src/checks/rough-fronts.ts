/**
 * Noise makes a rim rough as growth does in one dimension: the universality class of Kardar, Parisi & Zhang 1986.
 * One polyp to a cell on a flat strip, roughness 0.5, more than a plan may ask, so that the law shows soon.
 */
import { grow } from '../model/grow';
import type { State } from '../model/state';
import { meanOf, type Mean } from '../stats/intervals';
import { lineThrough } from '../stats/line';
import { seedWords } from './bench-tile';
import { type Check, once, type Topic } from './check';
import { stripLayout } from './flat-strip';

const KPZ =
  'Kardar, Parisi & Zhang 1986, Phys. Rev. Lett. 56: 889-892: growth 1/3, roughness 1/2 in one dimension, exact';
const ROUGHNESS = 0.5;

/** Height of the rim on a day, in cells, by column between two; between cells by their days. */
function heights(state: State, day: number, from: number, to: number): number[] {
  const { arrival, layout } = state;
  const { columns, rows } = layout;
  const found: number[] = [];
  for (let c = from; c < to; c++) {
    let r = rows - 2;
    while (r > 1 && !(arrival[r * columns + c] <= day)) r--;
    const before = arrival[r * columns + c];
    const after = arrival[(r + 1) * columns + c];
    found.push(r - 1 + (after < Infinity ? (day - before) / (after - before) : 0));
  }
  return found;
}

function squareWidth(values: readonly number[]): number {
  const { mean } = meanOf(values);
  return meanOf(values.map((value) => (value - mean) * (value - mean))).mean;
}

const WIDE = 1024;
const MARGIN = 60;
const DAYS = [8, 16, 32, 64, 128];
const GROWTH_SEEDS = 24;
const GROUPS = 6;

/** Mean square width after each of DAYS, a row for each of GROUPS groups of seeds. */
const growing = once(() => {
  const layout = stripLayout({ widthCells: WIDE, lengthCells: 190, roughness: ROUGHNESS, days: 128 });
  const runs = seedWords(GROWTH_SEEDS).map((seed) => {
    let last: State | undefined;
    for (const state of grow(layout, seed)) last = state;
    return DAYS.map((day) =>
      last === undefined ? 0 : squareWidth(heights(last, day, 1 + MARGIN, WIDE + 1 - MARGIN)),
    );
  });
  return Array.from({ length: GROUPS }, (_, group) =>
    DAYS.map((_day, k) => meanOf(runs.filter((_run, at) => at % GROUPS === group).map((run) => run[k])).mean),
  );
});

/** Exponent of the width by group, as mean with its error. */
function exponent(xs: readonly number[], groups: readonly (readonly number[])[]): Mean {
  return meanOf(groups.map((squares) => lineThrough(xs.map(Math.log), squares.map(Math.log)).slope / 2));
}

const NARROW = [16, 32, 64];
const SATURATED_ROWS = [250, 300, 350, 400, 450, 500];
const SATURATED_SEEDS = 60;

/** Mean square width on strips so narrow that it grows no more, by group and strip. */
const saturated = once(() => {
  const byStrip = NARROW.map((widthCells) => {
    const layout = stripLayout({ widthCells, lengthCells: 700, roughness: ROUGHNESS, days: 500 });
    return seedWords(SATURATED_SEEDS).map((seed) => {
      let last: State | undefined;
      for (const state of grow(layout, seed)) last = state;
      const squares = SATURATED_ROWS.map((day) =>
        last === undefined ? 0 : squareWidth(heights(last, day, 1, widthCells + 1)),
      );
      return meanOf(squares).mean;
    });
  });
  return Array.from({ length: GROUPS }, (_, group) =>
    byStrip.map((runs) => meanOf(runs.filter((_run, at) => at % GROUPS === group)).mean),
  );
});

const growth: Check = {
  name: 'how a flat rim roughens',
  claim: `its width grows as time to the 1/3: exponent over ${DAYS[0]} to ${DAYS[DAYS.length - 1]} days`,
  source: KPZ,
  unit: 'exponent',
  expected: 1 / 3,
  tolerance: 0.04,
  because: `finite size: the polyps' own scatter adds a constant that lowers the exponent by some 0.02, and beyond 128 days the rim's waves near a tenth of the ${WIDE} cells and it reads lower still`,
  run: () => exponent(DAYS, growing()),
};

const roughness: Check = {
  name: 'how rough a rim is in the end',
  claim: `on a strip of L cells the width stays near L to the 1/2: exponent over ${NARROW.join(', ')} cells`,
  source: KPZ,
  unit: 'exponent',
  expected: 1 / 2,
  tolerance: 0.08,
  because:
    "finite size: the polyps' own scatter adds a constant that lowers the exponent by some 0.05 on strips this narrow",
  run: () => exponent(NARROW, saturated()),
};

/** Mean over groups as the root of the mean square. */
function widths(xs: readonly number[], groups: readonly (readonly number[])[]): [number, number][] {
  return xs.map((x, k) => [x, Math.sqrt(meanOf(groups.map((squares) => squares[k])).mean)]);
}

export const ROUGH_FRONTS: Topic = {
  title: 'Rough rims',
  quick: false,
  checks: [growth, roughness],
  plots: () => {
    const points = widths(DAYS, growing());
    const [, middle] = points[2];
    return [
      {
        title: 'Width of a flat rim over time',
        x: { label: 'days', log: true },
        y: { label: 'width, cells', log: true },
        expected: [
          { name: 'time to the 1/3', points: DAYS.map((day) => [day, middle * Math.cbrt(day / DAYS[2])]) },
        ],
        found: [{ name: 'found', points }],
      },
    ];
  },
};
