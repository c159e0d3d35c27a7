/** What the log teaches, written into a plan: each value, its mark, and what stays as it was with the reason. */
import { describe, expect, it } from 'vitest';
import { acceptanceRange } from '../../src/plan/acceptance';
import { openPlan } from '../../src/plan/file';
import { pairOf, type Plan } from '../../src/plan/plan';
import { engineAggressions } from '../../src/trials/engine-aggression';
import type { Log, Trial } from '../../src/trials/trial';
import { matchedByName, ratesFor, withRates } from '../../src/trials/use-rates';
import { dateOfDay, dayOfDate, DAYS_PER_MONTH } from '../../src/units/quantity';
import { logOf, settledTiles, tileOfTwo, variety } from '../fixtures/log';
import { inventedFarm } from '../fixtures/invented-farm';

const ON = '2026-11-26';

function planOf(names: readonly string[], part: Partial<Plan> = {}): Plan {
  const opened = openPlan(
    JSON.stringify({
      seambench: 1,
      name: 'A tile',
      tile: { shape: 'square', sizeMm: 60 },
      varieties: names.map((name, at) => ({
        id: `p${at}`,
        name,
        colour: '#2f7d4f',
        rimMmPerMonth: 3,
        aggression: 0.2,
      })),
      pieces: [],
      months: 12,
      ...part,
    }),
  );
  if ('refusals' in opened) throw new Error(opened.refusals[0].cure);
  return opened.plan;
}

/** Grown at a rate for two spans, of a. */
function grownTile(id: string, rate: number): Trial {
  return {
    ...tileOfTwo(id, ['a', 'b'], []),
    readings: [0, 60, 120].map((after, at) => ({
      id: `r${at}`,
      on: dateOfDay(dayOfDate('2026-01-01') + after),
      seen: [],
      measured: [{ variety: 'a', radiusMm: 10 + (rate * after) / DAYS_PER_MONTH }],
    })),
  };
}

/** Two side by side, of which one lies over the other. */
function over(id: string, a: string, b: string, above: string): Trial {
  return tileOfTwo(id, [a, b], [{ on: '2026-03-01', saw: 'lapped', over: above }]);
}

const AB = [variety('a', 'G', { name: 'Fern' }), variety('b', 'G', { name: 'Red  garnet' })];
const PLAN = planOf(['fern', 'Red Garnet ', 'Slate']);

/** What the log offers, and the plan with all of it. */
function used(log: Log, plan = PLAN, on = ON) {
  const rates = ratesFor(plan, { log, map: matchedByName(plan, log) });
  return { ...rates, ...withRates(plan, rates.lines, { log, trials: rates.trials, on }) };
}

