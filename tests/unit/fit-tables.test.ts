/** Plain tables as people write them, what is fitted to them, and tables broken at random. */
import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { describe, expect, it } from 'vitest';
import colonies from '../../src/checks/data/colony-growth.json';
import { contestFit, contestTable } from '../../src/trials/contest-fit';
import { Unfit } from '../../src/trials/csv-table';
import { radiusTable } from '../../src/trials/radius-table';
import { type RadiusReading, type RimRate, rimRates } from '../../src/trials/rim-rate';
import { survivalFits, survivalTable } from '../../src/trials/survival-fit';
import { verdictDays, verdictTable } from '../../src/trials/verdict-days';

const HEAD = 'colony,group,date,area_mm2';

function only(readings: readonly RadiusReading[]): RimRate {
  const [rate] = rimRates(readings);
  return rate;
}

describe('rim rate', () => {
  it('has the 0.98 quantiles published with the colony growth data (Madin et al. 2023, doi 10.1002/ecy.4017)', () => {
    const readings = colonies.species.flatMap(({ name, pairs }) =>
      pairs.flatMap((areas, at) =>
        areas.map((cm2, year) => ({
          colony: `${at}`,
          group: name,
          months: 12 * year,
          radiusMm: 10 * Math.sqrt(cm2 / Math.PI),
        })),
      ),
    );
    const found = new Map(rimRates(readings).map((rate) => [rate.group, rate]));
    const published: readonly (readonly [string, number, number])[] = [
      ['Acropora cytherea', 89, 89.7],
      ['Acropora hyacinthus', 111, 74.63],
      ['Acropora cf. digitifera', 125, 20.566],
      ['Acropora nasuta', 116, 30.842],
      ['Goniastrea retiformis', 133, 15.655],
    ];
    for (const [name, n, mmPerYear] of published) {
      const rate = found.get(name);
      expect(rate?.n).toBe(n);
      expect(Math.abs((rate?.q98MmPerYear ?? 0) - mmPerYear)).toBeLessThan(0.05); // areas are kept to 0.01 cm2
    }
  });

  it('is exact where colonies grow at one rate and two of seven pairs lost a part', () => {
    const radii = [
      [10, 11.5, 13, 9, 10.5],
      [20, 21.5, 18, 19.5],
    ];
    const readings = radii.flatMap((own, colony) =>
      own.map((radiusMm, months) => ({ colony: `${colony}`, group: 'g', months, radiusMm })),
    );
    const { n, rimMmPerMonth, low, high } = only(readings);
    expect(n).toBe(7);
    for (const value of [rimMmPerMonth, low, high]) expect(value).toBeCloseTo(1.5, 6);
  });

  it('without losses is the whole gain over the whole time, whatever the gaps', () => {
    const steps = [1, 4, 1, 4, 1, 4];
    const rates = [2.3, 1.93, 1.9, 2.02, 2.1, 1.95]; // short steps are the noisier ones; their plain mean is 2.033
    let at = { colony: 'c', group: 'g', months: 0, radiusMm: 10 };
    const later = steps.map((months, k) => {
      at = { ...at, months: at.months + months, radiusMm: at.radiusMm + months * rates[k] };
      return at;
    });
    const whole = (at.radiusMm - 10) / 15;
    const { rimMmPerMonth } = only([{ ...at, months: 0, radiusMm: 10 }, ...later]);
    expect(Math.abs(rimMmPerMonth - whole)).toBeLessThan(0.02); // what the outer ones weigh less
  });

  it('of one pair has no interval, of one reading no rate', () => {
    const at = (months: number) => ({ colony: 'c', group: 'g', months, radiusMm: 10 + months });
    expect(only([at(0), at(2)])).toMatchObject({ n: 1, rimMmPerMonth: 1, low: null, high: null });
    expect(rimRates([at(0)])).toEqual([]);
  });

  it('is found again on 200 invented farms that lose parts, and its interval covers it near 95 %', () => {
    const draw = seedrandom('rim rates of invented farms');
    const normal = () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
    const rates = Array.from({ length: 200 }, () => {
      const truth = 0.5 + 2 * draw();
      const readings = Array.from({ length: 10 }).flatMap((_, colony) => {
        let radiusMm = 10 + 5 * draw();
        return [0, 1, 2, 3, 4, 5].map((months) => {
          if (months > 0) radiusMm += truth + 0.1 * normal();
          if (months > 0 && draw() < 0.2) radiusMm *= 0.5 + 0.4 * draw();
          return { colony: `${colony}`, group: 'g', months, radiusMm: radiusMm + 0.15 * normal() };
        });
      });
      return { truth, found: only(readings) };
    });
    const covered = rates.filter(
      ({ truth, found }) => truth >= (found.low ?? Infinity) && truth <= (found.high ?? -Infinity),
    ).length;
    const bias = rates.reduce((sum, { truth, found }) => sum + found.rimMmPerMonth - truth, 0) / 200;
    expect(covered).toBeGreaterThanOrEqual(180); // 190 expected; three standard errors are 9
    expect(Math.abs(bias)).toBeLessThan(0.03);
  });
});

