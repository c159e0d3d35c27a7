/** The invented farm that comes with the program: made by its generator, whole, and with what real logs have. */
import { expect, it } from 'vitest';
import { logEstimates } from '../../src/cli/log-estimates';
import { alikePairs } from '../../src/trials/alike';
import { WHOLE_LOG } from '../../src/trials/fit-choice';
import { logOfCsv } from '../../src/trials/log-csv';
import { logCsv } from '../../src/trials/log-csv-out';
import { logFaults } from '../../src/trials/log-faults';
import { logFileText, openLogFile } from '../../src/trials/log-file';
import { logFits } from '../../src/trials/log-fits';
import { nextPairs } from '../../src/trials/next-pairs';
import { pairTable } from '../../src/trials/pair-table';
import { verdictsOf } from '../../src/trials/verdicts';
import { inventedFarm } from '../fixtures/invented-farm';

const { log } = inventedFarm('demo farm');

// To make it anew: npx vitest run tests/unit/demo-farm.test.ts -u
it('is what its generator makes, and opens as a log', async () => {
  const text = logFileText(log);
  await expect(text).toMatchFileSnapshot('../../presets/demo-farm.json');
  const opened = openLogFile(text);
  expect('log' in opened && opened.log).toEqual(log);
  expect(logFaults(log)).toEqual([]);
});

it('says that it is invented, has 24 varieties in four groups, and 150 tiles over three years in three tanks', () => {
  expect(log.note).toMatch(/invented/u);
  expect(log.varieties).toHaveLength(24);
  expect(new Set(log.varieties.map(({ group }) => group)).size).toBe(4);
  expect(log.trials).toHaveLength(150);
  expect(new Set(log.trials.map(({ tank }) => tank)).size).toBe(3);
  const days = log.trials.flatMap(({ setOn, readings }) => [setOn, ...readings.map(({ on }) => on)]).sort();
  expect([days.at(0)?.slice(0, 4), days.at(-1)?.slice(0, 4)]).toEqual(['2023', '2026']);
});

it('has undecided seams, seams that turned, deaths, losses, events, pairs across groups and gaps', () => {
  const verdicts = verdictsOf(log);
  const count = (outcome: string) => verdicts.filter((verdict) => verdict.outcome === outcome).length;
  for (const outcome of ['fused', 'ridge', 'lapped', 'dead', 'undecided'])
    expect(count(outcome)).toBeGreaterThan(4);
  expect(verdicts.some(({ turnedFrom, outcome }) => turnedFrom === 'fused' && outcome === 'ridge')).toBe(
    true,
  );
  const states = log.trials.flatMap(({ readings }) =>
    readings.flatMap(({ measured }) => measured.map(({ state }) => state)),
  );
  expect(states.filter((state) => state === 'died').length).toBeGreaterThan(8);
  expect(states.filter((state) => state === 'lost').length).toBeGreaterThan(3);
  expect(log.events.length).toBeGreaterThan(10);
  expect(pairTable(log).noted.some(({ kind }) => kind === 'across')).toBe(true);
});

it('teaches the same from its CSV', () => {
  const { log: back, bad } = logOfCsv(logCsv(log));
  expect(bad).toEqual([]);
  expect(logEstimates(back, WHOLE_LOG)).toEqual(logEstimates(log, WHOLE_LOG));
});

it('teaches: rates, an order of aggression, survival, days, what to try next, and one hint of one genotype', () => {
  const { rim, aggression, survival, days } = logFits(log);
  expect(rim.filter(({ rate }) => rate !== null && rate.low !== null).length).toBeGreaterThan(20);
  expect(aggression[0].standings.filter(({ ability }) => ability !== null).length).toBeGreaterThan(12);
  expect(survival.find(({ group }) => group === null)?.fit?.slope).toBeGreaterThan(0);
  expect(days.find(({ group }) => group === 'Montipora')?.medianDays).toBeGreaterThan(30);
  const table = pairTable(log);
  expect(nextPairs(table, 'worth', 5, '2026-11-26')).toHaveLength(5);
  const hints = alikePairs(table).map(({ cell }) => `${cell.a.name} ${cell.b.name}`);
  expect(hints).toContain('Slate Flint');
});
