/** Every check that the model is held to, in the order in which the report tells them. */
import type { Topic } from './check';
import { FASTER_AND_LEANING } from './faster-sectors';
import { RIMS } from './fronts';
import { LATTICE } from './lattice';
import { MEETINGS } from './meetings';
import { ODDS } from './odds';
import { BORDERS, FINE_BORDERS } from './range-expansion';
import { REEF_DATA } from './reef-data';
import { ROUGH_FRONTS } from './rough-fronts';
import { SEAMS } from './seams';
import { SECTORS } from './sectors';
import { STEPS } from './steps';
import { TRADE_FACTS } from './trade-facts';
import { UNEQUAL_RATES } from './unequal-rates';
import { ZIPPING } from './zipping';

export const TOPICS: readonly Topic[] = [
  LATTICE,
  RIMS,
  STEPS,
  MEETINGS,
  UNEQUAL_RATES,
  ROUGH_FRONTS,
  SEAMS,
  ZIPPING,
  BORDERS,
  FINE_BORDERS,
  SECTORS,
  FASTER_AND_LEANING,
  REEF_DATA,
  ODDS,
  TRADE_FACTS,
];
