import { changePair } from '../../plan/edit';
import { pairShare } from '../claim';
import type { Lesson } from '../lesson';
import { AMBER, block, FERN, GARNET, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: fused against wall',
  sizeMm: 56,
  months: 12,
  varieties: [FERN, AMBER, GARNET],
  pairs: [
    { a: FERN.id, b: AMBER.id, acceptance: 1 },
    { a: AMBER.id, b: GARNET.id, acceptance: 0 },
  ],
  pieces: [
    block('p1', FERN, [-15, 0], 14, 28),
    block('p2', AMBER, [0, 0], 14, 28),
    block('p3', GARNET, [15, 0], 14, 28),
  ],
  settings: { deadShare: 0, veiledShare: 0 },
});

export const FUSED_OR_WALL: Lesson = {
  id: 'fused-or-wall',
  title: 'Fused against wall',
  idea: 'A real merge has no line: skeleton and tissue run through. A wall has two sides and a crest.',
  plan,
  seed: 'one',
  month: 9,
  isBare: true,
  cut: { from: [-26, 3], to: [26, 3] },
  watch: 'Left seam and right seam, on one tile. Turn the light: a wall throws a shade, a merge throws none.',
  text: [
    {
      sure: 'published',
      words:
        'Strangers wall up. Pieces of three colonies of Platygyra set 5 mm apart raised a ridge of skeleton at every contact, without dead tissue.',
      source: 'Kikuzawa et al. 2021, J. Mar. Sci. Eng. 9: 1377',
    },
    {
      sure: 'published',
      words:
        'Pieces of one colony fuse, and so are the measure of a real merge. In Fungia they did so at cut edges only: uncut ones stayed apart.',
      source:
        'Hildemann, Linthicum & Vann 1975, Immunogenetics 2: 269-284; Jokiel & Bigger 1994, Biol. Bull. 186: 72-80',
    },
    {
      sure: 'practice',
      words: 'Where a pair is to meet, growers set cut edge to cut edge, 0 to 2 mm apart.',
    },
    {
      sure: 'guess',
      words:
        'How fast a wall rises (0.3 mm a month, 3 mm at most) and how colours run through each other after a merge are the model’s own choices.',
    },
  ],
  question: {
    words: 'Which of these tells a merge from a wall?',
    answers: [
      {
        words: 'The colours differ sharply at the seam',
        isRight: false,
        earns: 'They do at a young merge too: colours need months to run into each other.',
      },
      {
        words: 'No crest and no groove, and growth lines that run through',
        isRight: true,
        earns: 'One skeleton: in the section the lines cross from side to side.',
      },
      {
        words: 'Both sides are healthy right up to the seam',
        isRight: false,
        earns: 'A wall leaves both sides healthy: that is why it is mistaken for a merge.',
      },
    ],
  },
  tries: [
    {
      label: 'Let Amber and Garnet take too',
      look: 'The crest on the right is gone, and red begins to run into orange.',
      change: (now) => changePair(now, AMBER.id, GARNET.id, { acceptance: 1 }),
    },
  ],
  claim: {
    words: 'At month 9 the left seam is fused and the right one is a wall, on every seed',
    unit: 'share, the lesser of the two',
    runs: [{ plan, months: [9] }],
    measure: ([[{ reading }]]) =>
      Math.min(
        pairShare(reading, FERN.id, AMBER.id, 'fusedMm'),
        pairShare(reading, AMBER.id, GARNET.id, 'ridgeMm'),
      ),
    from: 0.95,
    to: 1,
    because: 'one pair always takes and the other never does; the last stretch at the rim is still undecided',
  },
};
