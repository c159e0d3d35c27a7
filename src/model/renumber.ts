/** Pieces that a step makes: what was one piece becomes one in each face, or one that moves. */
import { isLiving } from './clear';
import { takeStock } from './pieces';
import { joinColonies, newPiece, type State } from './state';

/**
 * Gives tissue of each group numbers of its own. `groupOf` tells a cell's group, 0 to leave it; `nameOf` the name that
 * the group's pieces get. `wounded`, by old number, says whose edges were cut today. Returns the group of each piece, 0
 * for those that stay what they were: contacts within a group go on, all others begin anew.
 */
export function renumber(
  state: State,
  groupOf: (cell: number) => number,
  nameOf: (group: number) => number,
  wounded: Uint8Array,
  now: number,
  coin: boolean,
): Uint16Array {
  const { pieces, origin, variety, layout } = state;
  const { healingDays } = layout.rates;
  takeStock(pieces, state.colony);
  const madeOf = new Map<number, number>();
  const rootOf = new Map<number, number>();
  const groups: number[] = [];
  for (let i = 0; i < origin.length; i++) {
    const old = origin[i];
    const group = old === 0 ? 0 : groupOf(i);
    if (group === 0) continue;
    const key = group * 65536 + old;
    let made = madeOf.get(key);
    if (made === undefined) {
      const colonyKey = group * 65536 + state.colony[old];
      const first = rootOf.get(colonyKey);
      made = newPiece(state, {
        variety: pieces.variety[old],
        healedDay: wounded[old] === 1 ? now + healingDays : pieces.healedDay[old],
        freshUntilDay: pieces.freshUntilDay[old],
        name: nameOf(group),
        parent: old,
        stock: coin ? (first ?? pieces.count + 1) : pieces.stock[old],
      });
      madeOf.set(key, made);
      groups[made] = group;
      state.colonyVarieties[made] = 1 << pieces.variety[old];
      if (first === undefined) rootOf.set(colonyKey, made);
      else joinColonies(state, first, made);
    }
    origin[i] = made;
    if (isLiving(state, i)) state.colonyVarieties[state.colony[made]] |= 1 << variety[i];
  }
  return Uint16Array.from({ length: pieces.count + 1 }, (_, o) => groups[o] ?? 0);
}
