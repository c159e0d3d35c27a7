/**
 * Slopes, cast shade and occlusion of a height field, one light from afar.
 * Slopes are height per mm, so that a finer grid shows the same relief.
 */
import { boxBlur, softenGrid } from './blur';

/** Slopes are stored in a byte as 128 + 127 * slope / (1 + |slope|): fine where flat, never clipped. */
function slopeByte(slope: number): number {
  return 128.5 + (127 * slope) / (1 + Math.abs(slope));
}

export interface Light {
  /** Unit vector towards the light, in the plane of the tile; y runs down. */
  readonly x: number;
  readonly y: number;
  /** Rise per mm: tangent of the light's height over the tile. */
  readonly rise: number;
}

/** lightDeg is the side the light comes from: 0 right, 90 bottom, 225 upper left. */
export function lightFrom(lightDeg: number): Light {
  const turn = (lightDeg * Math.PI) / 180;
  return { x: Math.cos(turn), y: Math.sin(turn), rise: 0.85 };
}

export interface Scratch {
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** R slope to the right, G slope down, B light left by cast shade, A openness (127 flat, less in a hollow, more on a crest). */
export function fillRelief(
  height: Float32Array,
  columns: number,
  rows: number,
  cellMm: number,
  light: Light,
  scratch: Scratch,
  out: Uint8Array,
): void {
  const perMm = 1 / (2 * cellMm);
  for (let row = 0; row < rows; row++) {
    const up = row > 0 ? columns : 0;
    const down = row < rows - 1 ? columns : 0;
    for (let column = 0; column < columns; column++) {
      const i = row * columns + column;
      const left = column > 0 ? 1 : 0;
      const right = column < columns - 1 ? 1 : 0;
      out[i * 4] = slopeByte((height[i + right] - height[i - left]) * perMm);
      out[i * 4 + 1] = slopeByte((height[i + down] - height[i - up]) * perMm);
    }
  }
  castShade(height, columns, rows, cellMm, light, scratch.a);
  softenGrid(scratch.a, columns, rows, scratch.b);
  for (let i = 0; i < height.length; i++) out[i * 4 + 2] = 255.5 - 255 * scratch.a[i];
  scratch.a.set(height);
  const radius = Math.max(1, Math.round(0.75 / cellMm));
  boxBlur(scratch.a, columns, rows, radius, scratch.b);
  boxBlur(scratch.a, columns, rows, radius, scratch.b);
  for (let i = 0; i < height.length; i++) {
    out[i * 4 + 3] = Math.min(255, Math.max(0, 127.5 + (height[i] - scratch.a[i]) * 160));
  }
}

/**
 * 0 in full light to 1 in full shade. The line of shade is carried cell by cell away from the light:
 * it sinks by `rise` per mm and is lifted wherever the ground stands above it.
 */
function castShade(
  height: Float32Array,
  columns: number,
  rows: number,
  cellMm: number,
  light: Light,
  shade: Float32Array,
): void {
  const alongX = Math.abs(light.x) >= Math.abs(light.y);
  const major = alongX ? light.x : light.y;
  const minor = alongX ? light.y : light.x;
  const lines = alongX ? columns : rows;
  const cells = alongX ? rows : columns;
  const lineStep = alongX ? 1 : columns;
  const cellStep = alongX ? columns : 1;
  const drift = minor / Math.abs(major);
  const drop = (light.rise * cellMm) / Math.abs(major);
  const whole = Math.floor(drift);
  const part = drift - whole;
  const towards = major > 0 ? 1 : -1;
  let before = new Float32Array(cells);
  let now = new Float32Array(cells);
  for (let k = 0; k < lines; k++) {
    const line = (towards > 0 ? lines - 1 - k : k) * lineStep;
    for (let c = 0; c < cells; c++) {
      const i = line + c * cellStep;
      const ground = height[i];
      let over = -1;
      if (k > 0) {
        const p = Math.min(Math.max(c + whole, 0), cells - 1);
        const q = Math.min(Math.max(c + whole + 1, 0), cells - 1);
        over = before[p] * (1 - part) + before[q] * part - drop;
      }
      // Half a shade at 0.12 mm below the line, full at 0.25 mm: a soft edge.
      const deep = (over - ground) * 4;
      shade[i] = deep <= 0 ? 0 : deep >= 1 ? 1 : deep;
      now[c] = over > ground ? over : ground;
    }
    [before, now] = [now, before];
  }
}
