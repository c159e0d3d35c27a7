import { describe, expect, it } from 'vitest';
import { meetingRadiusMm } from '../../src/checks/meeting-curve';

// Distance from the slow centre of the meeting line of discs 30 mm apart, rates 2 : 1, radius 5 mm or 0 (points).
// Typed from a closed form that was compared with a second-order two-front solver; the points also by hand: circle of
// Apollonius to 90 degrees (Schaudt & Drysdale 1991), logarithmic spiral beyond.
const TABLE: readonly (readonly [number, number, number])[] = [
  [0, 10, 11.6667],
  [30, 10.7047, 12.5628],
  [60, 13.0278, 15.4927],
  [90, 17.3205, 20.7354],
  [105, 20.1467, 24.1188],
  [120, 23.4341, 28.0543],
  [135, 27.2578, 32.6319],
  [150, 31.7055, 37.9565],
  [165, 36.879, 44.1499],
  [180, 42.8965, 51.3539],
];

describe('meeting line of two rates', () => {
  it.each(TABLE)(
    'at %d degrees: points %d mm, discs of 5 mm %d mm (typed table)',
    (degrees, points, discs) => {
      const angle = (degrees * Math.PI) / 180;
      expect(meetingRadiusMm({ ratio: 2, apartMm: 30, radiusMm: 0 }, angle)).toBeCloseTo(points, 4);
      expect(meetingRadiusMm({ ratio: 2, apartMm: 30, radiusMm: 5 }, angle)).toBeCloseTo(discs, 4);
    },
  );

  it('closes behind the slow point at d / sqrt(k^2 - 1) exp(pi / (2 sqrt(k^2 - 1))), not at d / (k - 1)', () => {
    for (const [ratio, tip] of [
      [1.25, 10.83],
      [1.5, 3.645],
      [2, 1.43],
      [3, 0.6161],
    ] as const)
      expect(Math.abs(meetingRadiusMm({ ratio, apartMm: 1, radiusMm: 0 }, Math.PI) / tip - 1)).toBeLessThan(
        5e-4,
      );
  });
});
