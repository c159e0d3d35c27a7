/** Default odds that a pair takes, held against the counts that are published. */
import { DEFAULTS } from '../model/defaults';
import { draw } from '../model/noise';
import { FATE } from '../model/seam-table';
import { compile } from '../plan/compile';
import type { Related } from '../plan/plan';
import { betaQuantile } from '../stats/beta';
import { meanOf, type Mean, wilson } from '../stats/intervals';
import { benchPlan, disc, grown, seedWords } from './bench-tile';
import type { Check, Topic } from './check';

const ADULTS =
  'adult Montipora verrucosa, unrelated: 0 of 890 (Hildemann, Jokiel, Bigger & Johnston 1980, Transplantation 30: 297-301)';
const KIN =
  'young Stylophora pistillata, kin: about half of 517 (Amar & Rinkevich 2010, J. Exp. Biol. 213: 535-540)';
const ADULT_TRIES = 890;
const KIN_TRIES = 517;

/** Share of pairs that fused, each on a tile of its own. */
function fusedOf(related: Related, tries: number): Mean {
  const pieces = [disc('a', [-4, 0], 7), disc('b', [4, 0], 7)];
  const plan = benchPlan({ sizeMm: 20, months: 3, rims: [3, 3], pieces });
  const layout = compile({ ...plan, pairs: [{ a: 'a', b: 'b', related }] }, 0.5);
  return meanOf(
    seedWords(tries).map((seed) => {
      const { nuclei } = grown(layout, seed);
      return nuclei.count > 0 && nuclei.fate[0] === FATE.fused ? 1 : 0;
    }),
  );
}

const adultRuns: Check = {
  name: 'unrelated pairs, 890 grown',
  claim:
    'of 890 pairs grown with the default for unrelated adults few enough fuse that none of 890 could be seen',
  source: ADULTS,
  unit: 'share fused',
  expected: 0,
  bound: 'atMost',
  tolerance: 0.0082,
  because: 'at acceptance 0.003 more than 7 of 890 come in less than one run of a hundred',
  run: () => fusedOf('unrelated', ADULT_TRIES),
};

const adultChance: Check = {
  name: 'chance of 0 of 890',
  claim: 'the default for unrelated adults gives none of 890 with a chance of at least 5 %: (1 - A)^890',
  source: ADULTS,
  unit: 'chance',
  expected: 0.05,
  bound: 'atLeast',
  tolerance: 0,
  because: 'the 95 % limit, one-sided, is 0.00336',
  run: () => (1 - DEFAULTS.acceptanceUnrelated.value) ** ADULT_TRIES,
};

const PRIOR_DRAWS = 4000;

const priorChance: Check = {
  name: 'prior of an unknown pair and 0 of 890',
  claim: 'draws from Beta(0.05, 0.95) reproduce none of 890 with a chance of at least 5 %',
  source: ADULTS,
  unit: 'chance',
  expected: 0.05,
  bound: 'atLeast',
  tolerance: 0,
  because: `mean over ${PRIOR_DRAWS} draws`,
  run: () =>
    meanOf(
      Array.from({ length: PRIOR_DRAWS }, (_, k) => {
        const acceptance = betaQuantile(
          draw(0x0dd5, k, 0),
          DEFAULTS.priorTook.value,
          DEFAULTS.priorMissed.value,
        );
        return (1 - acceptance) ** ADULT_TRIES;
      }),
    ),
};

const half = wilson(Math.round(KIN_TRIES / 2), KIN_TRIES);

const kinRuns: Check = {
  name: 'kin, 517 pairs grown',
  claim: 'with the default for kin about half of 517 pairs fuse',
  source: KIN,
  unit: 'share fused',
  expected: 0.5,
  tolerance: (half.high - half.low) / 2,
  because: 'the 95 % interval of half of 517 (Wilson 1927)',
  run: () => fusedOf('kin', KIN_TRIES),
};

const selfRuns: Check = {
  name: 'pieces of one colony',
  claim: 'with the default for one colony all pairs fuse',
  source: 'Hildemann, Linthicum & Vann 1975, Immunogenetics 2: 269-284, and others',
  unit: 'share fused',
  expected: 1,
  tolerance: 0,
  because: 'no exception is published',
  run: () => fusedOf('self', 100),
};

export const ODDS: Topic = {
  title: 'Odds that a pair takes',
  quick: true,
  checks: [adultRuns, adultChance, priorChance, kinRuns, selfRuns],
};
