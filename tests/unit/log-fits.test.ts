/** What is fitted to a log: which readings count, which do not and why, and the numbers where they can be told by hand. */
import { describe, expect, it } from 'vitest';
import { aggressionFits } from '../../src/trials/log-contests';
import { daysFits } from '../../src/trials/log-days';
import { rimFits } from '../../src/trials/log-rim';
import { survivalOfLog } from '../../src/trials/log-survival';
import type { Log, Measured, Saw, TankEvent, Trial } from '../../src/trials/trial';
import { dateOfDay, dayOfDate, DAYS_PER_MONTH } from '../../src/units/quantity';
import { logOf, settledTiles, tileOfTwo, variety } from '../fixtures/log';

const SET = '2026-01-01';
const day = (after: number): string => dateOfDay(dayOfDate(SET) + after);

/** A tile of a and b on which a was measured on some days after it was set. */
function measuredTile(
  id: string,
  sizes: readonly (readonly [number, Omit<Measured, 'variety'>])[],
  tank = 'North',
): Trial {
  return {
    ...tileOfTwo(id, ['a', 'b'], []),
    tank,
    readings: sizes.map(([after, size], at) => ({
      id: `r${at + 1}`,
      on: day(after),
      seen: [],
      measured: [{ variety: 'a', ...size }],
    })),
  };
}

const AB = [variety('a', 'G'), variety('b', 'G')];

function withEvent(log: Log, event: Partial<TankEvent>): Log {
  return { ...log, events: [{ id: 'e1', on: day(70), tank: 'north ', kind: 'dip', tags: [], ...event }] };
}

