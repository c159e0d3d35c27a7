/** The words on a joint say what its drawing shows, and no more: each is held against the heights and lines drawn. */
import { describe, expect, it } from 'vitest';
import { section, type Joint, type Section } from '../../../src/measure/section';
import { frameOf } from '../../../src/model/frame';
import { grow } from '../../../src/model/grow';
import { FATE } from '../../../src/model/seam-table';
import { compile } from '../../../src/plan/compile';
import { PRESETS } from '../../../src/plan/presets';
import { dayOfMonth } from '../../../src/units/quantity';
import { type JointFacts, jointFacts } from '../../../src/view/section/facts';
import { growthLine } from '../../../src/view/section/growth-line';
import { jointNote } from '../../../src/view/section/words';
import { sectionFrame } from '../../fixtures/section-frame';

/** Two varieties that meet in the middle of a line of 12 mm. */
function cut(fate: number, heightMm: (xMm: number) => number, label?: (xMm: number) => number): Section {
  const frame = sectionFrame({
    sizeMm: 20,
    cellMm: 0.25,
    label: label ?? ((x) => (x < 0 ? 1 : 2)),
    heightMm,
    seam: (x) => (Math.abs(x) > 0.25 ? 0 : fate | ((x < 0 ? 1 : 2) << 4)),
  });
  return section(frame, [-6, 0.1], [6, 0.1]);
}

function noteOf(now: Section, older: readonly Section[]): string {
  const [joint] = now.joints;
  return jointNote(joint, jointFacts(now, older, joint));
}

/** A V of so much, 6 mm wide, in a surface of a height. */
const dip =
  (heightMm: number, deepMm: number) =>
  (x: number): number =>
    heightMm - deepMm * Math.max(0, 1 - Math.abs(x) / 3);
const wall =
  (heightMm: number, crestMm: number) =>
  (x: number): number =>
    heightMm + crestMm * Math.max(0, 1 - Math.abs(x) / 0.9);
const flat = (heightMm: number) => (): number => heightMm;

describe('a fused joint', () => {
  it('dips by what its surface dips, to half a cell of slope, and does not where it is even', () => {
    const [joint] = cut(FATE.fused, dip(2, 0.9)).joints;
    const { dipMm } = jointFacts(cut(FATE.fused, dip(2, 0.9)), [], joint);
    expect(Math.abs(dipMm - 0.9)).toBeLessThan(0.125 * 0.3 + 0.01);
    expect(noteOf(cut(FATE.fused, dip(2, 0.6)), [])).toContain('dips by 0.6 mm where it is youngest');
    expect(noteOf(cut(FATE.fused, flat(2)), [])).toContain('No crest and no dip');
  });

  it('has no dip where one side merely stands higher than the other', () => {
    expect(
      noteOf(
        cut(FATE.fused, (x) => 2 + x / 10),
        [],
      ),
    ).toContain('No crest and no dip');
  });

  it('has growth lines run through only once one is drawn through', () => {
    const now = cut(FATE.fused, flat(2));
    expect(noteOf(now, [])).toContain('no growth line is drawn in it yet');
    // under the film of tissue a line is not seen
    expect(noteOf(now, [cut(FATE.fused, flat(1.95))])).toContain('no growth line is drawn in it yet');
    const apart = cut(0, flat(0.9), (x) => (x < -1 ? 1 : x > 1 ? 2 : 0));
    expect(noteOf(now, [apart])).toContain('no growth line runs through yet');
    // two that touch have one surface, whatever comes of it
    expect(noteOf(now, [cut(FATE.undecided, flat(1.2)), apart])).toContain('a growth line runs through');
    const one = cut(FATE.fused, flat(1.4));
    expect(noteOf(now, [one])).toBe(
      'One skeleton: a growth line runs through. No crest and no dip: its surface runs on evenly.',
    );
    expect(noteOf(now, [cut(FATE.fused, flat(1.6)), one, apart])).toContain(
      'growth lines run through; those from before the two met do not',
    );
  });
});

