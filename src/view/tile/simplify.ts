/** Fewer corners for a line drawn by hand: keeps those that stand off most (Douglas and Peucker 1973, from memory). */
import type { Xy } from '../../plan/plan';

export function simplify(line: readonly Xy[], toleranceMm: number): Xy[] {
  if (line.length < 3) return [...line];
  const keep = new Uint8Array(line.length);
  keep[0] = keep[line.length - 1] = 1;
  const open: [number, number][] = [[0, line.length - 1]];
  for (let span = open.pop(); span; span = open.pop()) {
    const [first, last] = span;
    let [worst, at] = [toleranceMm, -1];
    for (let k = first + 1; k < last; k++) {
      const off = standsOff(line[k], line[first], line[last]);
      if (off > worst) [worst, at] = [off, k];
    }
    if (at < 0) continue;
    keep[at] = 1;
    open.push([first, at], [at, last]);
  }
  return line.filter((_, k) => keep[k] === 1);
}

/** A closed outline with at most `most` corners: the tolerance is doubled until it fits. */
export function simplifyOutline(outline: readonly Xy[], most: number, toleranceMm: number): Xy[] {
  const closed = [...outline, outline[0]];
  for (let tolerance = toleranceMm; ; tolerance *= 2) {
    const simple = simplify(closed, tolerance).slice(0, -1);
    if (simple.length <= most) return simple;
  }
}

function standsOff(point: Xy, from: Xy, to: Xy): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(point[0] - from[0], point[1] - from[1]);
  return Math.abs((point[0] - from[0]) * dy - (point[1] - from[1]) * dx) / length;
}
