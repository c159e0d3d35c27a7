/** The line along which a tile is cut open: two ends in mm, on the tile. */
import type { Tile, Xy } from '../../plan/plan';

export interface SectionLine {
  readonly from: Xy;
  readonly to: Xy;
}

const REACH_PX = 12;
const TOUCH_REACH_PX = 24;

/** The nearest place on the tile. */
export function onTile([x, y]: Xy, { shape, sizeMm }: Tile): Xy {
  const half = sizeMm / 2;
  const away = Math.hypot(x, y);
  if (shape === 'disc') return away <= half ? [x, y] : [(x * half) / away, (y * half) / away];
  return [Math.min(half, Math.max(-half, x)), Math.min(half, Math.max(-half, y))];
}

/** From edge to edge through a place: level, or upright where the line is that level one already. */
export function acrossTile({ shape, sizeMm }: Tile, [x, y]: Xy, now: SectionLine | null): SectionLine {
  const half = sizeMm / 2;
  const reach = (off: number): number =>
    shape === 'disc' ? Math.sqrt(Math.max(0, half * half - off * off)) : half;
  const isLevel = now !== null && now.from[1] === now.to[1] && now.to[0] - now.from[0] === 2 * reach(y);
  if (isLevel) return { from: [x, -reach(x)], to: [x, reach(x)] };
  return { from: [-reach(y), y], to: [reach(y), y] };
}

/** The end of the line under a pointer, all in CSS pixels; fingers are given more room. */
export function endAt(px: Xy, from: Xy, to: Xy, isFinger: boolean): 'from' | 'to' | null {
  const off = (end: Xy): number => Math.hypot(end[0] - px[0], end[1] - px[1]);
  const end = off(from) < off(to) ? 'from' : 'to';
  return Math.min(off(from), off(to)) <= (isFinger ? TOUCH_REACH_PX : REACH_PX) ? end : null;
}
