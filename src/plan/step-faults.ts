/** Why the steps of a plan cannot be: what the schema cannot say. */
import { crossMoreThan } from '../units/faces';
import { repeats } from './ids';
import { placeInFile } from './pair-faults';
import { pieceRefusals } from './piece-faults';
import { MAX_FACES, type Plan, type Refusal, type Step } from './plan';
import { faceName, facesOfRecut, pieceNames, piecesEver } from './steps';

/** Points of the lines of one recut. */
const MOST_CUT_POINTS = 4000;

const WORDS: Readonly<Record<Step['kind'], string>> = {
  trim: 'trim',
  recut: 'recut',
  move: 'move',
  lift: 'lift',
  add: 'addition',
  isolate: 'isolation',
  scrape: 'scraping',
};

/** 'the trim of day 120'. */
export function stepName(step: Step): string {
  return `the ${WORDS[step.kind]} of day ${step.day}`;
}

export function stepRefusals(plan: Plan): Refusal[] {
  if (plan.steps.length === 0) return [];
  const tooMany = tooManyFaces(plan);
  if (tooMany.length > 0) return tooMany;
  const names = new Set(pieceNames(plan));
  return [...repeated(plan), ...plan.steps.flatMap((step, k) => refusalsOf(plan, step, k, names))];
}

function refusalsOf(plan: Plan, step: Step, index: number, names: ReadonlySet<string>): Refusal[] {
  const where = placeInFile('steps', index, step.id);
  switch (step.kind) {
    case 'add':
      return pieceRefusals(plan, step.piece, `${where}.piece`);
    case 'recut':
      return [
        ...step.then.flatMap(({ piece }) => unknownPiece(step, where, piece, names)),
        ...facesOnly(plan, step, where),
      ];
    case 'trim':
      return step.piece === undefined ? [] : unknownPiece(step, where, step.piece, names);
    case 'move':
    case 'lift':
      return unknownPiece(step, where, step.piece, names);
    default:
      return [];
  }
}

function unknownPiece(step: Step, where: string, piece: string, names: ReadonlySet<string>): Refusal[] {
  if (names.has(piece)) return [];
  const some = [...names].slice(0, 12).join(', ');
  return [
    {
      where,
      found: `the piece ${piece}, which is not there`,
      allowed: names.size > 12 ? `one of ${some} and ${names.size - 12} more` : `one of ${some}`,
      cure: `In ${stepName(step)} the piece ${piece} is not there: choose another piece, or remove the step`,
    },
  ];
}

/** A recut places its own faces, each once. */
function facesOnly(plan: Plan, step: Step & { kind: 'recut' }, where: string): Refusal[] {
  const seen = new Set<string>();
  const own = new Set(facesOfRecut(plan.tile, step).map((_, k) => faceName(step, k)));
  return step.then.flatMap(({ piece }) => {
    const isOwn = own.has(piece);
    if (isOwn && !seen.has(piece)) {
      seen.add(piece);
      return [];
    }
    return [
      {
        where,
        found: isOwn ? `the piece ${piece} placed twice` : `the piece ${piece} of another cut`,
        allowed: `each of ${step.id}.1, ${step.id}.2 … at most once`,
        cure: `In ${stepName(step)} the piece ${piece} ${isOwn ? 'is placed twice: leave one of the two' : 'is not of this cut: move it with a step of its own'}`,
      },
    ];
  });
}

function repeated(plan: Plan): Refusal[] {
  const stepIds = repeats(plan.steps).map(({ thing: step, index, first }) => ({
    where: placeInFile('steps', index, step.id),
    found: `the id ${step.id} again, as in steps[${first}]`,
    allowed: 'each id once',
    cure: `Two steps, ${stepName(plan.steps[first])} and ${stepName(step)}, have the same id ${step.id} in the file: give one of them another`,
  }));
  const onTile = new Set(plan.pieces.map(({ id }) => id));
  const added = plan.steps.flatMap((step, index) => {
    if (step.kind !== 'add') return [];
    const { id } = step.piece;
    if (!onTile.has(id)) {
      onTile.add(id);
      return [];
    }
    return [
      {
        where: `${placeInFile('steps', index, step.id)}.piece`,
        found: `the id ${id} again`,
        allowed: 'each id once',
        cure: `The piece that comes with ${stepName(step)} has the id ${id} of another piece: give it one of its own`,
      },
    ];
  });
  const faces = new Set(pieceNames(plan).slice(piecesEver(plan).length));
  const taken = piecesEver(plan).filter(({ id }) => faces.has(id));
  const clashes = taken.map(({ id }) => ({
    where: 'pieces',
    found: `the id ${id}, which is that of a part of a recut`,
    allowed: 'an id that no recut gives',
    cure: `The piece ${id} is named like a part of a recut: give it another id`,
  }));
  return [...stepIds, ...added, ...clashes];
}

function tooManyFaces(plan: Plan): Refusal[] {
  let sum = 0;
  return plan.steps.flatMap((step, index) => {
    if (step.kind !== 'recut') return [];
    const points = step.lines.reduce((count, line) => count + line.length, 0);
    if (points > MOST_CUT_POINTS) return [tooManyPoints(step, index, points)];
    // as many crossings make as many faces, and to find those of a scribble would take minutes
    sum += crossMoreThan(step.lines, MAX_FACES) ? MAX_FACES + 1 : facesOfRecut(plan.tile, step).length;
    if (sum <= MAX_FACES) return [];
    return [
      {
        where: placeInFile('steps', index, step.id),
        found: `more than ${MAX_FACES} parts in all`,
        allowed: `at most ${MAX_FACES}`,
        cure: `The recuts make more than ${MAX_FACES} parts: cut ${stepName(step)} coarser`,
      },
    ];
  });
}

function tooManyPoints(step: Step, index: number, points: number): Refusal {
  return {
    where: placeInFile('steps', index, step.id),
    found: `cut lines of ${points} points in all`,
    allowed: `at most ${MOST_CUT_POINTS}`,
    cure: `The lines of ${stepName(step)} have more corners than any saw can follow: draw them with fewer`,
  };
}
