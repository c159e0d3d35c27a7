import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createCalendar, dayOf, file, openDay } from '../../../src/model/calendar';
import { createList, push, sortUnique } from '../../../src/model/cell-list';
import { createZip, dequeue, queue } from '../../../src/model/zip';

describe('zip queue', () => {
  it('gives entries by day, then cell, then nucleus, whatever the order they came in', () => {
    const entry = fc.tuple(fc.integer({ min: 0, max: 9 }), fc.nat(9), fc.nat(3));
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 700 }), (entries) => {
        const zip = createZip();
        for (const [day, cell, nucleus] of entries) queue(zip, day / 4, cell, nucleus);
        const out: number[][] = [];
        while (zip.count > 0) {
          out.push([zip.day[0] * 4, zip.cell[0], zip.nucleus[0]]);
          dequeue(zip);
        }
        expect(out).toEqual(entries.toSorted((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]));
      }),
    );
  });
});

describe('calendar', () => {
  it('gives back each cell in the day of its due time, and keeps nothing past the end', () => {
    const filed = fc.array(fc.tuple(fc.nat(5000), fc.double({ min: 0, max: 14, noNaN: true })), {
      maxLength: 6000,
    });
    fc.assert(
      fc.property(filed, (entries) => {
        const calendar = createCalendar(10);
        openDay(calendar, 0);
        for (const [cell, due] of entries) file(calendar, cell, due, 0);
        for (let day = 0; day <= 10; day++) {
          if (day > 0) openDay(calendar, day);
          const expected = entries.filter(([, due]) => Math.max(0, dayOf(due)) === day).map(([cell]) => cell);
          const found = [...calendar.today.cell.subarray(0, calendar.today.count)];
          expect(found.sort()).toEqual(expected.sort());
        }
      }),
      { numRuns: 30 },
    );
  });

  it('uses spent entries again', () => {
    const calendar = createCalendar(100);
    for (let day = 0; day < 99; day++) {
      openDay(calendar, day);
      for (let cell = 0; cell < 50; cell++) file(calendar, cell, day + 1.5, day);
    }
    expect(calendar.used).toBeLessThanOrEqual(100);
  });

  it('puts the end of a day into that day', () => {
    expect([dayOf(0.25), dayOf(1), dayOf(1.001), dayOf(30)]).toEqual([0, 0, 1, 29]);
  });
});

describe('cell list', () => {
  it('sorts and drops repeats', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(300), { maxLength: 3000 }), (cells) => {
        const list = createList(4);
        for (const cell of cells) push(list, cell);
        sortUnique(list);
        expect([...list.cell.subarray(0, list.count)]).toEqual([...new Set(cells)].sort((a, b) => a - b));
      }),
    );
  });
});
