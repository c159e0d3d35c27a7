import type { Point } from '../../units/polygon';

/** The place on the paths nearest to a point, where that is within reach; else null. */
export function onPaths(paths: readonly (readonly Point[])[], point: Point, reach: number): Point | null {
  let [best, least]: [Point | null, number] = [null, reach];
  for (const path of paths)
    for (let k = 0; k + 1 < path.length; k++) {
      const [[x, y], [nx, ny]] = [path[k], path[k + 1]];
      const [dx, dy] = [nx - x, ny - y];
      const share = ((point[0] - x) * dx + (point[1] - y) * dy) / (dx * dx + dy * dy || 1);
      const part = Math.min(1, Math.max(0, share));
      const at: Point = [x + part * dx, y + part * dy];
      const away = Math.hypot(point[0] - at[0], point[1] - at[1]);
      if (away <= least) [best, least] = [at, away];
    }
  return best;
}
