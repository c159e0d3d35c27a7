/** A small picture of a check: points found beside the curve expected, as numbers. Drawn by the report and the page. */
export interface Plot {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  /** What is expected: drawn as lines. */
  readonly expected: readonly Series[];
  /** What was found: drawn as points. */
  readonly found: readonly Series[];
}

export interface Axis {
  readonly label: string;
  readonly log?: true;
}

export interface Series {
  readonly name: string;
  readonly points: readonly (readonly [number, number])[];
}

/** Values of a curve at even steps, both ends included. */
export function curve(
  name: string,
  low: number,
  high: number,
  at: (x: number) => number,
  steps = 60,
): Series {
  const points = Array.from({ length: steps + 1 }, (_, k) => {
    const x = low + ((high - low) * k) / steps;
    return [x, at(x)] as const;
  });
  return { name, points };
}
