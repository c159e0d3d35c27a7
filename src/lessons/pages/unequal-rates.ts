import { changeVariety } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { AMBER, disc, GARNET, lessonPlan } from '../lesson-plan';

const FAST = { ...AMBER, rimMmPerMonth: 4.5 };
const SLOW = { ...GARNET, rimMmPerMonth: 1.5 };

const plan = lessonPlan({
  name: 'Lesson: unequal rates and the wrap',
  sizeMm: 60,
  months: 14,
  varieties: [FAST, SLOW],
  pairs: [{ a: FAST.id, b: SLOW.id, acceptance: 0 }],
  pieces: [disc('p1', FAST, [-16, 0], 10), disc('p2', SLOW, [-2, 0], 10)],
  settings: { deadShare: 0, veiledShare: 0 },
});

export const UNEQUAL_RATES: Lesson = {
  id: 'unequal-rates',
  title: 'Unequal rates and the wrap',
  idea: 'A faster rim reaches round a slower one: the seam bends, and the slow one ends as an island.',
  plan,
  seed: 'one',
  month: 12,
  watch:
    'Equal discs; Amber runs at 4.5, Garnet at 1.5 mm a month. The seam starts nearer Garnet, curls round behind it, and closes: by month 12 Garnet is an island.',
  text: [
    {
      sure: 'published',
      words:
        'Stock of one species differs in rate. In the same tanks the fastest of several Acropora palmata gained 2.16 times the area of the slowest: roughly 1.5 to 1.7 times at the rim.',
      source: 'Papke et al. 2021, Front. Mar. Sci. 8: 623963; the figure for the rim is ours',
    },
    {
      sure: 'published',
      words:
        'The bent seam is plain geometry of two rims: part of a circle in front, a spiral behind, because a rim can only go round the other, not through it.',
      source: 'Schaudt & Drysdale 1991, 7th ACM Symp. Comput. Geom.',
    },
    {
      sure: 'practice',
      words: 'Growers trim the fast rim back every month or two, so that the slow one is not closed in.',
    },
    {
      sure: 'guess',
      words:
        'In the model rates stay as set, here at three to one to show it: real stock differs less. From the geometry follows what helps the slow one: a head start, a larger piece, a corner of its own.',
    },
  ],
  questions: [
    {
      words: 'Rates are 3 and 2 mm a month. Which helps the slow colour keep its share longest?',
      answers: [
        {
          words: 'Setting both side by side in the middle of the tile',
          isRight: false,
          earns: 'There the fast one gets round it soonest.',
        },
        {
          words: 'A larger piece of the slow one, set earlier',
          isRight: true,
          earns: 'A head start of rim: the fast one still gains, but later.',
        },
        {
          words: 'Waiting: the slow one catches up',
          isRight: false,
          earns: 'It never does. Once it is wrapped it has no free rim left.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Give both 3 mm a month',
      look: 'A straight seam in the middle: the bend was the rates, nothing else.',
      plan: changeVariety(changeVariety(plan, AMBER.id, { rimMmPerMonth: 3 }).plan, GARNET.id, {
        rimMmPerMonth: 3,
      }).plan,
    },
  ],
  claims: [
    {
      words: 'At month 12 the fast one holds more than three quarters of the tissue',
      amount: { of: 'tissue', variety: FAST.id, month: 12 },
      from: 0.75,
      to: 0.95,
      because:
        'by geometry the slow region closes at the start gap and rates; a rough rim moves its tip by some millimetres',
    },
  ],
};
