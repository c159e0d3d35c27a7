/** Where the picture looks: a place in mm at the middle of the canvas, and how many CSS pixels a mm takes. */
import type { Tile, Xy } from '../../plan/plan';

export interface Camera {
  readonly xMm: number;
  readonly yMm: number;
  readonly pxPerMm: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

const MARGIN_PX = 8;
const MOST_PX_PER_MM = 60;

/** The whole tile in the middle. */
export function fitCamera(size: Size, tile: Tile): Camera {
  const room = Math.max(20, Math.min(size.width, size.height) - 2 * MARGIN_PX);
  return { xMm: 0, yMm: 0, pxPerMm: room / tile.sizeMm };
}

export function toMm(camera: Camera, size: Size, xPx: number, yPx: number): Xy {
  return [
    camera.xMm + (xPx - size.width / 2) / camera.pxPerMm,
    camera.yMm + (yPx - size.height / 2) / camera.pxPerMm,
  ];
}

export function toPx(camera: Camera, size: Size, at: Xy): Xy {
  return [
    (at[0] - camera.xMm) * camera.pxPerMm + size.width / 2,
    (at[1] - camera.yMm) * camera.pxPerMm + size.height / 2,
  ];
}

/** Zooms about a pixel, which keeps its place in mm; from half the fit to 60 px a mm. */
export function zoomAbout(
  camera: Camera,
  size: Size,
  tile: Tile,
  xPx: number,
  yPx: number,
  factor: number,
): Camera {
  const fit = fitCamera(size, tile).pxPerMm;
  const pxPerMm = Math.min(Math.max(MOST_PX_PER_MM, fit), Math.max(fit / 2, camera.pxPerMm * factor));
  const [xMm, yMm] = toMm(camera, size, xPx, yPx);
  const next = {
    xMm: xMm - (xPx - size.width / 2) / pxPerMm,
    yMm: yMm - (yPx - size.height / 2) / pxPerMm,
    pxPerMm,
  };
  return kept(next, tile);
}

export function panBy(camera: Camera, tile: Tile, dxPx: number, dyPx: number): Camera {
  return kept(
    { ...camera, xMm: camera.xMm - dxPx / camera.pxPerMm, yMm: camera.yMm - dyPx / camera.pxPerMm },
    tile,
  );
}

/** The middle of the canvas stays on the tile, so that it cannot be lost. */
function kept(camera: Camera, tile: Tile): Camera {
  const half = tile.sizeMm / 2;
  return {
    ...camera,
    xMm: Math.min(half, Math.max(-half, camera.xMm)),
    yMm: Math.min(half, Math.max(-half, camera.yMm)),
  };
}
