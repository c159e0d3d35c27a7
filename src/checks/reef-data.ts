/** The model's first assumption and its default rate, held against open data from reefs. */
import { DEFAULTS } from '../model/defaults';
import { meanOf, quantile } from '../stats/intervals';
import { lineThrough } from '../stats/line';
import { upperQuantile } from '../stats/upper-quantile';
import { type Check, once, THREE_ERRORS, type Topic } from './check';
import colonies from './data/colony-growth.json';
import extension from './data/extension-rates.json';

const COLONIES =
  '1,178 yearly pairs of colony area, Lizard Island: Madin et al. 2023, Ecology, doi 10.1002/ecy.4017 (data doi 10.5281/zenodo.7517462)';
const TABLE = 'Barkley et al. 2023, NOAA Tech. Memo. NMFS-PIFSC-154, doi 10.25923/g4hg-7686';

interface Species {
  readonly name: string;
  /** Radius of a disc of the colony's area, cm, and what it gained in a year. */
  readonly radiiCm: readonly number[];
  readonly gainsCm: readonly number[];
}

const species = once((): readonly Species[] =>
  colonies.species.map(({ name, pairs }) => {
    const radii = pairs.map(([before, after]) => [Math.sqrt(before / Math.PI), Math.sqrt(after / Math.PI)]);
    radii.sort(([a], [b]) => a - b);
    return {
      name,
      radiiCm: radii.map(([before]) => before),
      gainsCm: radii.map(([before, after]) => after - before),
    };
  }),
);

function ofSpecies(name: string): Species {
  const found = species().find((one) => one.name === name);
  if (found === undefined) throw new Error(`no species ${name}`);
  return found;
}

/** cm/year, as printed with the data. */
const UNDISTURBED = [
  { name: 'Acropora cytherea', cmPerYear: 8.97, error: 0.487 },
  { name: 'Acropora hyacinthus', cmPerYear: 7.463, error: 0.653 },
  { name: 'Acropora cf. digitifera', cmPerYear: 2.0566, error: 0.507 },
  { name: 'Acropora nasuta', cmPerYear: 3.0842, error: 0.249 },
  { name: 'Goniastrea retiformis', cmPerYear: 1.5655, error: 0.224 },
];

const undisturbed: readonly Check[] = UNDISTURBED.map(({ name, cmPerYear, error }) => ({
  name: `undisturbed rim rate of ${name}`,
  claim: 'the 0.98 quantile of yearly radial growth is the value published with the data',
  source: COLONIES,
  unit: 'cm/year',
  expected: cmPerYear,
  tolerance: 0.005,
  because: `areas are kept to 0.01 cm2; the published standard error is ${error}`,
  run: () => {
    const { gainsCm } = ofSpecies(name);
    return upperQuantile(gainsCm, 0.98);
  },
}));

/** Slope of log10 area a year later on log10 area, as printed with the data. */
const SLOPES = [
  { name: 'Acropora cytherea', slope: 0.901405 },
  { name: 'Acropora hyacinthus', slope: 0.942759 },
  { name: 'Acropora cf. digitifera', slope: 0.936183 },
  { name: 'Acropora nasuta', slope: 0.927746 },
];

const areaSlopes: Check = {
  name: 'area against area a year later',
  claim: 'least squares of the logarithms gives the four slopes published with the data; greatest difference',
  source: COLONIES,
  unit: 'per unit',
  expected: 0,
  tolerance: 2e-4,
  because: 'areas are kept to 0.01 cm2',
  run: () =>
    Math.max(
      ...SLOPES.map(({ name, slope }) => {
        const { radiiCm, gainsCm } = ofSpecies(name);
        const before = radiiCm.map((radius) => 2 * Math.log10(radius));
        const after = radiiCm.map((radius, k) => 2 * Math.log10(radius + gainsCm[k]));
        return Math.abs(lineThrough(before, after).slope - slope);
      }),
    ),
};

