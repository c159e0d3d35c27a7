/** 200 invented farms each, simulated from known numbers: 95 % intervals cover them near 95 %. */
import seedrandom from 'seedrandom';
import { expect, it } from 'vitest';
import { contestFit } from '../../src/trials/contest-fit';
import { survivalFits } from '../../src/trials/survival-fit';

const FARMS = 200;
const Z95 = 1.959964;
/** 190 expected; three standard errors of a count of 200 at 95 % are 9.2. */
const LEAST = 180;

it('survival by size: slope and intercept', () => {
  const draw = seedrandom('cuttings of invented farms');
  let [slopes, intercepts] = [0, 0];
  for (let farm = 0; farm < FARMS; farm++) {
    const cuttings = Array.from({ length: 150 }, () => {
      const sizeMm2 = 10 ** (1 + 2 * draw());
      return { group: 'g', sizeMm2, alive: draw() < 1 / (1 + Math.exp(4 - 2.5 * Math.log10(sizeMm2))) };
    });
    const [fit] = survivalFits(cuttings);
    if (Math.abs((fit.slope ?? Infinity) - 2.5) < Z95 * (fit.seSlope ?? 0)) slopes++;
    if (Math.abs((fit.intercept ?? Infinity) + 4) < Z95 * (fit.seIntercept ?? 0)) intercepts++;
  }
  expect(slopes).toBeGreaterThanOrEqual(LEAST);
  expect(intercepts).toBeGreaterThanOrEqual(LEAST);
});

it('contests with ties: each ability, and the tie parameter on average', () => {
  const draw = seedrandom('contests of invented farms');
  const abilities = [0.9, 0.3, -0.2, -1];
  const nu = 0.5;
  const covered = abilities.map(() => 0);
  let ties = 0;
  for (let farm = 0; farm < FARMS; farm++) {
    const contests = Array.from({ length: 180 }, (_, k) => {
      const i = k % 4;
      const j = (i + 1 + (Math.floor(k / 4) % 3)) % 4;
      const weights = [Math.exp(abilities[i]), Math.exp(abilities[j])];
      const tied = nu * Math.sqrt(weights[0] * weights[1]);
      const at = draw() * (weights[0] + weights[1] + tied);
      const [first, second] = [`v${i}`, `v${j}`];
      if (at < weights[0]) return { winner: first, loser: second, tie: false };
      return { winner: second, loser: first, tie: at >= weights[0] + weights[1] };
    });
    const { items, tie } = contestFit(contests);
    ties += Math.log(tie ?? 0) / FARMS;
    for (const { name, ability, se } of items) {
      const item = Number(name.slice(1));
      if (Math.abs((ability ?? Infinity) - abilities[item]) < Z95 * (se ?? 0)) covered[item]++;
    }
  }
  for (const count of covered) expect(count).toBeGreaterThanOrEqual(LEAST);
  expect(Math.abs(ties - Math.log(nu))).toBeLessThan(0.05); // error of one farm about 0.2, of the mean 0.014; three, and bias
});
