/** How the log of trials is stored, with what is being typed for it. Photos lie beside it, by their ids. */
import * as v from 'valibot';
import { type Draft, DraftSchema } from '../trials/draft';
import { type Log, LogSchema } from '../trials/trial';
import type { Kind } from './autosave';

export interface LogWork {
  readonly log: Log;
  readonly draft: Draft;
}

const RecordSchema = v.object({ shape: v.literal(1), log: LogSchema, draft: DraftSchema });
export interface LogRecord extends LogWork {
  readonly shape: 1;
}

export const LOG_KIND: Kind<LogWork, LogRecord> = {
  lock: 'seambench-log-writer',
  // what is typed by a tank is not typed again: a short pause is enough
  afterMs: 150,
  recordOf: ({ log, draft }) => ({ shape: 1, log, draft }),
  workOf: (found) => {
    const record = v.safeParse(RecordSchema, found);
    return record.success ? record.output : 'its form is not known to this version';
  },
  isSameWork: (one, other) => one === other || JSON.stringify(one) === JSON.stringify(other),
};
