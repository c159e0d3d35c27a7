/**
 * Every change that a person can make to a plan: a pure function that gives the new plan and what Undo calls it.
 * The new plan shares all that did not change; where nothing changes it is the very same plan.
 * Edits keep lengths to 0.001 mm and stay inside the ranges of plan/plan.ts; overlaps are for plan/refuse.ts.
 */
import { freshVariety } from './fresh-variety';
import { highestNumber } from './ids';
import { varietiesOf } from './outline';
import { MAX_PIECES, MAX_VARIETIES, pairOf } from './plan';
import type { Pair, Piece, Plan, Settings, Survival, Tile, Variety, Xy } from './plan';
import { halfTurns, rounded } from './rounding';

export interface Edit {
  readonly plan: Plan;
  /** What Undo says it takes back: 'Move piece p3'. */
  readonly words: string;
}

const FARTHEST_MM = 1000;
const LEAST_DISC_MM = 0.5;
const LARGEST_DISC_MM = 300;

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

function spot(xMm: number, yMm: number): Xy {
  return [rounded(clamp(xMm, -FARTHEST_MM, FARTHEST_MM)), rounded(clamp(yMm, -FARTHEST_MM, FARTHEST_MM))];
}

function naming(verb: string, ids: readonly string[]): string {
  return ids.length === 1 ? `${verb} piece ${ids[0]}` : `${verb} ${ids.length} pieces`;
}

/** The plan with the named pieces changed, or the same plan if none of them is there. */
function withPieces(plan: Plan, ids: readonly string[], change: (piece: Piece) => Piece): Plan {
  const chosen = new Set(ids);
  if (!plan.pieces.some((piece) => chosen.has(piece.id))) return plan;
  return { ...plan, pieces: plan.pieces.map((piece) => (chosen.has(piece.id) ? change(piece) : piece)) };
}

/** An object without the keys whose value is undefined: a patch says 'back to the default' so. */
export function pruned<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, entry]) => entry !== undefined)) as T;
}

/** 'p' and one more than the highest number in use, so that a new piece is never taken for a deleted one. */
export function nextPieceId(plan: Plan): string {
  return freshPieceIds(plan, 1)[0];
}

function freshPieceIds(plan: Plan, count: number): string[] {
  const highest = highestNumber('p', plan.pieces);
  return Array.from({ length: count }, (_, k) => `p${highest + 1 + k}`);
}

/** Adds the piece, or puts it in the place of the one with its id. */
export function setPiece(plan: Plan, piece: Piece): Edit {
  const words = `Set piece ${piece.id}`;
  if (plan.pieces.some((other) => other.id === piece.id)) {
    return { plan: withPieces(plan, [piece.id], () => piece), words };
  }
  if (plan.pieces.length >= MAX_PIECES) return { plan, words };
  return { plan: { ...plan, pieces: [...plan.pieces, piece] }, words };
}

export function movePieces(plan: Plan, ids: readonly string[], dxMm: number, dyMm: number): Edit {
  return {
    plan: withPieces(plan, ids, (piece) => ({ ...piece, at: spot(piece.at[0] + dxMm, piece.at[1] + dyMm) })),
    words: naming('Move', ids),
  };
}

export function placePiece(plan: Plan, id: string, at: Xy): Edit {
  return {
    plan: withPieces(plan, [id], (piece) => ({ ...piece, at: spot(at[0], at[1]) })),
    words: naming('Move', [id]),
  };
}

/** Each piece turns about its own `at`; the turn is kept in (-180, 180]. */
export function turnPieces(plan: Plan, ids: readonly string[], deltaDeg: number): Edit {
  return {
    plan: withPieces(plan, ids, (piece) => ({ ...piece, turnDeg: halfTurns(piece.turnDeg + deltaDeg) })),
    words: naming('Turn', ids),
  };
}

