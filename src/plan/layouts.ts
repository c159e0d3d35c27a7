/**
 * Ways to set pieces, from the size of the cuts and the gap between them: a start that is then moved by hand.
 * All are centred on the tile; what would not lie wholly on it is left out.
 */
import { outlineOf } from './outline';
import type { PlainPiece, Tile, Xy } from './plan';

export interface LayoutAsk {
  readonly tile: Tile;
  /** Variety ids, dealt out in turn. */
  readonly varieties: readonly string[];
  /** Side of a square cut, width of a strip or half, diameter of a disc, hexagon across its flats. */
  readonly cutMm: number;
  readonly gapMm: number;
  /** Side of the square that the pieces fill; halves and the ring take what they need of it. */
  readonly spanMm: number;
}

export type LayoutName = 'halves' | 'strips' | 'chequer' | 'ring' | 'hexes' | 'mosaic';

/** A piece to be, before it has its id. */
interface Cut {
  readonly variety: number;
  readonly at: Xy;
  readonly shape: { readonly outline: readonly Xy[] } | { readonly disc: { readonly diameterMm: number } };
}

const LAYOUTS: Readonly<Record<LayoutName, (ask: LayoutAsk) => Cut[]>> = {
  halves,
  strips,
  chequer,
  ring,
  hexes,
  mosaic,
};

export function layOut(name: LayoutName, ask: LayoutAsk): readonly PlainPiece[] {
  const pieces: PlainPiece[] = [];
  for (const cut of LAYOUTS[name](ask)) {
    const variety = ask.varieties[cut.variety % ask.varieties.length];
    const piece = { id: `p${pieces.length + 1}`, variety, at: cut.at, turnDeg: 0, ...cut.shape };
    if (isOnTile(piece, ask.tile)) pieces.push(piece);
  }
  return pieces;
}

function isOnTile(piece: PlainPiece, tile: Tile): boolean {
  const halfMm = tile.sizeMm / 2;
  return outlineOf(piece).every(([x, y]) =>
    tile.shape === 'square' ? Math.abs(x) <= halfMm && Math.abs(y) <= halfMm : Math.hypot(x, y) <= halfMm,
  );
}

function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000 + 0;
}

function spot(x: number, y: number): Xy {
  return [rounded(x), rounded(y)];
}

function rectangle(widthMm: number, heightMm: number): Cut['shape'] {
  const [x, y] = [rounded(widthMm / 2), rounded(heightMm / 2)];
  return { outline: [[-x, -y], [x, -y], [x, y], [-x, y]] }; // prettier-ignore
}

/** How many cuts with their gaps fit the span, and where the middle of each lies. */
function middles({ spanMm, cutMm, gapMm }: LayoutAsk): number[] {
  const pitchMm = cutMm + gapMm;
  const count = Math.max(1, Math.floor((spanMm + gapMm) / pitchMm + 1e-9));
  return Array.from({ length: count }, (_, index) => (index - (count - 1) / 2) * pitchMm);
}

function halves({ cutMm, gapMm }: LayoutAsk): Cut[] {
  const shape = rectangle(cutMm, 2 * cutMm + gapMm);
  return [-1, 1].map((sideways, variety) => ({
    variety,
    at: spot((sideways * (cutMm + gapMm)) / 2, 0),
    shape,
  }));
}

function strips(ask: LayoutAsk): Cut[] {
  const shape = rectangle(ask.cutMm, ask.spanMm);
  return middles(ask).map((x, variety) => ({ variety, at: spot(x, 0), shape }));
}

function squares(ask: LayoutAsk, varietyAt: (column: number, row: number) => number): Cut[] {
  const shape = rectangle(ask.cutMm, ask.cutMm);
  const along = middles(ask);
  return along.flatMap((y, row) =>
    along.map((x, column) => ({ variety: varietyAt(column, row), at: spot(x, y), shape })),
  );
}

function chequer(ask: LayoutAsk): Cut[] {
  return squares(ask, (column, row) => column + row);
}

/** Equal shares in shuffled places: a balanced pack, dealt by a fixed shuffle so that the same ask gives the same set. */
function mosaic(ask: LayoutAsk): Cut[] {
  const side = middles(ask).length;
  const pack = Array.from({ length: side * side }, (_, index) => index);
  let state = 20_231;
  for (let last = pack.length - 1; last > 0; last--) {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    const other = (state >>> 8) % (last + 1);
    [pack[last], pack[other]] = [pack[other], pack[last]];
  }
  return squares(ask, (column, row) => pack[row * side + column]);
}

/** Discs round a circle, one a variety at least, as many as the span takes. */
function ring({ varieties, cutMm, gapMm, spanMm }: LayoutAsk): Cut[] {
  const chordMm = cutMm + gapMm;
  const widestMm = (spanMm - cutMm) / 2;
  const fitting = widestMm > chordMm / 2 ? Math.floor(Math.PI / Math.asin(chordMm / 2 / widestMm) + 1e-9) : 2;
  const rounds = Math.max(1, Math.floor(fitting / varieties.length));
  const count = Math.max(2, rounds * varieties.length);
  const radiusMm = chordMm / 2 / Math.sin(Math.PI / count);
  return Array.from({ length: count }, (_, variety) => {
    const turn = (2 * Math.PI * variety) / count;
    return {
      variety,
      at: spot(radiusMm * Math.sin(turn), -radiusMm * Math.cos(turn)),
      shape: { disc: { diameterMm: cutMm } },
    };
  });
}

/** Rows of hexagons; with three varieties no two of one kind are neighbours. */
function hexes(ask: LayoutAsk): Cut[] {
  const cornerMm = ask.cutMm / Math.sqrt(3);
  const outline = Array.from({ length: 6 }, (_, corner) => {
    const turn = ((2 * corner + 1) * Math.PI) / 6;
    return spot(cornerMm * Math.cos(turn), cornerMm * Math.sin(turn));
  });
  const pitchMm = ask.cutMm + ask.gapMm;
  const rowMm = (pitchMm * Math.sqrt(3)) / 2;
  const rows = Math.max(1, Math.floor((ask.spanMm - 2 * cornerMm) / rowMm + 1 + 1e-9));
  return Array.from({ length: rows }, (_, row) => {
    const y = (row - (rows - 1) / 2) * rowMm;
    const indent = row % 2 === 0 ? 0 : pitchMm / 2;
    return middles(ask)
      .map((x, column) => ({
        variety: column + (row % 2 === 0 ? 0 : 2),
        at: spot(x + indent, y),
        shape: { outline },
      }))
      .filter(({ at }) => at[0] + ask.cutMm / 2 <= ask.spanMm / 2 + 1e-9);
  }).flat();
}
