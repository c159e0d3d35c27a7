/**
 * Parts of a lattice as polygons that fit each other without overlap or gap: corners lie on corners of cells and are
 * the same numbers on both sides. A part is one 4-connected patch of cells; where it touches itself corner to corner,
 * the corner is drawn a quarter of a cell into its own cells, for an outline may not touch itself.
 */

/** Corners as [column, line] of the lattice's corners: cell (c, r) reaches from c to c + 1 and from r to r + 1. */
export type LatticeRing = readonly (readonly [number, number])[];

/** How far the corner of a cell is drawn in where its part touches itself, cells. */
const DRAWN_IN = 0.25;

/** Clockwise round a cell as seen: from which corner to which, and the cell across. */
const SIDES = [
  { from: [0, 0], to: [1, 0], across: [0, -1] },
  { from: [1, 0], to: [1, 1], across: [1, 0] },
  { from: [1, 1], to: [0, 1], across: [0, 1] },
  { from: [0, 1], to: [0, 0], across: [-1, 0] },
] as const;

export interface PartGrid {
  readonly columns: number;
  /** Number of the part that holds each cell, 0 for none. The outermost cells hold none. */
  readonly part: Int32Array;
}

/** Rings of a part's cells: the outer one, and one for each hole, in no set order. */
export function ringsOf(grid: PartGrid, cells: readonly number[]): LatticeRing[] {
  const { columns, part } = grid;
  const corners = columns + 1;
  const leaving = new Map<number, number[]>();
  for (const cell of cells)
    SIDES.forEach(({ from, across }, side) => {
      if (part[cell + across[0] + across[1] * columns] === part[cell]) return;
      const at = cornerOf(cell, from, columns);
      const known = leaving.get(at);
      if (known) known.push(cell * 4 + side);
      else leaving.set(at, [cell * 4 + side]);
    });
  const rings: LatticeRing[] = [];
  for (const [start, edges] of leaving)
    for (let first = edges.pop(); first !== undefined; first = edges.pop()) {
      const ring: (readonly [number, number])[] = [];
      let edge = first;
      for (;;) {
        const cell = edge >> 2;
        const at = cornerOf(cell, SIDES[edge & 3].to, columns);
        ring.push(...pointsAt(grid, cell, at % corners, Math.floor(at / corners)));
        if (at === start && !leaving.get(at)?.some((next) => next >> 2 === cell)) break;
        const ways = leaving.get(at) ?? [];
        // where two leave, the part touches itself: stay with the cell
        const same = ways.findIndex((next) => next >> 2 === cell);
        edge = ways.splice(Math.max(0, same), 1)[0];
      }
      rings.push(straightened(ring));
    }
  return rings;
}

function cornerOf(cell: number, [dx, dy]: readonly [number, number], columns: number): number {
  return (Math.floor(cell / columns) + dy) * (columns + 1) + (cell % columns) + dx;
}

/** The corner as the ring of the part of `cell` passes it: one point, or two where others touch themselves there. */
function pointsAt({ columns, part }: PartGrid, cell: number, x: number, y: number): [number, number][] {
  const se = y * columns + x;
  const [nw, ne, sw] = [se - columns - 1, se - columns, se - 1];
  const into = (dx: number, dy: number): [number, number] => [x + DRAWN_IN * dx, y + DRAWN_IN * dy];
  if (part[nw] !== 0 && part[nw] === part[se] && part[nw] !== part[ne] && part[nw] !== part[sw]) {
    if (cell === nw) return [into(-1, -1)];
    if (cell === se) return [into(1, 1)];
    return cell === ne ? [into(1, 1), into(-1, -1)] : [into(-1, -1), into(1, 1)];
  }
  if (part[ne] !== 0 && part[ne] === part[sw] && part[ne] !== part[nw] && part[ne] !== part[se]) {
    if (cell === ne) return [into(1, -1)];
    if (cell === sw) return [into(-1, 1)];
    return cell === nw ? [into(1, -1), into(-1, 1)] : [into(-1, 1), into(1, -1)];
  }
  return [[x, y]];
}

/** Without the points that lie on the straight line between their neighbours. */
function straightened(ring: LatticeRing): LatticeRing {
  return ring.filter(([x, y], k) => {
    const [x0, y0] = ring[(k + ring.length - 1) % ring.length];
    const [x1, y1] = ring[(k + 1) % ring.length];
    return (x - x0) * (y1 - y) !== (y - y0) * (x1 - x);
  });
}
