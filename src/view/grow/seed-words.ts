/** The next seed word when somebody asks for other luck: plain words in order, so that it can be said aloud. */
import { MAX_SEED_LETTERS } from '../../plan/plan';

const WORDS = [
  'eleven',
  'twelve',
  'kelp',
  'lagoon',
  'moon',
  'north',
  'opal',
  'pebble',
  'reef',
  'sand',
  'tide',
];

export function nextSeed(seed: string): string {
  const next = following(seed);
  return next.length > MAX_SEED_LETTERS ? WORDS[0] : next;
}

function following(seed: string): string {
  const at = WORDS.indexOf(seed);
  if (at >= 0 && at + 1 < WORDS.length) return WORDS[at + 1];
  const numbered = /^(.*?)(\d+)$/u.exec(seed);
  if (numbered) return `${numbered[1]}${Number(numbered[2]) + 1}`;
  return `${seed} 2`;
}