describe('use these rates', () => {
  it('matches by name, whatever capitals and blanks', () => {
    expect([...matchedByName(PLAN, logOf(AB, []))]).toEqual([['p0', 'a'], ['p1', 'b']]); // prettier-ignore
  });

  it('writes rim rate and took of tried, so that the doubt of the tries is seen, and marks the plan', () => {
    const log = logOf(AB, [
      grownTile('g1', 1.7),
      ...settledTiles(['a', 'b'], ['fused', 'fused', 'ridge', 'undecided', 'cant-tell']),
    ]);
    const { edit, lines, kept, trials, words } = used(log);
    expect(edit.plan.varieties.map(({ rimMmPerMonth }) => rimMmPerMonth)).toEqual([1.7, 3, 3]);
    expect(pairOf(edit.plan, 'p0', 'p1')?.acceptance).toEqual({ took: 2, tried: 3 });
    expect(acceptanceRange(pairOf(edit.plan, 'p0', 'p1'))?.low).toBeLessThan(0.2);
    expect(trials).toBe(6);
    expect(edit.words).toBe('Use rates of 6 trials');
    expect(edit.plan.note).toBe(`Rates from 6 trials of My trials on ${ON}.`);
    expect(words).toBe(`Taken from 6 trials of My trials on ${ON}: 1 rim rate, 1 pair.`);
    const told = new Map(lines.map((line) => [line.subject, line]));
    expect(told.get('fern: rim rate')).toMatchObject({ was: '3 mm/month', becomes: '1.7 mm/month' });
    expect(told.get('fern with Red Garnet ')).toMatchObject({
      was: 'unknown',
      becomes: 'took 2 of 3',
      why: '3 trials, 3 not settled yet',
    });
    expect(kept.find(({ subject }) => subject === 'Red Garnet : rim rate')?.why).toBe(
      'no tile was measured twice',
    );
    expect(openPlan(JSON.stringify(edit.plan))).toMatchObject({ plan: edit.plan });
  });

  it('keeps the note, and puts a newer mark in the place of the older', () => {
    const plan = planOf(['Fern', 'Red garnet'], { note: 'Two halves.' });
    const first = used(logOf(AB, settledTiles(['a', 'b'], ['fused'])), plan).edit.plan;
    const log = logOf(AB, settledTiles(['a', 'b'], ['fused', 'ridge']));
    const second = used(log, first, '2026-12-01').edit.plan;
    expect(second.note).toBe('Two halves.\nRates from 2 trials of My trials on 2026-12-01.');
  });

  it('cuts nothing off a long note: then the mark is left out, which is told', () => {
    const note = 'long '.repeat(398).trim();
    const {
      edit: { plan },
      isUnmarked,
    } = used(logOf(AB, settledTiles(['a', 'b'], ['fused'])), planOf(['Fern', 'Red garnet'], { note }));
    expect(plan.note).toBe(note);
    expect(isUnmarked).toBe(true);
    expect(pairOf(plan, 'p0', 'p1')?.acceptance).toEqual({ took: 1, tried: 1 });
  });

  it('changes nothing where the log says nothing: the very same plan', () => {
    const { edit, lines, kept } = used(logOf(AB, settledTiles(['a', 'b'], ['undecided'])));
    expect(edit.plan).toBe(PLAN);
    expect(lines).toEqual([]);
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.every(({ why }) => why !== '')).toBe(true);
    expect(used(logOf([], [])).edit.plan).toBe(PLAN);
  });

  it('gives no rim rate from one gain, or from what shrank', () => {
    const one = grownTile('g', 2);
    const why = (tile: Trial) =>
      used(logOf(AB, [tile])).kept.find(({ subject }) => subject === 'fern: rim rate')?.why;
    expect(why({ ...one, readings: one.readings.slice(0, 2) })).toMatch(/its doubt cannot be told/u);
    expect(why(grownTile('g', -0.01))).toBe('what was measured did not grow');
  });

  it('marks a rim rate as unsure from few tiles, and where its range reaches nothing', () => {
    const rimOf = (rates: readonly number[]) =>
      used(logOf(AB, rates.map((rate, at) => grownTile(`g${at}`, rate)))).lines.find(
        ({ kind }) => kind === 'rim rate',
      ); // prettier-ignore
    expect(rimOf([1.7, 1.7, 1.8, 1.8])?.isUnsure).toBe(true);
    expect(rimOf([1.7, 1.7, 1.8, 1.8, 1.8])?.isUnsure).toBe(false);
    const wide = rimOf([-2, 4, 0, 2, 5, -3]);
    expect(wide?.why).toMatch(/^-/u);
    expect(wide?.isUnsure).toBe(true);
  });

  it('keeps a rim rate in the range of a plan, and says so', () => {
    const { edit, lines } = used(logOf(AB, [grownTile('g', 20)]));
    expect(edit.plan.varieties[0].rimMmPerMonth).toBe(15);
    expect(lines.find(({ subject }) => subject === 'fern: rim rate')).toMatchObject({
      becomes: '15 mm/month',
      why: '20.00 to 20.00 (95 %), 2 gains on 1 tile; fitted 20, but a plan takes 0.2 to 15',
    });
  });

  it('gives aggressions of which only differences count, and keeps what cannot be placed', () => {
    const log = logOf([...AB, variety('c', 'G', { name: 'Slate' })], [
      ...['a', 'a', 'a', 'b'].map((above, at) => over(`t${at}`, 'a', 'b', above)),
      over('u', 'a', 'c', 'c'),
    ]); // prettier-ignore
    const { edit, kept } = used(log);
    const [a, b, c] = edit.plan.varieties.map(({ aggression }) => aggression);
    // of two: the lead of 3 in 4 less 1 in 4 is 0.5, over lapGain 0.8
    expect(Math.abs(a - b - 0.625)).toBeLessThan(0.011); // each is kept to 0.01
    expect(c).toBe(0.2);
    expect(kept.find(({ subject }) => subject === 'Slate: aggression')?.why).toMatch(/never lost/u);
  });

  it('offers no aggression of what met few others, or never lay over or under one', () => {
    const ridge = (id: string, a: string, b: string) =>
      tileOfTwo(id, [a, b], [{ on: '2026-03-01', saw: 'ridge' }]);
    const names = ['Few', 'Even', 'Weak', 'Strong'];
    const ids = ['f', 'e', 'w', 's'];
    const log = logOf([...AB, ...ids.map((id, at) => variety(id, 'G', { name: names[at] }))], [
      ...['a', 'a', 'b', 'a', 'b'].map((above, at) => over(`t${at}`, 'a', 'b', above)),
      over('f1', 'a', 'f', 'f'),
      over('f2', 'a', 'f', 'a'),
      ...[1, 2, 3].map((at) => ridge(`e${at}`, 'a', 'e')),
      ...[1, 2, 3].map((at) => ridge(`w${at}`, 'a', 'w')),
      over('w4', 'a', 'w', 'a'),
      ...[1, 2, 3].map((at) => ridge(`s${at}`, 'a', 's')),
      over('s4', 'a', 's', 's'),
    ]); // prettier-ignore
    const { lines, kept } = used(log, planOf(['Fern', 'Red garnet', ...names]));
    const aggressions = lines.filter(({ kind }) => kind === 'aggression');
    expect(aggressions.map(({ subject }) => subject)).toEqual(['Fern: aggression', 'Red garnet: aggression']);
    const why = (name: string) => kept.find(({ subject }) => subject === `${name}: aggression`)?.why;
    expect(why('Few')).toBe('only 2 contests: too few to tell');
    expect(why('Even')).toBe('only ridges: it never lay over or under another');
    expect(why('Weak')).toBe('it never lay over another, of 4 contests: how weak it is cannot be told');
    expect(why('Strong')).toBe('it never lay under another, of 4 contests: how strong it is cannot be told');
  });

  it('takes the lines that are chosen and no other, and marks those that rest on few', () => {
    const log = logOf(AB, [
      grownTile('g1', 1.7),
      ...settledTiles(['a', 'b'], ['fused', 'fused', 'ridge', 'ridge', 'ridge']),
    ]);
    const { lines, trials } = used(log);
    expect(lines.map(({ subject, isUnsure }) => [subject, isUnsure])).toEqual([
      ['fern: rim rate', true],
      ['fern with Red Garnet ', false],
    ]);
    const [rim, pair] = lines.map((line) => withRates(PLAN, [line], { log, trials, on: ON }).edit.plan);
    expect([rim.varieties[0].rimMmPerMonth, pairOf(rim, 'p0', 'p1')]).toEqual([1.7, undefined]);
    expect(pair.varieties).toEqual(PLAN.varieties);
    expect(pairOf(pair, 'p0', 'p1')?.acceptance).toEqual({ took: 2, tried: 5 });
    expect(withRates(PLAN, [], { log, trials, on: ON }).edit.plan).toBe(PLAN);
  });

  it('takes the farm: eight varieties of the invented one, all values in the range of a plan', () => {
    const { log } = inventedFarm('demo farm');
    const plan = planOf(log.varieties.slice(0, 8).map(({ name }) => name));
    const { edit, lines } = used(log, plan);
    const opened = openPlan(JSON.stringify(edit.plan));
    expect(opened).toMatchObject({ plan: edit.plan });
    expect(edit.plan.survival?.perDecade).toBeGreaterThan(0);
    expect(edit.plan.varieties.every(({ rimMmPerMonth }) => rimMmPerMonth !== 3)).toBe(true);
    expect(lines.length).toBeGreaterThan(20);
  });
});

