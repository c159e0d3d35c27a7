/**
 * Every default of the model, with its unit, where it comes from and how sure it is.
 * The page on what the model knows prints this list; nothing else in the code may hold a default rate.
 */
export type Sureness = 'published' | 'practice' | 'guess';

export interface Default {
  readonly value: number;
  readonly unit: string;
  readonly words: string;
  readonly source: string;
  readonly sure: Sureness;
}

function known(value: number, unit: string, words: string, source: string, sure: Sureness): Default {
  return { value, unit, words, source, sure };
}

const JUDGEMENT = 'judgement: nobody has measured it';

export const DEFAULTS = {
  rimMmPerMonth: known(
    3,
    'mm/month',
    'rim rate of a variety',
    'encrusting Montipora 1.3 mm/month on reefs (Barkley et al. 2023, NOAA Tech. Memo NMFS-PIFSC-154); tanks are commonly faster (common practice, no source)',
    'practice',
  ),
  aggression: known(0.2, '0 to 1', 'aggression of a variety: only differences count', JUDGEMENT, 'guess'),
  roughness: known(0.1, '-', 'spread of rim rate from polyp to polyp', JUDGEMENT, 'guess'),
  polypMm: known(
    1,
    'mm',
    'polyp spacing',
    'corallite spacing of encrusting Montipora is of this order (from memory)',
    'guess',
  ),
  polypJitter: known(0.35, 'of polyp spacing', 'irregularity of the polyp lattice', JUDGEMENT, 'guess'),
  kerfMm: known(
    0.8,
    'mm',
    'kerf of a thin diamond band saw, 0.5 to 1.0',
    'common practice, no source; measure your own blade on a scrap',
    'practice',
  ),
  healingDays: known(
    30,
    'days',
    'healing of a cut edge before it grows or joins',
    'healing lip within the first month on massive Porites (van Woesik 1998, Mar. Ecol. Prog. Ser. 164: 213-220)',
    'published',
  ),
  freshCutDays: known(
    30,
    'days',
    'time after healing during which an edge still counts as cut',
    JUDGEMENT,
    'guess',
  ),
  verdictDelayDays: known(10, 'days', 'time from touch to the first chance of a verdict', JUDGEMENT, 'guess'),
  zipMmPerDay: known(1, 'mm/day', 'speed at which a verdict runs along the seam', JUDGEMENT, 'guess'),
  zipLengthMm: known(
    8,
    'mm',
    'mean length of seam that one verdict takes when edges meet all at once',
    JUDGEMENT,
    'guess',
  ),
  consistency: known(
    1,
    '-',
    'how alike the verdicts of one pair on one tile are: 1 mostly all or nothing',
    'repeats of a pair mostly agree (Wijayanti & Hidaka 2018, Pocillopora damicornis); the number is judgement',
    'guess',
  ),
  rimFactor: known(
    1,
    '0 to 1',
    'factor on acceptance where a grown rim meets',
    'Fungia scutaria fused at cut and not at uncut edges (Jokiel & Bigger 1994, Biol. Bull. 186: 72-80); 1 is judgement',
    'guess',
  ),
  deadShare: known(0.15, 'share', 'of rejected seams, those that stay bare', JUDGEMENT, 'guess'),
  veiledShare: known(
    0.1,
    'share',
    'of ridges, those that look fused from above at first',
    JUDGEMENT + '; that there are such is published (Hidaka et al. 1997, Coral Reefs 16: 13-20)',
    'guess',
  ),
  veilLeastMonths: known(
    2,
    'months',
    'least time for which such a ridge looks fused',
    'incompatible fusion of Pocillopora damicornis turned in 2 to 8 months (Hidaka et al. 1997, Coral Reefs 16: 13-20)',
    'published',
  ),
  veilMostMonths: known(
    8,
    'months',
    'greatest time for which such a ridge looks fused; evenly spread between the two',
    'incompatible fusion of Pocillopora damicornis turned in 2 to 8 months (Hidaka et al. 1997, Coral Reefs 16: 13-20)',
    'published',
  ),
  lapGain: known(
    0.8,
    'share',
    'of the rest, those lapped at an aggression difference of 1',
    JUDGEMENT,
    'guess',
  ),
  lapMmPerMonth: known(
    1,
    'mm/month',
    'speed of lapping at an aggression difference of 1',
    JUDGEMENT,
    'guess',
  ),
  stingMm: known(1, 'mm', 'tissue lost beside a dead seam', JUDGEMENT, 'guess'),
  ridgeMmPerMonth: known(0.3, 'mm/month', 'first rise of a ridge', JUDGEMENT, 'guess'),
  ridgeCapMm: known(3, 'mm', 'greatest ridge height', JUDGEMENT, 'guess'),
  thicknessMm: known(2.5, 'mm', 'greatest thickness of the crust, for the picture only', JUDGEMENT, 'guess'),
  thickeningMonths: known(
    5,
    'months',
    'time in which the crust comes to 63 % of its thickness, for the picture only',
    JUDGEMENT,
    'guess',
  ),
  acceptanceUnrelated: known(
    0.003,
    'share',
    'acceptance of an unrelated pair',
    'adult Montipora verrucosa: 0 of 890 (Hildemann, Jokiel, Bigger & Johnston 1980, Transplantation 30: 297-301); one-sided 95 % limit 0.0034',
    'published',
  ),
  acceptanceUnknown: known(
    0.05,
    'share',
    'acceptance of a pair of which nothing is known',
    JUDGEMENT,
    'guess',
  ),
  acceptanceKin: known(
    0.5,
    'share',
    'acceptance of kin',
    'young Stylophora pistillata, kin: about half of 517 contacts (Amar & Rinkevich 2010, J. Exp. Biol. 213: 535-540)',
    'published',
  ),
  acceptanceSelf: known(
    1,
    'share',
    'acceptance of pieces of one colony',
    'self-grafts always fuse (Hildemann, Linthicum & Vann 1975, Immunogenetics 2: 269-284, and others)',
    'published',
  ),
  survivalAtOneMm2: known(
    -2.824,
    'logit',
    'chance that a cutting lives, at 1 mm2',
    JUDGEMENT +
      ': half of 10 mm2 live and nine of ten of 60 mm2; straight in log area as is usual (Madin et al. 2023, Ecology, doi 10.1002/ecy.4017)',
    'guess',
  ),
  survivalPerDecade: known(
    2.824,
    'logit a decade of area',
    'how much likelier a cutting ten times as large lives',
    JUDGEMENT + ', with the above',
    'guess',
  ),
  priorTook: known(
    0.05,
    'tries',
    'prior successes behind took of tried: Beta(0.05, 0.95)',
    JUDGEMENT + '; an unknown pair counts as one try that nearly failed',
    'guess',
  ),
  priorMissed: known(
    0.95,
    'tries',
    'prior failures behind took of tried: Beta(0.05, 0.95)',
    JUDGEMENT + '; an unknown pair counts as one try that nearly failed',
    'guess',
  ),
} as const satisfies Record<string, Default>;

/** The numbers behind the three words for how fused colours mingle; all a guess of the model. */
export const MINGLE_DEFAULTS = {
  hardly: {
    interleave: 0.7,
    stray: 0.05,
    strayReachMm: 3,
    weave: 0,
    weaveReachMm: 2.5,
    lean: 0,
    turnoverPerMonth: 0.1,
  },
  veins: {
    interleave: 0.4,
    stray: 0.15,
    strayReachMm: 12,
    weave: 0,
    weaveReachMm: 2.5,
    lean: 0,
    turnoverPerMonth: 0.02,
  },
  through: {
    interleave: 0.4,
    stray: 0.15,
    strayReachMm: 12,
    weave: 0.3,
    weaveReachMm: 2.5,
    lean: 0,
    turnoverPerMonth: 0.02,
  },
} as const;

/** Raised by one with each change that alters what a (plan, seed) grows to. */
export const MODEL_VERSION = 7;
