import { layOut } from '../../plan/layouts';
import type { Plan } from '../../plan/plan';
import type { Lesson } from '../lesson';
import { AMBER, FERN, lessonPlan } from '../lesson-plan';

const SIZE_MM = 50;
/** Side of the square that all cuts together would fill without gaps: the tissue stays the same. */
const STOCK_MM = 24;

const pieces = (cutMm: number, gapMm: number): Plan['pieces'] =>
  layOut('chequer', {
    tile: { shape: 'square', sizeMm: SIZE_MM },
    varieties: [FERN.id, AMBER.id],
    cutMm,
    gapMm,
    spanMm: (STOCK_MM / cutMm) * (cutMm + gapMm) - gapMm,
  });

const plan = lessonPlan({
  name: 'Lesson: cut size and gap',
  sizeMm: SIZE_MM,
  months: 12,
  varieties: [FERN, AMBER],
  pairs: [{ a: FERN.id, b: AMBER.id, acceptance: 1, mingle: 'veins' }],
  pieces: pieces(12, 1),
});

export const CUT_AND_GAP: Lesson = {
  id: 'cut-and-gap',
  title: 'Cut size and gap',
  idea: 'Fine colour, veins, comes from small cuts set close; what small cuts cost is losses.',
  plan,
  seed: 'one',
  month: 8,
  cut: { from: [-24, -6.5], to: [24, -6.5] },
  watch: 'Four cuts of 12 mm of a pair that fuses. The colours stay in four lobes with frayed borders.',
  text: [
    {
      sure: 'published',
      words:
        'In branching Pocillopora small pieces died more. Fragments of 1 to 2 cm lived less often than those of 4 and 7 cm; over all, 83.5 % were alive after 119 days.',
      source:
        'Lizcano-Sandoval, Londoño-Cruz & Zapata 2018, Mar. Biol. Res. 14: 887-897 (Pocillopora damicornis)',
    },
    {
      sure: 'published',
      words:
        'Close setting helped even where a ridge came of it: of 24 pieces of Platygyra on a sea wall those 5 mm apart lived in 75 % and gained 3.7 cm² a month, those 5 cm apart in 43 % and 0.6 cm².',
      source: 'Kikuzawa et al. 2021, J. Mar. Sci. Eng. 9: 1377',
    },
    {
      sure: 'practice',
      words: 'Cuts of 5 to 15 mm, 0 to 2 mm apart where cut edges are to meet; below 5 mm is counted risky.',
    },
    {
      sure: 'guess',
      words:
        'In the model cut and gap change how fine the pattern is and when seams form, not the odds that a pair fuses. That is an assumption.',
    },
  ],
  questions: [
    {
      words: 'You want finer veins of a pair that fuses, and have no more stock. What do you change?',
      answers: [
        {
          words: 'Wait longer: veins get finer with time',
          isRight: false,
          earns: 'Outward growth makes them wider: veins spread like spokes, and some are closed off.',
        },
        {
          words: 'Cut smaller and set closer',
          isRight: true,
          earns: 'As fine as your losses allow: small cuts die more often.',
        },
        {
          words: 'Leave more room between the cuts',
          isRight: false,
          earns: 'Room lets each colour spread before it meets: that does not make veins finer.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Cut to 4 mm',
      look: 'The same tissue in 36 cuts: veins a few millimetres wide, and lobes at the corners only. Two things are not shown. The slot of the saw, the kerf: at 0.8 mm it leaves 3.2 by 3.2 of 4 by 4 mm, 64 %. And losses: by the model’s own curve about 23 of 36 such cuts live.',
      plan: { ...plan, pieces: pieces(4, 1) },
    },
    {
      label: 'Set the gap to 6 mm',
      look: 'Each cut grows alone at first: the seams come a month later.',
      plan: { ...plan, pieces: pieces(12, 6) },
    },
  ],
  claims: [
    {
      words: 'Cuts of 4 mm give veins less than two thirds as wide as cuts of 12 mm',
      amount: { of: 'vein-width', month: 8, try: 1 },
      by: { of: 'vein-width', month: 8 },
      from: 0.1,
      to: 0.66,
      because:
        'at first the widths are as 4 to 12; with time fine veins are closed off faster, so the ratio rises',
    },
  ],
};
