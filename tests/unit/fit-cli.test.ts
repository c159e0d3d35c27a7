/** The fits as a person calls them: shapes, table, bad rows, exit codes. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fitOptions } from '../../src/cli/fit-options';
import { Refused } from '../../src/cli/words';

let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'seambench-fit-'));
});

afterAll(() => {
  rmSync(folder, { recursive: true });
});

function fit(kind: string, rows: readonly string[], ...words: string[]) {
  const path = join(folder, `${kind}.csv`);
  writeFileSync(path, `${rows.join('\n')}\n`);
  return called(path, '--kind', kind, ...words);
}

function called(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      ['--import', 'tsx', 'src/cli/fit.ts', ...words],
      (_, out, err) => {
        resolve({ code: child.exitCode ?? -1, out, err });
      },
    );
  });
}

const RADIUS = [
  'colony,group,year,area_mm2',
  ...[10, 22, 34].map((radius, at) => `c1,green,${2020 + at},${Math.PI * radius * radius}`),
  ...[15, 27, 20].map((radius, at) => `c2,green,${2020 + at},${Math.PI * radius * radius}`),
];
/** By symmetry of the doubled odds the slope is log 4 a tenfold and the middle is level. */
const SURVIVAL = [
  'group,size_mm2,alive',
  ...['1,0', '1,0', '1,1', '100,1', '100,1', '100,0'].map((row) => `green,${row}`),
  ...['1,no', '10,yes'].map((row) => `red,${row}`),
];

describe('shapes of --json', () => {
  it('radius: 12 mm a year from three of four pairs', async () => {
    const { code, out, err } = await fit('radius', RADIUS, '--json');
    expect([code, err]).toEqual([0, '']);
    const rates = JSON.parse(out) as Record<string, number>[];
    expect(rates.map((rate) => Object.keys(rate).join())).toEqual([
      'group,n,rimMmPerMonth,low,high,q98MmPerYear',
    ]);
    expect(rates[0]).toMatchObject({ group: 'green', n: 4 });
    for (const [key, want] of Object.entries({ rimMmPerMonth: 1, low: 1, high: 1, q98MmPerYear: 12 }))
      expect(rates[0][key]).toBeCloseTo(want, 6);
  });

  it('survival: log odds of the two cells seen; separation as null with why', async () => {
    const { code, out } = await fit('survival', SURVIVAL, '--json');
    expect(code).toBe(0);
    const [green, red] = JSON.parse(out) as Record<string, number | string | null>[];
    expect(Object.keys(green).join()).toBe('group,n,intercept,slope,seIntercept,seSlope');
    // saturated: log odds -log 2 at 1 mm2 and +log 2 at 100 mm2, each with variance 1/1 + 1/2
    expect(green.intercept).toBeCloseTo(-Math.log(2), 9);
    expect(green.slope).toBeCloseTo(Math.log(2), 9);
    expect(green.seIntercept).toBeCloseTo(Math.sqrt(1.5), 9);
    expect(green.seSlope).toBeCloseTo(Math.sqrt(3) / 2, 9);
    expect(red).toMatchObject({ group: 'red', n: 2, slope: null, seSlope: null });
    expect(red.why).toMatch(/parts all that lived/u);
  });

  it('contest: abilities that sum to 0, the tie parameter, and null with why for who cannot be placed', async () => {
    const rows = [
      ...Array.from({ length: 30 }, () => 'a,b,'),
      ...Array.from({ length: 20 }, () => 'b,a,0'),
      ...Array.from({ length: 5 }, () => 'a,b,1'),
      ...Array.from({ length: 5 }, () => 'b,a,yes'),
      'z,a,no',
    ];
    const { code, out } = await fit('contest', ['winner,loser,tie', ...rows], '--json');
    expect(code).toBe(0);
    const { items, tie } = JSON.parse(out) as {
      items: { name: string; ability: number | null; se: number | null; why?: string }[];
      tie: number;
    };
    expect(tie).toBeCloseTo(10 / Math.sqrt(600), 9); // saturated: log odds and ties as seen
    expect(Object.keys(items[0]).join()).toBe('name,ability,se');
    expect(items[0].ability).toBeCloseTo(Math.log(1.5) / 2, 9);
    expect(items[1].ability).toBeCloseTo(-Math.log(1.5) / 2, 9);
    expect(items[0].se).toBeCloseTo(Math.sqrt(1 / 30 + 1 / 20) / 2, 9);
    expect(items[2]).toMatchObject({ name: 'z', ability: null, se: null });
    expect(items[2].why).toMatch(/never lost/u);
  });

  it('lifetimes: share left, with the undecided at risk until last seen', async () => {
    const rows = ['group,days,settled', 'g,10,1', 'g,20,0', 'g,30,1', 'g,40,1'];
    const { code, out } = await fit('lifetimes', rows, '--json');
    expect(code).toBe(0);
    const [curve] = JSON.parse(out) as { medianDays: number; steps: { left: number }[] }[];
    expect(curve).toMatchObject({ group: 'g', n: 4, medianDays: 30 });
    [3 / 4, 3 / 8, 0].forEach((left, at) => expect(curve.steps[at].left).toBeCloseTo(left, 12));
  });
});

/** Two tiles, four weeks apart: grown 2 mm a month by eye, met, one lapped and one ridge. */
const LOG = [
  'tag,set_on,tank,piece_mm,on,variety,with,saw,over,radius_mm',
  'A-1,2026-01-01,North,20,2026-01-01,Fern,,,,10',
  'A-1,,,,2026-05-02,Fern,,,,18',
  'A-1,,,,2026-05-02,Fern,Garnet,not met yet,,',
  'A-1,,,,2026-06-02,Fern,Garnet,lapped,Garnet,',
  'A-2,2026-01-01,South,20,2026-02-01,Fern,Garnet,not met yet,,',
  'A-2,,,,2026-04-01,Fern,Garnet,ridge,,',
];