describe('a ridge', () => {
  it('has a crest only once one stands', () => {
    const grown = cut(FATE.ridge, wall(2, 1.2));
    const { crestMm } = jointFacts(grown, [], grown.joints[0]);
    // to half a cell of slope
    expect(Math.abs(crestMm - 1.2)).toBeLessThan((0.125 * 1.2) / 0.9 + 0.01);
    expect(noteOf(grown, [])).toContain(
      `their crest stands ${crestMm.toFixed(1)} mm over what lies beside it`,
    );
    // a wall that has begun in the dip between two rims
    expect(
      noteOf(
        cut(FATE.ridge, (x) => dip(1, 0.5)(x) + wall(0, 0.5)(x)),
        [],
      ),
    ).toMatch(/crest stands 0\.[34] mm/u);
    const young = noteOf(cut(FATE.ridge, dip(1, 0.5)), []);
    expect(young).toContain('no crest yet, and the surface still dips by 0.5 mm');
    expect(young).not.toContain('rowth line');
  });

  it('has growth lines bend up only from months in which a crest stood', () => {
    const now = cut(FATE.ridge, wall(2, 1.2));
    expect(noteOf(now, [cut(FATE.undecided, flat(1))])).toContain('Growth lines end between the walls');
    expect(noteOf(now, [cut(FATE.ridge, wall(1.5, 0.6))])).toContain('Growth lines bend up to it');
  });
});

describe('a dead joint', () => {
  const bare = (x: number): number => (Math.abs(x) < 1 ? 255 : x < 0 ? 1 : 2);
  const low = (heightMm: number) => (x: number) => (Math.abs(x) < 1 ? 1 : heightMm);

  it('lies lower than what lives beside it by what is drawn, and has lines end at its edges since it died', () => {
    const now = cut(FATE.dead, low(2.2), bare);
    expect(noteOf(now, [cut(FATE.undecided, flat(0.8))])).toBe(
      'A bare line: worn skeleton for 2.0 mm, 1.2 mm lower than what lives beside it.',
    );
    expect(noteOf(now, [cut(FATE.dead, low(1.6), bare)])).toContain('from after it died end at both edges');
  });
});

describe('in a grown tile with all five joints', () => {
  const preset = PRESETS.find(({ key }) => key === 'five-joints');
  if (!preset) throw new Error('the preset is there');
  const months = [2, 4, 6, 8, 10, 12];
  const cuts = new Map<number, Section>();
  for (const state of grow(compile({ ...preset.plan, months: 12 }, 0.25), 'one')) {
    const month = months.find((one) => dayOfMonth(one) === state.day);
    if (month !== undefined) cuts.set(month, section(frameOf(state, month), [-50, 0], [50, 0]));
  }
  const all = months.map((month) => {
    const now = cuts.get(month);
    if (!now) throw new Error('each month is reached');
    const older = months
      .flatMap((one) => (one < month ? [cuts.get(one)] : []))
      .filter((one) => one !== undefined);
    return {
      month,
      now,
      older,
      facts: now.joints.map((joint) => ({ joint, ...jointFacts(now, older, joint) })),
    };
  });

  it('the dip of a fused joint fills from month to month', () => {
    const dips = all.flatMap(({ facts }) =>
      facts.filter(({ joint }) => joint.kind === 'fused').map(({ dipMm }) => dipMm),
    );
    expect(dips.length).toBeGreaterThan(3);
    expect([...dips].sort((a, b) => b - a)).toEqual(dips);
    expect(dips[0]).toBeGreaterThan(3 * dips[dips.length - 1]);
  });

  it('as many growth lines run through as are drawn across the joint in one stroke', () => {
    for (const { now, older, facts } of all) {
      for (const fact of facts.filter(({ joint }) => joint.kind !== 'lapped'))
        expect(fact.through, fact.joint.kind).toBe(across(now, older, fact.joint));
    }
    const fused = all.map(({ facts }) => facts.find(({ joint }) => joint.kind === 'fused')?.through ?? 0);
    expect(Math.max(...fused)).toBeGreaterThan(2);
  });

  it('a wall is said to have the crest that its frame says', () => {
    const last: JointFacts | undefined = all.at(-1)?.facts.find(({ joint }) => joint.kind === 'ridge');
    // the model lets a wall of 9 months rise by more than a mm
    expect(last?.crestMm).toBeGreaterThan(1);
  });
});

/** Strokes of growth lines that pass a joint well under the surface. */
function across(now: Section, older: readonly Section[], { atMm }: Joint): number {
  const scale = { x: (mm: number) => mm, y: (mm: number) => mm, fromMm: 0, toMm: now.lengthMm };
  const surface = now.slices.find(({ toMm }) => toMm > atMm)?.surfaceMm ?? 0;
  return older
    .flatMap((then) => growthLine(now, then, scale).split('M').slice(1))
    .map((stroke) => stroke.split('L').map((point) => point.split(' ').map(Number)))
    .filter((points) => {
      const [before, after] = [
        points.filter(([x]) => x < atMm - 0.1),
        points.filter(([x]) => x > atMm + 0.1),
      ];
      return before.length > 0 && after.length > 0 && surface - before[before.length - 1][1] > 0.15;
    }).length;
}
