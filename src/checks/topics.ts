/** Every check that the model is held to, in the order in which the report tells them. */
import type { Topic } from './check';
import { RIMS } from './fronts';
import { MEETINGS } from './meetings';
import { BORDERS, FINE_BORDERS } from './range-expansion';
import { ROUGH_FRONTS } from './rough-fronts';
import { SEAMS } from './seams';
import { SECTORS } from './sectors';
import { STEPS } from './steps';
import { UNEQUAL_RATES } from './unequal-rates';
import { ZIPPING } from './zipping';

export const TOPICS: readonly Topic[] = [
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
];
