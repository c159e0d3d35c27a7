/** What is told of a table that does not fit: all faults of a row, the columns that are passed over. */
import { describe, expect, it } from 'vitest';
import { csvPreview, logOfCsv } from '../../src/trials/log-csv';

describe('bad rows', () => {
  it('tell all of their faults, each once, and none that follows from another', () => {
    const text = `tag,set_on,varieties,on,variety,with,saw,over,share,ridge_mm,radius_mm,state,colour,reading
A,2026-01-01,Fern; Moss,,,,,,,,,,,
A,2026-01-40,,31/12/2026,Fern,Moss,melted,,60,tall,,sick,greenish,1.5
A,2026-01-01,,,Fern,Moss,lapped,Opal,,,,,,
A,2026-01-01,,2025-12-01,Opal,Slate,ridge,,,,9,,,
A,2026-01-01,,2026-02-01,,,ridge,,,,9,,,
,,,2026-02-01,,,dip,,,,,,,
`;
    const [first, second, third, fourth, fifth] = logOfCsv(text, { dateOrder: 'ymd' }).bad.map(({ why }) =>
      why.split('; '),
    );
    expect(first).toEqual([
      expect.stringMatching(/^set_on must be a day/u),
      expect.stringMatching(/^colour must be/u),
      expect.stringMatching(/^on must be a day/u),
      'reading must be a whole number',
      expect.stringMatching(/^saw must be one of/u),
      expect.stringMatching(/^share must be/u),
      expect.stringMatching(/^ridge_mm must be/u),
      expect.stringMatching(/^state must be one of/u),
    ]);
    expect(second).toEqual([
      "over must be Fern or Moss, but is 'Opal'",
      'on is empty, but saw was read on some day',
    ]);
    expect(third).toEqual([
      'Opal is not among the varieties of the tile',
      'Slate is not among the varieties of the tile',
      'on is 2025-12-01, before the tile was set on 2026-01-01',
    ]);
    expect(fourth).toEqual(['variety is empty']);
    expect(fifth).toEqual(['tag is empty: which tile is it?']);
  });
});

describe('columns', () => {
  it('that are known by nothing are named, where they hold something', () => {
    const text = 'Tile,Shelf,Bucket,,saw\nA,2,,x,fused\n';
    expect(csvPreview(text).passedOver).toEqual(['Shelf', 'column 4']);
    const chosen = csvPreview(text, { mapping: ['tag', 'tank', null, null, 'saw'] });
    expect(chosen.passedOver).toEqual(['column 4']);
  });
});
