/** Claims about one border in a running rim: how a faster sector opens, and how lean turns it. */
import { meanOf, type Mean } from '../stats/intervals';
import { lineThrough } from '../stats/line';
import { grown, PLAIN_MINGLE, seedWords } from './bench-tile';
import { type Check, THREE_ERRORS, type Topic } from './check';
import { ringAt, rimLayout, rootBlocks, rowAbove, wedges } from './painted-rim';

const KOROLEV = 'Korolev, Avlund, Hallatschek & Nelson 2010, Rev. Mod. Phys. 82: 1691-1718';
const FASTER = 'Hallatschek & Nelson 2010, Evolution 64: 193-206 (formula derived anew)';

const CELL_MM = 0.5;
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

const SPIRAL = `${KOROLEV}, section on chiral growth`;

/** Angle by which a border of halves of a disc of 8 mm has turned at 44 mm. */
function leanTurn(lean: number, interleave: number): Mean {
  const layout = rimLayout(
    {
      sizeMm: 96,
      months: 16,
      rims: [3, 3],
      pieces: wedges(8, [0, Math.PI, 2 * Math.PI], (k) => 'ab'.charAt(k)),
      mingle: { ...PLAIN_MINGLE, lean, interleave },
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
    name: 'lean on a round rim, interleave 0.7',
    claim: 'a leaning border is a logarithmic spiral: angle lean ln(R / R0), lean 0.2, R0 = 8, R = 44 mm',
    source: SPIRAL,
    unit: 'radians',
    expected: 0.2 * Math.log(44 / 8),
    tolerance: 0.15 * 0.2 * Math.log(44 / 8),
    because: `15 %, as on a flat rim; ${LEAN_SEEDS} seeds`,
    run: () => leanTurn(0.2, 0.7),
  },
  {
    name: 'lean at the default interleave',
    claim:
      'at interleave 0.4 borders drift as they are asked to, by lean 0.1 on a flat rim and by lean 0.2 round a disc: the greater shortfall',
    source: SPIRAL,
    unit: 'share of the drift asked',
    expected: 0,
    tolerance: 0.15,
    because: `15 %, as at interleave 0.7; ${LEAN_SEEDS} seeds`,
    known:
      'with little interleave a border holds fast to the polyps that it runs between: it reads one polyp behind, and a drift of a tenth of a polyp is mostly rounded away (at interleave 0.2 lean 0.1 drifts 1 mm where 8 are asked)',
    run: () =>
      Math.max(
        1 - leanDrift(0.1, 0.4).mean / (80 * 0.1),
        1 - leanTurn(0.2, 0.4).mean / (0.2 * Math.log(44 / 8)),
      ),
  },
];

export const FASTER_AND_LEANING: Topic = {
  title: 'Faster and leaning sectors',
  quick: false,
  checks: [...openings, ...roundOpenings, ...leans],
};
