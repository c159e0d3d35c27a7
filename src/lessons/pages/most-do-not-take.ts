import type { Lesson } from '../lesson';
import { AMBER, block, FERN, GARNET, HEATHER, lessonPlan } from '../lesson-plan';
import type { Plan } from '../../plan/plan';

const ALL = [FERN, AMBER, GARNET, HEATHER];

/** All six pairs, of which one kinship is said. */
const pairsOf = (related: 'unrelated' | 'kin'): Plan['pairs'] =>
  ALL.flatMap((one, at) => ALL.slice(at + 1).map((other) => ({ a: one.id, b: other.id, related })));

const plan = lessonPlan({
  name: 'Lesson: why most pairs do not fuse',
  sizeMm: 56,
  months: 10,
  varieties: ALL,
  pairs: pairsOf('unrelated'),
  pieces: [
    block('p1', FERN, [-9, -9], 16, 16),
    block('p2', AMBER, [9, -9], 16, 16),
    block('p3', HEATHER, [-9, 9], 16, 16),
    block('p4', GARNET, [9, 9], 16, 16),
  ],
});

export const MOST_DO_NOT_TAKE: Lesson = {
  id: 'most-do-not-take',
  title: 'Why most pairs do not fuse',
  idea: 'Corals tell kin from strangers, and grown strangers all but never fuse. A pair that does (growers say: it takes) is a find.',
  plan,
  seed: 'one',
  month: 8,
  isBare: true,
  cut: { from: [-26, -9], to: [26, -9] },
  watch:
    'Four varieties, not related as far as anyone knows, with four seams between them. Count those that fuse.',
  text: [
    {
      sure: 'published',
      words: 'Unrelated grown colonies of Montipora verrucosa, held together: 0 of 890 pairs fused.',
      source: 'Hildemann, Jokiel, Bigger & Johnston 1980, Transplantation 30: 297-301',
    },
    {
      sure: 'published',
      words:
        'Kin differ: of young Stylophora from natural clumps about half of 517 contacts fused; of those that were not siblings, 0 of 83.',
      source: 'Amar & Rinkevich 2010, J. Exp. Biol. 213: 535-540',
    },
    {
      sure: 'published',
      words:
        'Some very young corals are not choosy yet: in Acropora millepora no contact was rejected in the first two months after settling. In Stylophora some siblings under two months did reject.',
      source:
        'Puill-Stephan, van Oppen, Pichavant-Rafini & Willis 2012, Coral Reefs 31: 1019-1028; Amar & Rinkevich 2010',
    },
    {
      sure: 'practice',
      words:
        'Colours that are sold as fusing were picked for it: growers tried many pairs and kept the few that fused.',
    },
    {
      sure: 'guess',
      words:
        'For colour varieties in the trade no counts exist. Whatever odds you set are your belief; only your own log can tell.',
    },
  ],
  questions: [
    {
      words: 'How many of the four seams on this tile have fused?',
      answers: [
        { words: 'None', isRight: true, earns: 'Each has a crest from end to end.' },
        {
          words: 'One',
          isRight: false,
          earns: 'Turn the light once round: each of the four has a lit face and one in shade.',
        },
        {
          words: 'Two or more',
          isRight: false,
          earns: 'Follow each along: no colour has crossed any of them.',
        },
      ],
    },
    {
      words: 'You tried a pair eight times and it never fused. What do you know?',
      answers: [
        {
          words: 'It never fuses',
          isRight: false,
          earns:
            'A pair that fuses 3 times in 10 still misses eight times in a row 6 times in 100 (0.7 to the power of 8).',
        },
        {
          words: 'It may still fuse now and then, up to about 3 times in 10',
          isRight: true,
          earns:
            'A pair that fuses more often than 31 times in 100 would go eight tries without one less than 5 times in 100 (the limit of Clopper & Pearson 1934). Eight tries rule out a pair that fuses often, no more.',
        },
        { words: 'The ninth is due', isRight: false, earns: 'Tries owe nothing: each stands for itself.' },
      ],
    },
  ],
  tries: [
    {
      label: 'Make them kin',
      look: 'Some seams fuse now, some in part. Which ones changes from tile to tile.',
      plan: { ...plan, pairs: pairsOf('kin') },
    },
  ],
  claims: [
    {
      words: 'Between unrelated varieties next to none of the seam fuses',
      amount: { of: 'fused', month: 8 },
      from: 0,
      to: 0.05,
      because: 'acceptance of strangers is set to 0.003; a seed in a hundred may show one seam',
    },
  ],
};
