/** How much room a section gets: px for a mm along and up. */

/** How many times as tall as wide heights are drawn. */
const EXAGGERATIONS = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20];

export interface Fit {
  readonly alongPx: number;
  readonly upPx: number;
  readonly exaggeration: number;
}

/** The largest picture of a section in a box; heights are never drawn smaller than lengths. */
export function fit(lengthMm: number, mostMm: number, widthPx: number, heightPx: number): Fit {
  const alongPx = Math.min(widthPx / Math.max(0.5, lengthMm), heightPx / mostMm);
  const exaggeration = EXAGGERATIONS.findLast((times) => times * alongPx * mostMm <= heightPx) ?? 1;
  return { alongPx, upPx: alongPx * exaggeration, exaggeration };
}

/** A round step of an axis that takes at least `leastPx`. */
export function axisStep(pxPerMm: number, leastPx: number): number {
  return [0.5, 1, 2, 5, 10, 20, 50, 100].find((step) => step * pxPerMm >= leastPx) ?? 200;
}
