/**
 * The seam-reading test: tiles drawn by a word, three varieties each, their seams to be called as the bench shows them.
 * Tiles go from clear to hard: walls and merges of many months first, look-alikes and the first weeks last. Colours and
 * the side of the light change from tile to tile, so that shape is learned and not hue. Which pairs take and which
 * varieties are strong is dealt over a set, so that no set is nearly all of one kind; how many of a tile is left open.
 * What is asked of the engine makes each kind likely; what a seam is, is read off the grown tile (seam-marks.ts).
 */
import { MODEL_VERSION } from '../model/defaults';
import { draw, keysOf } from '../model/noise';
import type { Pair, PlainPiece, Plan, Variety, Xy } from '../plan/plan';
import type { SeamName } from './repetition';

export interface TestTile {
  readonly plan: Plan;
  readonly seed: string;
  /** The month at which its seams are called. */
  readonly month: number;
  readonly lightDeg: number;
}

/** Which tiles a word stands for: how sets are drawn, and the model that grows them. */
export const TILES_OF = `2.${MODEL_VERSION}`;

/** How each seam ends is read at the plan's last month. */
export const END_MONTH = 12;

const SIZE_MM = 50;
/** Tissue colours, invented. */
const COLOURS = [
  ['Fern', '#2f8a5b'],
  ['Garnet', '#961f3a'],
  ['Amber', '#dd8a2e'],
  ['Slate', '#46608a'],
  ['Heather', '#b48ad2'],
  ['Lichen', '#a9c78f'],
  ['Bramble', '#5f3f6e'],
  ['Straw', '#d9c26a'],
  ['Moss', '#66803a'],
  ['Brick', '#b5573c'],
] as const;

interface Level {
  /** Months from, to. */
  readonly from: number;
  readonly to: number;
  /** Chances: that a rejected seam stays bare, that a wall looks fused at first. */
  readonly deadShare: number;
  readonly veiledShare: number;
  /** The longer, the later the first verdicts fall. */
  readonly zipLengthMm: number;
}

const CLEAR: Level = { from: 8, to: 10, deadShare: 0.25, veiledShare: 0, zipLengthMm: 12 };
const HARDER: Level = { from: 5, to: 7, deadShare: 0.15, veiledShare: 0.15, zipLengthMm: 14 };
const HARD: Level = { from: 2, to: 5, deadShare: 0.15, veiledShare: 0.15, zipLengthMm: 18 };
/**
 * Its first pair walls up under a veil, so that every set has a look-alike, and the other two take: what has fused and what
 * only looks it lie side by side. Most veils last past month 5.
 */
const LOOK_ALIKE: Level = { from: 4, to: 5, deadShare: 0, veiledShare: 1, zipLengthMm: 12 };
/** One entry a tile. The last four come in an order of each set's own: where the look-alike is, is not to be learned. */
const FIRST: readonly Level[] = [CLEAR, CLEAR];
const LATER: readonly Level[] = [HARDER, LOOK_ALIKE, HARD, HARD];
export const TILES = FIRST.length + LATER.length;

/** Varieties of a tile, and pairs of them. */
const OF_A_TILE = 3;
/** So many pairs of the clear tiles take, and of the others but the look-alike's: a third, to see fused seams often. */
const TAKES = { clear: 2, later: 3 } as const;
/** So many varieties of each lot are strong. */
const STRONG = { clear: 1, later: 2 } as const;

/** A tile to be called by the word of its set and its place in it, and which of its seams; null for all. */
export interface RoundName {
  readonly set: string;
  readonly tile: number;
  readonly seams: readonly number[] | null;
}

/** A whole test. */
export function roundsOf(set: string): RoundName[] {
  return Array.from({ length: TILES }, (_, tile) => ({ set, tile, seams: null }));
}

/** The tiles of seams that were missed, each once, with those seams alone. */
export function roundsAgain(missed: readonly SeamName[]): RoundName[] {
  const rounds: RoundName[] = [];
  for (const { set, tile, seam } of missed) {
    const at = rounds.findIndex((round) => round.set === set && round.tile === tile);
    if (at >= 0) rounds[at] = { ...rounds[at], seams: [...(rounds[at].seams ?? []), seam] };
    else if (tile < TILES) rounds.push({ set, tile, seams: [seam] });
  }
  return rounds;
}

