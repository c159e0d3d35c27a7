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

/** The speck in common tissue, whose outer corners run clockwise from the top: two halves round the speck. */
function specked(outer: readonly Xy[]): GraftPiece['patches'] {
  const half = outer.length / 2;
  const [top, bottom] = [outer[0], outer[half]];
  const right = [top, ...speck.slice(0, 5), bottom, ...outer.slice(1, half).toReversed()];
  const left = [bottom, ...speck.slice(4), speck[0], top, ...outer.slice(half + 1).toReversed()];
  return [
    { variety: HEATHER.id, outline: speck },
    { variety: FERN.id, outline: right },
    { variety: FERN.id, outline: left },
  ];
}

const piece: GraftPiece = {
  id: 'p1',
  at: [0, 0],
  turnDeg: 0,
  patches: specked([[0, -HALF_MM], [HALF_MM, -HALF_MM], [HALF_MM, HALF_MM], [0, HALF_MM], [-HALF_MM, HALF_MM], [-HALF_MM, -HALF_MM]]), // prettier-ignore
};

const cutWith = (marginMm: number): StepOf<'isolate'> => ({
  id: `margin-${marginMm}`,
  day: DAY,
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
  steps: [cutWith(3)],
});

/** Half of the kerf comes off the margin of 3 mm. */
const EDGE_MM = SPECK_MM + 3 - 0.4;
const edge = ring(EDGE_MM);

const alone = (patches: GraftPiece['patches']) => ({
  ...plan,
  name: 'Lesson: a cutting of the rare speck',
  pieces: [{ ...piece, patches }],
  steps: [],
});

/** The cutting sawn off at the right, through two corners of the speck. */
function oneSided(): GraftPiece['patches'] {
  const [sawnMm] = speck[1];
  const inside = [...speck.slice(3), speck[0], speck[1]];
  const common: Xy[] = [[sawnMm, EDGE_MM], ...edge.slice(4), edge[0], [sawnMm, -EDGE_MM], ...inside.toReversed()]; // prettier-ignore
  return [
    { variety: HEATHER.id, outline: inside },
    { variety: FERN.id, outline: common },
  ];
}

export const RARE_SPECK: Lesson = {
  id: 'rare-speck',
  title: 'The rare speck and its margin',
  idea: 'Cut a rare speck out with enough common tissue to live, and let it reach the edge on one side: only a rim grows.',
  plan,
  seed: 'one',
  month: 2,
  watch:
    'At month 2 a speck of 5 mm lies in a common crust, and that day it is cut out with 3 mm round it. Step to month 3 for the hole, with what was taken told under the tile, and to month 5 to see it close from its edges. Then grow the cutting itself: try both ways below.',
  text: [
    {
      sure: 'published',
      words:
        'Two stocks in one colony are not rare in the wild: 5 % of grown Acropora millepora colonies held them, 3 % by the stricter count, and the authors think more. They were found by their genes, not by their colour.',
      source: 'Puill-Stephan, Willis, van Herwerden & van Oppen 2009, PLoS ONE 4: e7751',
    },
    {
      sure: 'published',
      words:
        'In its first month a wound closes in step with its perimeter, later more with its area and its area by perimeter.',
      source: 'Oren, Benayahu & Loya 1997, Mar. Ecol. Prog. Ser. 146: 101-107 (Favia favus)',
    },
    {
      sure: 'practice',
      words: 'Cuttings below 5 mm are counted risky.',
    },
    {
      sure: 'guess',
      words:
        'In the model a speck with common tissue all round it stays a speck for ever: it has no rim. Where the saw runs through its side it has one, and spreads from there.',
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
            '73 mm² after the kerf: nine in ten live in the model, and nearly a quarter is still rare. Once it has healed, cut it back to the speck on one side.',
        },
        {
          words: '6 mm: as safe as can be',
          isRight: false,
          earns: 'It lives, with nine tenths of it common: the rare colour is a dot in it.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Cut with 1 mm',
      look: 'A smaller hole at month 3, and a cutting that is mostly speck.',
      plan: { ...plan, steps: [cutWith(1)] },
    },
    {
      label: 'Cut with 6 mm',
      look: 'A cutting that lives, with nine tenths of it common.',
      plan: { ...plan, steps: [cutWith(6)] },
    },
    {
      label: 'Grow the cutting on a tile of its own',
      look: 'Common tissue all round: the crust spreads, and the rare colour stays a dot in its middle. Step on to month 6.',
      plan: alone(specked(edge)),
    },
    {
      label: 'The same, cut to the speck on one side',
      look: 'On the right the saw ran through the speck: there the rare colour has a rim of its own, and runs out with the crust as a band. Step on to month 6.',
      plan: alone(oneSided()),
    },
  ],
  claims: [
    {
      words:
        'Cut to the speck on one side, the rare colour holds more than twice the share that it does with common tissue all round',
      amount: { of: 'tissue', variety: HEATHER.id, month: 6, try: 4 },
      by: { of: 'tissue', variety: HEATHER.id, month: 6, try: 3 },
      from: 2,
      to: 20,
      because: 'only a rim grows, and all round it is of the common colour',
    },
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
