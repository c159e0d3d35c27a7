/** Invented farms, simulated from known numbers as whole logs: 95 % intervals cover them near 95 %. */
import seedrandom from 'seedrandom';
import { expect, it } from 'vitest';
import { survivalOfLog } from '../../src/trials/log-survival';
import { rimFits } from '../../src/trials/log-rim';
import { pairTable } from '../../src/trials/pair-table';
import { inventedFarm, SURVIVAL } from '../fixtures/invented-farm';
import { logOf, settledTiles, variety } from '../fixtures/log';

const FARMS = 200;
const Z95 = 1.959964;
/** Of a count of 200 at 95 %: three standard errors below 190. */
const LEAST = 180;

it('rim rates and survival by size, out of logs of 48 tiles of pairs and 24 or 72 of one piece', () => {
  let [rates, covered, bias] = [0, 0, 0];
  let [slopes, intercepts] = [0, 0];
  let [few, fewCovered] = [0, 0];
  for (let farm = 0; farm < FARMS; farm++) {
    const { log, rimMmPerMonth } = inventedFarm(`recovery ${farm}`, {
      tiles: 48,
      alone: farm % 2 === 0 ? 72 : 24,
      plain: true,
    });
    for (const { variety: { id }, rate, tiles } of rimFits(log)) {
      if (rate === null || rate.low === null || rate.high === null) continue;
      const truth = rimMmPerMonth.get(id) ?? Number.NaN;
      const isCovered = truth >= rate.low && truth <= rate.high;
      if (rate.n < 12) few += 1;
      if (rate.n < 12 && isCovered) fewCovered += 1;
      if (tiles < 3) continue;
      rates += 1;
      bias += rate.rimMmPerMonth / truth - 1;
      if (isCovered) covered += 1;
    } // prettier-ignore
    const fit = survivalOfLog(log).find(({ group }) => group === null)?.fit;
    if (!fit) continue;
    if (Math.abs(fit.slope - SURVIVAL.slope) < Z95 * fit.slopeError) slopes += 1;
    if (Math.abs(fit.intercept - SURVIVAL.intercept) < Z95 * fit.interceptError) intercepts += 1;
  }
  // of some 3,000 rates three standard errors are 1.2 %; those of one farm share nothing but its readers. What grew after a
  // piece had met a neighbour would, if it counted, pull the rates down by 13 % and the cover to 64 % (measured once)
  expect(rates).toBeGreaterThan(2800);
  expect(Math.abs(covered / rates - 0.95)).toBeLessThan(0.02);
  // fewer than twelve gains each
  expect(few).toBeGreaterThan(2000);
  expect(Math.abs(fewCovered / few - 0.95)).toBeLessThan(0.02);
  expect(Math.abs(bias / rates)).toBeLessThan(0.01);
  expect(slopes).toBeGreaterThanOrEqual(LEAST);
  expect(intercepts).toBeGreaterThanOrEqual(LEAST);
});

it('chances of pairs, drawn towards the others of their group', () => {
  const draw = seedrandom('pairs of invented farms');
  const varieties = Array.from({ length: 9 }, (_, at) => variety(`v${at}`, 'G'));
  let [cells, covered, raw, drawn] = [0, 0, 0, 0];
  for (let farm = 0; farm < 80; farm++) {
    // Beta(1, 2), as the lower of two even draws
    const pairs = varieties.flatMap(({ id: a }, at) =>
      varieties.slice(at + 1).map(({ id: b }) => ({ a, b, chance: Math.min(draw(), draw()) })),
    );
    const trials = pairs.flatMap(({ a, b, chance }) => {
      const tried = Math.floor(6 * draw());
      return settledTiles(
        [a, b],
        Array.from({ length: tried }, () => (draw() < chance ? 'fused' : 'ridge')),
      );
    });
    const table = pairTable(logOf(varieties, trials));
    for (const { a, b, chance } of pairs) {
      const { low, high, share, chance: found } = table.cell(a, b);
      cells += 1;
      if (chance >= low && chance <= high) covered += 1;
      if (share === null) continue;
      raw += (share - chance) ** 2;
      drawn += (found - chance) ** 2;
    }
  }
  // near 92 %: the interval holds no doubt of the prior, which so few pairs leave; 0.5 % is one standard error
  expect(covered / cells).toBeGreaterThan(0.9);
  expect(covered / cells).toBeLessThan(0.97);
  expect(drawn).toBeLessThan(0.75 * raw); // what the others teach
});
