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

describe('a plan with steps', () => {
  const lines: [number, number][][] = [
    [[-30, 0], [30, 0]],
    [[0, -30], [0, 30]],
  ]; // prettier-ignore

  function stepped(name: string, steps: Plan['steps']): string {
    return filed(name, smallPlan({ tile: { shape: 'square', sizeMm: 30 }, steps }));
  }

  it('tells in each line the steps done so far and what each took', async () => {
    const path = stepped('steps.json', [
      { id: 'late', day: 80, kind: 'lift', piece: 'p2' },
      { id: 'trimmed', day: 40, kind: 'trim', widthMm: 1 },
      { id: 'off', day: 41, on: false, kind: 'trim', widthMm: 1 },
      {
        id: 'cut',
        day: 70,
        kind: 'recut',
        lines,
        kerfMm: 1,
        then: [{ piece: 'cut.1', at: [-9, -9], turnDeg: 90 }],
      },
      { id: 'never', day: 95, kind: 'trim', widthMm: 5 },
    ]);
    const { code, out, err } = await grow(path, '--json', '--every', '1', '--cell', '0.5', '--seed', 'one');
    expect([code, err]).toEqual([0, '']);
    const [first, second, third] = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Reading);
    expect(first.steps).toEqual([]);
    expect(second.steps.map(({ id, day }) => [id, day])).toEqual([['trimmed', 40]]);
    expect(third.steps.map(({ id, day }) => [id, day])).toEqual([
      ['trimmed', 40],
      ['cut', 70],
      ['late', 80],
    ]);
    expect(third.steps[0]).toEqual(second.steps[0]);
    const [trimmed, cut, late] = third.steps;
    expect(trimmed.cuttings).toBeGreaterThan(0);
    expect(trimmed.cutMm2['a']).toBeGreaterThan(0);
    expect(trimmed.lostMm2).toEqual({ a: 0, b: 0 });
    expect(cut.cuttings).toBe(0);
    expect(cut.lostMm2['a']).toBeGreaterThan(5);
    expect(cut.skipped).toBe(0);
    expect(late.cutMm2['b']).toBeGreaterThan(50);
    expect(third.varieties['b'].areaMm2).toBe(0);
  });

  const bad: [string, Plan['steps'], RegExp][] = [
    [
      'a piece that is not there',
      [{ id: 'm', day: 3, kind: 'lift', piece: 'p9' }],
      /steps\[0\] \(m\): found the piece p9, which is not there; allowed is one of p1, p2\. In the lift of day 3 the piece p9 is not there/u,
    ],
    [
      'a face of another cut',
      [
        {
          id: 'c',
          day: 3,
          kind: 'recut',
          lines,
          kerfMm: 1,
          then: [{ piece: 'c.1.2', at: [0, 0], turnDeg: 0 }],
        },
        { id: 'c.1', day: 4, kind: 'recut', lines, kerfMm: 1, then: [] },
      ],
      /steps\[0\] \(c\): found the piece c\.1\.2 of another cut; allowed is each of c\.1, c\.2 … at most once/u,
    ],
    [
      'a face placed twice',
      [
        {
          id: 'c',
          day: 3,
          kind: 'recut',
          lines,
          kerfMm: 1,
          then: [{ piece: 'c.1', at: [0, 0], turnDeg: 0 }, { piece: 'c.1', at: [1, 1], turnDeg: 0 }], // prettier-ignore
        },
      ],
      /steps\[0\] \(c\): found the piece c\.1 placed twice/u,
    ],
    [
      'one id twice',
      [
        { id: 't', day: 3, kind: 'trim', widthMm: 1 },
        { id: 't', day: 4, kind: 'trim', widthMm: 1 },
      ],
      /steps\[1\] \(t\): found the id t again, as in steps\[0\]/u,
    ],
    [
      'a day that is none',
      [{ id: 't', day: 2.5, kind: 'trim', widthMm: 1 }],
      /steps\[0\] \(t\).*day.*found 2\.5; allowed is a whole number from 0 to 1095/u,
    ],
    [
      'a kerf beyond any blade',
      [{ id: 'c', day: 3, kind: 'recut', lines, kerfMm: 50, then: [] }],
      /steps\[0\] \(c\).*kerfMm.*found 50; allowed is a number from 0 to 5/u,
    ],
  ];

  it.each(bad)('%s: a sentence, exit 2, nothing grown', async (name, steps, sentence) => {
    const { code, out, err } = await grow(stepped(`${name}.json`, steps), '--json');
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/\n {4}at /u);
    expect(out).toBe('');
    expect(code).toBe(2);
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