describe('rim rate', () => {
  const month = DAYS_PER_MONTH;
  it('comes from radii, areas and outlines alike, in mm a month', () => {
    const grown = (mm: number) => Math.PI * mm * mm;
    const side = (mm: number) => Math.sqrt(grown(mm));
    const square = (mm: number) => [[0, 0], [side(mm), 0], [side(mm), side(mm)], [0, side(mm)]] as const; // prettier-ignore
    const log = logOf(AB, [
      measuredTile('t1', [[0, { radiusMm: 10 }], [61, { radiusMm: 10 + (2 * 61) / month }]]),
      measuredTile('t2', [[0, { areaMm2: grown(8) }], [61, { outline: square(8 + (2 * 61) / month) }]]),
    ]); // prettier-ignore
    const [a, b] = rimFits(log);
    expect(a.rate).toMatchObject({ n: 2 });
    expect(a.rate?.rimMmPerMonth).toBeCloseTo(2, 9);
    expect(a).toMatchObject({ tiles: 2, dates: { from: SET, to: day(61) }, leftOut: [] });
    expect(b).toMatchObject({ rate: null, spans: [] });
  });

  it('does not set a radius by eye against an area, nor count what had died', () => {
    const log = logOf(AB, [
      measuredTile('t1', [
        [0, { radiusMm: 10 }],
        [30, { areaMm2: 500 }],
        [60, { areaMm2: 700 }],
        [90, { radiusMm: 3, state: 'died' }],
      ]),
    ]);
    const [{ rate, leftOut }] = rimFits(log);
    expect(rate?.n).toBe(1);
    expect(leftOut).toEqual([
      { why: 'size of what had died or was lost', count: 1 },
      { why: 'radius by eye against an area', count: 1 },
    ]);
  });

  it('tells losses from growth by their weight, with what is left over of each', () => {
    const radii = [10, 12, 14, 10, 12, 14, 16];
    const log = logOf(AB, [
      measuredTile('t1', radii.map((radiusMm, at) => [at * 30, { radiusMm }] as const)),
    ]); // prettier-ignore
    const [{ rate, spans }] = rimFits(log);
    expect(rate?.rimMmPerMonth).toBeCloseTo((2 * month) / 30, 9);
    expect(spans.map(({ weight }) => weight)).toEqual([1, 1, 0, 1, 1, 1]);
    expect(spans[2].residual).toBeCloseTo((-6 * month) / 30, 9);
  });

  it('leaves out what grew after the piece may have met a neighbour, and says what the rim gains at least', () => {
    const radii = [[0, { radiusMm: 10 }], [30, { radiusMm: 12 }], [60, { radiusMm: 13.5 }], [90, { radiusMm: 15 }]] as const; // prettier-ignore
    const fitOf = (...saws: readonly (Saw | null)[]) => {
      const tile = measuredTile('t1', radii);
      const readings = tile.readings.map((reading, at) => {
        const saw = saws[at] ?? null;
        return saw === null ? reading : { ...reading, seen: [{ a: 'b', b: 'a', saw }] };
      });
      return rimFits(logOf(AB, [{ ...tile, readings }]))[0];
    };
    const counted = (...saws: readonly (Saw | null)[]) => fitOf(...saws).spans.map(({ toDay }) => toDay);
    expect(counted(null, 'not-met', 'undecided', 'ridge')).toEqual([30]);
    expect(counted(null, 'not-met', 'not-met', 'cant-tell')).toEqual([30, 60, 90]); // no look says that they met
    expect(counted(null, 'not-met', null, 'fused')).toEqual([30]); // by day 60 they may have
    expect(counted(null, 'not-met', 'cant-tell', 'lapped')).toEqual([30]);
    expect(counted()).toEqual([30, 60, 90]);
    expect(fitOf(null, 'not-met', 'ridge', 'ridge').leftOut).toEqual([
      { why: 'size after it had met a neighbour', count: 2 },
    ]);
    const touching = { ...measuredTile('t1', radii), layout: { pieceMm: 20, gapMm: 0 } };
    expect(rimFits(logOf(AB, [touching]))[0].spans).toEqual([]);
    expect(rimFits(logOf(AB, [{ ...touching, varieties: ['a'] }]))[0].spans).toHaveLength(3);
    const none = fitOf(null, 'ridge', 'ridge', 'ridge');
    expect([none.rate, none.dates]).toEqual([null, null]);
    expect(none.why).toMatch(
      /^all sizes were read after it had met a neighbour; the rim gains at least the 1\.\d\d mm a month/u,
    );
  });

  const three = logOf(AB, [
    measuredTile('t1', [[0, { radiusMm: 10 }], [60, { radiusMm: 14 }], [90, { radiusMm: 14.2 }], [130, { radiusMm: 17 }]]),
  ]); // prettier-ignore

  it('leaves out what an event touched: that day or the 30 days after, in that tank, on those tiles', () => {
    const counted = (event: Partial<TankEvent>) =>
      rimFits(withEvent(three, event), { leaveOut: ['dip'], split: 'none' })[0].spans.map(
        ({ fromDay }) => fromDay,
      );
    expect(counted({})).toEqual([0]); // its aftermath ends on day 100
    expect(counted({ on: day(90) })).toEqual([0, 60]);
    expect(counted({ on: day(-31) })).toEqual([0, 60, 90]);
    expect(counted({ tank: 'South' })).toEqual([0, 60, 90]);
    expect(counted({ kind: 'pest' })).toEqual([0, 60, 90]);
    expect(counted({ tags: ['T2'] })).toEqual([0, 60, 90]);
    expect(counted({ tags: ['t1'] })).toEqual([0]);
    const [fit] = rimFits(withEvent(three, {}), { leaveOut: ['dip'], split: 'none' });
    expect(fit.leftOut).toEqual([{ why: 'touched by an event: dip', count: 2 }]);
    const first = logOf(AB, [measuredTile('t1', [[0, { radiusMm: 10 }], [60, { radiusMm: 14 }]])]); // prettier-ignore
    expect(rimFits(withEvent(first, { on: day(35) }), { leaveOut: ['dip'], split: 'none' })[0].why).toBe(
      'nothing that was measured counts: touched by an event: dip',
    );
  });

  it('is split by tank, or by whether an event touched it', () => {
    const log = logOf(AB, [...three.trials, measuredTile('t2', [[0, { radiusMm: 10 }], [60, { radiusMm: 12 }]], 'South')]); // prettier-ignore
    const parts = (split: 'tank' | 'event') =>
      rimFits(withEvent(log, {}), { leaveOut: [], split })
        .filter(({ rate }) => rate !== null)
        .map(({ part, rate }) => [part, rate?.n]);
    expect(parts('tank')).toEqual([['North', 3], ['South', 1]]); // prettier-ignore
    expect(parts('event')).toEqual([['no event', 2], ['touched by an event', 2]]); // prettier-ignore
  });
});

