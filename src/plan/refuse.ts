/**
 * Why a plan of the right shape still cannot be: what the schema cannot say. Place, found and allowed speak of the
 * file; the cure is a sentence for who sees the tile and never the file.
 * Quick enough to judge every move of a drag: boxes are swept from left to right, outlines are worked out once.
 */
import { repeats } from './ids';
import { overlapMm2, pieceBox } from './outline';
import { pairRefusals, placeInFile } from './pair-faults';
import { pieceRefusals } from './piece-faults';
import { capital, pieceName } from './piece-name';
import { stepRefusals } from './step-faults';
import type { Piece, Plan, Refusal } from './plan';

/** Overlap that rounding and a drawn line may cause, mm2. */
const OVERLAP_MM2 = 0.05;
/** Of piles of pieces, so many are told. */
const MOST_OVERLAPS = 100;

export function refuse(plan: Plan): Refusal[] {
  return [
    ...repeatedIds('varieties', plan.varieties, ({ name }) => `the variety ${name}`),
    ...repeatedIds('pieces', plan.pieces, (piece) => pieceName(plan, piece)),
    ...plan.pairs.flatMap((_, index) => pairRefusals(plan, index)),
    ...plan.pieces.flatMap((piece, index) =>
      pieceRefusals(plan, piece, placeInFile('pieces', index, piece.id)),
    ),
    ...overlaps(plan),
    ...stepRefusals(plan),
  ];
}

function repeatedIds<T extends { readonly id: string }>(
  list: string,
  things: readonly T[],
  nameOf: (thing: T) => string,
): Refusal[] {
  return repeats(things).map(({ thing, index, first }) => {
    const both = `${capital(nameOf(things[first]))}, and ${nameOf(thing)}`;
    return {
      where: placeInFile(list, index, thing.id),
      found: `the id ${thing.id} again, as in ${list}[${first}]`,
      allowed: 'each id once',
      cure: `${both}, have the same id ${thing.id} in the file: give one of them another`,
    };
  });
}

function overlaps(plan: Plan): Refusal[] {
  const order = plan.pieces
    .map((piece, index) => ({ piece, index, box: pieceBox(piece) }))
    .sort((a, b) => a.box.minX - b.box.minX || a.index - b.index);
  const refusals: Refusal[] = [];
  let open: typeof order = [];
  for (const now of order) {
    open = open.filter((other) => other.box.maxX > now.box.minX);
    for (const other of open) {
      if (other.box.maxY <= now.box.minY || other.box.minY >= now.box.maxY) continue;
      const commonMm2 = overlapMm2(other.piece, now.piece);
      if (commonMm2 <= OVERLAP_MM2) continue;
      refusals.push(overlapRefusal(plan, now, other, commonMm2));
      if (refusals.length >= MOST_OVERLAPS) return refusals;
    }
    open.push(now);
  }
  return refusals;
}

type Numbered = { readonly piece: Piece; readonly index: number };

function overlapRefusal(plan: Plan, one: Numbered, other: Numbered, commonMm2: number): Refusal {
  const [first, second] = one.index < other.index ? [one, other] : [other, one];
  const [under, over] = [pieceName(plan, first.piece), pieceName(plan, second.piece)];
  return {
    where: placeInFile('pieces', second.index, second.piece.id),
    found: `${commonMm2.toFixed(commonMm2 < 10 ? 1 : 0)} mm2 on top of ${placeInFile('pieces', first.index, first.piece.id)}`,
    allowed: 'pieces that touch or stand apart',
    cure: `${capital(over)}, lies on ${under}: move or turn one of them, or make it smaller`,
  };
}