describe('a log of trials', () => {
  function logged(rows: readonly string[], ...words: string[]) {
    const path = join(folder, 'log.csv');
    writeFileSync(path, `${rows.join('\n')}\n`);
    return called(path, ...words);
  }

  it('gives pairs, rates, survival, contests and days, and names the bad row', async () => {
    const { code, out, err } = await logged([...LOG, 'A-2,,,,2026-04-31,Fern,,,,12'], '--json');
    expect(code).toBe(0);
    expect(err).toMatch(/^line 8: .*2026-04-31.*; the row is left out\n$/u);
    const told = JSON.parse(out) as Record<string, Record<string, unknown>[]>;
    expect(told).toMatchObject({ trials: 2, readings: 5 });
    expect(told.pairs).toMatchObject([{ a: 'Fern', b: 'Garnet', took: 0, tried: 2, undecided: 0, bOver: 1 }]);
    expect(told.radius[0]).toMatchObject({ group: 'Fern', n: 1, tiles: 1, low: null });
    expect(told.radius[0].rimMmPerMonth).toBeCloseTo(8 / (121 / 30.4375), 6);
    expect(told.radius[1]).toMatchObject({ group: 'Garnet', n: 0, why: 'no tile was measured twice' });
    expect(told.survival[0]).toMatchObject({ group: 'no group noted', n: 4, slope: null });
    expect(told.contest[0]).toMatchObject({
      n: 2,
      items: [
        { won: 1, tied: 1 },
        { lost: 1, tied: 1 },
      ],
    });
    expect(told.lifetimes[0]).toMatchObject({ n: 2, settled: 2, medianDays: 90 });
  });

  it("splits by tank, and takes the log's own file", async () => {
    const { code, out } = await called('presets/demo-farm.json', '--json', '--split', 'tank');
    expect(code).toBe(0);
    const { radius } = JSON.parse(out) as { radius: { group: string; part?: string }[] };
    const slate = radius.filter(({ group }) => group === 'Slate').map(({ part }) => part);
    expect(slate.sort()).toEqual(['Glass room', 'North', 'South']);
  });

  it('exits 2 where days can be read two ways, until it is told how', async () => {
    const rows = ['tag,set_on,variety', 'A-1,03/04/2026,Fern'];
    const refused = await logged(rows, '--json');
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toMatch(/--dates dmy or --dates mdy/u);
    expect((await logged(rows, '--json', '--dates', 'dmy')).code).toBe(0);
  });

  it('exits 2 where no row is good', async () => {
    const { code, out, err } = await logged(['tag,set_on,variety', 'A-1,soon,Fern'], '--json');
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/line 2: .*\nNo row of the table is good/u);
  });
});

describe('for people', () => {
  it('writes columns under headings', async () => {
    const { code, out } = await fit('survival', SURVIVAL);
    expect(code).toBe(0);
    const [head, green, red] = out.split('\n');
    expect(head).toMatch(/^group\s+n\s+intercept\s+slope\s+seIntercept\s+seSlope\s+why$/u);
    expect(green).toMatch(/^green\s+6\s+-0\.6931\s+0\.6931\s/u);
    expect(red).toMatch(/^red\s+2\s+–\s+–\s+–\s+–\s+some size/u);
  });
});

describe('bad input', () => {
  it('names bad rows by line, uses the good ones', async () => {
    const { code, out, err } = await fit('radius', [...RADIUS, 'c3,green,2020,big'], '--json');
    expect(code).toBe(0);
    expect(err).toMatch(/^line 8: area_mm2 must be a number .*'big'; the row is left out\n$/u);
    expect(JSON.parse(out)).toMatchObject([{ group: 'green', n: 4 }]);
  });

  it.each<[string, string, string[], RegExp]>([
    [
      'no good row',
      'survival',
      ['group,size_mm2,alive', 'g,5,maybe'],
      /line 2: .*\nNo row of the table is good/u,
    ],
    ['no growth', 'radius', ['colony,group,year,radius_mm', 'c,g,2020,5'], /No colony was read on two days/u],
    ['a missing column', 'contest', ['winner,loser', 'a,b'], /none named tie/u],
    [
      'an unknown kind',
      'growth',
      ['a'],
      /--kind must be one of radius, survival, contest, lifetimes, but it is 'growth'/u,
    ],
  ])('exits 2 for %s, with nothing on stdout', async (_, kind, rows, sentence) => {
    const { code, out, err } = await fit(kind, rows, '--json');
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(sentence);
  });

  it('exits 2 for a file that is not there', async () => {
    const { code, err } = await called(join(folder, 'none.csv'), '--kind', 'radius');
    expect(code).toBe(2);
    expect(err).toMatch(/cannot be read/u);
  });

  it.each<[string[], RegExp]>([
    [[], /^Name one table; 0 were named\. Usage/u],
    [['t.csv', '--split', 'week'], /^--split must be one of tank, event, but it is 'week'\. Usage/u],
    [['t.csv', '--leave-out', 'dip', '--leave-out', 'rain'], /^--leave-out must be one of dip, .*'rain'/u],
    [['t.csv', '--kind', 'radius', '--split', 'tank'], /^--split is for a log/u],
    [['t.csv', '--kind', 'radius', '--fast'], /^Unknown option '--fast'\. Usage/u],
  ])('refuses the words %j in a sentence', (words, sentence) => {
    expect(() => fitOptions(words)).toThrow(Refused);
    expect(() => fitOptions(words)).toThrow(sentence);
  });
});
