/** What a section shows, in words. */
import type { Joint, JointKind, Section } from '../../measure/section';
import type { Variety } from '../../plan/plan';

const KIND_WORDS: Readonly<Record<JointKind, string>> = {
  fused: 'fused: one skeleton through',
  ridge: 'ridge: two walls side by side',
  lapped: 'lapped: one over the other',
  dead: 'dead: a bare line',
  veiled: 'ridge that looks fused: joined only from the underside',
  undecided: 'undecided: they touch',
};

function nameOf(varieties: readonly Variety[], number: number): string {
  return varieties.at(number - 1)?.name ?? `variety ${number}`;
}

/** '9.2 mm: Fern and Garnet, one skeleton through'; no kind where that is for the learner to say. */
export function jointWords(joint: Joint, varieties: readonly Variety[], keepsBack: boolean): string {
  const names = [joint.before, joint.after].map((number) => nameOf(varieties, number));
  const place = `${joint.atMm.toFixed(1)} mm: `;
  if (keepsBack) return `${place}${names.join(' and ')}`;
  if (joint.covers === null) return `${place}${names.join(' and ')}, ${KIND_WORDS[joint.kind]}`;
  if (joint.covers !== joint.before) names.reverse();
  return `${place}${names[0]} lapped over ${names[1]}`;
}

/** What a grower sees there and from above. */
export function jointNote(joint: Joint): string {
  const wide = (joint.toMm - joint.fromMm).toFixed(1);
  switch (joint.kind) {
    case 'fused':
      return 'Growth lines run through from side to side; only those from before the two met end here.';
    case 'ridge':
      return 'Growth lines bend up and end at the plane between the walls, from the tile to the crest.';
    case 'lapped':
      return joint.toMm === joint.fromMm
        ? 'No covered skeleton is known of under its edge.'
        : `For ${wide} mm the covered skeleton lies under the living one, its top as it was on the day it was covered.`;
    case 'dead':
      return `Bare, worn skeleton for ${wide} mm: growth lines end on both sides of it, and nothing grows there.`;
    case 'veiled':
      return 'At the tile the skeletons are cemented; above, tissue closes over a groove with spines. It is a ridge, and will show as one.';
    case 'undecided':
      return 'No verdict yet: it may still go either way.';
  }
}

/** The whole section for a screen reader: length, then what follows on what. */
export function sectionWords(
  section: Section,
  varieties: readonly Variety[],
  month: number,
  keepsBack: boolean,
): string {
  const { lengthMm, slices, joints } = section;
  const most = Math.max(0, ...slices.map(({ surfaceMm }) => surfaceMm));
  const parts = [
    `Section of ${lengthMm.toFixed(1)} mm at month ${month}, up to ${most.toFixed(1)} mm high, ${joints.length} ${joints.length === 1 ? 'seam' : 'seams'}.`,
    ...joints.map((joint) => `${jointWords(joint, varieties, keepsBack)}.`),
  ];
  return parts.join(' ');
}
