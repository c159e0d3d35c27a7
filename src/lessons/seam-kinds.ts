/** What a seam can be called from above, and what it can be: a look-alike is a wall that still looks fused. */
export const CALLS = ['fused', 'ridge', 'lapped', 'dead', 'undecided'] as const;
export type Call = (typeof CALLS)[number];

export const SEAM_KINDS = [...CALLS, 'veiled'] as const;
export type SeamKind = (typeof SEAM_KINDS)[number];

/** Of a look-alike both are right: nobody can tell it by eye, and who waits has not erred. */
const RIGHT_OF_VEILED: readonly Call[] = ['ridge', 'undecided'];

export function isRightCall(is: SeamKind, call: Call): boolean {
  return is === 'veiled' ? RIGHT_OF_VEILED.includes(call) : is === call;
}