describe('aggression', () => {
  const lapped = (id: string, pair: readonly [string, string], over?: string) =>
    tileOfTwo(id, pair, [{ on: '2026-02-01', saw: 'lapped', ...(over === undefined ? {} : { over }) }]);

  it('counts lapped and dead by who lies above, ridges as ties, and no merge', () => {
    const log = logOf(AB, [
      lapped('t1', ['a', 'b'], 'a'),
      lapped('t2', ['b', 'a'], 'a'),
      lapped('t3', ['a', 'b'], 'b'),
      lapped('t4', ['a', 'b']),
      tileOfTwo('t5', ['a', 'b'], [{ on: '2026-02-01', saw: 'dead', over: 'a' }]),
      ...settledTiles(['a', 'b'], ['ridge', 'ridge', 'fused', 'undecided'], 6),
    ]);
    const [fit, ...others] = aggressionFits(log);
    expect(others).toEqual([]);
    expect(fit.pairs).toMatchObject([{ aWins: 3, bWins: 1, ties: 2 }]);
    // of two the fit is saturated: log odds, ties over the root of the product
    expect(fit.standings[0].ability).toBeCloseTo(Math.log(3) / 2, 9);
    expect(fit.tie).toBeCloseTo(2 / Math.sqrt(3), 9);
    expect(fit.pairs[0].expected?.aWins).toBeCloseTo(3, 9);
    expect(fit.pairs[0].expected?.ties).toBeCloseTo(2, 9);
    expect(fit.leftOut).toEqual([
      { why: 'lapped or dead, but not noted which lies above', count: 1 },
      { why: 'fused: no contest', count: 1 },
      { why: 'not settled yet', count: 1 },
    ]);
  });

  it('tells what may still settle from what nobody read any more by the last reading of the log', () => {
    const looks = (on: string) => [{ on, saw: 'undecided' as const }];
    const log = logOf(AB, [
      ...settledTiles(['a', 'b'], ['ridge']),
      tileOfTwo('t8', ['a', 'b'], looks('2026-02-01')),
      tileOfTwo('t9', ['a', 'b'], looks('2026-11-01')),
    ]);
    expect(aggressionFits(log)[0].leftOut).toEqual([
      { why: 'not settled, and not read for half a year or more before the last of the log', count: 1 },
      { why: 'not settled yet', count: 1 },
    ]);
  });

  it('fits those apart that no chain of meetings joins', () => {
    const log = logOf([...AB, variety('c'), variety('d'), variety('e')], [
      ...[['c', 'd'], ['d', 'c'], ['d', 'e'], ['e', 'd']].map(([a, b], at) => lapped(`t${at}`, [a, b], a)),
      ...[['a', 'b'], ['b', 'a']].map(([a, b], at) => lapped(`s${at}`, [a, b], a)),
    ]); // prettier-ignore
    const fits = aggressionFits(log);
    expect(
      fits.map(({ standings }) =>
        standings
          .map((one) => one.variety.id)
          .sort()
          .join(''),
      ),
    ).toEqual(['cde', 'ab']);
    for (const { standings } of fits) for (const { ability } of standings) expect(ability).toBeCloseTo(0, 9);
  });

  it('says why one cannot be placed, and is empty for an empty log', () => {
    const [fit] = aggressionFits(logOf(AB, [lapped('t1', ['a', 'b'], 'a')]));
    for (const { ability, why } of fit.standings) {
      expect(ability).toBeNull();
      expect(why).not.toBeNull();
    }
    expect(aggressionFits(logOf(AB, []))).toMatchObject([{ n: 0, standings: [], dates: null }]);
  });
});

