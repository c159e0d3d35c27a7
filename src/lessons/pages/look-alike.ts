import { VEILED } from '../../model/seam-table';
import { changePair } from '../../plan/edit';
import type { Lesson, Look } from '../lesson';
import { AMBER, block, FERN, lessonPlan } from '../lesson-plan';

const plan = lessonPlan({
  name: 'Lesson: looks joined but is not',
  sizeMm: 50,
  months: 14,
  varieties: [FERN, AMBER],
  pairs: [{ a: FERN.id, b: AMBER.id, acceptance: 0 }],
  pieces: [block('p1', FERN, [-9, 0], 17, 28), block('p2', AMBER, [9, 0], 17, 28)],
  settings: { deadShare: 0, veiledShare: 1 },
});

/** Of the cells of the seam, those that look fused from above and are a wall. */
function veiledShare({ frame }: Look): number {
  let [veiled, seam] = [0, 0];
  for (const bits of frame.seam) {
    if ((bits & 7) === 0) continue;
    seam++;
    if ((bits & 7) === VEILED) veiled++;
  }
  return seam > 0 ? veiled / seam : 0;
}

export const LOOK_ALIKE: Lesson = {
  id: 'look-alike',
  title: 'Looks joined but is not',
  idea: 'Some seams look merged for months and are walls: only the section, or time, tells.',
  plan,
  seed: 'nine',
  month: 4,
  cut: { from: [-18, 2], to: [18, 2] },
  isBare: true,
  watch:
    'At month 4 the colours run together and no line is seen. Cut it open: joined at the underside only. Then play on to month 12, or turn on ‘Seams’.',
  text: [
    {
      sure: 'published',
      words:
        'Seen in Pocillopora damicornis: tissue and skeleton joined, with a white zone over a groove with spines. It turned to a ridge or a bare strip in 2 to 8 months.',
      source: 'Hidaka, Yurugi, Sunagawa & Kinzie 1997, Coral Reefs 16: 13-20',
    },
    {
      sure: 'published',
      words:
        'A joined skeleton alone is no proof either: orange and white colonies of a cold-water coral were found fused in the skeleton and were of different stock.',
      source: 'Hennige et al. 2014, Sci. Rep. 4: 6782 (Lophelia pertusa)',
    },
    {
      sure: 'guess',
      words:
        'In the model 1 wall of 10 begins so; on this tile all do, to show it. From above its picture is drawn as a merge: no one can call it right by eye alone. To wait eight months from contact, or to saw a spare one through, follows from that.',
    },
  ],
  question: {
    words: 'A seam touched three months ago and looks merged. What proves it?',
    answers: [
      {
        words: 'Colour of one side shows on the other',
        isRight: false,
        earns: 'A thin skin can carry colour over a groove. Look under it.',
      },
      {
        words: 'A section with growth lines that run through',
        isRight: true,
        earns: 'One skeleton from the tile to the surface. Failing a saw: eight months without a white zone.',
      },
      {
        words: 'It cannot be pulled apart',
        isRight: false,
        earns: 'Walls are cemented to each other at the base: they hold too.',
      },
    ],
  },
  tries: [
    {
      label: 'Let the pair take',
      look: 'From above much the same at month 4. The section differs, and at month 12 everything does.',
      change: (now) => changePair(now, FERN.id, AMBER.id, { acceptance: 1 }),
    },
  ],
  claim: {
    words: 'At month 3 the seam looks fused and is read as a wall; by month 12 it looks like what it is',
    unit: 'share of the seam that looks fused at month 3, less that at month 12, less what is read as fused',
    runs: [{ plan, months: [3, 12] }],
    measure: ([[early, late]]) =>
      veiledShare(early) - veiledShare(late) - early.reading.seam.fusedMm / early.reading.seam.lengthMm,
    from: 0.85,
    to: 1,
    because:
      'every wall was set to begin so, for 2 to 8 months from its verdict; at the rim new seam is undecided at month 3 and may be young at month 12',
  },
};
