/**
 * How the log of trials is stored: as the text of its file, so that both are read through one door, with what is being
 * typed for it. Photos lie beside it, by their ids.
 */
import * as v from 'valibot';
import { type Draft, DraftSchema } from '../trials/draft';
import { logFileText, openLogFile } from '../trials/log-file';
import type { Log } from '../trials/trial';
import type { Kind } from './autosave';
import { whyRefused } from './why-refused';

export interface LogWork {
  readonly log: Log;
  readonly draft: Draft;
}

const RecordSchema = v.object({ shape: v.literal(1), logText: v.string(), draft: DraftSchema });
export interface LogRecord {
  readonly shape: 1;
  readonly logText: string;
  readonly draft: Draft;
}

export const LOG_KIND: Kind<LogWork, LogRecord> = {
  lock: 'seambench-log-writer',
  // what is typed by a tank is not typed again: a short pause is enough
  afterMs: 150,
  recordOf: ({ log, draft }) => ({ shape: 1, logText: logFileText(log), draft }),
  workOf: (found) => {
    const record = v.safeParse(RecordSchema, found);
    if (!record.success) return 'its form is not known to this version';
    const opened = openLogFile(record.output.logText);
    if ('log' in opened) return { log: opened.log, draft: record.output.draft };
    return whyRefused(opened.refusals);
  },
  isSameWork: (one, other) =>
    one.logText === other.logText && JSON.stringify(one.draft) === JSON.stringify(other.draft),
};