describe('from abilities to aggressions', () => {
  it('needs differences that lap as often as the fit expects, between two', () => {
    const [a, b] = engineAggressions([0.5, -0.5], 0, 0.5);
    expect(0.8 * (a - b)).toBeCloseTo(Math.tanh(0.5), 9);
    expect((a + b) / 2).toBeCloseTo(0.5, 9);
  });

  it('lowers them with ties, keeps their order, and stays from 0 to 1', () => {
    const spread = (tie: number) => {
      const [a, b] = engineAggressions([1, -1], tie, 0.5);
      return a - b;
    };
    expect(spread(2)).toBeLessThan(spread(0));
    const abilities = [5, -4, 0.3, 0.2, -4.5, 2];
    for (const centre of [0, 0.2, 1]) {
      const values = engineAggressions(abilities, 0.5, centre);
      expect(Math.min(...values)).toBeGreaterThanOrEqual(-1e-12);
      expect(Math.max(...values)).toBeLessThanOrEqual(1 + 1e-12);
      const order = (list: readonly number[]) => list.map((_, at) => at).sort((i, j) => list[i] - list[j]);
      expect(order(values)).toEqual(order(abilities));
    }
  });

  it('is nearer to all leads together than any that moves one of them', () => {
    const abilities = [0.9, 0.1, -0.4, -0.6];
    const lead = (difference: number) => Math.sinh(difference / 2) / (Math.cosh(difference / 2) + 0.4);
    const amiss = (values: readonly number[]) =>
      abilities.reduce(
        (sum, one, i) =>
          sum +
          abilities.reduce(
            (own, other, j) => own + (0.8 * (values[i] - values[j]) - lead(one - other)) ** 2,
            0,
          ),
        0,
      );
    const values = engineAggressions(abilities, 0.8, 0.5);
    for (const [at] of values.entries())
      for (const by of [0.01, -0.01])
        expect(amiss(values.map((value, k) => (k === at ? value + by : value)))).toBeGreaterThan(
          amiss(values),
        );
  });
});
