/** What the log says of pairs: verdicts, took of tried with shrinkage, what to try next, hints. */
import { describe, expect, it } from 'vitest';
import { alikePairs } from '../../src/trials/alike';
import { nextPairs, taughtBy } from '../../src/trials/next-pairs';
import { openWords } from '../../src/trials/open-tries';
import { pairTable } from '../../src/trials/pair-table';
import type { LogVariety, Trial } from '../../src/trials/trial';
import { verdictOf } from '../../src/trials/verdicts';
import { logOf, settledTiles, tileOfTwo, variety, type Look } from '../fixtures/log';

const TODAY = '2026-03-05';
const verdict = (looks: readonly Look[]) => verdictOf(tileOfTwo('t1', ['a', 'b'], looks), 'b', 'a');

describe('the verdict of a pair on a tile', () => {
  it('is that of the last reading, on the day from which it held', () => {
    const looks: Look[] = [
      { on: '2026-02-01', saw: 'undecided' },
      { on: '2026-03-01', saw: 'ridge' },
      { on: '2026-04-01', saw: 'ridge' },
    ];
    expect(verdict(looks)).toMatchObject({ outcome: 'ridge', isSettled: true, days: 59, turnedFrom: null });
  });

  it('stands where a later look could not tell, and counts as undecided where none could', () => {
    const fused: Look = { on: '2026-02-01', saw: 'fused' };
    const unsure: Look = { on: '2026-03-01', saw: 'cant-tell' };
    expect(verdict([fused, unsure])).toMatchObject({ outcome: 'fused', days: 31 });
    expect(verdict([unsure])).toMatchObject({ outcome: 'undecided', isSettled: false, days: 59 });
    expect(verdict([{ on: '2026-02-01', saw: 'not-met' }])).toMatchObject({ outcome: 'undecided', days: 31 });
    expect(verdict([])).toMatchObject({ outcome: 'undecided', days: 0, fusedShare: null });
  });

  it('turns, and says from what', () => {
    const looks: Look[] = [
      { on: '2026-02-01', saw: 'fused' },
      { on: '2026-05-01', saw: 'ridge' },
    ];
    expect(verdict(looks)).toMatchObject({ outcome: 'ridge', turnedFrom: 'fused', days: 120 });
  });

  it('is what most of the seam was; of two parts as long, the one that is no merge', () => {
    const parts = (share: number): Look[] => [
      { on: '2026-02-01', saw: 'fused', share },
      { on: '2026-02-01', saw: 'lapped', over: 'b', share: 1 - share },
    ];
    expect(verdict(parts(0.6))).toMatchObject({ outcome: 'fused', fusedShare: 0.6, over: null });
    expect(verdict(parts(0.5))).toMatchObject({ outcome: 'lapped', over: 'b' });
  });
});

describe('the table of pairs', () => {
  const four = ['a', 'b', 'c', 'd'].map((id) => variety(id, 'Montipora'));
  const log = logOf(
    [...four, variety('x', 'Cyphastrea'), variety('y')],
    [
      ...settledTiles(['a', 'b'], ['fused', 'fused', 'fused']),
      ...settledTiles(['a', 'c'], ['ridge', 'ridge']),
      ...settledTiles(['b', 'c'], ['lapped', 'undecided']),
      ...settledTiles(['a', 'x'], ['ridge']),
    ],
  );
  const table = pairTable(log);

  it('counts took of tried, and what is undecided apart', () => {
    expect(table.cell('b', 'a')).toMatchObject({
      took: 3,
      tried: 3,
      undecided: 0,
      kind: 'within',
      medianDays: 31,
    });
    expect(table.cell('c', 'b')).toMatchObject({ took: 0, tried: 1, undecided: 1 });
    expect(table.cell('c', 'd')).toMatchObject({ took: 0, tried: 0, share: null });
    expect(table.noted).toHaveLength(4);
  });

  it('draws each share towards the others of its kind, the less the more was tried', () => {
    const [took, never, untried] = [table.cell('a', 'b'), table.cell('a', 'c'), table.cell('c', 'd')];
    expect(took.chance).toBeLessThan(1);
    expect(took.chance).toBeGreaterThan(untried.chance);
    expect(never.chance).toBeGreaterThan(0);
    expect(never.chance).toBeLessThan(untried.chance);
    for (const cell of [took, never, untried]) {
      expect(cell.low).toBeLessThanOrEqual(cell.chance);
      expect(cell.high).toBeGreaterThanOrEqual(cell.chance);
    }
    const more = pairTable(logOf(four, settledTiles(['a', 'b'], Array<'fused'>(20).fill('fused'))));
    expect(more.cell('a', 'b').chance).toBeGreaterThan(took.chance);
  });

  it('keeps groups apart: what takes within one says nothing of a cross', () => {
    expect(table.cell('a', 'x').kind).toBe('across');
    expect(table.cell('b', 'x').chance).toBeLessThan(table.cell('c', 'd').chance);
    expect(table.cell('a', 'y').kind).toBe('unsaid');
    expect(table.cell('a', 'a')).toMatchObject({ kind: 'self', chance: 0.95 });
  });

  it('is the planning prior where nothing was tried', () => {
    const { chance } = pairTable(logOf(four, [])).cell('a', 'b');
    expect(chance).toBeCloseTo(0.05, 12);
  });

  it('holds 500 varieties', () => {
    const many = Array.from({ length: 500 }, (_, at) => variety(`v${at}`, `g${at % 5}`));
    const next = nextPairs(
      pairTable(logOf(many, settledTiles(['v0', 'v5'], ['fused', 'ridge']))),
      'worth',
      10,
      TODAY,
    );
    expect(next).toHaveLength(10);
  });
});