/** The same word gives the same tiles, here and for anyone else. */
export function testTiles(word: string): TestTile[] {
  const key = keysOf(`seam test ${word}`).kind;
  const later = LATER.map((level, at) => ({ level, place: draw(key, TILES, at) }))
    .sort((one, other) => one.place - other.place)
    .map(({ level }) => level);
  const levels = [...FIRST, ...later];
  const lots = [
    { from: 0, to: FIRST.length, takes: TAKES.clear, strong: STRONG.clear },
    { from: FIRST.length, to: TILES, takes: TAKES.later, strong: STRONG.later },
  ];
  const takes = new Set<number>();
  const strong = new Set<number>();
  for (const lot of lots) {
    const places = Array.from(
      { length: (lot.to - lot.from) * OF_A_TILE },
      (_, k) => lot.from * OF_A_TILE + k,
    );
    const isLookAlike = (place: number): boolean => levels[Math.floor(place / OF_A_TILE)] === LOOK_ALIKE;
    const others = places.filter((place) => !isLookAlike(place));
    for (const place of places) if (isLookAlike(place) && place % OF_A_TILE > 0) takes.add(place);
    for (const place of dealt(key, TILES + 1, others, lot.takes)) takes.add(place);
    for (const place of dealt(key, TILES + 2, others, lot.strong)) strong.add(place);
  }
  return levels.map((level, tile) => {
    let drawn = 0;
    const has = (places: ReadonlySet<number>, k: number): boolean => places.has(tile * OF_A_TILE + k);
    return tileOf(word, tile, level, {
      takes: (pair) => has(takes, pair),
      isStrong: (variety) => has(strong, variety),
      chance: () => draw(key, tile, drawn++),
    });
  });
}

/** So many of the places, drawn without putting back. */
function dealt(key: number, site: number, places: readonly number[], count: number): number[] {
  return [...places].sort((one, other) => draw(key, site, one) - draw(key, site, other)).slice(0, count);
}

interface Deal {
  /** Of the tile's pairs, by number. */
  readonly takes: (pair: number) => boolean;
  /** Of its varieties, by number. */
  readonly isStrong: (variety: number) => boolean;
  readonly chance: () => number;
}

function tileOf(word: string, tile: number, level: Level, { takes, isStrong, chance }: Deal): TestTile {
  const between = (least: number, most: number): number => least + (most - least) * chance();
  const colours = [...COLOURS];
  const varieties = ['a', 'b', 'c'].map((id, at): Variety => {
    const [[name, colour]] = colours.splice(Math.floor(chance() * colours.length), 1);
    // far apart, so that most seams between two of them lap, or alike, so that none does
    const aggression = isStrong(at) ? 1 : 0.1;
    return { id, name, colour, rimMmPerMonth: rounded(between(2.6, 3.4)), aggression };
  });
  const [a, b, c] = varieties;
  const pairs = [
    [a, b],
    [b, c],
    [a, c],
  ].map(([one, other], at): Pair => ({
    a: one.id,
    b: other.id,
    acceptance: takes(at) ? 1 : 0,
    mingle: 'veins',
  }));
  const turn = between(0, 2 * Math.PI);
  const pieces = varieties.map(({ id }, k): PlainPiece => {
    const away = between(9.2, 10.4);
    const angle = turn + (k * 2 * Math.PI) / varieties.length;
    const at: Xy = [rounded(away * Math.cos(angle)), rounded(away * Math.sin(angle))];
    return { id: `p${k + 1}`, variety: id, at, turnDeg: 0, disc: { diameterMm: rounded(between(13, 15)) } };
  });
  const { deadShare, veiledShare, zipLengthMm } = level;
  return {
    plan: {
      seambench: 1,
      name: `Seam test ${word}, tile ${tile + 1}`,
      tile: { shape: 'square', sizeMm: SIZE_MM },
      varieties,
      pairs,
      pieces,
      steps: [],
      months: END_MONTH,
      settings: { deadShare, veiledShare, zipLengthMm },
      note: 'A tile of the seam-reading test. The farm and its varieties are invented.',
    },
    seed: `${word} ${tile + 1}`,
    month: Math.round(between(level.from, level.to)),
    // light from above, now more from the left and now from the right
    lightDeg: Math.round(between(200, 340)),
  };
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}
