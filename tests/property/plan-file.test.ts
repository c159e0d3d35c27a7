/** Thousands of broken plan files: nothing is thrown, and each refusal names place, finding, allowance and cure. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan, openPlan, type Opened } from '../../src/plan/file';
import { PRESETS } from '../../src/plan/presets';

const FIXTURE = readFileSync('tests/fixtures/plans/v1.json', 'utf8');
const TEXTS = [FIXTURE, ...PRESETS.map(({ key }) => readFileSync(`presets/${key}.json`, 'utf8'))];

/** True if it was refused in words; false if it was opened. */
function isRefusedInWords(opened: Opened): boolean {
  if ('plan' in opened) return false;
  expect(opened.refusals.length).toBeGreaterThan(0);
  for (const { where, found, allowed, cure } of opened.refusals) {
    for (const words of [where, found, allowed, cure]) {
      expect(words).not.toBe('');
      expect(words).not.toMatch(/undefined|\[object|Invalid/u);
    }
    expect(cure).toMatch(/^[A-Z]/u);
  }
  return true;
}

type Path = (string | number)[];

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const entries: [string | number, unknown][] = Array.isArray(value)
    ? value.map((entry, k) => [k, entry])
    : Object.entries(value);
  return [path, ...entries.flatMap(([key, entry]) => pathsOf(entry, [...path, key]))];
}

/** A copy with the value at the path replaced; undefined takes it out. */
function replaced(value: unknown, path: Path, by: unknown): unknown {
  if (path.length === 0) return by;
  const [key, ...rest] = path;
  if (Array.isArray(value)) {
    const items = (value as unknown[]).map((entry, k) => (k === key ? replaced(entry, rest, by) : entry));
    return items.filter((entry) => entry !== undefined);
  }
  const record = value as Readonly<Record<string, unknown>>;
  return { ...record, [key]: replaced(record[key], rest, by) };
}

const WHOLE: unknown = JSON.parse(FIXTURE);
const PATHS = pathsOf(WHOLE);

/** Values that stand nowhere in a plan. */
const wrong = fc.oneof(
  fc.constantFrom<unknown>(null, true, [], {}, [[]], -1e9, 1e300, 0.123, 'x y', '', undefined),
  fc.constantFrom<unknown>({ id: 'p1' }, { a: 'a', b: 'b' }, [1, 2, 3], { took: 1 }, { diameterMm: 'wide' }),
);

/** Places where some of the values above may stand: words, and keys that may be left out. */
const MAY_STAND = new Set(['name', 'note']);
const MAY_GO = new Set([
  ...[
    'note',
    'pairs',
    'steps',
    'turnDeg',
    'settings',
    'edge',
    'acceptance',
    'related',
    'consistency',
    'revertPerMonth',
    'mingle',
  ],
  ...['zipLengthMm', 'healingDays', 'stingMm', 'deadShare', 'rimFactor', 'roughness', 'polypMm'],
]);

describe('broken plans', () => {
  it('are refused wherever one value is wrong', () => {
    fc.assert(
      fc.property(fc.constantFrom(...PATHS), wrong, (path, value) => {
        const refused = isRefusedInWords(checkPlan(replaced(WHOLE, path, value)));
        const last = path.at(-1);
        const isExcused =
          typeof last === 'number' || // an item of a list may go, and some lists may be empty
          (typeof value === 'string' && MAY_STAND.has(String(last))) ||
          (value === undefined && MAY_GO.has(String(last))) ||
          (typeof value === 'number' && value >= 0 && value < 1) ||
          (Array.isArray(value) &&
            value.length === 0 &&
            (last === 'pairs' || last === 'pieces' || last === 'steps')) ||
          (typeof value === 'object' &&
            value !== null &&
            Object.keys(value).length === 0 &&
            last === 'settings');
        return refused || isExcused;
      }),
      { numRuns: 5000 },
    );
  });

  it('never throw however the text is cut, doubled or garbled', () => {
    const garbled = fc
      .tuple(
        fc.constantFrom(...TEXTS),
        fc.nat(100_000),
        fc.nat(60),
        fc.string({ unit: 'binary', maxLength: 12 }),
      )
      .map(([text, at, drop, insert]) => {
        const from = at % text.length;
        return text.slice(0, from) + insert + text.slice(from + drop);
      });
    let refused = 0;
    fc.assert(
      fc.property(garbled, (text) => {
        if (isRefusedInWords(openPlan(text))) refused += 1;
      }),
      { numRuns: 3000 },
    );
    expect(refused).toBeGreaterThan(2500);
  });

  it('never throw on any JSON, nor on any text', () => {
    fc.assert(
      fc.property(fc.json(), (text) => isRefusedInWords(openPlan(text))),
      { numRuns: 2000 },
    );
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => isRefusedInWords(openPlan(text))));
    const nested = '['.repeat(200_000);
    expect(isRefusedInWords(openPlan(nested))).toBe(true);
    expect(isRefusedInWords(openPlan(nested + ']'.repeat(200_000)))).toBe(true);
    expect(isRefusedInWords(openPlan(' '.repeat(20_000_001)))).toBe(true);
  });
});
