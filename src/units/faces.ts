/**
 * The faces into which lines divide an area: what a saw leaves. Lines are open paths in mm that may cross each other,
 * themselves and the outline; one that ends inside a face divides nothing.
 *
 * Segments are split where they meet, dead ends are pruned, and the directed edges are followed round, always taking
 * the next edge by turn at each corner: the faces of a planar subdivision (de Berg, Cheong, van Kreveld & Overmars 2008,
 * Computational Geometry, 3rd edition, chapter 2). Corners are kept to 1e-6 mm. Only + - * / and square roots: every
 * host finds the same faces.
 */
import { isInside, twiceArea, type Point, type Polygon } from './polygon';
import { crossingsAt } from './scanline';

export interface FaceOfLines {
  /** Outer ring, then the rings of what lies in its holes: inside by the even-odd rule. */
  readonly rings: readonly Polygon[];
  readonly areaMm2: number;
  readonly centroid: Point;
}

/** An end that stops so short of a line is meant to reach it, mm. */
const REACH_MM = 0.02;
/** Faces smaller than this are what rounding leaves, mm2. */
const LEAST_MM2 = 1e-3;
/** Centroids this close in height count as level, mm. */
const LEVEL_MM = 1e-3;

/** Sorted from top to bottom, then from left to right, by centroid. */
export function facesOf(outline: Polygon, lines: readonly (readonly Point[])[]): FaceOfLines[] {
  const graph = new Graph();
  const sides: Segment[] = outline.map((corner, k) => [corner, outline[(k + 1) % outline.length]]);
  for (const line of lines) {
    const path = lengthened(line);
    for (let k = 0; k + 1 < path.length; k++) sides.push([path[k], path[k + 1]]);
  }
  for (const [from, to] of split(sides)) graph.join(from, to);
  graph.prune();
  const cycles = graph.cycles();
  const outer = cycles.filter(({ twiceArea }) => twiceArea > 0);
  const faces = outer.map((cycle) => ({ cycles: [cycle] }));
  for (const hole of cycles) {
    if (hole.twiceArea >= 0) continue;
    const [holder] = faces
      .filter(
        ({ cycles: [ring] }) =>
          ring.twiceArea > -hole.twiceArea &&
          // the two sides of one loop are as large as each other, but for rounding: no ring holds its own outside
          !ring.corners.includes(hole.corners[0]) &&
          isInside(ring.corners, hole.corners[0]),
      )
      .sort((a, b) => a.cycles[0].twiceArea - b.cycles[0].twiceArea);
    holder?.cycles.push(hole);
  }
  return faces
    .map(({ cycles: rings }) => measured(rings))
    .filter(({ areaMm2, rings }) => areaMm2 >= LEAST_MM2 && isInside(outline, somewhereInside(rings)))
    .sort(byPlace);
}

/** Whether lines cross each other and themselves more than `most` times: of a scribble the faces would take minutes. */
export function crossMoreThan(lines: readonly (readonly Point[])[], most: number): boolean {
  const segments = lines.flatMap((line) => line.slice(1).map((to, k): Segment => [line[k], to]));
  const stops: Stop[] = [];
  for (let i = 0; i < segments.length; i++)
    for (let j = i + 1; j < segments.length; j++) {
      crossing(segments[i], segments[j], stops, stops);
      // a crossing is a stop on both
      if (stops.length > 2 * most) return true;
    }
  return false;
}

type Segment = readonly [Point, Point];

function byPlace(a: FaceOfLines, b: FaceOfLines): number {
  const level = Math.round(a.centroid[1] / LEVEL_MM) - Math.round(b.centroid[1] / LEVEL_MM);
  return level || a.centroid[0] - b.centroid[0];
}

function lengthened(line: readonly Point[]): readonly Point[] {
  if (line.length < 2) return line;
  const last = line.length - 1;
  return line.map((point, k) =>
    k === 0 ? beyond(line[1], point) : k === last ? beyond(line[last - 1], point) : point,
  );
}

function beyond(from: Point, to: Point): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return to;
  return [to[0] + (dx / length) * REACH_MM, to[1] + (dy / length) * REACH_MM];
}

/** Where a segment is split: how far along it, 0 to 1, and the point, which both that meet there share to the last bit. */
interface Stop {
  readonly along: number;
  readonly at: Point;
}

/** The segments in parts that meet at their ends only. */
function split(segments: readonly Segment[]): Segment[] {
  const stops: Stop[][] = segments.map(([from, to]) => [
    { along: 0, at: from },
    { along: 1, at: to },
  ]);
  for (let i = 0; i < segments.length; i++)
    for (let j = i + 1; j < segments.length; j++) crossing(segments[i], segments[j], stops[i], stops[j]);
  return stops.flatMap((own) => {
    own.sort((a, b) => a.along - b.along);
    return own.slice(1).map(({ at }, k): Segment => [own[k].at, at]);
  });
}

/** Where two segments meet, added to the stops of both; where they lie on each other, the ends. */
function crossing(one: Segment, other: Segment, stopsOne: Stop[], stopsOther: Stop[]): void {
  const [[a, b], [c, d]] = [one, other];
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  const [wx, wy] = [c[0] - a[0], c[1] - a[1]];
  const cross = ux * vy - uy * vx;
  const [u2, v2] = [ux * ux + uy * uy, vx * vx + vy * vy];
  if (u2 === 0 || v2 === 0) return;
  if (cross * cross <= 1e-18 * u2 * v2) {
    const aside = ux * wy - uy * wx;
    if (aside * aside > 1e-12 * u2) return;
    for (const at of other) keep(stopsOne, ((at[0] - a[0]) * ux + (at[1] - a[1]) * uy) / u2, at);
    for (const at of one) keep(stopsOther, ((at[0] - c[0]) * vx + (at[1] - c[1]) * vy) / v2, at);
    return;
  }
  const s = toEnd((wx * vy - wy * vx) / cross, u2);
  const t = toEnd((wx * uy - wy * ux) / cross, v2);
  if (s < 0 || s > 1 || t < 0 || t > 1) return;
  const end = s === 0 || s === 1 ? one[s] : t === 0 || t === 1 ? other[t] : null;
  const at: Point = end ?? [a[0] + s * ux, a[1] + s * uy];
  keep(stopsOne, s, at);
  keep(stopsOther, t, at);
}

