import { changePair } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { AMBER, block, FERN, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: looks fused but is not',
  sizeMm: 50,
  months: 14,
  varieties: [FERN, AMBER],
  pairs: [{ a: FERN.id, b: AMBER.id, acceptance: 0 }],
  pieces: [block('p1', FERN, [-9, 0], 17, 28), block('p2', AMBER, [9, 0], 17, 28)],
  settings: { deadShare: 0, veiledShare: 1 },
});

export const LOOK_ALIKE: Lesson = {
  id: 'look-alike',
  title: 'Looks fused but is not',
  idea: 'Some seams look fused for months and are ridges: only a cut through them, or time, tells.',
  plan,
  seed: 'nine',
  month: 4,
  cut: { from: [-18, 2], to: [18, 2] },
  isBare: true,
  watch:
    'At month 4 the colours meet without a line, as if fused. Cut it open before you read on: tissue closes over a groove with spines (the dark gap), and only the underside is joined. Then play on to month 12 and watch what rises.',
  text: [
    {
      sure: 'published',
      words:
        'In young Pocillopora damicornis: tissue and skeleton joined, with a white zone over a groove with spines. Several such pairs turned to a ridge or a dead line after 2 to 8 months.',
      source: 'Hidaka, Yurugi, Sunagawa & Kinzie 1997, Coral Reefs 16: 13-20',
    },
    {
      sure: 'published',
      words:
        'Joined skeleton alone is no proof either: orange and white colonies of a cold-water coral shared one skeleton and were of different stock.',
      source: 'Hennige et al. 2014, Sci. Rep. 4: 6782 (Lophelia pertusa)',
    },
    {
      sure: 'guess',
      words:
        'In the model 1 ridge of 10 begins so; on this tile all do, to show it. From above it is drawn like a seam that has just begun to fuse, without the white zone that gave it away in the study: the harder case, which no eye can call. So wait eight months from contact, or saw a spare one through.',
    },
  ],
  questions: [
    {
      words: 'A seam touched three months ago and looks fused. What tells most about whether it is?',
      answers: [
        {
          words: 'Colour of one side shows on the other',
          isRight: false,
          earns: 'A thin skin can carry colour over a groove. Look under it.',
        },
        {
          words: 'A section: growth lines that run through, and no groove under the surface',
          isRight: true,
          earns:
            'One skeleton from the tile to the surface is the best evidence there is. That both are of one stock it does not prove: see the cold-water coral above. Without a saw: eight months without a white zone outlast the delay in that study; young siblings of another coral parted as late as 11 months.',
        },
        {
          words: 'It cannot be pulled apart',
          isRight: false,
          earns: 'The two walls of a ridge are cemented at the base: they hold too.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Let the pair fuse',
      look: 'From above much the same at month 4, but for specks and tongues of colour at the rim. Cut open it differs, and at month 12 everything does.',
      plan: changePair(plan, FERN.id, AMBER.id, { acceptance: 1 }).plan,
    },
  ],
  claims: [
    {
      words: 'At month 3 the seam looks fused',
      amount: { of: 'looks-fused', month: 3 },
      from: 0.85,
      to: 1,
      because: 'every ridge was set to begin so; new seam at the rim is undecided',
    },
    {
      words: 'At month 3 none of it has fused',
      amount: { of: 'fused', month: 3 },
      from: 0,
      to: 0.005,
      because: 'the pair never fuses',
    },
    {
      words: 'By month 12 it looks like the ridge it is',
      amount: { of: 'looks-fused', month: 12 },
      from: 0,
      to: 0.1,
      because: 'for 2 to 8 months from its verdict it looks fused; what is young at the rim may still',
    },
  ],
};
