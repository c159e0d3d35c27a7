/** What a seam can be called from above, and what it can be: a look-alike is a wall that still looks fused. */
export const CALLS = ['fused', 'ridge', 'lapped', 'dead', 'undecided'] as const;
export type Call = (typeof CALLS)[number];

export const SEAM_KINDS = [...CALLS, 'veiled'] as const;
export type SeamKind = (typeof SEAM_KINDS)[number];

/** What a call is judged by. */
export interface Seen {
  readonly is: SeamKind;
  /** No eye can tell it from above yet (seam-signs.ts). */
  readonly isEarly?: boolean | undefined;
}

/** Whoever waits where nothing can be told yet has not erred; and a look-alike is a ridge. */
export function isRightCall({ is, isEarly }: Seen, call: Call): boolean {
  if (call === 'undecided' && (isEarly === true || is === 'veiled')) return true;
  return call === (is === 'veiled' ? 'ridge' : is);
}
