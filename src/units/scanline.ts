/** Shapes met by level lines. Apart from polygon.ts, as the engine uses it: + - * / only, the same bits on every host. */

type Point = readonly [number, number];

/** Where the line at height y crosses rings, from left to right: inside lies between each two, by the even-odd rule. */
export function crossingsAt(rings: readonly (readonly Point[])[], y: number): number[] {
  const crossings: number[] = [];
  for (const ring of rings)
    for (let k = 0; k < ring.length; k++) {
      const [x1, y1] = ring[k];
      const [x2, y2] = ring[(k + 1) % ring.length];
      if (y1 <= y !== y2 <= y) crossings.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
    }
  return crossings.sort((a, b) => a - b);
}

/** x at both ends of the part of a segment that lies between two heights. */
export function partBetween(from: Point, to: Point, low: number, high: number): [number, number] {
  if (from[1] === to[1]) return [from[0], to[0]];
  const at = (y: number): number => from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0]);
  const end = ([x, y]: Point): number => (y < low ? at(low) : y > high ? at(high) : x);
  return [end(from), end(to)];
}
