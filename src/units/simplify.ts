/**
 * Fewer corners for a drawn or traced line: without the points that lie within a tolerance of what is left
 * (Douglas & Peucker 1973, Cartographica 10: 112-122). Distances are to the stretch between the corners that are kept,
 * so a line that doubles back keeps its turning point.
 */
import { squaredToSegment, type Point } from './polygon';

export function simplify(line: readonly Point[], tolerance: number): Point[] {
  if (line.length < 3) return [...line];
  const keep = new Uint8Array(line.length);
  keep[0] = keep[line.length - 1] = 1;
  const open: [number, number][] = [[0, line.length - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [first, last] = span;
    let [worst, at] = [tolerance * tolerance, -1];
    for (let k = first + 1; k < last; k++) {
      const off = squaredToSegment(line[k], line[first], line[last]);
      if (off > worst) [worst, at] = [off, k];
    }
    if (at < 0) continue;
    keep[at] = 1;
    open.push([first, at], [at, last]);
  }
  return line.filter((_, k) => keep[k] === 1);
}

/** A closed outline with at most `most` corners: the tolerance is doubled until it fits. */
export function simplifyOutline(outline: readonly Point[], most: number, tolerance: number): Point[] {
  const closed = [...outline, outline[0]];
  for (let within = tolerance; ; within *= 2) {
    const simple = simplify(closed, within).slice(0, -1);
    if (simple.length <= most) return simple;
  }
}
