/** Where the pins of steps stand along the months, px from the left: near their days, and none on another. */

/** From one pin to the next. */
export const PIN_PX = 24;

interface Cluster {
  /** Of the first and the last pin in it. */
  first: number;
  last: number;
  /** Sum of where its pins want to be, each less its place in the row: their mean sets the row. */
  wanted: number;
}

/**
 * `days` rise. Pins that would lie on each other are set side by side about the middle of their days, and within the
 * strip; where even that has no room for all they lie as close as they must.
 */
export function pinPlaces(days: readonly number[], lastDay: number, widthPx: number): number[] {
  const apart = Math.min(PIN_PX, days.length > 1 ? widthPx / (days.length - 1) : PIN_PX);
  const clusters: Cluster[] = [];
  const startOf = ({ first, last, wanted }: Cluster): number => {
    const count = last - first + 1;
    return Math.min(widthPx - (count - 1) * apart, Math.max(0, wanted / count));
  };
  days.forEach((day, k) => {
    let cluster: Cluster = { first: k, last: k, wanted: (Math.min(day, lastDay) / lastDay) * widthPx };
    for (let left = clusters.at(-1); left; left = clusters.at(-1)) {
      const count = left.last - left.first + 1;
      if (startOf(left) + count * apart <= startOf(cluster) + 1e-9) break;
      clusters.pop();
      const size = cluster.last - cluster.first + 1;
      cluster = { first: left.first, last: k, wanted: left.wanted + cluster.wanted - size * count * apart };
    }
    clusters.push(cluster);
  });
  return clusters.flatMap((cluster) =>
    Array.from({ length: cluster.last - cluster.first + 1 }, (_, k) => startOf(cluster) + k * apart),
  );
}
