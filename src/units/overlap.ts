/**
 * Area common to two simple polygons, mm2, exact up to rounding. The plane is cut into upright strips at every
 * corner and crossing; inside a strip the common height is linear in x, so its middle height times its width is
 * its area. No new polygon is built, so touching or shared sides cannot upset it.
 */
import { boxOf } from './polygon';
import type { Polygon } from './polygon';

/** A side that is not upright, from left to right. */
interface Slope {
  readonly leftX: number;
  readonly rightX: number;
  readonly leftY: number;
  readonly rise: number;
}

function slopes(polygon: Polygon, fromX: number, toX: number): Slope[] {
  const found: Slope[] = [];
  let last = polygon[polygon.length - 1];
  for (const corner of polygon) {
    const [left, right] = corner[0] < last[0] ? [corner, last] : [last, corner];
    last = corner;
    if (left[0] === right[0] || right[0] <= fromX || left[0] >= toX) continue;
    found.push({
      leftX: left[0],
      rightX: right[0],
      leftY: left[1],
      rise: (right[1] - left[1]) / (right[0] - left[0]),
    });
  }
  return found;
}

function heightAt(slope: Slope, x: number): number {
  return slope.leftY + (x - slope.leftX) * slope.rise;
}

function crossings(a: readonly Slope[], b: readonly Slope[]): number[] {
  const found: number[] = [];
  for (const one of a) {
    for (const other of b) {
      const left = Math.max(one.leftX, other.leftX);
      const right = Math.min(one.rightX, other.rightX);
      if (left >= right) continue;
      const atLeft = heightAt(one, left) - heightAt(other, left);
      const atRight = heightAt(one, right) - heightAt(other, right);
      if (atLeft * atRight < 0) found.push(left + ((right - left) * atLeft) / (atLeft - atRight));
    }
  }
  return found;
}

/** Where the upright line at x enters and leaves the polygon, in order. */
function cuts(open: readonly Slope[], x: number): number[] {
  const heights: number[] = [];
  for (const slope of open) if (slope.leftX < x && x < slope.rightX) heights.push(heightAt(slope, x));
  return heights.sort((a, b) => a - b);
}

function commonLength(a: readonly number[], b: readonly number[]): number {
  let length = 0;
  for (let i = 0, j = 0; i + 1 < a.length && j + 1 < b.length;) {
    length += Math.max(0, Math.min(a[i + 1], b[j + 1]) - Math.max(a[i], b[j]));
    if (a[i + 1] < b[j + 1]) i += 2;
    else j += 2;
  }
  return length;
}

export function overlapArea(a: Polygon, b: Polygon): number {
  const [boxA, boxB] = [boxOf(a), boxOf(b)];
  const fromX = Math.max(boxA.minX, boxB.minX);
  const toX = Math.min(boxA.maxX, boxB.maxX);
  if (fromX >= toX || boxA.maxY <= boxB.minY || boxB.maxY <= boxA.minY) return 0;
  const [slopesA, slopesB] = [slopes(a, fromX, toX), slopes(b, fromX, toX)];
  const corners = [...a, ...b].map(([x]) => x).filter((x) => x > fromX && x < toX);
  const stops = [fromX, ...corners, ...crossings(slopesA, slopesB), toX].sort((one, other) => one - other);
  let area = 0;
  for (let i = 1; i < stops.length; i++) {
    const width = stops[i] - stops[i - 1];
    if (width <= 0) continue;
    const middle = stops[i - 1] + width / 2;
    area += width * commonLength(cuts(slopesA, middle), cuts(slopesB, middle));
  }
  return area;
}