/** Factors along the piece's own x and y; a disc keeps round and takes their geometric mean. */
export function resizePiece(plan: Plan, id: string, factorX: number, factorY: number): Edit {
  return {
    plan: withPieces(plan, [id], (piece) => resized(piece, factorX, factorY)),
    words: naming('Resize', [id]),
  };
}

function resized(piece: Piece, factorX: number, factorY: number): Piece {
  if ('disc' in piece) {
    const diameterMm = piece.disc.diameterMm * Math.sqrt(Math.max(0, factorX) * Math.max(0, factorY));
    return { ...piece, disc: { diameterMm: rounded(clamp(diameterMm, LEAST_DISC_MM, LARGEST_DISC_MM)) } };
  }
  // a graft is what it is: only stock can be cut larger or smaller
  if ('patches' in piece) return piece;
  const byX = fittingFactor(
    piece.outline.map((xy) => xy[0]),
    factorX,
  );
  const byY = fittingFactor(
    piece.outline.map((xy) => xy[1]),
    factorY,
  );
  return { ...piece, outline: piece.outline.map(([x, y]) => spot(x * byX, y * byY)) };
}

/** The factor nearest to the asked one that keeps a side at least as wide as the least disc and within reach. */
function fittingFactor(along: readonly number[], factor: number): number {
  const least = Math.min(...along);
  const most = Math.max(...along);
  if (most === least) return 1;
  const farthest = Math.max(Math.abs(least), Math.abs(most));
  const lower = Math.min(1, LEAST_DISC_MM / (most - least));
  return clamp(factor, lower, Math.max(lower, FARTHEST_MM / farthest));
}

/** The copies stand at the end of the plan's pieces, in the order of their models. */
export function duplicatePieces(plan: Plan, ids: readonly string[], dxMm: number, dyMm: number): Edit {
  const chosen = new Set(ids);
  const models = plan.pieces
    .filter((piece) => chosen.has(piece.id))
    .slice(0, MAX_PIECES - plan.pieces.length);
  const words = naming('Duplicate', ids);
  if (models.length === 0) return { plan, words };
  const fresh = freshPieceIds(plan, models.length);
  const copies = models.map((piece, index) => ({
    ...piece,
    id: fresh[index],
    at: spot(piece.at[0] + dxMm, piece.at[1] + dyMm),
  }));
  return { plan: { ...plan, pieces: [...plan.pieces, ...copies] }, words };
}

export function deletePieces(plan: Plan, ids: readonly string[]): Edit {
  const chosen = new Set(ids);
  const pieces = plan.pieces.filter((piece) => !chosen.has(piece.id));
  const words = naming('Delete', ids);
  return { plan: pieces.length === plan.pieces.length ? plan : { ...plan, pieces }, words };
}

export function changePieces(
  plan: Plan,
  ids: readonly string[],
  patch: { readonly variety?: string; readonly edge?: 'cut' | 'rim' },
): Edit {
  const verb = patch.variety === undefined ? 'Change the edge of' : 'Change the variety of';
  return { plan: withPieces(plan, ids, (piece) => ({ ...piece, ...patch })), words: naming(verb, ids) };
}

/**
 * A tile to begin with. The varieties stay; what was said of their pairs and of growth goes, for a preset's invented
 * tries would look like the grower's own.
 */
export function emptyTile(plan: Plan): Edit {
  const blank = {
    name: 'My tile',
    note: 'Set pieces, then play the months.',
    pairs: [],
    pieces: [],
    settings: undefined,
  };
  return { plan: pruned({ ...plan, ...blank }), words: 'Empty the tile' };
}

export function addVariety(plan: Plan): Edit {
  if (plan.varieties.length >= MAX_VARIETIES) return { plan, words: 'Add a variety' };
  const variety = freshVariety(plan.varieties);
  return { plan: { ...plan, varieties: [...plan.varieties, variety] }, words: `Add ${variety.name}` };
}

