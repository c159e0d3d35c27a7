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

function blurTorus(grid: Float32Array, radius: number): Float32Array {
  const n = GRAIN_SIZE;
  let from = grid;
  for (let pass = 0; pass < 6; pass++) {
    const to = new Float32Array(n * n);
    const step = pass % 2 === 0 ? 1 : n;
    const cross = pass % 2 === 0 ? n : 1;
    for (let line = 0; line < n; line++) {
      let sum = 0;
      for (let k = -radius; k <= radius; k++) sum += from[line * cross + ((k + n) % n) * step];
      for (let c = 0; c < n; c++) {
        to[line * cross + c * step] = sum;
        sum +=
          from[line * cross + ((c + radius + 1) % n) * step] -
          from[line * cross + ((c - radius + n) % n) * step];
      }
    }
    from = to;
  }
  return from;
}

function noise(key: number, radius: number): Float32Array {
  const white = new Float32Array(GRAIN_SIZE * GRAIN_SIZE);
  for (let i = 0; i < white.length; i++) white[i] = hash(i * 4 + key) - 0.5;
  return blurTorus(white, radius);
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
  const bumps = noise(0, 1);
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
  write(out, 2, noise(1, 5));
  write(out, 3, noise(2, 5));
  return out;
}