describe('survival of cuttings', () => {
  const tile = (id: string, pieceMm: number | null, looks: readonly (readonly [number, Measured['state'] | 'unsaid'])[]): Trial => ({
    ...measuredTile(id, looks.map(([after, state]) => [after, state === undefined || state === 'unsaid' ? {} : { state }] as const)),
    varieties: ['a'],
    layout: pieceMm === null ? {} : { pieceMm },
  }); // prettier-ignore

  it('says which cuttings lived 90 days, and why others cannot be told', () => {
    const log = logOf(AB, [
      tile('t1', 4, [[30, 'alive'], [100, 'alive']]),
      tile('t2', 4, [[30, 'died']]),
      tile('t3', 4, [[95, 'alive'], [120, 'died']]),
      tile('t4', 4, [[30, 'alive'], [150, 'died']]),
      tile('t5', 4, [[30, 'lost']]),
      tile('t6', 4, [[60, 'alive']]),
      tile('t7', null, [[100, 'alive']]),
    ]); // prettier-ignore
    const [fit] = survivalOfLog(log);
    expect(fit.points.map(({ trial, alive }) => `${trial.id} ${alive ? 'lived' : 'died'}`)).toEqual([
      't1 lived',
      't2 died',
      't3 lived',
    ]);
    expect(fit.leftOut).toEqual([
      { why: 'died, but not seen whether within 90 days', count: 1 },
      { why: 'lost from the tile within 90 days', count: 1 },
      { why: 'not read 90 days on', count: 1 },
      { why: 'size at setting not noted', count: 1 },
    ]);
    expect(fit).toMatchObject({ group: 'G', n: 3, fit: null, why: 'all cuttings have one size' });
  });

  it('counts none of the tiles set in the last 90 days, of which only the dead could be told', () => {
    const old = tile('t1', 4, [[100, 'alive']]); // last read on 2026-04-11, day 90 of what was set on 2026-01-11
    const dead = tile('t2', 4, [[30, 'died']]);
    const counted = (setOn: string) =>
      survivalOfLog(logOf(AB, [old, { ...dead, setOn }])).flatMap(({ n, leftOut }) => [n, leftOut]);
    expect(counted('2026-01-11')).toEqual([2, []]);
    const why = "set less than 90 days before the log's last reading";
    expect(counted('2026-01-12')).toEqual([1, [{ why, count: 1 }]]);
    const unread = { ...old, id: 't3', setOn: '2026-09-01', readings: [] };
    const young = survivalOfLog(logOf(AB, [old, { ...dead, setOn: '2026-01-12' }, unread]));
    expect(young[0].n).toBe(1);
  });

  it('takes the size that was measured at setting before that of the layout', () => {
    const measured = tile('t1', 20, [[0, 'unsaid'], [100, 'alive']]); // prettier-ignore
    const [first, second] = measured.readings;
    const sized = {
      ...measured,
      readings: [{ ...first, measured: [{ variety: 'a', areaMm2: 77 }] }, second],
    };
    const sizes = survivalOfLog(logOf(AB, [sized, tile('t2', 20, [[100, 'alive']])])).flatMap(({ points }) => points.map(({ areaMm2 }) => areaMm2)); // prettier-ignore
    expect(sizes).toEqual([77, 400]);
  });

  it('has a curve whose band is that of the saturated fit at each of two sizes', () => {
    // 1 of 3 at 4 mm2, 2 of 3 at 100 mm2: log odds -log 2 and log 2, each with variance 1/1 + 1/2
    const log = logOf(AB, [
      ...[true, false, false].map((lives, at) =>
        tile(`s${at}`, 2, [[lives ? 100 : 30, lives ? 'alive' : 'died']]),
      ),
      ...[true, true, false].map((lives, at) =>
        tile(`l${at}`, 10, [[lives ? 100 : 30, lives ? 'alive' : 'died']]),
      ),
    ]);
    const [{ curve }] = survivalOfLog(log);
    const half = 1.959964 * Math.sqrt(1.5);
    const share = (logit: number) => 1 / (1 + Math.exp(-logit));
    const ends = [curve.at(0), curve.at(-1)];
    [-Math.log(2), Math.log(2)].forEach((logit, at) => {
      expect(ends[at]?.chance).toBeCloseTo(share(logit), 6);
      expect(ends[at]?.low).toBeCloseTo(share(logit - half), 6);
      expect(ends[at]?.high).toBeCloseTo(share(logit + half), 6);
    });
  });
});

describe('days to the verdict', () => {
  it('are of pairs within each group, across, and where no group is said; never looked at is left out', () => {
    const log = logOf([...AB, variety('c', 'H'), variety('d')], [
      tileOfTwo('t1', ['a', 'b'], [{ on: day(40), saw: 'not-met' }, { on: day(70), saw: 'fused' }, { on: day(99), saw: 'fused' }]),
      tileOfTwo('t2', ['a', 'b'], [{ on: day(90), saw: 'undecided' }]),
      tileOfTwo('t3', ['a', 'b'], []),
      tileOfTwo('t4', ['a', 'c'], [{ on: day(30), saw: 'ridge' }]),
      tileOfTwo('t5', ['d', 'c'], [{ on: day(50), saw: 'ridge' }]),
    ]); // prettier-ignore
    const fits = daysFits(log).map(({ kind, group, n, settled, medianDays, leftOut }) => ({
      kind,
      group,
      n,
      settled,
      medianDays,
      left: leftOut.length,
    }));
    expect(fits).toEqual([
      { kind: 'within', group: 'G', n: 2, settled: 1, medianDays: 70, left: 1 },
      { kind: 'across', group: null, n: 1, settled: 1, medianDays: 30, left: 0 },
      { kind: 'unsaid', group: null, n: 1, settled: 1, medianDays: 50, left: 0 },
    ]);
  });
});
