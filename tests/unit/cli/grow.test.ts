/** The headless run as a person calls it: lines, table, exit codes, and nothing written where the input is bad. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Reading } from '../../../src/measure/reading';
import { planText } from '../../../src/plan/file';
import type { Plan } from '../../../src/plan/plan';
import { discPiece, smallPlan } from '../../fixtures/small-plan';

interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

let folder = '';
let small = '';

function filed(name: string, plan: Plan): string {
  const path = join(folder, name);
  writeFileSync(path, planText(plan));
  return path;
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'seambench-grow-'));
  small = filed('small.json', smallPlan({ tile: { shape: 'square', sizeMm: 30 } }));
});

afterAll(() => {
  rmSync(folder, { recursive: true });
});

function grow(...words: string[]): Promise<Outcome> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      ['--import', 'tsx', 'src/cli/grow.ts', ...words],
      (_, out, err) => {
        resolve({ code: child.exitCode ?? -1, out, err });
      },
    );
  });
}

async function readings(...words: string[]): Promise<Reading[]> {
  const { code, out, err } = await grow(small, '--json', ...words);
  expect(err).toBe('');
  expect(code).toBe(0);
  return out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Reading);
}

describe('lines of JSON', () => {
  it('writes one line a seed, at the last month, with the fields that were promised', async () => {
    const lines = await readings('--seeds', '3');
    expect(lines.map(({ seed, month }) => [seed, month])).toEqual([
      ['1', 3],
      ['2', 3],
      ['3', 3],
    ]);
    const [first] = lines;
    for (const key of ['coverMm2', 'swirl', 'veinWidthMm', 'ridgeHeightMm', 'firstTouchDay', 'settledDay']) {
      expect(first).toHaveProperty(key);
    }
    expect(Object.keys(first.varieties)).toEqual(['a', 'b']);
    const { lengthMm, fusedMm, ridgeMm, lappedMm, deadMm, undecidedMm } = first.seam;
    expect(lengthMm).toBeGreaterThan(0);
    expect(fusedMm + ridgeMm + lappedMm + deadMm + undecidedMm).toBeCloseTo(lengthMm, 9);
    expect(first.pairs).toEqual([{ a: 'a', b: 'b', ...first.seam }]);
    expect(new Set(lines.map(({ hash }) => hash)).size).toBe(3);
  });

  it('writes a line each --every months and at the last one', async () => {
    const lines = await readings('--every', '3', '--months', '7', '--seed', 'eleven');
    expect(lines.map(({ seed, month }) => [seed, month])).toEqual([
      ['eleven', 3],
      ['eleven', 6],
      ['eleven', 7],
    ]);
  });

  it('grows the seed of the file, unless another is asked for', async () => {
    const seeded = join(folder, 'seeded.json');
    writeFileSync(seeded, planText(smallPlan({ tile: { shape: 'square', sizeMm: 30 }, months: 1 }), 'reef'));
    const seedOf = async (...words: string[]) => {
      const { out } = await grow(seeded, '--json', '--cell', '0.5', ...words);
      return (JSON.parse(out) as Reading).seed;
    };
    expect(await seedOf()).toBe('reef');
    expect(await seedOf('--seed', 'tide')).toBe('tide');
    expect(await seedOf('--seeds', '1')).toBe('1');
    expect((await readings('--months', '1'))[0].seed).toBe('1');
  });

  it('gives the same hash for the same plan, seed, month and cell, however long it grows', async () => {
    const [short] = await readings('--months', '2', '--seed', 'tide');
    const [, long] = await readings('--months', '4', '--every', '1', '--seed', 'tide');
    const [coarse] = await readings('--months', '2', '--seed', 'tide', '--cell', '0.5');
    expect(long.hash).toBe(short.hash);
    expect(coarse.hash).not.toBe(short.hash);
  });
});

it('writes a table for people without --json', async () => {
  const { code, out } = await grow(small, '--seeds', '2');
  expect(code).toBe(0);
  const [head, ...rows] = out.trimEnd().split('\n');
  expect(head).toMatch(/seed +month +cover mm2 +Fern +Garnet +seam mm +fused +ridge/u);
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(row).toHaveLength(head.length);
});

it('writes a picture for each line with --pictures, whatever the seed is called', async () => {
  const pictures = join(folder, 'new', 'pictures');
  const words = ['--months', '2', '--every', '1', '--seed', 'a/b', '--cell', '0.5', '--pictures', pictures];
  const { code, err } = await grow(small, ...words);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(readdirSync(pictures).sort()).toEqual(['seed-a%2Fb-month-01.png', 'seed-a%2Fb-month-02.png']);
  const png = readFileSync(join(pictures, 'seed-a%2Fb-month-02.png'));
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
  // The width stands in the first chunk: 30 mm at 12 px/mm.
  expect(png.readUInt32BE(16)).toBe(360);
});

it('tells of a folder for pictures that cannot be made, and writes nothing', async () => {
  const { code, out, err } = await grow(small, '--pictures', join(small, 'pictures'));
  expect(err).toMatch(/^The folder .* cannot be made/u);
  expect(out).toBe('');
  expect(code).toBe(2);
});

describe('bad input: a sentence on stderr, exit 2, nothing else written', () => {
  const cases: [string, () => string[], RegExp][] = [
    ['an unknown option', () => [small, '--fast'], /^Unknown option '--fast'\. Usage/u],
    ['a file that is not there', () => [join(folder, 'none.json')], /none\.json cannot be read/u],
    ['a file that is no plan', () => ['README.md'], /README\.md: .*: found text that is not JSON/u],
    [
      'a piece that leaves the tile',
      () => [filed('beyond.json', smallPlan({ pieces: [discPiece('p3', 'a', 27.1, 0, 10)] }))],
      /pieces\[0\] \(p3\): found an edge 2\.1 mm beyond the tile; allowed is a piece wholly on the square of 60 mm\. The Fern disc .* reaches 2\.1 mm beyond the tile: move it in or choose a tile of at least 65 mm\./u,
    ],
  ];

  it.each(cases)('%s', async (_, words, sentence) => {
    const pictures = join(folder, 'pictures');
    const { code, out, err } = await grow(...words(), '--pictures', pictures, '--json');
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/\n {4}at /u);
    expect(out).toBe('');
    expect(code).toBe(2);
    expect(readdirSync(folder)).not.toContain('pictures');
  });
});
