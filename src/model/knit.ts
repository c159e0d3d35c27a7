/** Grafts: patches that came as one piece are fused where they touch, or what is known of that seam. */
import type { KnownSeam } from './cuts';
import { lowerAlong } from './distance';
import { settle } from './fate';
import { addNucleus, FATE } from './seam-table';
import type { State } from './state';

/** How far from a drawn line a contact still belongs to the known seam, mm. */
const NEAR_SEAM_MM = 1;

/** `graft` numbers the graft of each piece, 0 for none. */
export function knit(state: State, graft: Uint16Array, seams: readonly KnownSeam[], day: number): void {
  const { seam, nuclei, layout } = state;
  const { columns, rows, cellMm } = layout;
  const known = seams.map(({ along, fate, over }) => {
    const toLine = new Float32Array(columns * rows).fill(Infinity);
    lowerAlong(toLine, along, NEAR_SEAM_MM / cellMm, columns, rows);
    return { toLine, fate, over };
  });
  const made = new Map<string, number>();
  for (let r = 1; r < seam.count; r++) {
    const [cell, own, other] = [seam.cell[r], seam.own[r], seam.other[r]];
    if (cell < 0 || (graft[own] ?? 0) === 0 || graft[own] !== graft[other] || seam.fate[r] !== FATE.undecided)
      continue;
    let fate: number = FATE.fused;
    let over = 0;
    let least = Infinity;
    for (const one of known)
      if (one.toLine[cell] < least) {
        least = one.toLine[cell];
        fate = one.fate;
        over = one.over;
      }
    const key = `${Math.min(own, other)} ${Math.max(own, other)} ${fate} ${over}`;
    const nucleus = made.get(key) ?? addNucleus(nuclei, day, fate, own, other, 0, over);
    made.set(key, nucleus);
    // the patches touched before they were set, whatever their outer edges still have to heal
    seam.touched[r] = day;
    settle(state, r, nucleus, day);
  }
}
