/**
 * A published or provable claim as data: what is claimed, who says so, what number follows, and how far ours may be off.
 * Tests loop over them; each is told apart by its name.
 */
export interface Check {
  readonly name: string;
  readonly claim: string;
  readonly source: string;
  readonly unit: string;
  readonly expected: number;
  /** Greatest distance from `expected` that still passes, in `unit`. */
  readonly tolerance: number;
  /** Why it may be off that far. */
  readonly because: string;
  /** What the engine gives, in `unit`. */
  readonly run: () => number;
}

/** Runs of the engine cost seconds and several checks read the same ones: works out once. */
export function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => (kept ??= { value: work() }).value;
}
