import { changeVariety } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { block, FERN, HEATHER, lessonPlan } from '../lesson-plan';

const STRONG = { ...FERN, aggression: 1 };
const WEAK = { ...HEATHER, aggression: 0 };

const plan = lessonPlan({
  name: 'Lesson: lapped',
  sizeMm: 50,
  months: 14,
  varieties: [STRONG, WEAK],
  pairs: [{ a: STRONG.id, b: WEAK.id, acceptance: 0 }],
  pieces: [block('p1', STRONG, [-10, 0], 18, 26), block('p2', WEAK, [10, 0], 18, 26)],
  settings: { deadShare: 0, veiledShare: 0 },
});

export const LAPPED: Lesson = {
  id: 'lapped',
  title: 'Lapped',
  idea: 'One side grows over the other: its living edge, the lip, lies on top, dead skeleton below, and the seam travels.',
  plan,
  seed: 'two',
  month: 12,
  cut: { from: [-14, 2], to: [22, 2] },
  watch:
    'Both rims grow at one rate, yet the seam leaves the middle: Fern laps Heather. The ticks of the drawn seam point to the side that is covered. Switch ‘Seams’ off and look for a lip that throws shade to one side only. Cut it open: Heather’s skeleton goes on for millimetres under Fern.',
  text: [
    {
      sure: 'published',
      words: 'Studies of contact count it as one of the outcomes: one side grows over the other.',
      source: 'Amar, Chadwick & Rinkevich 2008, BMC Evol. Biol. 8: 126 (kin spat of Stylophora pistillata)',
    },
    {
      sure: 'published',
      words:
        'Between five species of Porites who lapped whom was a fixed ladder, and lapping was the only outcome, within a species too.',
      source: 'Rinkevich & Sakai 2001, Zoology 104: 91-97',
    },
    {
      sure: 'published',
      words:
        'Among colonies of one species who wins need not be a ladder: A may win over B, B over C and C over A. It can start late, and it can turn round.',
      source:
        'Chadwick-Furman & Rinkevich 1994, Coral Reefs 13: 57-63; Rinkevich 2004, Hydrobiologia 530: 443-450',
    },
    {
      sure: 'practice',
      words:
        'Trim the side that laps back in time, or leave a bare gap between the two: what is covered does not come back.',
    },
    {
      sure: 'guess',
      words:
        'Aggression from 0 to 1 is our own scale and only the difference counts: at a difference of 1 most seams that do not fuse lap, by 1 mm a month.',
    },
  ],
  questions: [
    {
      words: 'A seam stands 10 mm off the middle, with a lip on one side. Has the rim there grown faster?',
      answers: [
        {
          words: 'Yes: the seam lies nearer the slower one',
          isRight: false,
          earns: 'Unequal rates bend a seam, but leave no lip and nothing underneath.',
        },
        {
          words: 'No: it is growing over its neighbour',
          isRight: true,
          earns: 'The section shows it: the neighbour’s skeleton goes on under the lip.',
        },
        { words: 'Cannot be told', isRight: false, earns: 'It can: look for the lip, and cut one open.' },
      ],
    },
  ],
  tries: [
    {
      label: 'Make both equally aggressive',
      look: 'No lip: a ridge in the middle, as between any strangers.',
      plan: changeVariety(plan, FERN.id, { aggression: 0 }).plan,
    },
  ],
  claims: [
    {
      words: 'With all the aggression on one side most of the seam laps',
      amount: { of: 'lapped', month: 12 },
      from: 0.6,
      to: 1,
      because:
        'four of five seams that do not fuse lap at a difference of 1; on one tile it is mostly all or nothing',
    },
  ],
};
