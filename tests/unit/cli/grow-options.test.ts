import { describe, expect, it } from 'vitest';
import { growOptions } from '../../../src/cli/grow-options';
import { Refused } from '../../../src/cli/words';

describe('what was asked of npm run grow', () => {
  it('is the last month of the seed of the file at 0.25 mm, unless more is said', () => {
    expect(growOptions(['plan.json'])).toEqual({
      planPath: 'plan.json',
      months: null,
      seeds: null,
      every: null,
      cellMm: 0.25,
      json: false,
      picturesPath: null,
      fresh: null,
    });
  });

  it('counts seeds as the words 1 to N, or takes the word', () => {
    expect(growOptions(['plan.json', '--seeds', '3']).seeds).toEqual(['1', '2', '3']);
    expect(growOptions(['--seed', 'tide', 'plan.json']).seeds).toEqual(['tide']);
  });

  it('reads the rest', () => {
    const words = ['p', '--months', '36', '--every=2', '--cell', '0.5', '--json', '--pictures', 'out'];
    expect(growOptions(words)).toMatchObject({
      months: 36,
      every: 2,
      cellMm: 0.5,
      json: true,
      picturesPath: 'out',
    });
  });

  it.each<[string, string[], RegExp]>([
    ['no plan', [], /^Name one plan file; 0 were named\. Usage/u],
    ['two plans', ['a', 'b'], /^Name one plan file; 2 were named\. Usage/u],
    ['an unknown option', ['p', '--fast'], /^Unknown option '--fast'\. Usage/u],
    ['an option without its value', ['p', '--seeds'], /^Option '--seeds.* Usage/u],
    ['a value for a switch', ['p', '--json=yes'], /^Option '--json' does not take an argument\. Usage/u],
    ['no months', ['p', '--months', '0'], /^--months must be a whole number from 1 to 36, but it is '0'\.$/u],
    ['half a month', ['p', '--months', '1.5'], /^--months must be a whole number/u],
    ['a month with a sign', ['p', '--months=-3'], /^--months must be a whole number/u],
    ['too many months', ['p', '--months', '37'], /^--months must be a whole number/u],
    ['no number of seeds', ['p', '--seeds', 'many'], /^--seeds must be a whole number from 1 to 10000/u],
    ['a seed and seeds', ['p', '--seeds', '2', '--seed', 'x'], /^--seed names one seed and --seeds counts/u],
    ['an empty seed', ['p', '--seed', ''], /^--seed must be a word of 1 to 100 letters\.$/u],
    ['a step of nothing', ['p', '--every', '0'], /^--every must be a whole number/u],
    ['a cell too small', ['p', '--cell', '0.01'], /^--cell must be a number of mm from 0\.1 to 1/u],
    ['a cell in words', ['p', '--cell', '1.2.3'], /^--cell must be a number/u],
    ['pictures nowhere', ['p', '--pictures', ''], /^--pictures needs the name of a folder\. Usage/u],
  ])('refuses %s in a sentence', (_, words, sentence) => {
    expect(() => growOptions(words)).toThrow(Refused);
    expect(() => growOptions(words)).toThrow(sentence);
  });

  it('takes futures of one past: a seed, a day and how many', () => {
    const asked = growOptions(['plan.json', '--seed', 'w', '--fresh-from', '91', '--seeds', '3']);
    expect(asked.seeds).toEqual(['w']);
    expect(asked.fresh).toEqual({ fromDay: 91, words: ['1', '2', '3'] });
    expect(growOptions(['plan.json', '--fresh-from', '91']).fresh).toEqual({ fromDay: 91, words: ['1'] });
    expect(() => growOptions(['plan.json', '--fresh-from', 'x'])).toThrow(/whole number from 1 to 1095/u);
  });
});
