import { changePair } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { AMBER, block, FERN, GARNET, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: fused or ridge',
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
  title: 'Fused or ridge',
  idea: 'Where two have fused, tissue and skeleton run through. A ridge is two walls of skeleton side by side, with a crest along the top.',
  plan,
  seed: 'one',
  month: 9,
  isBare: true,
  cut: { from: [-26, 3], to: [26, 3] },
  watch:
    'Two seams: Fern and Amber on the left, Amber and Garnet on the right. Turn the light across each: a crest has a lit face and one in shade. Follow each along: where two have fused, specks or tongues of one colour reach into the other. Then cut the tile open.',
  text: [
    {
      sure: 'published',
      words:
        'Strangers may build ridges. Pieces of three colonies of Platygyra set 5 mm apart raised a ridge of skeleton at every contact, without dead tissue.',
      source: 'Kikuzawa et al. 2021, J. Mar. Sci. Eng. 9: 1377',
    },
    {
      sure: 'published',
      words:
        'Pieces of one colony fuse: set two beside each other to see what fused looks like. In Fungia they fused at cut edges only; uncut ones stayed apart.',
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
        'How fast a ridge rises (0.3 mm a month, 3 mm at most) and how colours mix once two have fused, in specks and tongues, are the model’s own choices.',
    },
  ],
  questions: [
    {
      words: 'First the tile itself: which of its two seams has fused?',
      answers: [
        {
          words: 'The left one, Fern and Amber',
          isRight: true,
          earns:
            'Colour reaches across it and no shade lies along it. Cut open, the same growth lines, the surfaces of earlier months, go on from side to side.',
        },
        {
          words: 'The right one, Amber and Garnet',
          isRight: false,
          earns:
            'Along it a crest stands up, one face lit and one in shade, and no colour has crossed: a ridge.',
        },
        {
          words: 'Both',
          isRight: false,
          earns: 'Turn the light once round: along one of them a dark edge moves from face to face.',
        },
      ],
    },
    {
      words: 'Then any seam: which of these tells a fused one from a ridge?',
      answers: [
        {
          words: 'The colours differ sharply at the seam',
          isRight: false,
          earns: 'They do at a young fused seam too: colours need months to mix.',
        },
        {
          words: 'No crest and no gap, and growth lines that run through',
          isRight: true,
          earns: 'One skeleton: cut it open, and at the fused seam the growth lines cross from side to side.',
        },
        {
          words: 'Both sides are healthy right up to the seam',
          isRight: false,
          earns: 'A ridge leaves both sides healthy: that is why it is taken for fused.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Let Amber and Garnet fuse too',
      look: 'The crest on the right is gone, and Garnet begins to mix into Amber.',
      plan: changePair(plan, AMBER.id, GARNET.id, { acceptance: 1 }).plan,
    },
  ],
  claims: [
    {
      words: 'At month 9 the left seam has fused',
      amount: { of: 'fused', pair: [FERN.id, AMBER.id], month: 9 },
      from: 0.95,
      to: 1,
      because: 'the pair always fuses; the last stretch at the rim is still undecided',
    },
    {
      words: 'At month 9 the right seam is a ridge',
      amount: { of: 'ridge', pair: [AMBER.id, GARNET.id], month: 9 },
      from: 0.95,
      to: 1,
      because: 'the pair never fuses; the last stretch at the rim is still undecided',
    },
  ],
};
