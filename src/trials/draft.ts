/** What is being typed for the log and is not in it yet: kept with it, so that a closed page loses nothing. */
import * as v from 'valibot';
import * as form from '../plan/plan';
import type { ReadonlyDeep } from '../plan/plan';
import { ReadingSchema, TankEventSchema } from './trial';

export const DraftSchema = v.strictObject({
  /** A tile to be noted. */
  tile: v.nullable(v.strictObject({ tag: form.text(100), varieties: v.array(form.id) })),
  /** One for each tile whose reading was begun. */
  readings: v.array(v.strictObject({ trial: form.id, reading: ReadingSchema })),
  /** What happened in a tank. */
  event: v.optional(TankEventSchema),
});

export type Draft = ReadonlyDeep<v.InferOutput<typeof DraftSchema>>;

export const NO_DRAFT: Draft = { tile: null, readings: [] };
