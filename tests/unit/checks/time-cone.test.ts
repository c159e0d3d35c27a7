/** The time cone against the closed form of Meijering 1953 on an edge so long that its ends do not count. */
import { expect, test } from 'vitest';
import { meanNuclei } from '../../../src/checks/time-cone';

const seam = {
  halfLengthMm: 100,
  touchedDay: () => 0,
  days: 80,
  delayDays: 0,
  nucleiPerMmDay: 4 / (Math.PI * 16 * 16),
  zipMmPerDay: 1,
};

test('contact all at once: as many nuclei as the length over 2 sqrt(c / (pi J))', () => {
  const count = meanNuclei(seam);
  // the two ends add less than one
  expect(count).toBeGreaterThan(200 / 16 - 0.5);
  expect(count).toBeLessThan(200 / 16 + 1);
});

test('contact that opens slower than verdicts run takes few nuclei, and the slower the fewer', () => {
  const opening = [0, 1, 5].map((daysPerMm) =>
    meanNuclei({ ...seam, halfLengthMm: 30, days: 260, touchedDay: (x) => daysPerMm * x }),
  );
  expect(opening[1]).toBeLessThan(opening[0]);
  expect(opening[2]).toBeLessThan(opening[1]);
  expect(opening[2]).toBeGreaterThan(0.9);
});
