/** The log's file at its edges: what is refused and how, photos that cannot be read, plans inside, and its speed. */
import { describe, expect, it } from 'vitest';
import { base64Of, bytesOfBase64 } from '../../src/trials/base64';
import { isLogText, logFileText, openLogFile, type Photo } from '../../src/trials/log-file';
import { logFileParts, openLogStream } from '../../src/trials/log-stream';
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
      /seed stands inside the plan/u,
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

describe('a file in parts', () => {
  const PHOTOS = new Map(
    [1, 2, 3].map((k) => [
      `p${k}`,
      { type: 'image/png', bytes: Uint8Array.from({ length: 50 * k }, (_, at) => at) },
    ]),
  );
  const whole = logFileText({ ...LOG, trials: [trial(1)] }, PHOTOS);

  async function* cut(text: string, letters: number): AsyncGenerator<string> {
    for (let from = 0; from < text.length; from += letters)
      yield await Promise.resolve(text.slice(from, from + letters));
  }

  async function read(text: string, letters: number) {
    const photos = new Map<string, Photo>();
    const opened = await openLogStream(cut(text, letters), (id, photo) => {
      photos.set(id, photo);
      return Promise.resolve();
    });
    return { opened, photos };
  }

  async function* each<T>(things: Iterable<T>): AsyncGenerator<T> {
    for (const thing of things) yield await Promise.resolve(thing);
  }

  it('is the same text, with photos and without', async () => {
    for (const photos of [PHOTOS, new Map<string, Photo>()]) {
      const parts = [];
      for await (const part of logFileParts({ ...LOG, trials: [trial(1)] }, each(photos))) parts.push(part);
      expect(parts.join('')).toBe(logFileText({ ...LOG, trials: [trial(1)] }, photos));
    }
  });

  it('comes back whole however it is cut, with other line ends, and in another form of JSON', async () => {
    const others = [
      whole.replaceAll('\n', '\r\n'),
      JSON.stringify(JSON.parse(whole)),
      logFileText({ ...LOG, trials: [trial(1)] }),
    ];
    for (const [text, letters] of [
      [whole, 1],
      [whole, 100],
      [whole, 1e9],
      ...others.map((other) => [other, 77] as const),
    ] as const) {
      const { opened, photos } = await read(text, letters);
      expect(opened).toEqual({ log: { ...LOG, trials: [trial(1)] }, leftOut: [] });
      expect(photos).toEqual(text === others[2] ? new Map() : PHOTOS);
    }
  });

  it('that breaks off in a photo loses that photo only; a log that is refused keeps no photo', async () => {
    const { opened, photos } = await read(whole.slice(0, whole.indexOf('"p3"') + 60), 50);
    expect(opened).toMatchObject({ log: { name: 'My trials' }, leftOut: [{ where: 'photos' }] });
    expect([...photos.keys()]).toEqual(['p1', 'p2']);
    const refused = await read(whole.replace('"A-1"', '7'), 50);
    expect(refused.opened).toMatchObject({ refusals: [{ where: 'trials[0] (t1).tag' }] });
    expect(refused.photos.size).toBe(0);
    expect((await read('', 5)).opened).toHaveProperty('refusals');
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
