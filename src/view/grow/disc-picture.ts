/** A small disc of a variety's own tissue: polyps, a paler rim, light from the upper left. For the eye, not the model. */

const LEAST_APART = 0.19;

/** Repeatable scatter in 0..1, so that a disc looks the same each time. */
function scatter(index: number, salt: number): number {
  const wave = Math.sin(index * 12.9898 + salt * 78.233) * 43758.5453;
  return wave - Math.floor(wave);
}

interface Polyp {
  readonly x: number;
  readonly y: number;
}

/** Places in the unit disc, none nearer to another than a polyp's width. */
function scattered(): Polyp[] {
  const found: Polyp[] = [];
  for (let index = 0; index < 900; index++) {
    const at = { x: scatter(index, 1) * 2 - 1, y: scatter(index, 2) * 2 - 1 };
    const free = found.every((other) => (at.x - other.x) ** 2 + (at.y - other.y) ** 2 > LEAST_APART ** 2);
    if (free && at.x ** 2 + at.y ** 2 < 0.8) found.push(at);
  }
  return found;
}

/** Shade, ring and mouth of every polyp, each as one path in a disc of radius 1. */
export const { SHADES, RINGS, MOUTHS } = pathsOf(scattered());

function pathsOf(polyps: readonly Polyp[]) {
  const circles = (shift: number, radius: number): string =>
    polyps.map(({ x, y }) => circle(x + shift, y + shift, radius)).join('');
  return { SHADES: circles(0.02, 0.082), RINGS: circles(0, 0.074), MOUTHS: circles(0, 0.034) };
}

function circle(x: number, y: number, radius: number): string {
  const half = `a${radius} ${radius} 0 0 1 `;
  return `M${(x - radius).toFixed(3)} ${y.toFixed(3)}${half}${2 * radius} 0${half}${-2 * radius} 0z`;
}

/** The colour with a share of black (0) or white (255) in it. */
export function mixed(colour: string, towards: number, share: number): string {
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return `rgb(${channels.map((channel) => Math.round(channel + (towards - channel) * share)).join(' ')})`;
}
