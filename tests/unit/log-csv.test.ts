/** The log's CSV as a grower writes it: what is guessed and what is asked, what is a bad row, what an import adds. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Unfit } from '../../src/trials/csv-table';
import { csvPreview, type CsvReading, logOfCsv, readLogCsv } from '../../src/trials/log-csv';
import { logCsv } from '../../src/trials/log-csv-out';
import { EMPTY_LOG, type Log } from '../../src/trials/trial';

function reading(text: string, changes: Partial<CsvReading> = {}): CsvReading {
  const { delimiter, mapping } = csvPreview(text);
  return { delimiter, mapping, dateOrder: 'ymd', decimal: 'point', ...changes };
}

function imported(text: string, into: Log = EMPTY_LOG, changes: Partial<CsvReading> = {}) {
  return readLogCsv(text, reading(text, changes), into);
}

/** The example of README. */
const BY_HAND = /^tag,set_on,tank[^`]+/mu.exec(readFileSync('README.md', 'utf8'))?.[0] ?? '';

describe('a table by hand', () => {
  it('makes the log that it says', () => {
    const { log, added, taken, bad } = imported(BY_HAND);
    expect(bad).toEqual([]);
    expect(taken).toBe(5);
    expect(added).toEqual({ varieties: ['Fern', 'Garnet'], trials: 1, readings: 2, events: 0 });
    expect(log.trials).toEqual([
      {
        id: 't1',
        tag: 'A-14',
        setOn: '2026-01-05',
        varieties: ['v1', 'v2'],
        layout: { pieceMm: 20, gapMm: 2 },
        tank: 'North',
        note: 'set on ceramic',
        readings: [
          {
            id: 'r1',
            on: '2026-03-01',
            by: 'JK',
            seen: [{ a: 'v1', b: 'v2', saw: 'not-met' }],
            measured: [],
          },
          {
            id: 'r2',
            on: '2026-04-02',
            by: 'JK',
            seen: [
              { a: 'v1', b: 'v2', saw: 'ridge', share: 0.6, ridgeMm: 0.8 },
              { a: 'v1', b: 'v2', saw: 'lapped', over: 'v2', share: 0.4 },
            ],
            measured: [{ variety: 'v2', radiusMm: 14.5 }],
            note: 'pale rim',
          },
        ],
      },
    ]);
  });

  it('adds only what is new when it comes again, longer', () => {
    const { log } = imported(BY_HAND);
    const again = imported(BY_HAND, log);
    expect([again.log, again.taken, again.known, again.bad]).toEqual([log, 0, 5, []]);
    const longer = imported(
      `${BY_HAND}A-14,,,,,2026-05-01,JK,fern,GARNET,ridge,,,1.1,,\nA-14,,,,,2026-04-02,JK,Fern,,,,,,12,\n`,
      log,
    );
    expect([longer.taken, longer.known, longer.bad]).toEqual([2, 5, []]);
    expect(longer.added).toEqual({ varieties: [], trials: 0, readings: 1, events: 0 });
    expect(longer.log.trials[0].readings[1].measured).toHaveLength(2);
  });

  it('may be of events, of varieties and of tiles that were never read', () => {
    const text = `tag,set_on,varieties,variety,group,colour,worth,event,on,tank,note
,,,Fern,Zoanthus sansibaricus,#2f7d4f,3,,,,
A-1; A-2,,,,,,,dip,2026-02-01,North,
,,,,,,,moved,2026-02-02,North,to South
B-1,2026-01-01,Fern; Moss,,,,,,,,
`;
    const { log, bad } = imported(text);
    expect(bad).toEqual([]);
    expect(log.varieties).toEqual([
      { id: 'v1', name: 'Fern', group: 'Zoanthus sansibaricus', colour: '#2f7d4f', worth: 3 },
      { id: 'v2', name: 'Moss', group: '' },
    ]);
    expect(log.events).toEqual([
      { id: 'e1', on: '2026-02-01', tank: 'North', kind: 'dip', tags: ['A-1', 'A-2'] },
      { id: 'e2', on: '2026-02-02', tank: 'North', kind: 'move', tags: [], note: 'to South' },
    ]);
    expect(log.trials).toMatchObject([{ tag: 'B-1', varieties: ['v1', 'v2'], readings: [] }]);
  });

  it('keeps the tank and the water of a later day in the words of its reading', () => {
    const text = `tag,set_on,on,variety,with,saw,tank,temperature,note
A,2026-01-01,2026-02-01,Fern,Moss,not-met,North,25,
A,2026-01-01,2026-03-01,Fern,Moss,fused,South,25.5,soft
`;
    const { log, bad } = imported(text);
    expect(bad).toEqual([]);
    expect(log.trials).toMatchObject([{ tank: 'North', temperature: '25' }]);
    expect(log.trials[0].readings[1].note).toBe('soft\ntank South\ntemperature 25.5');
    expect(imported(text, log).log).toBe(log);
  });
});

describe('bad rows', () => {
  it('each have line, column and reason, and the good ones are taken', () => {
    const rows: readonly (readonly [string, RegExp | null])[] = [
      ['A,2026-01-01,2026-02-01,JK,Fern,Moss,ridge,,,1.2,,', null],
      ['A,2026-01-01,31/12/2026,JK,Fern,Moss,ridge,,,,,', /^on must be a day.*'31\/12\/2026': say whether/u],
      ['A,2026-01-01,3/4/26,JK,Fern,Moss,ridge,,,,,', /four digits/u],
      ['A,2026-01-01,46054,JK,Fern,Moss,ridge,,,,,', /format the column as dates/u],
      ['A,2026-01-01,2026-02-30,JK,Fern,Moss,ridge,,,,,', /^on must be a day/u],
      ['A,2026-01-01,2025-12-31,JK,Fern,Moss,ridge,,,,,', /^on is 2025-12-31, before the tile was set/u],
      ['A,2026-01-01,,JK,Fern,Moss,ridge,,,,,', /^on is empty, but saw/u],
      [',2026-01-01,2026-02-01,JK,Fern,Moss,ridge,,,,,', /^tag is empty/u],
      ['Z,,2026-02-01,JK,Fern,Moss,ridge,,,,,', /^set_on is empty, and of tile Z no good row says/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,wobbly,,,,,', /^saw must be one of fused, .*'wobbly'/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,,,0.5,,,', /^saw is empty, but with/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,,ridge,,,,,', /^with is empty/u],
      [
        'A,2026-01-01,2026-02-02,JK,Fern,Moss,ridge,,,"1,2",,',
        /^ridge_mm must be a number with a point.*'1,2'/u,
      ],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,ridge,,60,,,', /^share must be a number from 0 to 1/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,ridge,Fern,,,,', /^over is 'Fern', but only a lapped/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,lapped,Opal,,,,', /^over must be Fern or Moss/u],
      [
        'A,2026-01-01,2026-02-01,JK,Fern,Moss,fused,,0.5,,,',
        /^Fern with Moss is fused, but ridge stands there already: .*150 %/u,
      ],
      [
        'A,2026-01-01,2026-02-01,JK,Moss,Fern,ridge,,,1.3,,',
        /^ridge_mm is '1.3', but '1.2' stands there already/u,
      ],
      ['A,2026-01-01,2026-02-02,JK,Fern,,,,,,9,60', /two sizes/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,ridge,,,,,,7', /13 fields for 12 columns/u],
      ['A,2026-01-01,2026-02-02,JK,Fern,Moss,"ridge,,,,,', /quote marks/u],
      ['E,2026-01-01,2026-02-01,JK,,,,,,,,', /no good row says which varieties/u],
      ['A,2026-01-01,2026-02-03,JK,Fern,Moss,fused,,,,,', null],
    ];
    const head = 'tag,set_on,on,by,variety,with,saw,over,share,ridge_mm,radius_mm,area_mm2';
    const { log, bad, taken } = imported([head, ...rows.map(([row]) => row)].join('\n'));
    const reasons = rows.flatMap(([, why], at) =>
      why ? [{ line: at + 2, why: expect.stringMatching(why) as string }] : [],
    );
    expect(bad).toEqual(reasons);
    expect(taken).toBe(2);
    expect(log.trials[0].readings.map(({ on }) => on)).toEqual(['2026-02-01', '2026-02-03']);
  });

  it('are those that contradict the log, which stays as it is', () => {
    const { log } = imported(BY_HAND);
    const text = `tag,set_on,variety,with,on,by,saw,group,gap_mm,varieties
A-14,2026-01-05,Fern,Garnet,2026-03-01,JK,fused,,,
A-14,2026-01-05,Opal,Garnet,2026-05-01,JK,fused,,,
A-14,2026-01-05,,,,,,,3,
A-14,2026-01-05,,,,,,,,Fern; Opal
`;
    const again = imported(text, log);
    expect(again.log).toBe(log);
    expect(again.bad.map(({ why }) => why)).toEqual([
      expect.stringMatching(/comes to 200 %/u),
      'Opal is not among the varieties of the tile',
      "gap_mm is '3', but '2' stands there already",
      'varieties lists others than tile A-14 has already',
    ]);
  });

  it('with a stray quote cost neither a note over several lines nor the rows around them', () => {
    const rows = [
      'A,2026-01-01,Fern,"two\nlines"',
      '"B,2026-01-01,Fern,',
      'C,2026-01-01,Fern,',
      'D,2026-01-01,"Fern",',
    ];
    const { log, bad } = imported(['tag,set_on,varieties,note', ...rows].join('\n'));
    expect(log.trials.map(({ tag, note }) => [tag, note])).toEqual([
      ['A', 'two\nlines'],
      ['C', undefined],
      ['D', undefined],
    ]);
    expect(bad).toEqual([{ line: 4, why: 'its quote marks do not pair' }]);
  });
});

describe('headings', () => {
  it('are known by plain names, whatever their capitals, blanks and marks', () => {
    const { mapping, doubts, delimiter } = csvPreview(
      'Tile;Date set;Variety A;Variety_B;DATE;Ridge (mm);Area mm2;Mood\n',
    );
    expect(mapping).toEqual(['tag', 'set_on', 'variety', 'with', 'on', 'ridge_mm', 'area_mm2', null]);
    expect([doubts, delimiter]).toEqual([[], ';']);
  });

  it('that could be one column twice are both left open, but for its own name', () => {
    const { mapping, doubts } = csvPreview('tag,Tile,Notes,Remarks\n');
    expect(mapping).toEqual(['tag', null, null, null]);
    expect(doubts).toEqual(['“Notes” (column 3) and “Remarks” (column 4) could each be note: choose one']);
    expect(() => logOfCsv('tag,on,on\n')).toThrow(/could each be on/u);
  });

  it('may be taken for other columns, once each', () => {
    const text = 'plug,set_on,varieties,mood\nA,2026-01-01,Fern,fine\n';
    const mapping = ['tag', 'set_on', 'varieties', 'note'] as const;
    expect(csvPreview(text, { mapping }).mapping).toEqual(mapping);
    expect(imported(text, EMPTY_LOG, { mapping }).log.trials[0].note).toBe('fine');
    expect(() => imported(text, EMPTY_LOG, { mapping: ['tag', 'set_on', 'tag', null] })).toThrow(
      /Two columns are taken for tag, “plug” and “varieties”/u,
    );
    expect(() => imported(text, EMPTY_LOG, { mapping: [null, 'set_on', null, null] })).toThrow(/No column/u);
  });

  it('and names in other letters than UTF-8 are noticed', () => {
    const text = new TextDecoder().decode(Uint8Array.of(0x74, 0x61, 0x67, 0x0a, 0xe9)); // 'tag', é in Latin-1
    expect(csvPreview(text).doubts).toEqual([expect.stringMatching(/UTF-8/u)]);
  });

  it('are missed in an empty text and in one that is no table', () => {
    expect(() => csvPreview(' \n')).toThrow(Unfit);
    expect(() => logOfCsv('no table at all')).toThrow(/No column is taken/u);
  });
});

describe('dates', () => {
  const order = (...dates: readonly string[]) => csvPreview(`on\n${dates.join('\n')}\n`).dateOrder;

  it('are read in the one order that all of them fit', () => {
    expect(order('2026-03-04').answer).toBe('ymd');
    expect(order('03/04/2026', '31/12/2025')).toEqual({
      answer: 'dmy',
      why: 'Day first, for 31/12/2025 in line 3 can be nothing else.',
    });
    expect(order('03/04/2026', '12-31-2025').answer).toBe('mdy');
    expect(order('4.3.2026', '31.12.2025').answer).toBe('dmy');
  });

  it('are asked of the person where both orders fit, or neither', () => {
    expect(order('03/04/2026', '2026-12-31')).toEqual({
      answer: 'ask',
      why: 'Each date can be read both ways, such as 03/04/2026 in line 2.',
    });
    expect(order('31/12/2025', '12/31/2025').why).toMatch(
      /two kinds: 31\/12\/2025 in line 2 .* 12\/31\/2025 in line 3/u,
    );
    expect(() => logOfCsv('tag,set_on,varieties\nA,03/04/2026,Fern\n')).toThrow(
      /--dates dmy or --dates mdy/u,
    );
  });

  it('mean what the order says', () => {
    const text =
      'tag,set_on,varieties\nA,03/04/2026,Fern\nB,2026/5/6,Fern\nC,2026-07-08 00:00:00,Fern\nD,2026-07-08 14:20,Fern\n';
    const days = (dateOrder: 'dmy' | 'mdy') =>
      imported(text, EMPTY_LOG, { dateOrder }).log.trials.map(({ setOn }) => setOn);
    expect(days('dmy')).toEqual(['2026-04-03', '2026-05-06', '2026-07-08']);
    expect(days('mdy')).toEqual(['2026-03-04', '2026-05-06', '2026-07-08']);
    expect(logOfCsv(text, { dateOrder: 'dmy' }).bad.map(({ line }) => line)).toEqual([5]);
  });
});

describe('numbers', () => {
  const decimal = (mark: string, ...numbers: readonly string[]) =>
    csvPreview(`tag${mark}ridge_mm\n${numbers.map((one) => `A${mark}"${one}"`).join('\n')}\n`).decimal;

  it('have a comma where each shows it', () => {
    expect(decimal(';', '0,6', '12')).toEqual({
      answer: 'comma',
      why: 'Numbers have a comma, such as 0,6 in line 2, and none has a point.',
    });
    expect(decimal(',', '0.6', '1.234').answer).toBe('point');
    expect(
      imported('tag;set_on;varieties;gap_mm\nA;2026-01-01;Fern;2,5\nB;2026-01-01;Fern;2.5', EMPTY_LOG, {
        decimal: 'comma',
      }),
    ).toMatchObject({
      log: { trials: [{ tag: 'A', layout: { gapMm: 2.5 } }] },
      bad: [{ line: 3, why: expect.stringMatching(/^gap_mm must be a number with a comma/u) as string }],
    });
  });

  it('are asked of the person where they are mixed, or may have a thousands mark', () => {
    expect(decimal(';', '0,6', '1.5').answer).toBe('ask');
    expect(decimal(';', '1,234').answer).toBe('ask');
    expect(decimal(';', '1.234').answer).toBe('ask');
    expect(decimal(',', '1,234').answer).toBe('ask');
    expect(() => logOfCsv('tag;area_mm2\nA;1,234\n')).toThrow(/--decimal point or --decimal comma/u);
  });
});

describe('CSV on its way out', () => {
  it('holds no field that a spreadsheet would run, and numbers as numbers', () => {
    const text = `tag,set_on,varieties,tank,note,gap_mm,on,variety,outline
"=HYPERLINK(""x"")",2026-01-01,@Fern; '=Moss,+1,-2,0.5,,,
"=HYPERLINK(""x"")",2026-01-01,,,,,2026-02-01,@Fern,-3 4; 5 6; 7 -8
`;
    const { log, bad } = imported(text);
    expect(bad).toEqual([]);
    const out = logCsv(log);
    const fields = out.split('\r\n').flatMap((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/u));
    expect(fields.filter((field) => /^"?[=+\-@\t\r]/u.test(field))).toEqual([]);
    expect(fields).toContain('0.5');
    expect(logOfCsv(out).log).toEqual(log);
  });

  it('names a log that is empty, and not one that holds something', () => {
    const named = logCsv({ ...EMPTY_LOG, name: 'North house', note: 'invented' });
    expect(logOfCsv(named).log).toEqual({ ...EMPTY_LOG, name: 'North house', note: 'invented' });
    const { log } = imported(BY_HAND);
    expect(imported(named, log).log).toBe(log);
  });
});

describe('a large table', () => {
  it('of 10,000 readings comes in in less than three seconds', () => {
    const rows = Array.from({ length: 10_000 }, (_, k) => {
      const day = new Date(Date.UTC(2024, 0, 2 + (k % 70) * 7)).toISOString().slice(0, 10);
      const tile = Math.floor(k / 70);
      return `A-${tile},2024-01-01,${day},JK,Variety ${tile % 7},Variety ${7 + (tile % 5)},ridge,1.2,`;
    });
    const text = ['tag,set_on,on,by,variety,with,saw,ridge_mm,note', ...rows].join('\n');
    const start = performance.now();
    const { added } = imported(text);
    expect(performance.now() - start).toBeLessThan(3000);
    expect(added.readings).toBe(10_000);
  });
});
