import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { drawTile } from '../../../src/cli/png';
import { HALVES } from '../../fixtures/halves';
import { syntheticFrame } from '../../fixtures/synthetic-frame';

interface Decoded {
  readonly width: number;
  readonly height: number;
  /** Mean of the channels at a place in mm, over a square of the given half width. */
  readonly mean: (xMm: number, yMm: number, halfMm: number) => [number, number, number];
}

/** Reads back what ISO/IEC 15948 says: signature, chunks, filter Up. */
function decode(png: Uint8Array, pxPerMm: number): Decoded {
  const bytes = Buffer.from(png);
  expect(bytes.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const length = bytes.readUInt32BE(33);
  expect(bytes.toString('latin1', 37, 41)).toBe('IDAT');
  const lines = inflateSync(bytes.subarray(41, 41 + length));
  const stride = width * 3;
  const rgb = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++) {
    expect(lines[y * (stride + 1)]).toBe(2);
    for (let k = 0; k < stride; k++) {
      rgb[y * stride + k] = lines[y * (stride + 1) + 1 + k] + (y === 0 ? 0 : rgb[(y - 1) * stride + k]);
    }
  }
  const mean = (xMm: number, yMm: number, halfMm: number): [number, number, number] => {
    const sums = [0, 0, 0];
    let count = 0;
    const from = (mm: number): number => Math.round((mm - halfMm) * pxPerMm + width / 2);
    const to = (mm: number): number => Math.round((mm + halfMm) * pxPerMm + width / 2);
    for (let y = from(yMm); y < to(yMm); y++) {
      for (let x = from(xMm); x < to(xMm); x++, count++) {
        for (let k = 0; k < 3; k++) sums[k] += rgb[y * stride + x * 3 + k];
      }
    }
    return [sums[0] / count, sums[1] / count, sums[2] / count];
  };
  return { width, height, mean };
}

const { frame, sites } = syntheticFrame(0.5, 6, 70);
const plan = {
  ...HALVES,
  tile: { shape: 'square', sizeMm: 70 },
  varieties: [...HALVES.varieties, { ...HALVES.varieties[0], id: 'd', colour: '#3f5fae' }],
} as const;

test('a frame becomes a PNG of the asked size, each lobe in its own colour, the tile dark', () => {
  const picture = decode(drawTile(frame, sites, plan, 4), 4);
  expect([picture.width, picture.height]).toEqual([280, 280]);
  const [fern, garnet, slate] = [
    picture.mean(-16, -12, 3),
    picture.mean(10, -14, 3),
    picture.mean(-14, 22, 3),
  ];
  expect(fern[1]).toBeGreaterThan(fern[0] + 20);
  expect(garnet[0]).toBeGreaterThan(garnet[1] + 40);
  expect(slate[2]).toBeGreaterThan(slate[0] + 30);
  const stone = picture.mean(-33.5, -33.5, 1);
  expect(Math.max(...stone)).toBeLessThan(90);
});

test('a round tile is round', () => {
  const picture = decode(drawTile(frame, sites, { ...plan, tile: { shape: 'disc', sizeMm: 70 } }, 4), 4);
  expect(Math.min(...picture.mean(-33, -33, 1))).toBeGreaterThan(230);
});
