import { describe, expect, it } from 'vitest';
import { LOG_KIND } from '../../../src/keep/log-record';
import { NO_DRAFT } from '../../../src/trials/draft';
import { logOf, settledTiles, variety } from '../../fixtures/log';

const log = logOf([variety('a'), variety('b')], settledTiles(['a', 'b'], ['fused', 'ridge']));
const event = { id: 'e1', on: '2026-05-01', tank: 'North', kind: 'dip' as const, tags: [] };
const draft = { ...NO_DRAFT, tile: { tag: 'A-1', varieties: ['a'] }, event };
const record = LOG_KIND.recordOf({ log, draft });

describe('the stored log', () => {
  it('comes back as it was, with what is being typed', () => {
    expect(LOG_KIND.workOf(structuredClone(record))).toEqual({ log, draft });
  });

  it.each([
    ['a shape of the future', { ...record, shape: 2 }],
    ['a log of the future', { ...record, logText: '{"seambenchLog":99}' }],
    ['a log cut short', { ...record, logText: record.logText.slice(0, 60) }],
    ['something else', 17],
  ])('says why %s cannot be read', (_, found) => {
    expect(LOG_KIND.workOf(found)).toEqual(expect.any(String));
  });

  it('is other work once a letter is typed', () => {
    expect(LOG_KIND.isSameWork(record, LOG_KIND.recordOf({ log, draft }))).toBe(true);
    expect(LOG_KIND.isSameWork(record, LOG_KIND.recordOf({ log, draft: NO_DRAFT }))).toBe(false);
  });
});
