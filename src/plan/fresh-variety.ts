/**
 * A variety to start from: an invented name and a colour well apart from those in use.
 * The colours keep CIEDE2000 of at least 10 from each other, also in simulated colour-blind sight (tested).
 */
import { DEFAULTS } from '../model/defaults';
import { colourDistance } from './colour-distance';
import type { Variety } from './plan';

const KINDS: readonly { readonly name: string; readonly colour: string }[] = [
  { name: 'Fern', colour: '#2f8a5b' },
  { name: 'Garnet', colour: '#961f3a' },
  { name: 'Amber', colour: '#dd8a2e' },
  { name: 'Slate', colour: '#46608a' },
  { name: 'Heather', colour: '#b48ad2' },
  { name: 'Umber', colour: '#45200f' },
  { name: 'Lichen', colour: '#d5e4c0' },
  { name: 'Sloe', colour: '#231e52' },
];

const LETTERS = 'abcdefghijklmnopqrstuvwxyz'.split('');

function farthest(colours: readonly string[]): (typeof KINDS)[number] {
  let best = KINDS[0];
  let bestApart = -1;
  for (const kind of KINDS) {
    const apart = Math.min(...colours.map((colour) => colourDistance(colour, kind.colour)));
    if (apart > bestApart) [best, bestApart] = [kind, apart];
  }
  return best;
}

/** A colour well apart from these as long as there are fewer than eight. */
export function freshColour(colours: readonly string[]): string {
  return farthest(colours).colour;
}

export function freshVariety(others: readonly Variety[]): Variety {
  const ids = new Set(others.map((variety) => variety.id));
  const names = new Set(others.map((variety) => variety.name));
  const id = LETTERS.find((letter) => !ids.has(letter)) ?? `v${others.length + 1}`;
  const best = farthest(others.map(({ colour }) => colour));
  const unused = KINDS.find((kind) => !names.has(kind.name));
  const name = names.has(best.name) ? (unused?.name ?? `Variety ${id}`) : best.name;
  return {
    id,
    name,
    colour: best.colour,
    rimMmPerMonth: DEFAULTS.rimMmPerMonth.value,
    aggression: DEFAULTS.aggression.value,
  };
}
