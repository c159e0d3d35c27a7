/**
 * The look of picture/relief.frag.ts, pixel by pixel on the processor: the same fields of src/skin, the same light.
 * Left out: the tile's shade on what it lies on, and mottling wider than a piece.
 */
import type { Frame, PolypSites } from '../model/frame';
import type { Plan } from '../plan/plan';
import { GRAIN_MM, GRAIN_SIZE, makeGrain } from '../skin/grain';
import { paletteOf, type Palette } from '../skin/palette';
import { lightFrom } from '../skin/relief';
import { Skin } from '../skin/skin';

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Row-major, three bytes a pixel. */
  readonly rgb: Uint8Array;
}

const LIGHT_DEG = 225;
const PAPER = [0.965, 0.97, 0.975];
const STONE = [0.232, 0.232, 0.248];
const BONE = [0.87, 0.84, 0.77];
const ALGAE = [0.47, 0.5, 0.33];
const PALE = [0.96, 0.94, 0.9];

export function paintTile(frame: Frame, sites: PolypSites, plan: Plan, pxPerMm: number): Pixels {
  const { tile } = plan;
  const side = Math.max(1, Math.round(tile.sizeMm * pxPerMm));
  const skin = new Skin(frame, tile);
  skin.fill(frame, LIGHT_DEG);
  const brush = new Brush(skin, sites, paletteOf(plan.varieties), 1 / pxPerMm);
  const rgb = new Uint8Array(side * side * 3);
  const half = tile.sizeMm / 2;
  for (let row = 0, at = 0; row < side; row++) {
    const y = (row + 0.5) / pxPerMm - half;
    for (let column = 0; column < side; column++, at += 3) {
      const x = (column + 0.5) / pxPerMm - half;
      const off = tile.shape === 'disc' && Math.hypot(x, y) > half;
      const colour = off ? PAPER : brush.at(x, y);
      for (let k = 0; k < 3; k++) rgb[at + k] = Math.round(255 * colour[k]);
    }
  }
  return { width: side, height: side, rgb };
}

/** Four channels between the texels of a byte texture, 0..1. */
function sample(
  bytes: Uint8Array,
  columns: number,
  rows: number,
  u: number,
  v: number,
  wrap: boolean,
  out: number[],
): void {
  const [fx, fy] = [u - 0.5, v - 0.5];
  let [c0, r0] = [Math.floor(fx), Math.floor(fy)];
  const [tx, ty] = [fx - c0, fy - r0];
  let [c1, r1] = [c0 + 1, r0 + 1];
  if (wrap) {
    c0 &= columns - 1;
    c1 &= columns - 1;
    r0 &= rows - 1;
    r1 &= rows - 1;
  } else {
    c0 = Math.min(columns - 1, Math.max(0, c0));
    c1 = Math.min(columns - 1, Math.max(0, c1));
    r0 = Math.min(rows - 1, Math.max(0, r0));
    r1 = Math.min(rows - 1, Math.max(0, r1));
  }
  for (let k = 0; k < 4; k++) {
    const above = bytes[(r0 * columns + c0) * 4 + k] * (1 - tx) + bytes[(r0 * columns + c1) * 4 + k] * tx;
    const below = bytes[(r1 * columns + c0) * 4 + k] * (1 - tx) + bytes[(r1 * columns + c1) * 4 + k] * tx;
    out[k] = (above * (1 - ty) + below * ty) / 255;
  }
}

function smoothstep(from: number, to: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
}

function slopeOf(share: number): number {
  const v = (share * 255 - 128) / 127;
  return v / Math.max(0.02, 1 - Math.abs(v));
}

function mix(a: number, b: number, t: number): number {
  return a + (b - a) * t;
}

