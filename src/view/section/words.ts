/** What a section shows, in words. */
import type { Joint, JointKind, Section } from '../../measure/section';
import type { Variety } from '../../plan/plan';
import { type JointFacts, SEEN_MM } from './facts';

const KIND_WORDS: Readonly<Record<JointKind, string>> = {
  fused: 'fused',
  ridge: 'ridge',
  lapped: 'lapped',
  dead: 'dead',
  veiled: 'ridge that looks fused',
  undecided: 'undecided',
};

function nameOf(varieties: readonly Variety[], number: number): string {
  return varieties.at(number - 1)?.name ?? `variety ${number}`;
}

/** 'Fern and Garnet, fused'; no kind where that is for the learner to say. */
export function jointWords(joint: Joint, varieties: readonly Variety[], keepsBack: boolean): string {
  const names = [joint.before, joint.after].map((number) => nameOf(varieties, number));
  if (keepsBack) return names.join(' and ');
  if (joint.covers === null) return `${names.join(' and ')}, ${KIND_WORDS[joint.kind]}`;
  if (joint.covers !== joint.before) names.reverse();
  return `${names[0]} lapped over ${names[1]}`;
}

/** What a grower sees there: no more than is drawn. */
export function jointNote(joint: Joint, facts: JointFacts): string {
  const wide = (joint.toMm - joint.fromMm).toFixed(1);
  switch (joint.kind) {
    case 'fused':
      return fusedNote(facts);
    case 'ridge':
      return ridgeNote(facts);
    case 'lapped':
      return joint.toMm === joint.fromMm
        ? 'No covered skeleton is known of under its edge.'
        : `For ${wide} mm the covered skeleton lies under the living one, its top as it was on the day it was covered.`;
    case 'dead':
      return deadNote(facts, wide);
    case 'veiled':
      return 'Joined only from the underside: at the tile the skeletons are cemented; above, tissue closes over a groove with spines. It will show as a ridge.';
    case 'undecided':
      return 'They touch. No verdict yet: it may still go either way.';
  }
}

/** Null where there is nothing to be seen of it. */
function seen(mm: number): string | null {
  return mm < SEEN_MM ? null : `${mm.toFixed(1)} mm`;
}

function fusedNote({ dipMm, through, ending, short }: JointFacts): string {
  const run = through === 1 ? 'a growth line runs' : 'growth lines run';
  const lines =
    through > 0
      ? `: ${run} through${ending + short > 0 ? '; those from before the two met do not' : ''}.`
      : ending + short > 0
        ? ', but no growth line runs through yet: those drawn are from before the two met.'
        : '; no growth line is drawn in it yet.';
  const dip = seen(dipMm);
  const surface =
    dip === null
      ? 'No crest and no dip: its surface runs on evenly.'
      : `Its surface dips by ${dip} where it is youngest, and fills with age.`;
  return `One skeleton${lines} ${surface}`;
}

function ridgeNote({ crestMm, dipMm, ending, bent }: JointFacts): string {
  const crest = seen(crestMm);
  if (crest !== null) {
    const lines =
      bent > 0
        ? ' Growth lines bend up to it and end between the walls.'
        : ending > 0
          ? ' Growth lines end between the walls.'
          : '';
    return `Two walls side by side: their crest stands ${crest} over what lies beside it.${lines}`;
  }
  const dip = seen(dipMm);
  const surface = dip === null ? '' : `, and the surface still dips by ${dip}`;
  return `Two walls side by side, with a gap between them: no crest yet${surface}.${ending > 0 ? ' Growth lines end at the gap.' : ''}`;
}

function deadNote({ dipMm, sinceBare }: JointFacts, wide: string): string {
  const low = seen(dipMm);
  const lower = low === null ? '' : `, ${low} lower than what lives beside it`;
  const lines = sinceBare > 0 ? ' Growth lines from after it died end at both edges.' : '';
  return `A bare line: worn skeleton for ${wide} mm${lower}.${lines}`;
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
    ...joints.map((joint) => `At ${joint.atMm.toFixed(1)} mm: ${jointWords(joint, varieties, keepsBack)}.`),
  ];
  return parts.join(' ');
}
