/**
 * Cuts and arrangements made by rule: grids and stripes of cut lines, and where the parts of a recut are set again.
 * Parts change places only with parts of their own form and size, so that none comes to lie on another; parts at the
 * tile's edge mostly stay.
 */
import alea from 'seedrandom/lib/alea';
import type { FaceOfLines } from '../units/faces';
import { turnedAndShifted, type Polygon } from '../units/polygon';
import { tileOutline } from './outline';
import type { StepOf, Tile, Xy } from './plan';
import { rounded } from './rounding';
import { faceName, facesOfRecut } from './steps';

export const ARRANGEMENTS = [
  'as cut',
  'alternate',
  'quarter turns',
  'shuffle',
  'halves swapped',
  'spread',
] as const;
export type Arrangement = (typeof ARRANGEMENTS)[number];
export type Placement = StepOf<'recut'>['then'][number];

/** Lines this far apart over the whole tile, turned clockwise, one of them through a place: else the tile's middle. */
export function stripeLines(tile: Tile, spacingMm: number, turnDeg: number, through: Xy = [0, 0]): Xy[][] {
  const reach = tile.sizeMm * (tile.shape === 'square' ? Math.SQRT1_2 : 0.5) + 1;
  const count = Math.ceil(reach / spacingMm);
  const turn = (turnDeg * Math.PI) / 180;
  const off = (through[0] * Math.cos(turn) + through[1] * Math.sin(turn)) % spacingMm;
  const lines: Xy[][] = [];
  for (let k = -count; k <= count; k++) {
    const line = turnedAndShifted(
      [
        [off + k * spacingMm, -reach],
        [off + k * spacingMm, reach],
      ],
      turnDeg,
      [0, 0],
    );
    if (crosses(line, tile)) lines.push(line.map(([x, y]): Xy => [rounded(x), rounded(y)]));
  }
  return lines;
}

export function gridLines(tile: Tile, spacingMm: number, turnDeg: number, through: Xy = [0, 0]): Xy[][] {
  return [
    ...stripeLines(tile, spacingMm, turnDeg, through),
    ...stripeLines(tile, spacingMm, turnDeg + 90, through),
  ];
}

/** Whether corners of the tile lie on both sides of a line. */
function crosses([[x1, y1], [x2, y2]]: Polygon, tile: Tile): boolean {
  const sides = tileOutline(tile).map(([x, y]) => (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1));
  return Math.min(...sides) < -1e-6 && Math.max(...sides) > 1e-6;
}

/** Where the parts of a recut go. What stays as it was cut is not listed. */
export function arrange(
  tile: Tile,
  recut: StepOf<'recut'>,
  how: Arrangement,
  { seed, gapMm }: { readonly seed: string; readonly gapMm: number },
): Placement[] {
  const faces = facesOfRecut(tile, recut);
  const place = (k: number, at: Xy, turnDeg = 0): Placement => ({
    piece: faceName(recut, k),
    at: [rounded(at[0]), rounded(at[1])],
    turnDeg,
  });
  switch (how) {
    case 'as cut':
      return [];
    case 'quarter turns':
      return faces.flatMap((face, k) => (isUnchanged(face, 90) ? [place(k, face.centroid, 90)] : []));
    case 'spread':
      return spread(faces, gapMm).map((at, k) => place(k, at));
    default:
      return alikeGroups(faces).flatMap((group) => {
        const to = exchange(group, faces, how, seed);
        return group.flatMap((k, at) => (to[at] === k ? [] : [place(k, faces[to[at]].centroid)]));
      });
  }
}

/** For each part of a group of like ones the part whose place it takes. */
function exchange(
  group: readonly number[],
  faces: readonly FaceOfLines[],
  how: 'alternate' | 'shuffle' | 'halves swapped',
  seed: string,
): number[] {
  if (how === 'shuffle') return shuffled(group, seed);
  const byPlace = [...group].sort(
    (a, b) => row(faces[a]) - row(faces[b]) || faces[a].centroid[0] - faces[b].centroid[0],
  );
  const to = new Map<number, number>();
  if (how === 'halves swapped') {
    const half = Math.floor(byPlace.length / 2);
    const byColumn = [...group].sort((a, b) => faces[a].centroid[0] - faces[b].centroid[0] || a - b);
    // of an odd number the one in the middle stays
    for (let k = 0; k < half; k++) {
      const [left, right] = [byColumn[k], byColumn[byColumn.length - half + k]];
      to.set(left, right);
      to.set(right, left);
    }
  } else {
    // every second part of a row changes places with the one that lies as far on the other side of the middle
    for (const k of byPlace) {
      const [x, y] = faces[k].centroid;
      const across = byPlace.find((j) => near(faces[j].centroid, [-x, y]));
      if (across === undefined || across === k) continue;
      const nth = byPlace.filter((j) => row(faces[j]) === row(faces[k])).indexOf(Math.min(k, across));
      if ((nth + rowIndex(byPlace, faces, k)) % 2 === 0) to.set(k, across);
    }
  }
  return group.map((k) => to.get(k) ?? k);
}

function row({ centroid }: FaceOfLines): number {
  return Math.round(centroid[1] * 100);
}

function rowIndex(order: readonly number[], faces: readonly FaceOfLines[], k: number): number {
  return [...new Set(order.map((j) => row(faces[j])))].indexOf(row(faces[k]));
}

function near(a: Xy, b: Xy): boolean {
  return Math.abs(a[0] - b[0]) < 0.01 && Math.abs(a[1] - b[1]) < 0.01;
}

/** Fisher and Yates; one word gives one order. */
function shuffled(group: readonly number[], seed: string): number[] {
  const random = alea(`arrange ${seed} ${group[0]}`);
  const to = [...group];
  for (let k = to.length - 1; k > 0; k--) {
    const j = Math.floor(random.quick() * (k + 1));
    [to[k], to[j]] = [to[j], to[k]];
  }
  return to;
}

/** Every part moved straight away from the middle so far that parts stand `gapMm` further apart. */
function spread(faces: readonly FaceOfLines[], gapMm: number): Xy[] {
  const nearest = Math.min(
    ...faces.flatMap((one, k) => faces.slice(k + 1).map((other) => distance(one.centroid, other.centroid))),
  );
  const stretch = Number.isFinite(nearest) ? 1 + gapMm / nearest : 1;
  return faces.map(({ centroid: [x, y] }) => [x * stretch, y * stretch]);
}

function distance([ax, ay]: Xy, [bx, by]: Xy): number {
  return Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
}

/** Parts of one form, by number; parts that have no like stand alone. */
function alikeGroups(faces: readonly FaceOfLines[]): number[][] {
  const groups = new Map<string, number[]>();
  faces.forEach((face, k) => {
    const key = formOf(face);
    groups.set(key, [...(groups.get(key) ?? []), k]);
  });
  return [...groups.values()];
}

/** Corners about the centroid, to a hundredth of a millimetre, in an order of their own. */
function formOf({ rings, centroid: [x, y] }: FaceOfLines, turnDeg = 0): string {
  return rings
    .map((ring) =>
      turnedAndShifted(
        ring.map(([cx, cy]) => [cx - x, cy - y] as const),
        turnDeg,
        [0, 0],
      )
        .map((corner) => corner.map((mm) => Math.round(mm * 50) / 50 + 0).join(' '))
        .sort()
        .join(', '),
    )
    .join(' | ');
}

/** Whether a part turned about its centroid fills its own place. */
function isUnchanged(face: FaceOfLines, turnDeg: number): boolean {
  return formOf(face) === formOf(face, turnDeg);
}
