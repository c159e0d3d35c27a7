/** The log's file at its edges: what is refused and how, photos that cannot be read, plans inside, and its speed. */
import { describe, expect, it } from 'vitest';
import { base64Of, bytesOfBase64 } from '../../src/trials/base64';
import { isLogText, logFileText, openLogFile } from '../../src/trials/log-file';
import { EMPTY_LOG, type Log, type Trial } from '../../src/trials/trial';
import { smallPlan } from '../fixtures/small-plan';

const LOG: Log = {
  ...EMPTY_LOG,
  varieties: [
    { id: 'a', name: 'Fern', group: '' },
    { id: 'b', name: 'Garnet', group: '' },
  ],
};

function trial(k: number, changes: Partial<Trial> = {}): Trial {
  return {
    ...{ id: `t${k}`, tag: `A-${k}`, setOn: '2025-01-01', varieties: ['a', 'b'], layout: {}, tank: 'North' },
    readings: Array.from({ length: 5 }, (_, at) => ({
      id: `r${at}`,
      on: `2025-0${at + 2}-01`,
      seen: [{ a: 'a', b: 'b', saw: 'ridge' as const, ridgeMm: 1 }],
      measured: [{ variety: 'a', radiusMm: 12 }],
    })),
    ...changes,
  };
}

function cures(value: unknown): string[] {
  const found = openLogFile(typeof value === 'string' ? value : JSON.stringify(value));
  return 'refusals' in found ? found.refusals.map(({ cure }) => cure) : [];
}

describe('the file of a log', () => {
  it('of a newer Seambench is refused with that sentence', () => {
    expect(cures({ seambenchLog: 2 })).toEqual([
      'This log was written by a newer Seambench: open it there, or update this one',
    ]);
  });

  it('is told apart from a plan and from other texts', () => {
    expect(isLogText(logFileText(LOG))).toBe(true);
    expect(isLogText(JSON.stringify(smallPlan()))).toBe(false);
    expect(cures(smallPlan())[0]).toMatch(/not a Seambench log, for the file holds something else/u);
    expect(cures('')[0]).toMatch(/is empty/u);
    expect(cures('{"a": x}')[0]).toMatch(/it is not JSON/u);
  });

  it('says in words of the page where a value is wrong', () => {
    const wrong = { ...trial(1).readings[1], seen: [{ a: 'a', b: 'b', saw: 'wall' }] };
    const broken = {
      ...LOG,
      trials: [
        { ...trial(1), readings: [trial(1).readings[0], wrong] },
        { ...trial(2), tag: undefined },
        { ...trial(3), layout: { pieceMm: 'wide' } },
        { ...trial(4), colour: 'red' },
      ],
    };
    expect(cures(broken)).toEqual([
      expect.stringMatching(
        /^In the log, tile A-1, reading 2, pair 1: what was seen is "wall"; it must be "fused" or/u,
      ),
      'In the log, trial 2: tag is missing; it must be what stands on the tile',
      'In the log, tile A-3: the size of the pieces is "wide"; it must be a number from 1 to 300',
      'In the log, tile A-4: “colour” means nothing here: take it out',
    ]);
  });

  it('reads the plan of a tile by the door of plans, and names the tile where it cannot be', () => {
    const { pairs: _, ...older } = smallPlan();
    const opened = openLogFile(
      JSON.stringify({ ...LOG, trials: [trial(1, { layout: { plan: older, seed: 'tide' } })] }),
    );
    expect(opened).toMatchObject({ log: { trials: [{ layout: { plan: { pairs: [] }, seed: 'tide' } }] } });
    const broken = { ...smallPlan(), months: 99 };
    expect(cures({ ...LOG, trials: [trial(1, { layout: { plan: broken, seed: 'tide' } })] })).toEqual([
      expect.stringMatching(/^In the plan of tile A-1: The number of months/u),
    ]);
    const seeded = { ...smallPlan(), seed: 'other' };
    expect(cures({ ...LOG, trials: [trial(1, { layout: { plan: seeded, seed: 'tide' } })] })[0]).toMatch(
      /seed twice/u,
    );
  });

  it('does not lose the log to a photo that cannot be read', () => {
    const good = { type: 'image/jpeg', base64: base64Of(Uint8Array.of(1, 2, 3)) };
    const photos = {
      p1: good,
      p2: { ...good, base64: '!!!!' },
      p3: { ...good, type: 'text/html' },
      p4: null,
    };
    const opened = openLogFile(JSON.stringify({ ...LOG, photos }));
    if (!('log' in opened)) throw new Error('refused');
    expect(opened.log).toEqual(LOG);
    expect([...opened.photos]).toEqual([['p1', { type: 'image/jpeg', bytes: Uint8Array.of(1, 2, 3) }]]);
    expect(opened.leftOut.map(({ where }) => where)).toEqual(['photos.p2', 'photos.p3', 'photos.p4']);
  });

  it('opens 20,000 readings in well under two seconds', () => {
    const text = logFileText({ ...LOG, trials: Array.from({ length: 4000 }, (_, k) => trial(k)) });
    const start = performance.now();
    expect('log' in openLogFile(text)).toBe(true);
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

describe('bytes as letters', () => {
  it('are those of RFC 4648, section 10', () => {
    const words = ['', 'f', 'fo', 'foo', 'foob', 'fooba', 'foobar'];
    const letters = ['', 'Zg==', 'Zm8=', 'Zm9v', 'Zm9vYg==', 'Zm9vYmE=', 'Zm9vYmFy'];
    const bytes = words.map((word) => new TextEncoder().encode(word));
    expect(bytes.map(base64Of)).toEqual(letters);
    expect(letters.map(bytesOfBase64)).toEqual(bytes.map((one) => Uint8Array.from(one)));
  });

  it('are none where letters are missing, strange or after their end', () => {
    expect(['Zg', 'Zg=', 'Z\u00e9==', 'Zg==Zg==', '====', '-_-_'].map(bytesOfBase64)).toEqual(
      Array.from({ length: 6 }, () => null),
    );
  });
});
