/** What the model leaves out or only assumes, in plain words. */
export interface Limit {
  readonly title: string;
  readonly words: string;
}

export const LIMITS: readonly Limit[] = [
  {
    title: 'Whether your pair takes.',
    words:
      'Acceptance is your belief, not a constant of nature. No counts exist for colour varieties in trade. Unrelated adults fused in 0 of 890 tries in one Montipora; kin in about half.',
  },
  {
    title: 'That cut and gap change the odds.',
    words:
      'By assumption they do not: they change how much seam there is, how soon it forms and how widely results spread, but not the mean share that fuses. The rim factor in the settings lets you believe otherwise.',
  },
  {
    title: 'Half-and-half that swirls by itself.',
    words:
      'Copying from near neighbours always makes colours coarser outward: fine cuts stay finer, and halves stay halves with a frayed border. Far births and the pull to the rarer colour, which make veins and swirl, are guesses.',
  },
  {
    title: 'What fused seams do later.',
    words:
      'In juveniles 5 of 19 fused pairs had parted by 11 months; for adults nothing is published. A plan starts with none that turn; the number stands behind each pair.',
  },
  {
    title: 'Light, flow, food, depth, disease.',
    words: 'None of them. Rim rates stay the same through the months and at every size.',
  },
  {
    title: 'Height.',
    words:
      'Only ridges and lapping have a height that means something. The thickness of the crust is drawn for the eye. No plates, branches or overhang.',
  },
  {
    title: 'Ridges, stings and dead lines in mm.',
    words: 'Their height, rate and reach are judgement; no measurements were found.',
  },
  {
    title: 'Blended shades.',
    words: 'A polyp has the colour of one variety. Colours do not blend within a polyp.',
  },
  {
    title: 'Luck.',
    words:
      'One tile is one draw. The same plan with another seed can end otherwise: read the range over 16 seeds before you decide on a number.',
  },
];
