/** What the drawing of a joint shows, measured: how the surface lies there, and which growth lines come to it. */
import type { Joint, Section, Slice } from '../../measure/section';
import { isGrownOver, partingThen } from './growth-line';
import { edgesAt } from './outlines';

export interface JointFacts {
  /** How far the surface beside it rises over that at the joint, on the lower of its two sides. */
  readonly dipMm: number;
  /** How far it stands over the lowest beside it, on the higher of its two sides; 0 or less where no wall rises. */
  readonly crestMm: number;
  /** Growth lines that are drawn through it. */
  readonly through: number;
  /** Those that end at it. */
  readonly ending: number;
  /** Of those, from months in which a crest stood there already. */
  readonly bent: number;
  /** Those drawn beside it that do not reach it. */
  readonly short: number;
  /** Of those, from months in which it was bare already. */
  readonly sinceBare: number;
}

/** Less of a dip or crest is not seen. */
export const SEEN_MM = 0.1;
/** A growth line closer under the surface lies under the drawn film of tissue. */
const UNDER_FILM_MM = 0.15;

/** About as far as a joint is shown close up. */
const REACH_MM = 4;
/** What belongs to the joint itself: half the width of a wall. */
const OWN_MM = 0.9;
/** So far from the joint lies the foot of a wall. */
const FOOT_MM = 2;

export function jointFacts(section: Section, older: readonly Section[], joint: Joint): JointFacts {
  const facts = { ...reliefAt(section, joint), through: 0, ending: 0, bent: 0, short: 0, sinceBare: 0 };
  const [k] = edgesAt(section.slices, [joint]);
  for (const then of older) {
    const isDrawn = (at: number): boolean => {
      const [now, once] = [section.slices[at], then.slices[at]] as (Slice | undefined)[];
      return now !== undefined && once !== undefined && isGrownOver(now, once, UNDER_FILM_MM);
    };
    const isParted = edgesAt(section.slices, partingThen(section, then)).has(k);
    const isAt = [k - 1, k].map(isDrawn);
    if (isAt[0] && isAt[1] && !isParted) facts.through++;
    else if (isAt[0] || isAt[1]) {
      facts.ending++;
      if (reliefAt(then, joint).crestMm >= SEEN_MM) facts.bent++;
    } else if (section.slices.some((slice, at) => gapMm(slice, joint) < REACH_MM && isDrawn(at))) {
      facts.short++;
      if ([k - 1, k].some((at) => then.slices.at(at)?.layers.at(-1)?.is === 'bare')) facts.sinceBare++;
    }
  }
  return facts;
}

/** From a slice to a joint with its stretch. */
function gapMm({ fromMm, toMm }: Slice, joint: Pick<Joint, 'fromMm' | 'toMm'>): number {
  return Math.max(0, fromMm - joint.toMm, joint.fromMm - toMm);
}

function reliefAt(section: Section, joint: Joint): Pick<JointFacts, 'dipMm' | 'crestMm'> {
  const grown = section.slices.filter(({ layers }) => layers.length > 0);
  // what lies at another joint is no side of this one
  const others = section.joints.filter(({ atMm }) => Math.abs(atMm - joint.atMm) > OWN_MM);
  const heights = (fromMm: number, toMm: number, side = 0): number[] =>
    grown
      .filter((slice) => {
        const away = gapMm(slice, joint);
        const isOnSide = side * ((slice.fromMm + slice.toMm) / 2 - joint.atMm) >= 0;
        return (
          away >= fromMm && away < toMm && isOnSide && others.every((other) => gapMm(slice, other) >= OWN_MM)
        );
      })
      .map(({ surfaceMm }) => surfaceMm);
  const own = heights(0, OWN_MM);
  const sides = [-1, 1].map((side) => heights(OWN_MM, REACH_MM, side));
  const feet = [-1, 1].map((side) => heights(OWN_MM, FOOT_MM, side));
  if ([own, ...feet].some((some) => some.length === 0)) return { dipMm: 0, crestMm: 0 };
  return {
    dipMm: Math.min(...sides.map((side) => Math.max(...side))) - Math.min(...own),
    crestMm: Math.max(...own) - Math.max(...feet.map((side) => Math.min(...side))),
  };
}
