/**
 * The value that a share p of the sample does not exceed: the ceil(p n)-th smallest, 0 < p <= 1. It is the intercept of
 * a quantile regression without other terms (Koenker & Bassett 1978, Econometrica 46: 33-50), where no lines join
 * the values as in `quantile` of intervals.ts. NaN for no values.
 */
export function upperQuantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(p * sorted.length) - 1)] ?? Number.NaN;
}
