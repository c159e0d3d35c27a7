/**
 * What rises and levels off, y = most (1 - exp(-rate x)), by least squares; checked on NIST's Misra1a. For a rate given,
 * `most` is linear, so that only the rate is searched (variable projection: Golub & Pereyra 1973, SIAM J. Numer. Anal.
 * 10: 413-432), by golden section in its logarithm. Standard errors from the derivatives at the minimum, under
 * independent errors of equal spread.
 */
export interface Levelling {
  readonly most: number;
  readonly rate: number;
  readonly mostError: number;
  readonly rateError: number;
  /** most * rate: how fast it rises at first, in y per x. */
  readonly first: number;
  readonly firstError: number;
  /** Sum of squared residuals. */
  readonly squares: number;
}

/** Times the greatest x: slower than the first is a straight line, faster than the second is level from the start. */
const RATES = [1e-3, 1e2] as const;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const STEPS = 90;
/** Share of what the two derivatives have apart; below it nothing but rounding is left. */
const LEAST_APART = 1e-12;

/**
 * Null below three points, where no x is above 0, and where the points do not tell the two numbers apart: all at one x,
 * or all on the floor.
 */
export function levelling(xs: readonly number[], ys: readonly number[]): Levelling | null {
  const reach = Math.max(...xs);
  if (xs.length < 3 || !(reach > 0)) return null;
  const at = (logRate: number): { most: number; squares: number } => {
    const rate = Math.exp(logRate);
    const shape = xs.map((x) => -Math.expm1(-rate * x));
    const most = shape.reduce((sum, f, k) => sum + f * ys[k], 0) / shape.reduce((sum, f) => sum + f * f, 0);
    return { most, squares: shape.reduce((sum, f, k) => sum + (ys[k] - most * f) ** 2, 0) };
  };
  let [low, high] = RATES.map((times) => Math.log(times / reach));
  for (let step = 0; step < STEPS; step++) {
    const inner = GOLDEN * (high - low);
    if (at(high - inner).squares < at(low + inner).squares) high = low + inner;
    else low = high - inner;
  }
  const rate = Math.exp((low + high) / 2);
  const { most, squares } = at(Math.log(rate));
  let [ff, fg, gg] = [0, 0, 0];
  for (const x of xs) {
    const f = -Math.expm1(-rate * x);
    const g = most * x * Math.exp(-rate * x);
    ff += f * f;
    fg += f * g;
    gg += g * g;
  }
  const apart = ff * gg - fg * fg;
  if (!(apart > LEAST_APART * ff * gg)) return null;
  const per = squares / (xs.length - 2) / apart;
  const firstSquared = per * (rate * rate * gg - 2 * rate * most * fg + most * most * ff);
  return {
    most,
    rate,
    mostError: Math.sqrt(per * gg),
    rateError: Math.sqrt(per * ff),
    first: most * rate,
    firstError: Math.sqrt(Math.max(0, firstSquared)),
    squares,
  };
}
