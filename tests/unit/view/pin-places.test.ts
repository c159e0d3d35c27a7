import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PIN_PX, pinPlaces } from '../../../src/view/steps/pin-places';

describe('places of pins on the months', () => {
  it('stand at their days where there is room', () => {
    expect(pinPlaces([0, 100, 365], 365, 730)).toEqual([0, 200, 730]);
  });

  it('are fanned about the day that they share', () => {
    expect(pinPlaces([100, 100, 100], 365, 730)).toEqual([200 - PIN_PX, 200, 200 + PIN_PX]);
  });

  it('stay within the strip at its ends, and after the last day', () => {
    expect(pinPlaces([0, 0], 365, 730)).toEqual([0, PIN_PX]);
    expect(pinPlaces([365, 900], 365, 730)).toEqual([730 - PIN_PX, 730]);
  });

  it('whatever the days: in their order, apart, within the strip', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 1095 }), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 200, max: 900 }),
        (some, width) => {
          const days = [...some].sort((a, b) => a - b);
          const places = pinPlaces(days, 365, width);
          const apart = Math.min(PIN_PX, width / Math.max(1, days.length - 1));
          expect(places).toHaveLength(days.length);
          places.forEach((x, k) => {
            expect(x).toBeGreaterThanOrEqual(-1e-6);
            expect(x).toBeLessThanOrEqual(width + 1e-6);
            if (k > 0) expect(x - places[k - 1]).toBeGreaterThanOrEqual(apart - 1e-6);
          });
        },
      ),
    );
  });
});
