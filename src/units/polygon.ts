/**
 * Plane geometry of polygons in mm. A polygon is its corners in order, without repeating the first at the end;
 * x right, y down, so a positive turn is clockwise as seen.
 */
export type Point = readonly [number, number];
export type Polygon = readonly Point[];

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boxOf(polygon: Polygon): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of polygon) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** Area whatever the direction of the corners. */
export function area(polygon: Polygon): number {
  return Math.abs(twiceArea(polygon)) / 2;
}

/** Twice the area, positive for corners that go clockwise as seen. */
export function twiceArea(polygon: Polygon): number {
  let twice = 0;
  let [lastX, lastY] = polygon[polygon.length - 1];
  for (const [x, y] of polygon) {
    twice += lastX * y - x * lastY;
    [lastX, lastY] = [x, y];
  }
  return twice;
}

/** Length of an open path. */
export function lengthOf(path: readonly Point[]): number {
  return path.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - path[k][0], y - path[k][1]), 0);
}

/** Turned about the origin, then shifted, corners rounded to 1e-6 mm so that every host agrees on them. */
export function turnedAndShifted(polygon: Polygon, turnDeg: number, shift: Point): Polygon {
  const turn = (turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return polygon.map(([x, y]) => [
    toMicro(x * cos - y * sin + shift[0]),
    toMicro(x * sin + y * cos + shift[1]),
  ]);
}

function toMicro(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 + 0;
}

/** By the even-odd rule; a point on the outline itself may count either way. */
export function isInside(polygon: Polygon, [x, y]: Point): boolean {
  let inside = false;
  let [lastX, lastY] = polygon[polygon.length - 1];
  for (const [cornerX, cornerY] of polygon) {
    if (cornerY > y !== lastY > y && x < ((lastX - cornerX) * (y - cornerY)) / (lastY - cornerY) + cornerX) {
      inside = !inside;
    }
    [lastX, lastY] = [cornerX, cornerY];
  }
  return inside;
}

/** Distance from the outline, negative inside. */
export function signedDistance(polygon: Polygon, point: Point): number {
  let least = Infinity;
  let last = polygon[polygon.length - 1];
  for (const corner of polygon) {
    least = Math.min(least, squaredToSegment(point, last, corner));
    last = corner;
  }
  const distance = Math.sqrt(least);
  return isInside(polygon, point) ? -distance : distance;
}

export function squaredToSegment(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const [px, py] = [point[0] - from[0], point[1] - from[1]];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length2));
  const [ex, ey] = [px - along * dx, py - along * dy];
  return ex * ex + ey * ey;
}

/** Twice the signed area of the triangle: which side of from-to the point lies on. */
function side(from: Point, to: Point, point: Point): number {
  return (to[0] - from[0]) * (point[1] - from[1]) - (to[1] - from[1]) * (point[0] - from[0]);
}

/** Whether two segments share a point, ends included. */
function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0]))
    return false;
  if (Math.max(a[1], b[1]) < Math.min(c[1], d[1]) || Math.max(c[1], d[1]) < Math.min(a[1], b[1]))
    return false;
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

/** Whether no two sides cross or touch, but for neighbours at their common corner. Repeated corners are forgiven. */
export function isSimple(polygon: Polygon): boolean {
  const corners = polygon.filter((corner, index) => {
    const last = polygon[(index + polygon.length - 1) % polygon.length];
    return corner[0] !== last[0] || corner[1] !== last[1];
  });
  const count = corners.length;
  if (count < 3) return false;
  const sides = corners.map((from, index) => ({ index, from, to: corners[(index + 1) % count] }));
  sides.sort((a, b) => Math.min(a.from[0], a.to[0]) - Math.min(b.from[0], b.to[0]));
  let open: typeof sides = [];
  for (const now of sides) {
    const leftX = Math.min(now.from[0], now.to[0]);
    open = open.filter(({ from, to }) => Math.max(from[0], to[0]) >= leftX);
    for (const other of open) {
      const ahead = (now.index - other.index + count) % count;
      if (
        ahead === 1 ? foldsBack(other, now) : ahead === count - 1 ? foldsBack(now, other) : meets(other, now)
      ) {
        return false;
      }
    }
    open.push(now);
  }
  return true;
}

interface Side {
  readonly from: Point;
  readonly to: Point;
}

function meets(one: Side, other: Side): boolean {
  return segmentsMeet(one.from, one.to, other.from, other.to);
}

/** Whether the second of two neighbouring sides runs back along the first. */
function foldsBack(first: Side, second: Side): boolean {
  if (side(first.from, first.to, second.to) !== 0) return false;
  const [x, y] = first.to;
  return (first.from[0] - x) * (second.to[0] - x) + (first.from[1] - y) * (second.to[1] - y) > 0;
}

/** Least distance between two polygons as filled areas: 0 where they touch or overlap. */
export function distanceBetween(a: Polygon, b: Polygon): number {
  if (isInside(a, b[0]) || isInside(b, a[0])) return 0;
  let least = Infinity;
  let lastA = a[a.length - 1];
  for (const cornerA of a) {
    let lastB = b[b.length - 1];
    for (const cornerB of b) {
      if (segmentsMeet(lastA, cornerA, lastB, cornerB)) return 0;
      least = Math.min(
        least,
        squaredToSegment(cornerA, lastB, cornerB),
        squaredToSegment(cornerB, lastA, cornerA),
      );
      lastB = cornerB;
    }
    lastA = cornerA;
  }
  return Math.sqrt(least);
}

/** Whether a side of one has all corners of the other beyond it: a quick proof that they do not overlap. */
export function isParted(a: Polygon, b: Polygon): boolean {
  return hasPartingSide(a, b) || hasPartingSide(b, a);
}

function hasPartingSide(a: Polygon, b: Polygon): boolean {
  let last = a[a.length - 1];
  for (const corner of a) {
    const from = last;
    last = corner;
    const own = a.find((point) => side(from, corner, point) !== 0);
    if (!own) continue;
    const sign = side(from, corner, own) > 0 ? 1 : -1;
    const keeps = a.every((point) => sign * side(from, corner, point) >= 0);
    if (keeps && b.every((point) => sign * side(from, corner, point) <= 0)) return true;
  }
  return false;
}

/** The convex polygon about a set of points, without corners that lie on its sides (Andrew 1979, Inf. Proc. Lett. 9: 216). */
export function convexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (along: readonly Point[]): Point[] => {
    const hull: Point[] = [];
    for (const point of along) {
      while (hull.length > 1 && side(hull[hull.length - 2], hull[hull.length - 1], point) <= 0) hull.pop();
      hull.push(point);
    }
    hull.pop();
    return hull;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
