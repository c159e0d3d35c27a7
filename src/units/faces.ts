/**
 * The faces into which lines divide an area: what a saw leaves. Lines are open paths in mm that may cross each other,
 * themselves and the outline; one that ends inside a face divides nothing.
 *
 * Segments are split where they meet, dead ends are pruned, and the directed edges are followed round, always taking
 * the next edge by turn at each corner: the faces of a planar subdivision (de Berg, Cheong, van Kreveld & Overmars 2008,
 * Computational Geometry, 3rd edition, chapter 2). Corners are kept to 1e-6 mm. Only + - * / and square roots: every
 * host finds the same faces.
 */
import { isInside, type Point, type Polygon } from './polygon';

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
          ring.twiceArea > -hole.twiceArea && isInside(ring.corners, inward(hole, ring)),
      )
      .sort((a, b) => a.cycles[0].twiceArea - b.cycles[0].twiceArea);
    holder?.cycles.push(hole);
  }
  return faces
    .map(({ cycles: rings }) => measured(rings))
    .filter(({ areaMm2, rings }) => areaMm2 >= LEAST_MM2 && isInside(outline, somewhereInside(rings)))
    .sort(byPlace);
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

/** The segments in parts that meet at their ends only. */
function split(segments: readonly Segment[]): Segment[] {
  const cuts: number[][] = segments.map(() => [0, 1]);
  for (let i = 0; i < segments.length; i++)
    for (let j = i + 1; j < segments.length; j++) crossing(segments[i], segments[j], cuts[i], cuts[j]);
  return segments.flatMap(([from, to], k) => {
    const places = [...new Set(cuts[k])].sort((a, b) => a - b);
    const points = places.map((t): Point => [
      from[0] + t * (to[0] - from[0]),
      from[1] + t * (to[1] - from[1]),
    ]);
    return points.slice(1).map((point, at): Segment => [points[at], point]);
  });
}

/** Parameters of where two segments meet, added to both lists; where they lie on each other, the ends. */
function crossing([a, b]: Segment, [c, d]: Segment, cutsA: number[], cutsC: number[]): void {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const [vx, vy] = [d[0] - c[0], d[1] - c[1]];
  const [wx, wy] = [c[0] - a[0], c[1] - a[1]];
  const cross = ux * vy - uy * vx;
  const [u2, v2] = [ux * ux + uy * uy, vx * vx + vy * vy];
  if (u2 === 0 || v2 === 0) return;
  if (cross * cross <= 1e-18 * u2 * v2) {
    const aside = ux * wy - uy * wx;
    if (aside * aside > 1e-12 * u2) return;
    for (const [x, y] of [c, d]) keep(cutsA, ((x - a[0]) * ux + (y - a[1]) * uy) / u2);
    for (const [x, y] of [a, b]) keep(cutsC, ((x - c[0]) * vx + (y - c[1]) * vy) / v2);
    return;
  }
  const s = (wx * vy - wy * vx) / cross;
  const t = (wx * uy - wy * ux) / cross;
  const [slackA, slackC] = [1e-6 / Math.sqrt(u2), 1e-6 / Math.sqrt(v2)];
  if (s < -slackA || s > 1 + slackA || t < -slackC || t > 1 + slackC) return;
  keep(cutsA, s);
  keep(cutsC, t);
}

function keep(cuts: number[], place: number): void {
  if (place > 0 && place < 1) cuts.push(place);
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

function twiceArea(corners: Polygon): number {
  let sum = 0;
  let [lastX, lastY] = corners[corners.length - 1];
  for (const [x, y] of corners) {
    sum += lastX * y - x * lastY;
    [lastX, lastY] = [x, y];
  }
  return sum;
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

/** A corner of the hole that is no corner of the ring, or else the middle of a side. */
function inward(hole: Cycle, ring: Cycle): Point {
  const corners = new Set(ring.corners.map((corner) => corner.join(' ')));
  const free = hole.corners.find((corner) => !corners.has(corner.join(' ')));
  if (free) return free;
  const [a, b] = hole.corners;
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** A point in the area: the middle of the widest stretch on a line through it. */
export function somewhereInside(rings: readonly Polygon[]): Point {
  let best: Point = rings[0][0];
  let widest = 0;
  const heights = [...new Set(rings[0].map(([, y]) => y))].sort((a, b) => a - b);
  for (let k = 0; k + 1 < heights.length; k++) {
    const y = (heights[k] + heights[k + 1]) / 2;
    const crossings = rings
      .flatMap((ring) =>
        ring.flatMap(([x1, y1], at) => {
          const [x2, y2] = ring[(at + 1) % ring.length];
          return y1 <= y !== y2 <= y ? [x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)] : [];
        }),
      )
      .sort((a, b) => a - b);
    for (let c = 0; c + 1 < crossings.length; c += 2) {
      const wide = Math.min(crossings[c + 1] - crossings[c], heights[k + 1] - heights[k]);
      if (wide <= widest) continue;
      widest = wide;
      best = [(crossings[c] + crossings[c + 1]) / 2, y];
    }
  }
  return best;
}
