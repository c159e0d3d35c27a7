/** What a picture shows and how, as told to the worker that draws it. */
import type { Frame, PolypSites } from '../model/frame';
import type { Tile, Variety } from '../plan/plan';
import type { SeamLine } from '../skin/seam-trace';

/** Where the picture looks: a place in mm at the middle of the canvas, and how many CSS pixels a mm takes. */
export interface Camera {
  readonly xMm: number;
  readonly yMm: number;
  readonly pxPerMm: number;
}

export interface Scene {
  readonly tile: Tile;
  readonly varieties: readonly Variety[];
  readonly camera: Camera;
  /** The side the light comes from, degrees clockwise from the right. */
  readonly lightDeg: number;
  /** Size in CSS pixels, and device pixels to each of them. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelRatio: number;
}

/** What has grown; no frame shows the bare tile. */
export interface Grown {
  readonly frame: Frame | null;
  readonly sites: PolypSites | null;
}

/** What stands on a canvas, and its seams as lines. */
export interface Drawn {
  readonly frame: Frame | null;
  readonly seams: readonly SeamLine[];
}
