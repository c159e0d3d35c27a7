/** What one person called the seams of a set of tiles: kept, and handed on as a small file. */
import * as v from 'valibot';
import { date, list, SeedSchema, text, whole } from '../plan/plan';
import { CALLS, SEAM_KINDS } from './seam-kinds';

const MOST_SEAMS = 200;

const CalledSchema = v.object({
  /** Place of the tile in its set, and of the seam on its tile: both from 0. */
  tile: whole(0, 100),
  seam: whole(0, 20),
  is: v.picklist(SEAM_KINDS),
  call: v.picklist(CALLS),
});

export const CallsSchema = v.object({
  seambenchCalls: v.literal(1),
  /** The word that the set is drawn from: the same word gives the same tiles. */
  set: SeedSchema,
  /** Whose eyes; may be empty. */
  by: text(60),
  on: date,
  called: list(CalledSchema, 1, MOST_SEAMS, 'seams'),
});

export type Called = v.InferOutput<typeof CalledSchema>;
export type Calls = v.InferOutput<typeof CallsSchema>;
