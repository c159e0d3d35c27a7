/** The tile in words: one sentence of what the month shows, and a fuller text for who cannot see it. */
import { ownOutline, varietiesOf } from '../../plan/outline';
import type { PairReading, Reading } from '../../measure/reading';
import type { Piece, Plan } from '../../plan/plan';
import { pinWords, tookWords } from '../steps/words';

/** Outcomes shorter than this go unmentioned beside longer ones, and so do those that are less of a pair's seam. */
const LEAST_MM = 2;
const LEAST_SHARE = 0.1;

/** After 'have'; 'lapped' names its two sides and 'undecided' is no deed. */
const DONE = { fusedMm: 'fused', ridgeMm: 'built a ridge', deadMm: 'left a dead line' } as const;

const OUTCOME_KEYS = ['fusedMm', 'ridgeMm', 'lappedMm', 'deadMm', 'undecidedMm'] as const;
type OutcomeKey = (typeof OUTCOME_KEYS)[number];

function nameOf(plan: Plan, id: string): string {
  return plan.varieties.find((variety) => variety.id === id)?.name ?? id;
}

function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

/** What a pair's seam has come to, the longest first; at least one. */
function outcomes(pair: PairReading): OutcomeKey[] {
  const [first, ...rest] = [...OUTCOME_KEYS].sort((one, other) => pair[other] - pair[one]);
  return [first, ...rest.filter((key) => pair[key] >= Math.max(LEAST_MM, LEAST_SHARE * pair.lengthMm))];
}

/** Who of a pair laps: the more aggressive one, and of a graft's seam as it came. Null where that is not one of them. */
function overOf({ varieties, pieces }: Plan, { a, b }: PairReading): string | null {
  const said = pieces
    .flatMap((piece) => ('patches' in piece ? (piece.seams ?? []) : []))
    .flatMap(({ over }) => (over === a || over === b ? [over] : []));
  const lead = [a, b].map((id) => varieties.find((variety) => variety.id === id)?.aggression ?? 0);
  const isAlone = pieces.length === 1 && said.length > 0;
  const stronger = isAlone || lead[0] === lead[1] ? [] : [lead[0] > lead[1] ? a : b];
  const all = new Set([...said, ...stronger]);
  return all.size === 1 ? [...all][0] : null;
}

/** 'Fern and Amber have fused along 15 mm and built a ridge along 22 mm' */
function pairWords(plan: Plan, pair: PairReading): string {
  const along = (key: OutcomeKey): string => `along ${Math.round(pair[key])} mm`;
  const found = outcomes(pair);
  const names = `${nameOf(plan, pair.a)} and ${nameOf(plan, pair.b)}`;
  const done = found.flatMap((key) =>
    key in DONE ? [`${DONE[key as keyof typeof DONE]} ${along(key)}`] : [],
  );
  const parts = done.length > 0 ? [`${names} have ${listed(done)}`] : [];
  if (found.includes('lappedMm')) {
    const over = overOf(plan, pair);
    const [first, second] = over === pair.b ? [pair.b, pair.a] : [pair.a, pair.b];
    const [one, other] = [nameOf(plan, first), nameOf(plan, second)];
    const words = over === null ? `${one} or ${other} has lapped the other` : `${one} has lapped ${other}`;
    parts.push(`${words} ${along('lappedMm')}`);
  }
  if (found.includes('undecidedMm'))
    parts.push(`${parts.length > 0 ? 'they' : names} are undecided ${along('undecidedMm')}`);
  return parts.join(', and ');
}

/** Varieties that build a ridge and nothing else on every seam they have. */
function wallers(plan: Plan, pairs: readonly PairReading[]): string[] {
  const isRidge = (pair: PairReading): boolean =>
    outcomes(pair).every((key, at) => key === 'ridgeMm' || (at > 0 && key === 'undecidedMm'));
  return plan.varieties
    .filter(({ id }) => {
      const own = pairs.filter((pair) => pair.a === id || pair.b === id);
      return own.length > 1 && own.every(isRidge);
    })
    .map((variety) => variety.name);
}

/** Pairs that are named before the rest is counted: the sentence stays one that is read. */
const MOST_NAMED = 3;