describe('what to try next', () => {
  it('prefers what is worth more, then what has taken with the same others; crosses are left out', () => {
    const varieties = [
      variety('a', 'M'),
      variety('b', 'M'),
      variety('c', 'M'),
      variety('d', 'M', { worth: 5 }),
      variety('x', 'C', { worth: 100 }),
    ];
    const log = logOf(varieties, [
      ...settledTiles(['a', 'b'], ['fused', 'fused']),
      ...settledTiles(['b', 'c'], ['fused']),
      ...settledTiles(['a', 'd'], ['ridge', 'ridge', 'ridge', 'ridge', 'ridge']),
    ]);
    const next = nextPairs(pairTable(log), 'worth', 20, TODAY);
    const names = next.map(({ cell }) => cell.a.id + cell.b.id);
    expect(names.some((name) => name.includes('x'))).toBe(false);
    expect(names[0]).toMatch(/d/u);
    const akin = next.find(({ cell }) => cell.a.id === 'a' && cell.b.id === 'c');
    expect(akin?.inCommon).toEqual(['b']);
    expect(akin?.why).toBe(
      'Never tried to a verdict; of the other pairs within M 3 of 8 took; both have taken with B.',
    );
  });

  it('says by which number each stands where it stands', () => {
    const log = logOf([variety('a', '', { worth: 4 }), variety('b', '', { worth: 6 })], []);
    const rank = (by: 'worth' | 'teaches') => nextPairs(pairTable(log), by, 1, TODAY)[0];
    const [worth, teaches] = [rank('worth'), rank('teaches')];
    expect(worth.rank).toBe(
      `Worth of a try ${(5 * worth.cell.chance).toFixed(2)}: ${Number((100 * worth.cell.chance).toPrecision(2))} % of 5, the mean worth of the two.`,
    );
    const [, now, after] =
      /± ([\d.]+) in 100; after one more verdict to about ± ([\d.]+)\.$/u.exec(teaches.rank) ?? [];
    expect((Number(now) / 100) ** 2 - (Number(after) / 100) ** 2).toBeCloseTo(teaches.teaches, 3);
  });

  it('tells tiles that may still settle from those no longer read and those of which a piece is gone', () => {
    const looks: Look[] = [{ on: '2026-02-01', saw: 'undecided' }];
    const tiles = ['t1', 't2', 't3', 't4'].map((id) => tileOfTwo(id, ['a', 'b'], looks));
    const gone = tiles[3].readings.map((reading) => ({
      ...reading,
      measured: [{ variety: 'a', state: 'died' as const }],
    }));
    const log = logOf(
      [variety('a'), variety('b')],
      [{ ...tiles[0], setOn: '2025-02-01', readings: [] }, { ...tiles[1], setOn: '2025-05-01', readings: [] }, tiles[2], { ...tiles[3], readings: gone }],
    ); // prettier-ignore
    const cell = pairTable(log).cell('a', 'b');
    expect(openWords(cell, TODAY)).toBe(
      '1 not settled yet, 2 not read for 10 months or more, 1 with a piece dead or lost before it settled',
    );
    expect(openWords(cell, '2026-08-03')).toMatch(/^3 not read for 6 months or more, 1 with/u);
    expect(openWords(pairTable(logOf([variety('a'), variety('b')], settledTiles(['a', 'b'], ['fused']))).cell('a', 'b'), TODAY)).toBe(''); // prettier-ignore
  });

  // Beta(1, 1): variance 1/12; after one try Beta(2, 1) or Beta(1, 2), variance 1/18 either way: 1/36 less
  it('teaches as much as one verdict is expected to take off the variance', () => {
    const cell = pairTable(logOf([variety('a'), variety('b')], [])).cell('a', 'b');
    expect(taughtBy({ ...cell, posterior: { a: 1, b: 1 } })).toBeCloseTo(1 / 36, 12);
  });
});

describe('a hint of one genotype', () => {
  const varieties: LogVariety[] = ['a', 'b', 'c', 'd', 'e'].map((id) => variety(id, 'M'));
  const twins = (others: readonly (readonly ['a' | 'b', string, 'fused' | 'ridge'])[]): Trial[] => [
    ...settledTiles(['a', 'b'], ['fused', 'fused', 'fused']),
    ...others.flatMap(([one, other, saw]) => settledTiles([one, other], [saw])),
  ];

  it('is given where two always fuse and meet three others alike, and claims nothing', () => {
    const alike = alikePairs(
      pairTable(
        logOf(
          varieties,
          twins([
            ['a', 'c', 'ridge'],
            ['b', 'c', 'ridge'],
            ['a', 'd', 'fused'],
            ['b', 'd', 'fused'],
            ['a', 'e', 'ridge'],
            ['b', 'e', 'ridge'],
          ]),
        ),
      ),
    );
    expect(alike).toHaveLength(1);
    expect(alike[0].words).toMatch(/may be one genotype.*genetic test would tell.*itself/u);
  });

  it('is not given where one other tells them apart, or too few were met', () => {
    const apart = twins([
      ['a', 'c', 'ridge'],
      ['b', 'c', 'ridge'],
      ['a', 'd', 'fused'],
      ['b', 'd', 'ridge'],
      ['a', 'e', 'ridge'],
      ['b', 'e', 'ridge'],
    ]);
    expect(alikePairs(pairTable(logOf(varieties, apart)))).toEqual([]);
    expect(alikePairs(pairTable(logOf(varieties, twins([['a', 'c', 'ridge'], ['b', 'c', 'ridge']]))))).toEqual([]); // prettier-ignore
  });
});
