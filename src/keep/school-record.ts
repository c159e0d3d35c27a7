/** How what was learned in School is stored. */
import * as v from 'valibot';
import { type Progress, ProgressSchema } from '../lessons/progress';
import type { Kind } from './autosave';

export const SCHOOL_KIND: Kind<Progress, Progress> = {
  lock: 'seambench-school-writer',
  afterMs: 150,
  recordOf: (progress) => progress,
  workOf: (found) => {
    const record = v.safeParse(ProgressSchema, found);
    return record.success ? record.output : 'its form is not known to this version';
  },
  isSameWork: (one, other) => one === other || JSON.stringify(one) === JSON.stringify(other),
};
