/** The longest round length that takes at most a quarter of the width. */
const ROUND_MM = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

export function scaleBarMm(widthPx: number, pxPerMm: number): number {
  const most = Math.max(48, widthPx / 4) / pxPerMm;
  return ROUND_MM.findLast((length) => length <= most) ?? ROUND_MM[0];
}
