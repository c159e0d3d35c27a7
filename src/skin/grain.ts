/**
 * A square of soft noise that repeats without a seam, made once: white noise from an integer hash, blurred on the torus
 * with near-Gaussian kernels, so that no direction and no grid shows. RGBA: slopes of fine papillae (x, y), and two
 * independent fields of a scale about five times as wide. 127 is nought; one standard deviation is 42.
 */
export const GRAIN_SIZE = 256;
/** Length of the square at the scale of the papillae. */
export const GRAIN_MM = 21;

function hash(x: number): number {
  let h = Math.imul(x ^ 0x9e3779b9, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0xc2b2ae35);
  return ((h ^ (h >>> 13)) >>> 0) / 4294967296;
}

/** Running means along the rows, then turned over: two calls blur both ways. */
function blurRowsAndTurn(from: Float32Array, to: Float32Array, n: number, radius: number): void {
  const line = new Float32Array(n + 2 * radius + 1);
  for (let row = 0; row < n; row++) {
    const start = row * n;
    line.set(from.subarray(start + n - radius, start + n), 0);
    line.set(from.subarray(start, start + n), radius);
    line.set(from.subarray(start, start + radius + 1), radius + n);
    let sum = 0;
    for (let k = 0; k <= 2 * radius; k++) sum += line[k];
    for (let c = 0, at = row; c < n; c++, at += n) {
      to[at] = sum;
      sum += line[c + 2 * radius + 1] - line[c];
    }
  }
}

/** In place, on the torus; three passes of a box are near a Gaussian. */
function blurTorus(grid: Float32Array, n: number, radius: number): void {
  const turned = new Float32Array(n * n);
  for (let pass = 0; pass < 3; pass++) {
    blurRowsAndTurn(grid, turned, n, radius);
    blurRowsAndTurn(turned, grid, n, radius);
  }
}

function noise(key: number, n: number, radius: number): Float32Array {
  const white = new Float32Array(n * n);
  for (let i = 0; i < white.length; i++) white[i] = hash(i * 4 + key) - 0.5;
  blurTorus(white, n, radius);
  return white;
}

/** A field of half the size, twice as large: means between its values, on the torus. */
function doubled(field: Float32Array, n: number): Float32Array {
  const out = new Float32Array(4 * n * n);
  for (let row = 0; row < n; row++) {
    const below = ((row + 1) % n) * n;
    for (let c = 0; c < n; c++) {
      const right = (c + 1) % n;
      const here = field[row * n + c];
      const beside = field[row * n + right];
      const under = field[below + c];
      const at = 4 * row * n + 2 * c;
      out[at] = here;
      out[at + 1] = (here + beside) / 2;
      out[at + 2 * n] = (here + under) / 2;
      out[at + 2 * n + 1] = (here + beside + under + field[below + right]) / 4;
    }
  }
  return out;
}

function write(out: Uint8Array, channel: number, field: Float32Array): void {
  let square = 0;
  let sum = 0;
  for (const value of field) {
    sum += value;
    square += value * value;
  }
  const mean = sum / field.length;
  const sd = Math.sqrt(square / field.length - mean * mean);
  for (let i = 0; i < field.length; i++) {
    out[i * 4 + channel] = Math.min(255, Math.max(0, 127.5 + (42 * (field[i] - mean)) / sd));
  }
}

export function makeGrain(): Uint8Array<ArrayBuffer> {
  const n = GRAIN_SIZE;
  const bumps = noise(0, n, 1);
  const across = new Float32Array(n * n);
  const down = new Float32Array(n * n);
  for (let i = 0; i < n * n; i++) {
    const row = i - (i % n);
    across[i] = bumps[row + ((i + 1) % n)] - bumps[row + ((i + n - 1) % n)];
    down[i] = bumps[(i + n) % (n * n)] - bumps[(i + n * n - n) % (n * n)];
  }
  const out = new Uint8Array(n * n * 4);
  write(out, 0, across);
  write(out, 1, down);
  // the wide fields hold nothing finer than half the size can
  write(out, 2, doubled(noise(1, n / 2, 2), n / 2));
  write(out, 3, doubled(noise(2, n / 2, 2), n / 2));
  return out;
}
