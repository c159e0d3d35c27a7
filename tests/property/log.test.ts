/** Logs go out and come back whole, by their file and by CSV; whatever is broken is refused in words. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { Unfit } from '../../src/trials/csv-table';
import { csvPreview, logOfCsv, readLogCsv } from '../../src/trials/log-csv';
import { logCsv } from '../../src/trials/log-csv-out';
import { logFaults } from '../../src/trials/log-faults';
import { logFileText, openLogFile, type OpenedLog, type PhotosById } from '../../src/trials/log-file';
import { EMPTY_LOG, type Log, LogSchema } from '../../src/trials/trial';
import { randomLog } from '../fixtures/random-log';

const photos: fc.Arbitrary<PhotosById> = fc
  .array(fc.uint8Array({ maxLength: 20 }), { maxLength: 3 })
  .map(
    (all) => new Map(all.map((bytes, k) => [`p${k}`, { type: 'image/jpeg', bytes: Uint8Array.from(bytes) }])),
  );

function opened(text: string): OpenedLog {
  const found = openLogFile(text);
  if ('refusals' in found) throw new Error(found.refusals[0].cure);
  return found;
}

function expectSound(log: Log): void {
  expect(v.safeParse(LogSchema, log).issues).toBeUndefined();
  expect(logFaults(log)).toEqual([]);
}

describe('a file of the log', () => {
  it('brings log and photos back whole', () => {
    fc.assert(
      fc.property(randomLog, photos, (log, pictures) => {
        const again = opened(logFileText(log, pictures));
        expect(again.log).toEqual(log);
        expect(again.photos).toEqual(pictures);
        expect(again.leftOut).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });

  it('is refused in words and never throws, however it is cut or garbled', () => {
    const garbled = fc
      .tuple(
        randomLog,
        fc.nat(100_000),
        fc.integer({ min: 1, max: 60 }),
        fc.string({ unit: 'binary', maxLength: 6 }),
      )
      .map(([log, at, drop, insert]) => {
        const text = logFileText(log);
        const from = at % text.length;
        return text.slice(0, from) + insert + text.slice(from + drop);
      });
    let refused = 0;
    fc.assert(
      fc.property(fc.oneof(garbled, fc.json(), fc.string({ unit: 'binary' })), (text) => {
        const found = openLogFile(text);
        if ('log' in found) return;
        refused += 1;
        expect(found.refusals.length).toBeGreaterThan(0);
        for (const { where, found: seen, allowed, cure } of found.refusals) {
          for (const told of [where, seen, allowed, cure]) {
            expect(told).not.toBe('');
            expect(told).not.toMatch(/undefined|\[object|Invalid/u);
          }
        }
      }),
      { numRuns: 300 },
    );
    expect(refused).toBeGreaterThan(250);
  });
});

describe('CSV of the log', () => {
  it('loses nothing on the way out and in, and doubles nothing when it comes in again', () => {
    fc.assert(
      fc.property(randomLog, (log) => {
        const text = logCsv(log);
        const { log: again, bad } = logOfCsv(text);
        expect(bad).toEqual([]);
        expect(again).toEqual(log);
        const { delimiter, mapping } = csvPreview(text);
        const reading = { delimiter, mapping, dateOrder: 'ymd', decimal: 'point' } as const;
        const twice = readLogCsv(text, reading, log);
        expect(twice.bad).toEqual([]);
        expect(twice.taken).toBe(0);
        expect(twice.log).toBe(log);
      }),
      { numRuns: 120 },
    );
  });

  const HEAD = 'tag,set_on,on,by,variety,with,saw,over,share,radius_mm,note,event';

  /** What a table may hold that is no log, or hardly one. */
  const piece = fc.oneof(
    fc.constantFrom(
      ...[
        '"',
        '""',
        ',',
        ';',
        '\t',
        '\r\n',
        '\n',
        "'",
        '\0',
        '\uFEFF',
        '=1+1',
        '[',
        '1,5',
        '60 %',
        '12/31/2025',
      ],
    ),
    fc.constantFrom(
      ...[
        'A-1',
        'Fern',
        'Garnet',
        '2025-01-01',
        '2026-02-30',
        'ridge',
        'lapped',
        'dip',
        '0.4',
        '-1',
        '9e999',
      ],
    ),
    fc.string({ unit: 'binary', maxLength: 5 }),
  );
  const broken = fc.array(
    fc.array(piece, { maxLength: 14 }).map((all) => all.join(',')),
    { maxLength: 8 },
  );

  function readWhateverComes(text: string): Log | null {
    try {
      const { delimiter, mapping } = csvPreview(text);
      const { log, bad, taken, known } = readLogCsv(
        text,
        { delimiter, mapping, dateOrder: 'dmy', decimal: 'point' },
        EMPTY_LOG,
      );
      expectSound(log);
      expect(taken + known).toBeGreaterThanOrEqual(0);
      for (const { line, why } of bad) {
        expect(line).toBeGreaterThan(1);
        expect(why).not.toMatch(/^$|undefined|NaN|\[object/u);
      }
      return log;
    } catch (error) {
      expect(error).toBeInstanceOf(Unfit);
      return null;
    }
  }

  it('makes a sound log or a sentence of whatever comes', () => {
    const garbled = fc
      .tuple(randomLog.map(logCsv), fc.nat(100_000), fc.nat(60), fc.array(piece, { maxLength: 3 }))
      .map(([text, at, drop, insert]) => {
        const from = at % text.length;
        return text.slice(0, from) + insert.join('') + text.slice(from + drop);
      });
    const made = fc
      .tuple(fc.boolean(), broken)
      .map(([headed, lines]) => [...(headed ? [HEAD] : []), ...lines].join('\n'));
    const otherMarks = randomLog
      .map(logCsv)
      .chain((text) => fc.constantFrom(';', '\t', '|').map((mark) => text.replaceAll(',', mark)));
    fc.assert(
      fc.property(
        fc.oneof({ weight: 2, arbitrary: garbled }, { weight: 6, arbitrary: made }, otherMarks),
        (text) => {
          readWhateverComes(text);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('never loses a good row on a line of its own', () => {
    const oneLine = fc.array(piece, { maxLength: 14 }).map((all) => all.join(',').replaceAll(/[\n\r]/gu, ''));
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.boolean(), oneLine), { maxLength: 10 }), (parts) => {
        let count = 0;
        const lines = parts.map(([isGood, line]) => {
          if (!isGood) return line;
          count += 1;
          return `kept-${count},2025-01-01,2025-02-01,JK,Fern,Garnet,ridge,,,,,`;
        });
        const tags = readWhateverComes([HEAD, ...lines].join('\n'))?.trials.map(({ tag }) => tag) ?? [];
        for (let k = 1; k <= count; k++) expect(tags).toContain(`kept-${k}`);
      }),
      { numRuns: 1000 },
    );
  });
});