class Brush {
  readonly #skin: Skin;
  readonly #sites: PolypSites;
  readonly #palette: Palette;
  readonly #pxMm: number;
  readonly #grain = makeGrain();
  readonly #light: readonly number[];
  readonly #half: readonly number[];
  readonly #fine = [0, 0, 0, 0];
  readonly #surface = [0, 0, 0, 0];
  readonly #relief = [0, 0, 0, 0];
  readonly #first = [0, 0, 0, 0];
  readonly #second = [0, 0, 0, 0];
  readonly #shares = new Float64Array(8);
  readonly #polyp = { slopeX: 0, slopeY: 0, ring: 0, disc: 0, mouth: 0, odd: 0 };
  readonly #out = [0, 0, 0];

  constructor(skin: Skin, sites: PolypSites, palette: Palette, pxMm: number) {
    this.#skin = skin;
    this.#sites = sites;
    this.#palette = palette;
    this.#pxMm = pxMm;
    const { x, y, rise } = lightFrom(LIGHT_DEG);
    const length = Math.hypot(x, y, rise);
    this.#light = [x / length, y / length, rise / length];
    const [lx, ly, lz] = this.#light;
    const halfLength = Math.hypot(lx, ly, lz + 1);
    this.#half = [lx / halfLength, ly / halfLength, (lz + 1) / halfLength];
  }

