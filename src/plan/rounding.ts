/** How finely a plan keeps its numbers: what a hand or a rule gives is brought to this, what a file says stays. */

/** To 0.001 (mm or degrees), without a negative zero. */
export function rounded(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}

/** A turn in (-180, 180]. */
export function halfTurns(deg: number): number {
  const within = rounded(deg % 360);
  if (within > 180) return rounded(within - 360);
  return within <= -180 ? rounded(within + 360) : within;
}