export function changeVariety(plan: Plan, id: string, patch: Partial<Omit<Variety, 'id'>>): Edit {
  const old = plan.varieties.find((variety) => variety.id === id);
  if (!old) return { plan, words: `Change variety ${id}` };
  const varieties = plan.varieties.map((variety) => (variety === old ? { ...old, ...patch } : variety));
  return { plan: { ...plan, varieties }, words: varietyWords(old, patch) };
}

function varietyWords(old: Variety, patch: Partial<Omit<Variety, 'id'>>): string {
  if (patch.name !== undefined) return `Rename ${old.name} to ${patch.name}`;
  if (patch.colour !== undefined) return `Change the colour of ${old.name}`;
  if (patch.rimMmPerMonth !== undefined) return `Change the rim rate of ${old.name}`;
  return `Change the aggression of ${old.name}`;
}

/** Takes its pieces and pairs along. The last variety stays. */
export function removeVariety(plan: Plan, id: string): Edit {
  const old = plan.varieties.find((variety) => variety.id === id);
  const words = `Remove ${old?.name ?? id}`;
  if (!old || plan.varieties.length === 1) return { plan, words };
  return {
    plan: {
      ...plan,
      varieties: plan.varieties.filter((variety) => variety !== old),
      pairs: plan.pairs.filter((pair) => pair.a !== id && pair.b !== id),
      pieces: plan.pieces.filter((piece) => !varietiesOf(piece).includes(id)),
      steps: plan.steps.filter((step) => step.kind !== 'add' || !varietiesOf(step.piece).includes(id)),
    },
    words,
  };
}

/** Finds the pair in either order or adds it. A key set to undefined goes back to its default. */
export function changePair(plan: Plan, a: string, b: string, patch: Partial<Omit<Pair, 'a' | 'b'>>): Edit {
  const nameOf = (id: string) => plan.varieties.find((variety) => variety.id === id)?.name;
  const [nameA, nameB] = [nameOf(a), nameOf(b)];
  const words = `Change ${nameA ?? a} with ${nameB ?? b}`;
  if (a === b || nameA === undefined || nameB === undefined) return { plan, words };
  const old = pairOf(plan, a, b);
  // Tries and kinship say the same thing: the newer word replaces the older.
  const instead =
    patch.acceptance !== undefined
      ? { related: undefined }
      : patch.related !== undefined
        ? { acceptance: undefined }
        : {};
  const pair = pruned({ ...(old ?? { a, b }), ...patch, ...instead });
  const pairs = old ? plan.pairs.map((other) => (other === old ? pair : other)) : [...plan.pairs, pair];
  return { plan: { ...plan, pairs }, words };
}

export function changeTile(plan: Plan, patch: Partial<Tile>): Edit {
  return { plan: { ...plan, tile: { ...plan.tile, ...patch } }, words: 'Change the tile' };
}

export function changeMonths(plan: Plan, months: number): Edit {
  return { plan: { ...plan, months }, words: `Grow for ${months} months` };
}

/** A key set to undefined goes back to the engine's default. */
export function changeSettings(
  plan: Plan,
  patch: { readonly [K in keyof Settings]: Settings[K] | undefined },
): Edit {
  const changed = pruned({ ...plan.settings, ...patch });
  const settings = Object.keys(changed).length === 0 ? undefined : changed;
  return { plan: pruned({ ...plan, settings }), words: 'Change the settings of growth' };
}

export function changeSurvival(plan: Plan, survival: Survival): Edit {
  return { plan: { ...plan, survival }, words: 'Change the survival of cuttings' };
}

/** An empty note is no note. */
export function changeNote(plan: Plan, note: string): Edit {
  return { plan: pruned({ ...plan, note: note === '' ? undefined : note }), words: 'Change the note' };
}

export function renamePlan(plan: Plan, name: string): Edit {
  return { plan: { ...plan, name }, words: `Rename the plan to ${name}` };
}
