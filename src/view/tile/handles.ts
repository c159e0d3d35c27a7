/** Handles of the chosen piece, in CSS pixels: one to turn it, four or more to resize it. */
import { ownOutline } from '../../plan/outline';
import { boxOf } from '../../units/polygon';
import type { Piece, Xy } from '../../plan/plan';
import { toPx } from './camera';
import type { Camera } from '../../picture/scene';
import type { Size } from './camera';

export interface Handle {
  readonly kind: 'turn' | 'resize';
  readonly px: Xy;
  /** Resize: direction in the piece's own frame, -1, 0 or 1 along x and y. */
  readonly along: Xy;
}

const SIZE_STEP_MM = 0.5;
const TURN_ABOVE_PX = 26;
const REACH_PX = 11;
const TOUCH_REACH_PX = 20;

/** Half width and half height in the piece's own frame, as far as it reaches from its middle. */
function halfExtent(piece: Piece): Xy {
  if ('disc' in piece) return [piece.disc.diameterMm / 2, piece.disc.diameterMm / 2];
  const box = boxOf(ownOutline(piece));
  return [Math.max(-box.minX, box.maxX), Math.max(-box.minY, box.maxY)];
}

/** From a piece's own frame to the tile. */
function placed(piece: Piece, own: Xy): Xy {
  const turn = (piece.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [piece.at[0] + own[0] * cos - own[1] * sin, piece.at[1] + own[0] * sin + own[1] * cos];
}

/** From the tile to a piece's own frame. */
function ownPlace(piece: Piece, at: Xy): Xy {
  const turn = (piece.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [dx, dy] = [at[0] - piece.at[0], at[1] - piece.at[1]];
  return [dx * cos + dy * sin, dy * cos - dx * sin];
}

export function handlesOf(piece: Piece, camera: Camera, size: Size): Handle[] {
  const [halfX, halfY] = halfExtent(piece);
  const round = 'disc' in piece;
  const directions: Xy[] = round
    ? [
        [1, 0],
        [0, 1],
        [-1, 0],
      ]
    : [
        [1, 1],
        [-1, 1],
        [1, -1],
        [-1, -1],
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ];
  const handles: Handle[] = directions.map((along) => ({
    kind: 'resize',
    px: toPx(camera, size, placed(piece, [along[0] * halfX, along[1] * halfY])),
    along,
  }));
  if (!round) {
    const aboveMm = halfY + TURN_ABOVE_PX / camera.pxPerMm;
    handles.push({ kind: 'turn', px: toPx(camera, size, placed(piece, [0, -aboveMm])), along: [0, -1] });
  }
  return handles;
}

/**
 * How a drag of a resize handle stretches a piece along its own x and y: to whole steps of size unless it is free,
 * alike in both where `even` or where the piece is round.
 */
export function resizeFactors(
  piece: Piece,
  handle: Handle,
  from: Xy,
  to: Xy,
  { even, free }: { even: boolean; free: boolean },
): Xy {
  const [then, now, half] = [ownPlace(piece, from), ownPlace(piece, to), halfExtent(piece)];
  const factor = (axis: 0 | 1): number =>
    handle.along[axis] === 0 || then[axis] === 0 ? 1 : Math.max(0.05, now[axis] / then[axis]);
  const stepped = (axis: 0 | 1, by: number): number => {
    if (free || by === 1) return by;
    const sizeMm = 2 * half[axis];
    return Math.max(SIZE_STEP_MM, Math.round((sizeMm * by) / SIZE_STEP_MM) * SIZE_STEP_MM) / sizeMm;
  };
  const [x, y] = [factor(0), factor(1)];
  if (!('disc' in piece) && !(even && handle.along[0] !== 0 && handle.along[1] !== 0)) {
    return [stepped(0, x), stepped(1, y)];
  }
  const both = stepped(0, 'disc' in piece ? x * y : (x + y) / 2);
  return [both, both];
}

/** The handle under a pointer; fingers are given more room. */
export function handleAt(handles: readonly Handle[], px: Xy, touch: boolean): Handle | null {
  const reach = touch ? TOUCH_REACH_PX : REACH_PX;
  let best: Handle | null = null;
  let least = reach;
  for (const handle of handles) {
    const off = Math.hypot(handle.px[0] - px[0], handle.px[1] - px[1]);
    if (off < least) [best, least] = [handle, off];
  }
  return best;
}
