/**
 * Straight line through points by ordinary least squares, with the standard errors of its two numbers under
 * independent errors of equal spread (textbook; checked on NIST's Norris data).
 */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number;
  readonly interceptError: number;
}

export function lineThrough(xs: readonly number[], ys: readonly number[]): Line {
  const n = xs.length;
  const x = xs.reduce((sum, at) => sum + at, 0) / n;
  const y = ys.reduce((sum, at) => sum + at, 0) / n;
  let across = 0;
  let up = 0;
  for (let k = 0; k < n; k++) {
    across += (xs[k] - x) * (xs[k] - x);
    up += (xs[k] - x) * (ys[k] - y);
  }
  const slope = up / across;
  const intercept = y - slope * x;
  let squares = 0;
  for (let k = 0; k < n; k++) {
    const off = ys[k] - intercept - slope * xs[k];
    squares += off * off;
  }
  const variance = n > 2 ? squares / (n - 2) : 0;
  return {
    slope,
    intercept,
    slopeError: Math.sqrt(variance / across),
    interceptError: Math.sqrt(variance * (1 / n + (x * x) / across)),
  };
}
