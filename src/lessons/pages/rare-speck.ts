import { switchStep } from '../../plan/edit-steps';
import type { GraftPiece, StepOf, Xy } from '../../plan/plan';
import type { Lesson } from '../lesson';
import { FERN, HEATHER, lessonPlan } from '../lesson-plan';

const SPECK_MM = 2.5;
const HALF_MM = 16;
const DAY = 61;
const EIGHTHS = Array.from({ length: 8 }, (_, k) => k);

/** Corners of an eight-sided ring, from the top round clockwise: exact to 0.001 mm. */
const ring = (radiusMm: number): Xy[] =>
  EIGHTHS.map((k): Xy => {
    const turn = (k * Math.PI) / 4;
    const mm = (x: number): number => Math.round(1000 * radiusMm * x) / 1000 + 0;
    return [mm(Math.sin(turn)), mm(-Math.cos(turn))];
  });

const speck = ring(SPECK_MM);
const right: Xy[] = [[0, -HALF_MM], ...speck.slice(0, 5), [0, HALF_MM], [HALF_MM, HALF_MM], [HALF_MM, -HALF_MM]]; // prettier-ignore
const left: Xy[] = [[0, HALF_MM], ...speck.slice(4), speck[0], [0, -HALF_MM], [-HALF_MM, -HALF_MM], [-HALF_MM, HALF_MM]]; // prettier-ignore

const piece: GraftPiece = {
  id: 'p1',
  at: [0, 0],
  turnDeg: 0,
  patches: [
    { variety: HEATHER.id, outline: speck },
    { variety: FERN.id, outline: right },
    { variety: FERN.id, outline: left },
  ],
};

const cutWith = (marginMm: number, on: boolean): StepOf<'isolate'> => ({
  id: `margin-${marginMm}`,
  day: DAY,
  on,
  kind: 'isolate',
  around: ring(SPECK_MM + marginMm),
  kerfMm: 0.8,
});

const plan = lessonPlan({
  name: 'Lesson: the rare speck and its margin',
  sizeMm: 48,
  months: 8,
  varieties: [FERN, HEATHER],
  pairs: [{ a: FERN.id, b: HEATHER.id, acceptance: 1, mingle: 'veins' }],
  pieces: [piece],
  steps: [cutWith(1, false), cutWith(3, true), cutWith(6, false)],
});

export const RARE_SPECK: Lesson = {
  id: 'rare-speck',
  title: 'The rare speck and its margin',
  idea: 'Cut a rare speck out with common tissue round it: enough to live, not so much that it drowns.',
  plan,
  seed: 'one',
  month: 3,
  watch:
    'A speck of 5 mm in a common crust. At month 2 it is cut out with 3 mm round it; the hole heals over from its edges.',
  text: [
    {
      sure: 'published',
      words:
        'Specks are rare in the wild too: 5 % of grown Acropora millepora colonies held two stocks, 3 % by the stricter count.',
      source: 'Puill-Stephan, Willis, van Herwerden & van Oppen 2009, PLoS ONE 4: e7751',
    },
    {
      sure: 'published',
      words: 'In its first month a wound closes in step with its perimeter, later with its area.',
      source: 'Oren, Benayahu & Loya 1997, Mar. Ecol. Prog. Ser. 146: 101-107 (Favia favus)',
    },
    {
      sure: 'practice',
      words: 'Cuttings below 5 mm are counted risky.',
    },
    {
      sure: 'guess',
      words:
        'The model lets half of all cuttings of 10 mm² live and nine in ten of 60 mm². The shape of that curve is usual, its numbers are judgement.',
    },
  ],
  questions: [
    {
      words: 'The speck is 5 mm across. Which margin do you take?',
      answers: [
        {
          words: '1 mm: as pure as can be',
          isRight: false,
          earns:
            '27 mm² after the kerf, two thirds of it rare: in the model one in four dies. With one speck that is the end of it.',
        },
        {
          words: '3 mm: some common tissue with it',
          isRight: true,
          earns:
            '73 mm² after the kerf: nine in ten live in the model, and nearly a quarter is still rare. It can be cut back once it has grown.',
        },
        {
          words: '10 mm: as safe as can be',
          isRight: false,
          earns: 'It lives, and the rare colour is a dot in it. The common rim grows away with the tile.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Cut with 1 mm',
      look: 'A smaller hole, and a cutting that is mostly speck.',
      plan: switchStep(switchStep(plan, 'margin-3', false).plan, 'margin-1', true).plan,
    },
    {
      label: 'Cut with 6 mm',
      look: 'A cutting that lives, with nine tenths of it common.',
      plan: switchStep(switchStep(plan, 'margin-3', false).plan, 'margin-6', true).plan,
    },
  ],
  claims: [
    {
      words:
        'With 1 mm of margin the share of rare tissue in the cutting is more than three times that with 6 mm',
      amount: { of: 'cut', variety: HEATHER.id, month: 3, try: 1 },
      by: { of: 'cut', variety: HEATHER.id, month: 3, try: 2 },
      from: 3,
      to: 8,
      because:
        'by area of the rings, less half the kerf: 8.1² by 3.1² is 6.8, less because the speck frays and polyps at the edge change',
    },
  ],
};