  /** Colour at a place in mm; the array is used again by the next call. */
  at(x: number, y: number): readonly number[] {
    const [fine, surface, relief, pxMm] = [this.#fine, this.#surface, this.#relief, this.#pxMm];
    const perMm = GRAIN_SIZE / GRAIN_MM;
    sample(this.#grain, GRAIN_SIZE, GRAIN_SIZE, x * perMm, y * perMm, true, fine);
    for (let k = 0; k < 4; k++) fine[k] = (fine[k] - 0.5) * 6;
    this.#fields(x, y);
    const soft = Math.min(0.8, Math.max(0.05, pxMm * 1.6));
    const live = this.#weigh(soft);
    const cover = smoothstep(0.5 - soft / 2, 0.5 + soft / 2, 1 - surface[0]);
    const [pale, age] = [surface[2], surface[3] * 36];
    const shown = Math.min(1, 0.55 / pxMm / 3);
    if (cover > 0) this.#polyps(x, y);
    const polyp = this.#polyp;
    const grown = (1 - 0.85 * pale) * smoothstep(0.15, 0.9, age) * shown;
    const fade = Math.min(1, 0.5 / pxMm / 2.5);
    const lift = cover > 0 ? 0.06 * grown * mix(0.6, 1, live) : 0;
    const rough = mix(0.022, 0.095 + 0.06 * (1 - live), cover) * fade;
    const slopeX = slopeOf(relief[0]) + polyp.slopeX * lift + fine[0] * rough;
    const slopeY = slopeOf(relief[1]) + polyp.slopeY * lift + fine[1] * rough;

    const length = Math.hypot(slopeX, slopeY, 1);
    const [lx, ly, lz] = this.#light;
    const lit = Math.max(0, (lz - slopeX * lx - slopeY * ly) / length) / lz;
    const bright = (0.45 + 0.55 * lit * relief[2]) * Math.min(1.1, 0.72 + 0.56 * relief[3]);
    const [hx, hy, hz] = this.#half;
    const shine =
      Math.max(0, (hz - slopeX * hx - slopeY * hy) / length) ** 32 * relief[2] * cover * mix(0.35, 1, live);
    const algae = smoothstep(2, 14, age) * Math.min(0.8, Math.max(0, 0.45 + 0.2 * fine[3]));
    for (let k = 0; k < 3; k++) {
      const [tissue, hue] = [this.#mean(this.#palette.tissue, k), this.#mean(this.#palette.polyp, k)];
      let colour = tissue * (0.94 + 0.07 * fine[2] + 0.22 * polyp.odd * grown);
      colour = mix(colour, hue, Math.min(0.6, polyp.disc * 0.42 + polyp.ring * 0.12) * grown);
      colour *= 1 - 0.55 * polyp.mouth * grown;
      colour = mix(colour, mix(PALE[k], tissue, 0.3), pale * 0.8);
      const bone = mix(BONE[k], ALGAE[k], algae) * (1 - 0.35 * polyp.mouth * shown) * (1 + 0.05 * fine[2]);
      const stone = STONE[k] * (1 + 0.035 * fine[2] + 0.05 * fine[0] * fade);
      colour = mix(stone, mix(bone, colour, live), cover);
      colour *= mix(bright, bright * (0.82 + 0.25 * bright + 0.12 * colour), cover * live);
      colour += (0.1 + 0.01 * k) * shine;
      const glare = Math.max(0, colour - 0.68);
      this.#out[k] = Math.min(colour, 0.68) + (0.32 * glare) / (glare + 0.32);
    }
    return this.#out;
  }

  #fields(x: number, y: number): void {
    const { columns, rows, cellMm, first, second, surface, relief } = this.#skin;
    const warp = Math.min(0.14, cellMm * 0.24);
    const u = (x + this.#fine[2] * warp) / cellMm + columns / 2;
    const v = (y + this.#fine[3] * warp) / cellMm + rows / 2;
    sample(surface, columns, rows, u, v, false, this.#surface);
    sample(relief, columns, rows, u, v, false, this.#relief);
    sample(first, columns, rows, u, v, false, this.#first);
    sample(second, columns, rows, u, v, false, this.#second);
  }

  /** Weights of the varieties at the place, summing to 1; gives the share that is alive and not bare. */
  #weigh(soft: number): number {
    const shares = this.#shares;
    let most = this.#surface[1];
    for (let k = 0; k < 8; k++) {
      shares[k] = k < 4 ? this.#first[k] : this.#second[k - 4];
      most = Math.max(most, shares[k]);
    }
    let sum = 0;
    for (let k = 0; k < 8; k++) {
      shares[k] = Math.max(0, shares[k] - most + soft);
      sum += shares[k];
    }
    for (let k = 0; k < 8; k++) shares[k] /= Math.max(sum, 1e-4);
    const bare = Math.max(0, this.#surface[1] - most + soft);
    return sum / Math.max(sum + bare, 1e-4);
  }

  #mean(colours: Float32Array, channel: number): number {
    let sum = 0;
    for (let k = 0; k < 8; k++) sum += this.#shares[k] * colours[k * 3 + channel];
    return sum;
  }

  #polyps(x: number, y: number): void {
    const { columns, rows, spacingMm, originMm, offset } = this.#sites;
    const polyp = this.#polyp;
    polyp.slopeX = polyp.slopeY = polyp.ring = polyp.disc = polyp.mouth = polyp.odd = 0;
    const [px, py] = [(x - originMm) / spacingMm, (y - originMm) / spacingMm];
    const [column, row] = [Math.floor(px - 0.5), Math.floor(py - 0.5)];
    for (let k = 0; k < 4; k++) {
      const [c, r] = [column + (k & 1), row + (k >> 1)];
      if (c < 0 || r < 0 || c >= columns || r >= rows) continue;
      const box = (r * columns + c) * 2;
      const [siteX, siteY] = [offset[box] / 255, offset[box + 1] / 255];
      const dx = (px - c - siteX) * spacingMm;
      const dy = (py - r - siteY) * spacingMm;
      const turned = siteX * 37.31 + siteY * 91.73;
      const chance = turned - Math.floor(turned);
      const radius = 0.23 + 0.08 * chance;
      const u = (dx * dx + dy * dy) / (radius * radius);
      const fall = Math.max(0, 1 - 0.125 * u) ** 8;
      const rise = u * fall * 2.7183;
      const slope = (4 * rise * (1 - u) * fall * 2.7183) / (radius * radius);
      const core = fall * fall;
      polyp.slopeX += dx * slope;
      polyp.slopeY += dy * slope;
      polyp.ring += rise * rise;
      polyp.disc += core;
      polyp.mouth += core ** 3;
      polyp.odd += (rise * rise + core) * (chance - 0.5);
    }
  }
}
