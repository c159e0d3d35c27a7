/** Where the picture looks and how that is changed. */
import type { Camera } from '../../picture/scene';
import type { Tile, Xy } from '../../plan/plan';

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

/** Zooms about a pixel, which keeps its place in mm as far as the tile's edges let it; from the fit to 60 px a mm. */
export function zoomAbout(
  camera: Camera,
  size: Size,
  tile: Tile,
  xPx: number,
  yPx: number,
  factor: number,
): Camera {
  const fit = fitCamera(size, tile).pxPerMm;
  const pxPerMm = Math.min(Math.max(MOST_PX_PER_MM, fit), Math.max(fit, camera.pxPerMm * factor));
  const [xMm, yMm] = toMm(camera, size, xPx, yPx);
  const next = {
    xMm: xMm - (xPx - size.width / 2) / pxPerMm,
    yMm: yMm - (yPx - size.height / 2) / pxPerMm,
    pxPerMm,
  };
  return kept(next, size, tile);
}

export function panBy(camera: Camera, size: Size, tile: Tile, dxPx: number, dyPx: number): Camera {
  const [xMm, yMm] = [camera.xMm - dxPx / camera.pxPerMm, camera.yMm - dyPx / camera.pxPerMm];
  return kept({ ...camera, xMm, yMm }, size, tile);
}

/** The same look in a frame of another size: no smaller than the whole tile, and no further off than its edges. */
export function within(camera: Camera, size: Size, tile: Tile): Camera {
  return kept({ ...camera, pxPerMm: Math.max(camera.pxPerMm, fitCamera(size, tile).pxPerMm) }, size, tile);
}

/** A tile larger than the frame covers it; one that is smaller stays in its middle. */
function kept(camera: Camera, size: Size, tile: Tile): Camera {
  const along = (mm: number, framePx: number): number => {
    const most = Math.max(0, tile.sizeMm / 2 + (MARGIN_PX - framePx / 2) / camera.pxPerMm);
    return Math.min(most, Math.max(-most, mm)) + 0;
  };
  return { ...camera, xMm: along(camera.xMm, size.width), yMm: along(camera.yMm, size.height) };
}