/** A place within 1e-6 mm of an end is that end. */
function toEnd(place: number, length2: number): number {
  const slack = 1e-6 / Math.sqrt(length2);
  return Math.abs(place) <= slack ? 0 : Math.abs(place - 1) <= slack ? 1 : place;
}

function keep(stops: Stop[], along: number, at: Point): void {
  if (along > 0 && along < 1) stops.push({ along, at });
}

interface Cycle {
  readonly corners: Polygon;
  /** Positive round a face, negative round what lies in a hole. */
  readonly twiceArea: number;
}

/** Corners to 1e-6 mm and the edges between them, each once. */
class Graph {
  readonly #points: Point[] = [];
  readonly #numbers = new Map<string, number>();
  readonly #next: Set<number>[] = [];

  join(from: Point, to: Point): void {
    const [a, b] = [this.#number(from), this.#number(to)];
    if (a === b) return;
    this.#next[a].add(b);
    this.#next[b].add(a);
  }

  #number([x, y]: Point): number {
    const point: Point = [Math.round(x * 1e6) / 1e6 + 0, Math.round(y * 1e6) / 1e6 + 0];
    const key = point.join(' ');
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    const number = this.#points.push(point) - 1;
    this.#numbers.set(key, number);
    this.#next.push(new Set());
    return number;
  }

  /** Takes off dead ends until there are none. */
  prune(): void {
    const ends = this.#next.flatMap((to, at) => (to.size === 1 ? [at] : []));
    for (let at = ends.pop(); at !== undefined; at = ends.pop()) {
      for (const other of this.#next[at]) {
        this.#next[other].delete(at);
        if (this.#next[other].size === 1) ends.push(other);
      }
      this.#next[at].clear();
    }
  }

  cycles(): Cycle[] {
    const round = this.#next.map((to, at) => [...to].sort((a, b) => this.#byTurn(at, a, b)));
    const gone = new Set<string>();
    const cycles: Cycle[] = [];
    for (let start = 0; start < round.length; start++)
      for (const first of round[start]) {
        if (gone.has(`${start} ${first}`)) continue;
        const corners: Point[] = [];
        let [from, to] = [start, first];
        do {
          gone.add(`${from} ${to}`);
          corners.push(this.#points[from]);
          const ways = round[to];
          const back = ways.indexOf(from);
          [from, to] = [to, ways[(back + ways.length - 1) % ways.length]];
        } while (from !== start || to !== first);
        cycles.push({ corners, twiceArea: twiceArea(corners) });
      }
    return cycles;
  }

  /** Order of two edges about their common end, by rising angle, without asking for an angle. */
  #byTurn(at: number, a: number, b: number): number {
    const [x, y] = this.#points[at];
    const [ax, ay] = [this.#points[a][0] - x, this.#points[a][1] - y];
    const [bx, by] = [this.#points[b][0] - x, this.#points[b][1] - y];
    const half = (dx: number, dy: number): number => (dy > 0 || (dy === 0 && dx > 0) ? 0 : 1);
    return half(ax, ay) - half(bx, by) || -(ax * by - ay * bx);
  }
}

/** Three times twice the area times the centroid. */
function moments(corners: Polygon): Point {
  let [sumX, sumY] = [0, 0];
  let [lastX, lastY] = corners[corners.length - 1];
  for (const [x, y] of corners) {
    const cross = lastX * y - x * lastY;
    sumX += (lastX + x) * cross;
    sumY += (lastY + y) * cross;
    [lastX, lastY] = [x, y];
  }
  return [sumX, sumY];
}

function measured(cycles: readonly Cycle[]): FaceOfLines {
  const twice = cycles.reduce((sum, cycle) => sum + cycle.twiceArea, 0);
  const [x, y] = cycles.reduce<Point>(
    (sum, cycle) => {
      const [mx, my] = moments(cycle.corners);
      return [sum[0] + mx, sum[1] + my];
    },
    [0, 0],
  );
  return {
    rings: cycles.map(({ corners }) => corners),
    areaMm2: twice / 2,
    centroid: [x / (3 * twice), y / (3 * twice)],
  };
}

/** A point in the area: the middle of the widest stretch on a line through it. */
export function somewhereInside(rings: readonly Polygon[]): Point {
  let best: Point = rings[0][0];
  let widest = 0;
  const heights = [...new Set(rings[0].map(([, y]) => y))].sort((a, b) => a - b);
  for (let k = 0; k + 1 < heights.length; k++) {
    const y = (heights[k] + heights[k + 1]) / 2;
    const crossings = crossingsAt(rings, y);
    for (let c = 0; c + 1 < crossings.length; c += 2) {
      const wide = Math.min(crossings[c + 1] - crossings[c], heights[k + 1] - heights[k]);
      if (wide <= widest) continue;
      widest = wide;
      best = [(crossings[c] + crossings[c + 1]) / 2, y];
    }
  }
  return best;
}
