import { changeSettings } from '../../plan/edit';
import type { Lesson } from '../lesson';
import { AMBER, block, GARNET, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: the dead line',
  sizeMm: 50,
  months: 12,
  varieties: [GARNET, AMBER],
  pairs: [{ a: GARNET.id, b: AMBER.id, acceptance: 0 }],
  pieces: [block('p1', GARNET, [-10, 0], 18, 26), block('p2', AMBER, [10, 0], 18, 26)],
  settings: { deadShare: 1, stingMm: 1.5 },
});

export const BARE_LINE: Lesson = {
  id: 'bare-line',
  title: 'Dead: the bare pale line',
  idea: 'Tissue that meets and dies leaves a bare strip of skeleton, the dead line: neither fused nor a ridge.',
  plan,
  seed: 'one',
  month: 8,
  cut: { from: [-18, 2], to: [18, 2] },
  watch:
    'The rims meet in month 2. By month 3 both have died back a little: what lies between is bare and pale, and stays low while both sides thicken. Switch ‘Seams’ off to see it as it is.',
  text: [
    {
      sure: 'published',
      words:
        'Single polyps of different colour forms of Galaxea fascicularis, set 5 mm apart, never fused with each other in two months; in some pairs one was stung or killed, in others both lived.',
      source: 'Hidaka & Yamazato 1984, Coral Reefs 3: 77-85',
    },
    {
      sure: 'published',
      words:
        'A strong neighbour costs more than a strip: beside its sweepers, long stinging tentacles, weaker colonies lost 55 % of their tissue in a year, and 30 % died.',
      source: 'Lapid & Chadwick 2006, Mar. Ecol. Prog. Ser. 313: 115-123 (Platygyra on Favites)',
    },
    {
      sure: 'published',
      words:
        'Between species it can go faster: Fungia fungites killed others within 2 to 7 days of contact, on one side only. Slow killing, on one side or both, began after more than a week.',
      source: 'Hildemann, Linthicum & Vann 1975, Immunogenetics 2: 269-284',
    },
    {
      sure: 'published',
      words:
        'Within one species killing can go both ways: of unrelated Montipora verrucosa held together most pairs showed it on both sides.',
      source: 'Hildemann, Jokiel, Bigger & Johnston 1980, Transplantation 30: 297-301',
    },
    {
      sure: 'practice',
      words:
        'Bare skeleton is white only while it is fresh, or while more dies. Within weeks algae tint it brown or green. A white line that widens from week to week: part the two.',
    },
    {
      sure: 'guess',
      words:
        'How wide the dead line is and how many seams end so are chosen: no width is published, and the share differs by species. In the picture algae come far more slowly than in most tanks.',
    },
  ],
  questions: [
    {
      words:
        'Two months after the touch a pale line lies between two healthy edges, no higher than they are. What do you write down?',
      answers: [
        {
          words: 'Ridge, with the date',
          isRight: false,
          earns:
            'A ridge stands up, and tissue covers it. A dead line is level or sunk, with no tissue on it.',
        },
        {
          words: 'Dead, with the date, and a look in four weeks',
          isRight: true,
          earns: 'Pale, level and without polyps. The second look tells whether it widens.',
        },
        {
          words: 'Undecided, with the date',
          isRight: false,
          earns: 'Right in the first weeks. What is bare has had its verdict.',
        },
      ],
    },
  ],
  tries: [
    {
      label: 'Let none die back',
      look: 'The same strangers now build a ridge where the dead line was.',
      plan: changeSettings(plan, { deadShare: 0 }).plan,
    },
  ],
  claims: [
    {
      words: 'At month 8 the seam is dead nearly all along',
      amount: { of: 'dead', month: 8 },
      from: 0.85,
      to: 1,
      because: 'every seam that does not fuse was set to die back; the stretch at the rim is still undecided',
    },
    {
      words: 'At month 8 none of it has fused',
      amount: { of: 'fused', month: 8 },
      from: 0,
      to: 0.005,
      because: 'the pair never fuses',
    },
  ],
};
