/** Every check that the model is held to, in the order in which the report tells them. */
import type { Topic } from './check';
import { RIMS } from './fronts';
import { MEETINGS } from './meetings';
import { BORDERS } from './range-expansion';
import { SEAMS } from './seams';
import { STEPS } from './steps';
import { UNEQUAL_RATES } from './unequal-rates';

export const TOPICS: readonly Topic[] = [RIMS, STEPS, MEETINGS, UNEQUAL_RATES, SEAMS, BORDERS];
