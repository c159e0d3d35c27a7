/** Surfaces of earlier months as lines inside a section's skeleton. */
import type { Joint, Section, Slice } from '../../measure/section';
import { EDGE_MM, edgesAt, isParting, lineOf, type Point, SAME_SEAM_MM, type Scale } from './outlines';

/** An older surface closer than this under today's is not drawn. */
const HIDDEN_MM = 0.02;

/**
 * Where the surface lay in an earlier month, seen inside today's skeleton: through a fused joint it runs on, at one that
 * parts two skeletons both sides end, and no line is where nothing grew any more. Both sections are of one line and one grid.
 */
export function growthLine(now: Section, older: Section, scale: Scale): string {
  const parted = edgesAt(now.slices, partingThen(now, older));
  let d = '';
  let points: Point[] = [];
  const end = (): void => {
    d += lineOf(points);
    points = [];
  };
  const put = (mm: number, high: number): void => {
    const at = Math.min(scale.toMm, Math.max(scale.fromMm, mm));
    points.push([scale.x(at), scale.y(high)]);
  };
  now.slices.forEach(({ fromMm, toMm }, k) => {
    if (toMm <= scale.fromMm || fromMm >= scale.toMm) return;
    const then = older.slices[k];
    const before = k > 0 ? older.slices[k - 1] : undefined;
    if (!isGrownOver(now.slices[k], then, HIDDEN_MM)) {
      // a free edge of that month: down to what lay beside it
      if (points.length > 0 && before && isFree(then)) {
        put(fromMm, before.surfaceMm);
        put(fromMm, then.surfaceMm);
      }
      end();
      return;
    }
    if (points.length === 0) {
      if (before && isFree(before)) put(fromMm, before.surfaceMm);
      if (isFree(before) || parted.has(k) || fromMm <= scale.fromMm) put(fromMm, then.surfaceMm);
    } else if (before && (parted.has(k) || isLip(before, then))) {
      // upright: the face of what lapped there
      put(fromMm, before.surfaceMm);
      if (parted.has(k)) end();
      put(fromMm, then.surfaceMm);
    }
    put((fromMm + toMm) / 2, then.surfaceMm);
    if (toMm >= scale.toMm) put(toMm, then.surfaceMm);
  });
  return d + lineOf(points);
}

/** Whether the surface of an earlier month lies inside today's skeleton, by at least so much. */
export function isGrownOver(now: Slice, then: Slice, leastMm: number): boolean {
  return then.layers.at(-1)?.is === 'living' && then.surfaceMm < now.surfaceMm - leastMm;
}

const isFree = (slice: Slice | undefined): boolean =>
  slice !== undefined && slice.layers.at(-1)?.is !== 'living';

function isLip(a: Slice, b: Slice): boolean {
  const isOther = a.layers.at(-1)?.variety !== b.layers.at(-1)?.variety;
  return isOther && Math.abs(a.surfaceMm - b.surfaceMm) > EDGE_MM;
}

/** The joints at which a surface of that month ended: those that part today, and seams of then that have been lapped since. */
export function partingThen(now: Section, older: Section): Joint[] {
  const isOneNow = ({ atMm }: Joint): boolean =>
    now.joints.some(({ kind, atMm: at }) => kind === 'fused' && Math.abs(at - atMm) < SAME_SEAM_MM);
  const today = now.joints.filter(isParting);
  const then = older.joints.filter((joint) => isParting(joint) && !isOneNow(joint));
  return [...today, ...then];
}
