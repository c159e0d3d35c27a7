/** What a section shows, in words. */
import type { Joint, JointKind, Section } from '../../measure/section';
import type { Variety } from '../../plan/plan';

const KIND_WORDS: Readonly<Record<JointKind, string>> = {
  fused: 'one skeleton through',
  ridge: 'two walls side by side',
  lapped: 'one lapped over the other',
  dead: 'a bare line',
  veiled: 'looks like one, joined only from the underside',
  undecided: 'touching, undecided',
};

function nameOf(varieties: readonly Variety[], number: number): string {
  return varieties.at(number - 1)?.name ?? `variety ${number}`;
}

/** '9.2 mm: Fern and Garnet, one skeleton through' */
export function jointWords(joint: Joint, varieties: readonly Variety[]): string {
  const names = [joint.before, joint.after].map((number) => nameOf(varieties, number));
  const place = `${joint.atMm.toFixed(1)} mm: `;
  if (joint.covers === null) return `${place}${names.join(' and ')}, ${KIND_WORDS[joint.kind]}`;
  if (joint.covers !== joint.before) names.reverse();
  return `${place}${names[0]} lapped over ${names[1]}`;
}

/** What a grower sees there and from above. */
export function jointNote(joint: Joint): string {
  const wide = (joint.toMm - joint.fromMm).toFixed(1);
  switch (joint.kind) {
    case 'fused':
      return 'Growth lines run through from side to side.';
    case 'ridge':
      return 'A plane parts the two walls from the tile to the crest.';
    case 'lapped':
      return joint.toMm === joint.fromMm
        ? 'Its edge has not come over yet.'
        : `For ${wide} mm dead skeleton lies under the living one.`;
    case 'dead':
      return `Bare, worn skeleton for ${wide} mm; nothing grows there.`;
    case 'veiled':
      return 'At the tile the skeletons are cemented; above, a skin closes over a groove with spines. A wall in truth: it will show.';
    case 'undecided':
      return 'No verdict yet: it may still go either way.';
  }
}

/** The whole section for a screen reader: length, then what follows on what. */
export function sectionWords(section: Section, varieties: readonly Variety[], month: number): string {
  const { lengthMm, slices, joints } = section;
  const most = Math.max(0, ...slices.map(({ surfaceMm }) => surfaceMm));
  const parts = [
    `Section of ${lengthMm.toFixed(1)} mm at month ${month}, up to ${most.toFixed(1)} mm high, ${joints.length} ${joints.length === 1 ? 'joint' : 'joints'}.`,
    ...joints.map((joint) => `${jointWords(joint, varieties)}.`),
  ];
  return parts.join(' ');
}
