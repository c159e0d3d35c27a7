import { describe, expect, it } from 'vitest';
import { migrate, type MigrationStep } from '../../../src/plan/migrate';

/** Two invented steps: months was called length, then gained a unit. */
const STEPS: readonly MigrationStep[] = [
  {
    to: 2,
    why: 'length became months',
    up: ({ length, ...rest }) => ({ ...rest, months: length }),
  },
  {
    to: 3,
    why: 'the name may not be left out',
    up: (old) => ({ name: '', ...old }),
  },
];

describe('migration', () => {
  it('takes an older shape through each step in order', () => {
    const expected = { value: { seambench: 3, name: '', months: 6 } };
    expect(migrate({ seambench: 1, length: 6 }, STEPS)).toEqual(expected);
    expect(migrate({ seambench: 2, months: 6 }, STEPS)).toEqual(expected);
  });

  it('leaves the newest shape and what is no plan as it is', () => {
    const newest = { seambench: 3, name: 'x' };
    expect(migrate(newest, STEPS)).toEqual({ value: newest });
    for (const value of [null, 7, [], { seambench: 'x' }, { seambench: 0 }, { seambench: 1.5 }, {}]) {
      expect(migrate(value, STEPS)).toEqual({ value });
    }
  });

  it('does not guess at a newer shape', () => {
    const migrated = migrate({ seambench: 4 }, STEPS);
    expect(migrated).toMatchObject({ refusals: [{ where: 'seambench', found: '4', allowed: 'at most 3' }] });
  });

  it('finds steps that are not numbered without holes', () => {
    expect(() => migrate({ seambench: 1 }, [STEPS[1]])).toThrow('leads to 3, not to 2');
  });
});
