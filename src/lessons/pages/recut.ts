import { removeStep } from '../../plan/edit-steps';
import type { StepOf, Xy } from '../../plan/plan';
import type { Lesson } from '../lesson';
import { AMBER, block, FERN, lessonPlan } from '../lesson-plan';

const SIZE_MM = 48;
const SIDE_MM = 6;
const ROWS = SIZE_MM / SIDE_MM;
const EDGE_MM = SIZE_MM / 2;
/** Day of month 4. */
const DAY = 121;

/** Middle of a square, counted from the top left corner of the tile. */
const middle = (column: number, row: number): Xy => [
  (column + 0.5) * SIDE_MM - EDGE_MM,
  (row + 0.5) * SIDE_MM - EDGE_MM,
];

/** Every second square of the middle changes places with its mirror image across the seam. */
function swaps(): StepOf<'recut'>['then'] {
  const found: StepOf<'recut'>['then'][number][] = [];
  for (let row = 1; row < ROWS - 1; row++) {
    for (let column = 1; column < ROWS - 1; column++) {
      const left = Math.min(column, ROWS - 1 - column);
      if ((left + row) % 2 === 0)
        found.push({
          piece: `mosaic.${row * ROWS + column + 1}`,
          at: middle(ROWS - 1 - column, row),
          turnDeg: 0,
        });
    }
  }
  return found;
}

const cuts = Array.from({ length: ROWS - 1 }, (_, k) => (k + 1) * SIDE_MM - EDGE_MM);
const reach = EDGE_MM + 1;

const recut: StepOf<'recut'> = {
  id: 'mosaic',
  day: DAY,
  kind: 'recut',
  lines: [
    ...cuts.map((x): readonly Xy[] => [[x, -reach], [x, reach]]), // prettier-ignore
    ...cuts.map((y): readonly Xy[] => [[-reach, y], [reach, y]]), // prettier-ignore
  ],
  kerfMm: 0.8,
  then: swaps(),
};

const plan = lessonPlan({
  name: 'Lesson: recutting to finer veins',
  sizeMm: SIZE_MM,
  months: 12,
  varieties: [FERN, AMBER],
  pairs: [{ a: FERN.id, b: AMBER.id, acceptance: 1, mingle: 'veins' }],
  pieces: [block('p1', FERN, [-8, 0], 16, 32), block('p2', AMBER, [8, 0], 16, 32)],
  steps: [recut],
});

export const RECUT: Lesson = {
  id: 'recut',
  title: 'Recutting to finer veins',
  idea: 'Left alone, colours coarsen outward; the saw brings the fine pattern back, at a price.',
  plan,
  seed: 'one',
  month: 9,
  cut: { from: [-23, 3], to: [23, 3] },
  watch:
    'Two halves fuse and stay halves. At month 4 they are sawn into 6 mm squares, and every second one changes sides: a chequer that frays into veins.',
  text: [
    {
      sure: 'published',
      words:
        'In spreading colonies of microbes fewer and wider bands of colour are left as the front moves out.',
      source: 'Hallatschek, Hersen, Ramanathan & Nelson 2007, PNAS 104: 19926-19930',
    },
    {
      sure: 'published',
      words:
        'Cutting again costs: Echinopora cut after six months lost 23 % of its tissue and took almost four months to regain its size.',
      source:
        'Chou, Toh, Kikuzawa, Loke, Ng & Afiq-Rosli 2019, Re-fragmentation of the coral Echinopora lamellosa, ACSEE 2019 (abstract)',
    },
    {
      sure: 'practice',
      words:
        'A thin band saw takes a slot, the kerf, of 0.5 to 1 mm a cut. Count it: at 6 mm squares a kerf of 0.8 takes a quarter of the tissue. Growers then glue the parts, leave them four to eight weeks to heal, and cut in no warm spell.',
    },
    {
      sure: 'guess',
      words:
        'How colours mix within a fused colony is the model’s own choice: it copies from near neighbours, so its bands widen outward as those of microbes do, which nobody has shown for corals. The grooves are the saw’s: a healed cut stays shallow for months here, and is no seam of the usual kind. Parts fuse again here without fail, and all live; by the model’s own curve of losses about three of four squares of this size would.',
    },
  ],
  questions: [
    {
      words: 'Squares of 6 mm, kerf 0.8 mm. What goes into the drain, roughly?',
      answers: [
        {
          words: '5 % of the tissue',
          isRight: false,
          earns: 'A square of 6 mm keeps 5.2 by 5.2: 27 of 36 mm².',
        },
        {
          words: '25 % of the tissue',
          isRight: true,
          earns:
            '5.2 × 5.2 of 6 × 6 mm is three quarters. Finer squares lose more: of 3 mm squares nearly half.',
        },
        { words: '50 % of the tissue', isRight: false, earns: 'That is the price of 3 mm squares.' },
      ],
    },
  ],
  tries: [
    {
      label: 'Leave the halves alone',
      look: 'Two halves with a frayed border, as wide as ever at month 12.',
      plan: removeStep(plan, recut.id).plan,
    },
  ],
  claims: [
    {
      words:
        'At month 9 the veins of the recut tile are less than half as wide as those of the halves left alone',
      amount: { of: 'vein-width', month: 9 },
      by: { of: 'vein-width', month: 9, try: 1 },
      from: 0.1,
      to: 0.5,
      because: 'squares of 6 mm begin at 3 to 6 mm of width, halves of 32 mm at far more',
    },
  ],
};
