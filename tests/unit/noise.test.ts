import { describe, expect, it } from 'vitest';
import { draw, keysOf } from '../../src/model/noise';

describe('noise', () => {
  it('gives three pinned draws: a change here changes every run ever saved', () => {
    const keys = keysOf('1');
    expect([draw(keys.siteX, 0, 0), draw(keys.coin, 12, 3), draw(keys.revert, -5, 400)])
      .toMatchInlineSnapshot(`
      [
        0.5418904955731705,
        0.6909532906720415,
        0.8834955833153799,
      ]
    `);
  });

  it('is uniform in every byte over sites, counters and seeds', () => {
    // chi-square of 256 classes has mean 255 and variance 510: |z| < 4 for each of 12 tests
    const over: Record<string, (k: number) => number> = {
      site: (k) => draw(keysOf('1').coin, k, 0),
      counter: (k) => draw(keysOf('1').coin, 7, k),
      lattice: (k) => draw(keysOf('1').coin, ((k >> 8) << 12) | (k & 255), 1),
    };
    for (const name of Object.keys(over)) {
      const key = over[name];
      const n = 1 << 15;
      const values = Array.from({ length: n }, (_, k) => Math.floor(key(k) * 2 ** 32));
      for (const shift of [0, 8, 16, 24]) {
        const counts = new Float64Array(256);
        for (const value of values) counts[(value >>> shift) & 255]++;
        const chi = counts.reduce((sum, c) => sum + (c - n / 256) ** 2 / (n / 256), 0);
        expect(Math.abs(chi - 255) / Math.sqrt(510), `${name}, byte at bit ${shift}`).toBeLessThan(4);
      }
    }
  });

  it('flips each output bit for half of all one-bit changes of the site', () => {
    const { coin } = keysOf('1');
    for (let bit = 0; bit < 20; bit++) {
      let flips = 0;
      const n = 2000;
      for (let site = 0; site < n; site++) {
        let x =
          Math.floor(draw(coin, site, 0) * 2 ** 32) ^ Math.floor(draw(coin, site ^ (1 << bit), 0) * 2 ** 32);
        for (; x !== 0; x &= x - 1) flips++;
      }
      expect(Math.abs(flips / (32 * n) - 0.5)).toBeLessThan(0.012);
    }
  });

  it('stays inside (0, 1)', () => {
    const { coin } = keysOf('edge');
    for (let k = 0; k < 20_000; k++) {
      const u = draw(coin, k * 7919, k);
      expect(u > 0 && u < 1).toBe(true);
    }
  });
});