/** Upper decile of growth, where little was lost, of the larger half of colonies over the smaller half. */
function largeOverSmall({ gainsCm }: Species): number {
  const half = Math.floor(gainsCm.length / 2);
  return quantile(gainsCm.slice(half), 0.9) / quantile(gainsCm.slice(0, half), 0.9);
}

const constantRate: readonly Check[] = [
  {
    name: 'constant radial rate, undisturbed colonies',
    claim:
      'large and small colonies extend alike: upper decile of radial growth of the larger half over that of the smaller, mean of 11 species',
    source: COLONIES,
    unit: 'ratio',
    expected: 1,
    tolerance: THREE_ERRORS,
    because: 'three standard errors between species',
    run: () => meanOf(species().map(largeOverSmall)),
  },
  {
    name: 'constant radial rate, all colonies',
    claim: 'radial growth does not depend on size: slope of growth on radius, mean of 11 species',
    source: COLONIES,
    unit: 'cm per cm',
    expected: 0,
    tolerance: THREE_ERRORS,
    because: 'three standard errors between species',
    known:
      'on a reef large colonies lose more tissue to storms, predators and neighbours than small ones; the model has no such loss, and the undisturbed upper decile shows no fall with size (the check above)',
    run: () => meanOf(species().map(({ radiiCm, gainsCm }) => lineThrough(radiiCm, gainsCm).slope)),
  },
];

/** Pocillopora acuta in a tank, 6 cm in 140 days of a year's rate: 5.0 mm/month (Huang, Mayfield & Fan 2020). */
const TANK_MM_PER_MONTH = 5;

function reefRate(taxon: string, form: string): number {
  const row = extension.rows.find((one) => one.taxon === taxon && one.form === form);
  if (row === undefined) throw new Error(`no rate of ${taxon}, ${form}`);
  return (row.cmPerYear * 10) / 12;
}

const defaults: readonly Check[] = [
  {
    name: 'default rim rate',
    claim:
      'encrusting Montipora on reefs, times the one measured ratio of tank to reef (Pocillopora, 5.0 mm/month in a fed tank)',
    source: `${TABLE}; Huang, Mayfield & Fan 2020, Sci. Rep. 10, s41598-020-76451-1`,
    unit: 'mm/month',
    expected:
      reefRate('Montipora sp', 'Encrusting Mounding') *
      (TANK_MM_PER_MONTH / reefRate('Pocillopora sp', 'Branching')),
    tolerance: 1.1,
    because: 'both reef rates have intervals of 24 % to either side: 34 % together',
    run: () => DEFAULTS.rimMmPerMonth.value,
  },
  {
    name: 'range of the rim rate',
    claim: 'the control, 0.2 to 15 mm/month, holds each of the 63 rates of the table; how many lie outside',
    source: TABLE,
    unit: 'rates',
    expected: 0,
    tolerance: 0,
    because: 'no exception is allowed',
    run: () =>
      extension.rows.filter(({ cmPerYear }) => (cmPerYear * 10) / 12 < 0.2 || (cmPerYear * 10) / 12 > 15)
        .length,
  },
];

export const REEF_DATA: Topic = {
  title: 'Growth on reefs',
  quick: true,
  checks: [...undisturbed, areaSlopes, ...constantRate, ...defaults],
  plots: () => [
    {
      title: 'Radial growth of the larger half of colonies against the smaller, upper decile, 11 species',
      x: { label: 'smaller half, cm/year' },
      y: { label: 'larger half, cm/year' },
      expected: [
        {
          name: 'the same rate',
          points: [
            [0, 0],
            [7, 7],
          ],
        },
      ],
      found: [
        {
          name: 'one species each',
          points: species().map(({ gainsCm }) => {
            const half = Math.floor(gainsCm.length / 2);
            return [quantile(gainsCm.slice(0, half), 0.9), quantile(gainsCm.slice(half), 0.9)] as const;
          }),
        },
      ],
    },
  ],
};
