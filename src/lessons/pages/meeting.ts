import { movePieces } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { AMBER, block, FERN, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: meeting and the first weeks',
  sizeMm: 50,
  months: 6,
  varieties: [FERN, AMBER],
  pairs: [{ a: FERN.id, b: AMBER.id, acceptance: 0.5 }],
  pieces: [block('p1', FERN, [-11, 0], 16, 26), block('p2', AMBER, [11, 0], 16, 26)],
});

export const MEETING: Lesson = {
  id: 'meeting',
  title: 'Meeting and the first weeks',
  idea: 'Touching is not fusing: for some weeks a new seam is undecided and may still go either way.',
  plan,
  seed: 'six',
  month: 3,
  watch:
    'Two cut edges 6 mm apart. In month 1 they heal, in month 2 the rims cross the gap. Once it has played, step back to month 2: the new seam is undecided. By month 3 part of it has fused and part is a ridge, a wall of skeleton from both sides. Switch ‘Seams’ off: from above both still look alike, and only later a crest begins to show.',
  text: [
    {
      sure: 'published',
      words: 'In one study the partner was recognised within a month of contact.',
      source: 'Wijayanti & Hidaka 2018, Ilmu Kelautan 23 (Pocillopora damicornis)',
    },
    {
      sure: 'published',
      words: 'Cooler water is slower: the same rejection took about twice as long at 23 °C as at 27 °C.',
      source: 'Johnston, Jokiel, Bigger & Hildemann 1981, Biol. Bull. 160: 280-291 (Montipora verrucosa)',
    },
    {
      sure: 'practice',
      words: 'Growers leave a new seam for four to eight weeks before they judge it or cut again.',
    },
    {
      sure: 'guess',
      words:
        'In the model a seam stays undecided for at least 10 days after touch. Then a place on it fuses or not, and what it came to spreads along the seam by 1 mm a day. Both numbers are chosen, not measured.',
    },
  ],
  questions: [
    {
      words: 'Two rims have touched for a week and no line shows between them. What do you write down?',
      answers: [
        {
          words: 'Fused',
          isRight: false,
          earns: 'Too soon. A seam that becomes a ridge can look just like this in its first weeks.',
        },
        {
          words: 'Undecided, with the date',
          isRight: true,
          earns: 'The date of touch is what later readings are counted from.',
        },
        {
          words: 'Ridge',
          isRight: false,
          earns: 'Nothing shows it yet: a ridge needs time to rise.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Close the gap to 1 mm',
      look: 'The rims touch early in month 2, all along at once, and by its end most is settled. Who looks once a month never sees such a seam undecided: on the bench, look every week. Specks of one colour in the other show where it has fused.',
      plan: movePieces(plan, ['p2'], -5, 0).plan,
    },
  ],
  claims: [
    {
      words: 'At month 2 most of the seam is undecided, and two months later next to none of it still is',
      amount: { of: 'undecided', month: 2 },
      less: { of: 'undecided', month: 4 },
      from: 0.85,
      to: 1,
      because:
        'edges 6 mm apart meet about day 60; a verdict takes 10 days at least, and a seam of 26 mm about a month',
    },
  ],
};
