/** What cannot be in a log, and that each of it is said with place and cure. */
import { describe, expect, it } from 'vitest';
import { logFaults, trialFaults, varietyFaults } from '../../src/trials/log-faults';
import { type Log, type Measured, type Seen, type Trial } from '../../src/trials/trial';

const VARIETIES = [
  { id: 'a', name: 'Fern', group: '' },
  { id: 'b', name: 'Garnet', group: '' },
  { id: 'c', name: 'Amber', group: '' },
];

function trial(
  changes: Partial<Trial> = {},
  seen: readonly Seen[] = [],
  measured: readonly Measured[] = [],
): Trial {
  const readings = [{ id: 'r1', on: '2026-03-01', seen, measured }];
  return {
    ...{ id: 't1', tag: 'A-14', setOn: '2026-01-01', varieties: ['a', 'b'], layout: {}, tank: '', readings },
    ...changes,
  };
}

function log(changes: Partial<Log> = {}): Log {
  return { seambenchLog: 1, name: 'Test', varieties: VARIETIES, trials: [trial()], events: [], ...changes };
}

const event = { id: 'e1', on: '2026-01-01', tank: '', kind: 'dip', tags: [] } as const;
const pair = (changes: Partial<Seen>): Seen => ({ a: 'a', b: 'b', saw: 'ridge', ...changes });

describe('a log', () => {
  it('has no fault with shares that come to one, a pair of one variety, tags used again and again', () => {
    const good = log({
      trials: [
        trial({}, [
          pair({ share: 0.6 }),
          pair({ a: 'b', b: 'a', saw: 'lapped', over: 'b', share: 0.4 }),
          pair({ b: 'a', saw: 'fused' }),
        ]),
        trial({ id: 't2', setOn: '2026-01-02' }),
      ],
      events: [event, { ...event, id: 'e2', tags: ['no such tile'] }],
    });
    expect(logFaults(good)).toEqual([]);
  });

  const FAULTS: readonly (readonly [string, Partial<Log>, string, RegExp])[] = [
    [
      'an id of varieties twice',
      { varieties: [...VARIETIES, { id: 'a', name: 'Moss', group: '' }] },
      'varieties[3] (a)',
      /same id a/u,
    ],
    [
      'a name of varieties twice',
      { varieties: [...VARIETIES, { id: 'd', name: ' fern', group: '' }] },
      'varieties[3] (d).name',
      /Two varieties are named/u,
    ],
    [
      'a variety without a name',
      { varieties: [...VARIETIES, { id: 'd', name: ' ', group: '' }] },
      'varieties[3] (d).name',
      /no name/u,
    ],
    ['an id of trials twice', { trials: [trial(), trial({ tag: 'B' })] }, 'trials[1] (t1)', /same id t1/u],
    [
      'a tag twice on one day',
      { trials: [trial(), trial({ id: 't2', tag: 'a-14 ' })] },
      'trials[1] (t2).tag',
      /another tag/u,
    ],
    ['no tag', { trials: [trial({ tag: ' ' })] }, 'trials[0] (t1).tag', /has no tag/u],
    ['an id of events twice', { events: [event, event] }, 'events[1] (e1)', /same id e1/u],
    [
      'a variety that is not in the log',
      { trials: [trial({ varieties: ['a', 'b', 'z'] })] },
      'trials[0] (t1).varieties[2]',
      /“z” that is not in the log/u,
    ],
    [
      'a variety twice on a tile',
      { trials: [trial({ varieties: ['a', 'b', 'a'] })] },
      'trials[0] (t1).varieties[2]',
      /Fern stands twice/u,
    ],
  ];

  it.each(FAULTS)('is told of %s', (_, changes, where, cure) => {
    const faults = logFaults(log(changes));
    expect(faults.map((fault) => fault.where)).toEqual([where]);
    expect(faults[0].cure).toMatch(cure);
  });

  const READ: readonly (readonly [string, Trial, RegExp])[] = [
    [
      'a reading before its tile was set',
      trial({ setOn: '2026-03-02' }),
      /before the tile was set, on 2026-03-02/u,
    ],
    ['a pair with a stranger', trial({}, [pair({ b: 'c' })]), /speaks of Amber, which is not on the tile/u],
    [
      'one above that is not of the pair',
      trial({ varieties: ['a', 'b', 'c'] }, [pair({ saw: 'lapped', over: 'c' })]),
      /neither of the two/u,
    ],
    ['one above the other in a ridge', trial({}, [pair({ over: 'a' })]), /only a lapped or a dead seam/u],
    [
      'an outcome of a pair twice',
      trial({}, [pair({ share: 0.2 }), pair({ a: 'b', b: 'a', share: 0.3 })]),
      /said twice/u,
    ],
    [
      'shares that come to more than one',
      trial({}, [pair({ share: 0.7 }), pair({ saw: 'fused', share: 0.4 })]),
      /110 %/u,
    ],
    ['a share beside a whole', trial({}, [pair({}), pair({ saw: 'fused', share: 0.4 })]), /140 %/u],
    ['two sizes at once', trial({}, [], [{ variety: 'a', radiusMm: 3, areaMm2: 30 }]), /2 sizes/u],
    [
      'a variety measured twice',
      trial(
        {},
        [],
        [
          { variety: 'a', radiusMm: 3 },
          { variety: 'a', state: 'died' },
        ],
      ),
      /Fern twice/u,
    ],
    [
      'a stranger that was measured',
      trial({}, [], [{ variety: 'c', radiusMm: 3 }]),
      /Amber, which is not on the tile/u,
    ],
  ];

  it.each(READ)('is told of %s', (_, faulty, cure) => {
    const faults = logFaults(log({ trials: [faulty] }));
    expect(faults).toHaveLength(1);
    expect(faults[0].cure).toMatch(cure);
    expect(faults[0].where).toMatch(/^trials\[0\] \(t1\)\.readings\[0\] \(r1\)/u);
  });

  it('is told of ids of readings twice', () => {
    const { readings } = trial();
    const [fault] = logFaults(log({ trials: [trial({ readings: [...readings, ...readings] })] }));
    expect(fault.where).toBe('trials[0] (t1).readings[1] (r1)');
  });

  it('is told the first fifty of many', () => {
    expect(logFaults(log({ trials: Array.from({ length: 80 }, () => trial()) }))).toHaveLength(50);
  });
});

describe('a trial that is about to be kept', () => {
  it('may stand in its own place, and not beside another with its tag and date', () => {
    expect(trialFaults(log(), trial())).toEqual([]);
    const [fault] = trialFaults(log(), trial({ id: 't2' }));
    expect(fault.cure).toMatch(/Two tiles with the tag “A-14”/u);
  });
});

describe('a variety that is about to be kept', () => {
  it('may keep its own name, and not take that of another', () => {
    expect(varietyFaults(log(), { id: 'a', name: 'FERN', group: 'g' })).toEqual([]);
    expect(varietyFaults(log(), { id: 'd', name: 'fern ', group: '' })[0].cure).toMatch(
      /Two varieties are named/u,
    );
    expect(varietyFaults(log(), { id: 'a', name: ' ', group: '' })[0].cure).toMatch(/no name/u);
  });
});
