/**
 * Rule I: the colour a new polyp takes inside a colony of several varieties.
 *
 * A polyp is born from a polyp behind it, read at
 *   q = site - p*n + lateral*t,  n = direction of travel, t = n turned left,
 *   lateral = lean*p + scatter*p*g, g of unit variance (three uniforms: no host logarithm), now and then a far stray.
 * A lone border then wanders as a random walk, as sectors of range expansions do (Hallatschek, Hersen, Ramanathan &
 * Nelson 2007, PNAS 104: 19926); lean gives the drift of a logarithmic spiral (Korolev et al. 2010, Rev. Mod. Phys.
 * 82: 1691); strays seed new sectors (Hallatschek & Fisher 2014, PNAS 111: E4911). That corals do so is a guess.
 * Each pair of varieties has its own numbers: the reading for (own, other) counts only if it finds that other.
 */
import { travel } from './front';
import { pairIndex } from './layout';
import { draw } from './noise';
import { FATE } from './seam-table';
import { BARE, type State } from './state';

/** The variety of polyp `p`, claimed by `cell` (about to be filled from `parent`). */
export function inherit(
  state: State,
  p: number,
  cell: number,
  parent: number,
  cellDays: Float64Array,
): number {
  const own = state.variety[parent];
  const others = state.colonyVarieties[state.colony[state.origin[parent]]] & ~(1 << own);
  if (others === 0) return own;

  const { keys, polyps } = state;
  const { pairs } = state.layout;
  const site = polyps.site[p];
  const generation = polyps.generation[p];
  const [nx, ny] = travel(state, cell, cellDays);
  const g =
    2 *
    (draw(keys.lateral1, site, generation) +
      draw(keys.lateral2, site, generation) +
      draw(keys.lateral3, site, generation) -
      1.5);
  const strayChance = draw(keys.strayChance, site, generation);
  const strayPlace = 4 * draw(keys.strayReach, site, generation) - 2;
  const weaveChance = draw(keys.weaveChance, site, generation);
  let taken = own;
  let least = Infinity;
  for (let other = 1; other <= state.layout.varieties; other++) {
    if ((others & (1 << other)) === 0) continue;
    const k = pairIndex(own, other);
    let lateral = (pairs.lean[k] + pairs.scatter[k] * g) * polyps.spacingMm;
    if (strayChance < pairs.stray[k]) lateral += strayPlace * pairs.strayReachMm[k];
    let read = readBehind(state, p, parent, nx, ny, lateral);
    if (weaveChance < pairs.weave[k])
      read = rarer(state, p, parent, nx, ny, pairs.weaveReachMm[k], own, other, read);
    if (read === other && Math.abs(lateral) < least) {
      taken = other;
      least = Math.abs(lateral);
    }
  }
  return taken;
}

/** Of five places side by side behind the site, the variety seen least but at least once; tie: `reading`. */
function rarer(
  state: State,
  p: number,
  parent: number,
  nx: number,
  ny: number,
  reachMm: number,
  own: number,
  other: number,
  reading: number,
): number {
  let seenOwn = 0;
  let seenOther = 0;
  for (let k = -2; k <= 2; k++) {
    const seen = readBehind(state, p, parent, nx, ny, (k * reachMm) / 2);
    if (seen === own) seenOwn++;
    else if (seen === other) seenOther++;
  }
  if (seenOther === 0) return own;
  if (seenOwn === 0) return other;
  return seenOwn === seenOther ? reading : seenOwn < seenOther ? own : other;
}

/** A way through tissue is looked for at the rim, and up to so many polyp spacings behind it. */
const BEHIND = 2;

/** The variety at `lateral` mm to the left, one spacing behind the site; the parent's where no tissue leads there. */
function readBehind(
  state: State,
  p: number,
  parent: number,
  nx: number,
  ny: number,
  lateral: number,
): number {
  const { origin, variety, colony, polyps } = state;
  const { columns, rows, cellMm } = state.layout;
  const own = variety[parent];
  const spacing = polyps.spacingMm;
  // left of (nx, ny) with y down is (ny, -nx)
  let x = polyps.xMm[p] - spacing * nx + lateral * ny;
  let y = polyps.yMm[p] - spacing * ny - lateral * nx;
  // q may lie ahead of a curved rim: walk back along the way of growth, two spacings at most
  for (let step = 0; ; step++) {
    const c = Math.round(x / cellMm + (columns - 1) / 2);
    const r = Math.round(y / cellMm + (rows - 1) / 2);
    if (c > 0 && c < columns - 1 && r > 0 && r < rows - 1) {
      const q = r * columns + c;
      const v = variety[q];
      if (v === BARE) return own;
      if (v !== 0) {
        if (v === own) return own;
        if (origin[q] === origin[parent]) return v;
        if (colony[origin[q]] !== colony[origin[parent]]) return own;
        for (let behind = 0; behind <= BEHIND; behind++)
          if (openWay(state, parent, c, r, behind * spacing * nx, behind * spacing * ny)) return v;
        return own;
      }
    }
    if (step === 8) return own;
    x -= 0.25 * spacing * nx;
    y -= 0.25 * spacing * ny;
  }
}

/**
 * Tissue leads from a cell to column c, row r: on the line between them lies no ground, bare or empty, and no contact
 * but fused ones. The line may run behind the two by (backX, backY) mm: a rim is rough, and notched at a young seam.
 * The ways from the cell back to that line and from the line to the other are then held to the same, or a line that
 * lies wholly across a wall would count.
 */
export function openWay(state: State, from: number, c: number, r: number, backXMm = 0, backYMm = 0): boolean {
  const { columns, cellMm } = state.layout;
  const c0 = from % columns;
  const r0 = Math.floor(from / columns);
  const backC = backXMm / cellMm;
  const backR = backYMm / cellMm;
  const isStraight = backC === 0 && backR === 0;
  return (
    openLine(state, c0 - backC, r0 - backR, c - backC, r - backR) &&
    (isStraight ||
      (openLine(state, c0, r0, c0 - backC, r0 - backR) && openLine(state, c - backC, r - backR, c, r)))
  );
}

function openLine(state: State, c0: number, r0: number, c1: number, r1: number): boolean {
  const { variety, row, seam } = state;
  const { columns, rows } = state.layout;
  const dc = c1 - c0;
  const dr = r1 - r0;
  // 0.7 of a cell a step: a wall is two cells thick and cannot be stepped over
  const steps = Math.ceil(Math.max(Math.abs(dc), Math.abs(dr)) / 0.7);
  for (let k = 0; k <= steps; k++) {
    const f = steps === 0 ? 0 : k / steps;
    const column = Math.round(c0 + f * dc);
    const line = Math.round(r0 + f * dr);
    if (column < 0 || line < 0 || column >= columns || line >= rows) return false;
    const i = line * columns + column;
    if (variety[i] === 0 || variety[i] === BARE) return false;
    if (row[i] !== 0 && seam.fate[row[i]] !== FATE.fused) return false;
  }
  return true;
}
