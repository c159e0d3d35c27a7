/** The side that light comes from, in words. Degrees run clockwise from the right. */
const SIDES = [
  'right',
  'lower right',
  'lower side',
  'lower left',
  'left',
  'upper left',
  'upper side',
  'upper right',
] as const;

export function lightWords(deg: number): string {
  return SIDES[Math.round(deg / 45) % SIDES.length];
}