describe('tables as people write them', () => {
  it('takes semicolons, tabs, any line ends, a mark of byte order, capitals, other columns and quotes over lines', () => {
    const want = radiusTable(`${HEAD}\nc,g,2026-01-01,100\nc,g,2026-02-01,120\n`);
    expect(want.bad).toEqual([]);
    const others = [
      '\uFEFFColony;Group;Date;Area_mm2\r\nc;g;2026-01-01;100\r\n\r\nc;g;2026-02-01;120',
      'note\tarea_mm2\tdate\tgroup\tcolony\n"two\nlines"\t100\t2026-01-01\tg\tc\n\t120\t2026-02-01\tg\tc',
      `${HEAD}\rc,g,2026-01-01,1e2\r"c", g ,2026-02-01,120`,
    ];
    for (const text of others) {
      const found = radiusTable(text);
      expect(found.bad).toEqual([]);
      expect(found.rows.map(({ value }) => value)).toEqual(want.rows.map(({ value }) => value));
    }
  });

  it('says line and reason of each bad row and keeps the good ones', () => {
    const rows = [
      'a,g,2026-01-01,100',
      'a,g,31.1.2026,100',
      'a,g,2026-02-31,100',
      'a,g,2026-02-01,"1,5"',
      ',g,2026-02-01,100',
      'a,g,2026-02-01,0',
      'a,g,2026-02-01,100,7',
      'a,g,2026-01-01,90',
      'a,g,2026-01-01,100',
      'a,g,2026-03-01,140',
    ];
    const { rows: good, bad } = radiusTable([HEAD, ...rows].join('\n'));
    expect(good.map(({ line }) => line)).toEqual([2, 11]);
    expect(bad.map(({ line }) => line)).toEqual([3, 4, 5, 6, 7, 8, 9]);
    const reasons = [
      /31\.1\.2026/u,
      /2026-02-31/u,
      /'1,5'/u,
      /colony is empty/u,
      /above 0/u,
      /5 fields/u,
      /line 2/u,
    ];
    reasons.forEach((reason, at) => expect(bad[at].why).toMatch(reason));
  });

  it('loses one line to a quote that never closes', () => {
    const { rows, bad } = radiusTable(`${HEAD}\na,g,2026-01-01,100\n"a,g,2026-02-01,100\na,g,2026-03-01,120`);
    expect(rows.map(({ line }) => line)).toEqual([2, 4]);
    expect(bad).toEqual([{ line: 3, why: 'its quote marks do not pair' }]);
  });

  it('keeps a good row between two stray quotes, and a note over two lines whole', () => {
    const { rows } = radiusTable(`${HEAD},note\n"\na,g,2026-01-01,100,\n"\nb,g,2026-01-01,90,"two\nlines"`);
    expect(rows.map(({ line }) => line)).toEqual([3, 5]);
  });

  it('refuses a table without its columns, or with one twice', () => {
    expect(() => radiusTable('colony,year\na,1')).toThrow(/group, area_mm2 or radius_mm$/u);
    expect(() => radiusTable('')).toThrow(Unfit);
    expect(() => radiusTable('colony,group,year,area_mm2,group\n')).toThrow(/Two columns are named group/u);
  });
});

const TABLES = [
  (text: string) => rimRates(radiusTable(text).rows.map(({ value }) => value)),
  (text: string) => survivalFits(survivalTable(text).rows.map(({ value }) => value)),
  (text: string) => contestFit(contestTable(text).rows.map(({ value }) => value)),
  (text: string) => verdictDays(verdictTable(text).rows.map(({ value }) => value)),
];
const HEADS = [HEAD, 'group,size_mm2,alive', 'winner,loser,tie', 'group,days,settled'];

describe('broken tables', () => {
  const cell = fc.oneof(
    fc.constantFrom(
      'a',
      'b',
      '1',
      '0',
      'yes',
      '2026-01-01',
      '2026-02-01',
      '12.5',
      '"',
      '""',
      ';',
      '\t',
      '\r\n',
      '-1',
      '9e999',
    ),
    fc.string({ maxLength: 6, unit: 'binary' }),
    fc.double().map(String),
  );
  const body = fc.array(
    fc.array(cell, { maxLength: 6 }).map((cells) => cells.join(',')),
    { maxLength: 12 },
  );

  it.each(HEADS.map((head, at) => [head, at] as const))(
    'never throw more than a sentence: %s',
    (head, at) => {
      fc.assert(
        fc.property(body, fc.boolean(), (lines, headed) => {
          try {
            TABLES[at]([...(headed ? [head] : []), ...lines].join('\n'));
          } catch (error) {
            expect(error).toBeInstanceOf(Unfit);
          }
        }),
        { numRuns: 1500 },
      );
    },
  );

  it('never cost a good row on a line of its own', () => {
    const broken = fc.array(cell, { maxLength: 6 }).map((cells) => cells.join(',').replace(/[\r\n]/gu, ''));
    fc.assert(
      fc.property(fc.array(broken, { maxLength: 8 }), fc.nat(8), (lines, place) => {
        const good = 'kept,group,2026-03-01,77';
        const text = [HEAD, ...lines.slice(0, place), good, ...lines.slice(place)].join('\n');
        const { rows } = radiusTable(text);
        expect(rows.some(({ value }) => value.colony === 'kept' && value.group === 'group')).toBe(true);
      }),
      { numRuns: 1500 },
    );
  });
});
