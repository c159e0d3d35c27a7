/** Colours of tissue and polyps, from the one colour that a variety has. Channels 0..1 as on screen. */
import type { Variety } from '../plan/plan';

export type Rgb = readonly [number, number, number];

function rgbOf(hex: string): Rgb {
  const n = Number.parseInt(hex.slice(1), 16);
  return [(n >> 16) / 255, ((n >> 8) & 255) / 255, (n & 255) / 255];
}

function hslOf([r, g, b]: Rgb): Rgb {
  const most = Math.max(r, g, b);
  const least = Math.min(r, g, b);
  const light = (most + least) / 2;
  const span = most - least;
  if (span === 0) return [0, 0, light];
  const strength = span / (1 - Math.abs(2 * light - 1));
  const hue = most === r ? ((g - b) / span + 6) % 6 : most === g ? (b - r) / span + 2 : (r - g) / span + 4;
  return [hue / 6, strength, light];
}

function rgbFrom([hue, strength, light]: Rgb): Rgb {
  const reach = strength * Math.min(light, 1 - light);
  const channel = (n: number): number => {
    const k = (n + hue * 12) % 12;
    return light - reach * Math.max(-1, Math.min(k - 3, 9 - k, 1));
  };
  return [channel(0), channel(8), channel(4)];
}

/** Polyps carry a second hue: a step round the colour wheel from the tissue, lighter and fuller. */
function polypColour(tissue: Rgb): Rgb {
  const [hue, strength, light] = hslOf(tissue);
  const turned = (hue + 0.07) % 1;
  return rgbFrom([turned, Math.min(1, strength + 0.06), Math.min(0.82, light * 0.7 + 0.33)]);
}

/** Eight RGB triples each, unused ones black. */
export interface Palette {
  readonly tissue: Float32Array<ArrayBuffer>;
  readonly polyp: Float32Array<ArrayBuffer>;
}

export function paletteOf(varieties: readonly Variety[]): Palette {
  const tissue = new Float32Array(24);
  const polyp = new Float32Array(24);
  varieties.forEach((variety, k) => {
    const colour = rgbOf(variety.colour);
    tissue.set(colour, k * 3);
    polyp.set(polypColour(colour), k * 3);
  });
  return { tissue, polyp };
}
