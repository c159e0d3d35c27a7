/** The scale bar over a tile: its length, and where on the canvas it stands. */
import type { Camera } from '../../picture/scene';
import type { Tile, Xy } from '../../plan/plan';
import { type Size, toPx } from './camera';

const ROUND_MM = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

export interface ScaleBar {
  readonly mm: number;
  readonly px: number;
  readonly at: Xy;
  /** Left, top, width and height of its ground, from `at` on. */
  readonly ground: readonly [number, number, number, number];
}

export function scaleBar(size: Size, camera: Camera, tile: Tile): ScaleBar {
  const mm = scaleBarMm(size.width, camera.pxPerMm);
  const px = mm * camera.pxPerMm;
  return { mm, px, at: placeOf(size, camera, tile), ground: [-8, -12, Math.max(56, px + 16), 34] };
}

/** In the tile's lower left corner, or the canvas's where the tile reaches beyond it. */
function placeOf(size: Size, camera: Camera, { shape, sizeMm }: Tile): Xy {
  if (shape === 'disc') return [16, size.height - 28];
  const [left, bottom] = toPx(camera, size, [-sizeMm / 2, sizeMm / 2]);
  return [Math.max(0, left) + 16, Math.min(size.height, bottom) - 28];
}

/** The longest round length that takes at most a quarter of the width. */
export function scaleBarMm(widthPx: number, pxPerMm: number): number {
  const most = Math.max(48, widthPx / 4) / pxPerMm;
  return ROUND_MM.findLast((length) => length <= most) ?? ROUND_MM[0];
}
