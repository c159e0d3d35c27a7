import { changeVariety } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { disc, FERN, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: rim and rate',
  sizeMm: 60,
  months: 8,
  varieties: [FERN],
  pieces: [disc('p1', FERN, [0, 0], 10)],
});

export const RIM_AND_RATE: Lesson = {
  id: 'rim-and-rate',
  title: 'Rim and rate',
  idea: 'A crust grows at its rim only, by so many millimetres a month, whatever its size.',
  plan,
  seed: 'one',
  month: 6,
  watch:
    'One disc of 10 mm, cut all round, of Fern (all varieties in School are invented). Nothing moves in month 1; from then on the pale rim steps outward evenly.',
  text: [
    {
      sure: 'published',
      words:
        'A fresh cut heals first. On massive Porites a lip of skeleton rose 2 to 3 mm at the cut before it moved on, within the first month.',
      source: 'van Woesik 1998, Mar. Ecol. Prog. Ser. 164: 213-220',
    },
    {
      sure: 'published',
      words:
        'On reefs encrusting Montipora gains about 1.3 mm a month at the rim, encrusting Cyphastrea about 0.3.',
      source: 'Barkley et al. 2023, NOAA Tech. Memo NMFS-PIFSC-154',
    },
    {
      sure: 'practice',
      words:
        'In tanks it is commonly faster: 3 mm a month is a planning value until your own log says better.',
    },
    {
      sure: 'guess',
      words:
        'The model lets a cut edge rest for 30 days and then keeps one rate for each variety, at every size and in every month; one tank study of Acropora palmata found area, not radius, growing evenly. Light, flow, food and season are not in it.',
    },
  ],
  questions: [
    {
      words:
        'A healed crust is 20 mm wide and its rim rate is 3 mm a month. How wide is it two months later?',
      answers: [
        { words: '26 mm', isRight: false, earns: 'That is one side only: the rim moves outward on both.' },
        {
          words: '32 mm',
          isRight: true,
          earns: '6 mm on each side. Measure the radius, not the area: only the radius grows evenly.',
        },
        {
          words: '40 mm',
          isRight: false,
          earns:
            'Size does not double by itself: the rim adds the same millimetres however wide the crust is.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Halve the rim rate',
      look: 'The same crust, half as far out in the same months, and a quarter to a half of the area.',
      plan: changeVariety(plan, FERN.id, { rimMmPerMonth: 1.5 }).plan,
    },
  ],
  claims: [
    {
      words: 'Once healed, the rim of a cut disc moves out at the rate that was set: 12 mm in four months',
      amount: { of: 'radius', month: 6 },
      less: { of: 'radius', month: 2 },
      from: 11.6,
      to: 12.4,
      because: '3 mm a month was set; a rough rim is 1 to 2 % slow over its first months',
    },
  ],
};