/** What the month shows, in one sentence, the longest seams first. */
export function sentence(plan: Plan, reading: Reading): string {
  if (plan.pieces.length === 0) return 'The tile is empty: set a piece to begin.';
  const pairs = reading.pairs.filter((pair) => pair.lengthMm >= LEAST_MM);
  if (pairs.length === 0) {
    const isSet = reading.month === 0;
    const grown = isSet ? 'The pieces are set' : `Tissue covers ${Math.round(reading.coverMm2 / 100)} cm²`;
    if (plan.pieces.length === 1) return `${grown}; there is one piece, and no seam.`;
    return `${grown}; ${isSet ? 'cut edges heal before they join' : 'no two varieties touch yet'}.`;
  }
  const walling = wallers(plan, pairs);
  const others = pairs
    .filter((pair) => !walling.includes(nameOf(plan, pair.a)) && !walling.includes(nameOf(plan, pair.b)))
    .sort((one, other) => other.lengthMm - one.lengthMm);
  const parts = others.slice(0, MOST_NAMED).map((pair) => pairWords(plan, pair));
  if (walling.length > 0)
    parts.push(`${listed(walling)} ${walling.length > 1 ? 'build' : 'builds'} a ridge at every seam`);
  const more = others.length - MOST_NAMED;
  if (more > 0) parts.push(`${more} more ${more > 1 ? 'pairs have' : 'pair has'} met`);
  return `${parts.join('; ')}.`;
}

/**
 * The whole tile, a sentence a line: what it is, what the month shows, each pair, where each piece was set. What the
 * seams are is left out where the learner is to say it.
 */
export function describe(plan: Plan, reading: Reading | null, tellsKinds = true): string[] {
  const { tile, pieces } = plan;
  const shape = tile.shape === 'disc' ? 'round tile' : 'square tile';
  const lines = [
    `A ${shape} of ${tile.sizeMm} mm with ${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'}.`,
  ];
  if (reading && !tellsKinds) {
    lines.push(`Month ${reading.month}: what the seams are is not told yet.`);
    for (const pair of reading.pairs)
      lines.push(
        `${nameOf(plan, pair.a)} and ${nameOf(plan, pair.b)} meet along ${Math.round(pair.lengthMm)} mm.`,
      );
  } else if (reading) {
    lines.push(`Month ${reading.month}: ${sentence(plan, reading)}`);
    for (const pair of reading.pairs) {
      const parts = OUTCOME_KEYS.filter((key) => pair[key] >= 0.5).map(
        (key) => `${key.slice(0, -2)} ${Math.round(pair[key])} mm`,
      );
      if (parts.length > 0)
        lines.push(`${nameOf(plan, pair.a)} and ${nameOf(plan, pair.b)}: ${listed(parts)}.`);
    }
  }
  lines.push(...stepLines(plan, reading));
  for (const piece of pieces.slice(0, 12)) lines.push(`${pieceWords(plan, piece)}.`);
  if (pieces.length > 12) lines.push(`And ${pieces.length - 12} more pieces.`);
  return lines;
}

/** What steps have done by the month, and how many are to come. */
function stepLines(plan: Plan, reading: Reading | null): string[] {
  const done = new Map(reading?.steps.map((one) => [one.id, one]));
  const lines = plan.steps.flatMap((step) => {
    const one = done.get(step.id);
    if (!one || step.on === false) return [];
    const took = tookWords(plan, one);
    return [`${pinWords(plan, step)}${took === null ? '.' : `, took ${took}`}`];
  });
  const toCome = plan.steps.filter((step) => step.on !== false && !done.has(step.id)).length;
  if (toCome > 0) lines.push(`${toCome} ${toCome === 1 ? 'step is' : 'steps are'} to come.`);
  return lines;
}

/** 'Piece p1 of Fern, disc of 12 mm, 4.0 mm left of and 10.0 mm above the middle' */
export function pieceWords(plan: Plan, piece: Piece): string {
  return `Piece ${piece.id} of ${varietiesOf(piece)
    .map((id) => nameOf(plan, id))
    .join(' and ')}, ${standing(piece)}`;
}

/** Size, place and turn of a piece. */
export function standing(piece: Piece): string {
  const size = 'disc' in piece ? `disc of ${piece.disc.diameterMm} mm` : `${extent(piece)} mm`;
  const [x, y] = piece.at;
  const across = Math.abs(x) < 0.5 ? '' : `${Math.abs(x).toFixed(1)} mm ${x < 0 ? 'left of' : 'right of'}`;
  const along = Math.abs(y) < 0.5 ? '' : `${Math.abs(y).toFixed(1)} mm ${y < 0 ? 'above' : 'below'}`;
  const place =
    across || along ? `${[across, along].filter(Boolean).join(' and ')} the middle` : 'in the middle';
  const turn = 'disc' in piece || piece.turnDeg === 0 ? '' : `, turned ${Math.round(piece.turnDeg)} degrees`;
  return `${size}, ${place}${turn}`;
}

function extent(piece: Piece): string {
  const outline = ownOutline(piece);
  const spans = [0, 1].map((axis) => {
    const along = outline.map((corner) => corner[axis]);
    return Math.max(...along) - Math.min(...along);
  });
  return spans.map((span) => span.toFixed(1)).join(' by ');
}
