import { changePair } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { AMBER, block, FERN, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: when to stop',
  sizeMm: 60,
  months: 14,
  varieties: [FERN, AMBER],
  pairs: [{ a: FERN.id, b: AMBER.id, related: 'kin', consistency: 1_000_000 }],
  pieces: [block('p1', FERN, [-9, 0], 17, 16), block('p2', AMBER, [9, 0], 17, 16)],
});

export const WHEN_TO_STOP: Lesson = {
  id: 'when-to-stop',
  title: 'When to stop',
  idea: 'Once a seam has settled, waiting mostly adds length: decide, then cut, sell or clear.',
  plan,
  seed: 'eight',
  month: 10,
  cut: { from: [-25, -15], to: [25, -15] },
  watch:
    'Kin that fuse in part. In the strip below, what has fused and what is a ridge is set by about month 3; after that both only get longer.',
  text: [
    {
      sure: 'practice',
      words: 'Growers look again four to eight weeks after a seam has settled, and cut no sooner.',
    },
    {
      sure: 'published',
      words:
        'In young colonies several seams that looked joined, with a white zone, parted after 2 to 8 months. What still looks fused after eight has outlasted that study, no more.',
      source: 'Hidaka, Yurugi, Sunagawa & Kinzie 1997, Coral Reefs 16: 13-20 (Pocillopora damicornis)',
    },
    {
      sure: 'published',
      words: 'Young full siblings can part later: about 74 % of 19 fused pairs were still one at 11 months.',
      source:
        'Puill-Stephan, van Oppen, Pichavant-Rafini & Willis 2012, Coral Reefs 31: 1019-1028 (Acropora millepora)',
    },
    {
      sure: 'practice',
      words:
        'Of a tile that is fused in half, cut the fused half out while it grows well, and try the rest again on fresh cuts.',
    },
    {
      sure: 'guess',
      words:
        'In the model no settled seam turns, unless you set it so for the pair. For grown corals nothing is published either way.',
    },
  ],
  questions: [
    {
      words: 'A seam has been a ridge for three months. What does waiting a year bring?',
      answers: [
        {
          words: 'It may fuse after all',
          isRight: false,
          earns: 'We found no study in which a standing ridge fused; in the model it never does.',
        },
        {
          words: 'A longer, higher ridge',
          isRight: true,
          earns: 'Use the tank space: clear it, or try the pair anew on fresh cuts.',
        },
        { words: 'It sinks', isRight: false, earns: 'In the model a ridge only rises, up to 3 mm.' },
      ],
    },
  ],
  tries: [
    {
      label: 'Let fused stretches turn',
      look: 'At 20 % a month, about as fast as those seams parted in the study above, a fused stretch can turn as a whole in any month: here it is a ridge by month 6. Colour that has crossed by then stays, and is no sign of a fused seam any more. If yours may turn, every look needs its date.',
      plan: changePair(plan, FERN.id, AMBER.id, { revertPerMonth: 0.2 }).plan,
    },
  ],
  claims: [
    {
      words: 'From month 4 to month 12 the share that is fused hardly moves',
      amount: { of: 'fused', month: 12 },
      less: { of: 'fused', month: 4 },
      from: -0.1,
      to: 0.1,
      because: 'settled seam stays as it is; what is added at the rim goes on with the verdict beside it',
    },
  ],
};
