/** A 64-bit digest of a tile: two with one hash are alike in every cell, seam, verdict and polyp. */
import { FLAG, type State } from './state';

const PRIME_A = 0x01000193;
const PRIME_B = 0x85ebca6b;

/** Two 32-bit lanes of multiply and xor, after FNV-1a with its published prime; not for secrets. */
class Digest {
  private a = 0x811c9dc5;
  private b = 0x9747b28c;

  add(value: number): void {
    this.a = Math.imul(this.a ^ value, PRIME_A);
    this.b = Math.imul(this.b + value, PRIME_B) ^ (this.b >>> 13);
  }

  /** Each cell that tissue ever reached: when, whose and how. Lanes in local names, for cells are many. */
  addCells({ arrival, variety, origin, flags }: State): void {
    const arrivalBits = new Int32Array(arrival.buffer);
    let a = this.a;
    let b = this.b;
    for (let i = 0; i < origin.length; i++) {
      if (origin[i] === 0) continue;
      const when = arrivalBits[i] ^ Math.imul(i, 0x9e3779b1);
      const whose = ((flags[i] & FLAG.lapped) << 24) | (variety[i] << 16) | origin[i];
      a = Math.imul(Math.imul(a ^ when, PRIME_A) ^ whose, PRIME_A);
      b = Math.imul(b + when, PRIME_B) ^ (b >>> 13);
      b = Math.imul(b + whose, PRIME_B) ^ (b >>> 13);
    }
    this.a = a;
    this.b = b;
  }

  text(): string {
    const hex = (n: number): string => (n >>> 0).toString(16).padStart(8, '0');
    return hex(this.a ^ (this.a >>> 15)) + hex(this.b ^ (this.b >>> 16));
  }
}

export function hashState(state: State): string {
  const { row, seam, nuclei, polyps, colony, urnDrawn, urnFused } = state;
  const digest = new Digest();
  digest.add(state.day);
  digest.addCells(state);
  const touchedBits = new Int32Array(seam.touched.buffer);
  const settledBits = new Int32Array(seam.settled.buffer);
  for (let i = 0; i < row.length; i++) {
    const r = row[i];
    if (r === 0) continue;
    digest.add(seam.partner[r]);
    digest.add(touchedBits[r]);
    digest.add(settledBits[r]);
    digest.add((seam.fate[r] << 24) ^ seam.nucleus[r]);
  }
  const veilBits = new Int32Array(nuclei.veiledUntil.buffer);
  for (let k = 0; k < nuclei.count; k++) {
    digest.add((nuclei.originA[k] << 16) | nuclei.originB[k]);
    digest.add(nuclei.fate[k]);
    if (nuclei.veiledUntil[k] > 0) digest.add(veilBits[k] ^ Math.imul(k, 0x9e3779b1));
    if (nuclei.over[k] > 0) digest.add((nuclei.over[k] << 24) ^ k);
  }
  for (let p = 0; p < polyps.variety.length; p++) {
    if (polyps.variety[p] === 0) continue;
    digest.add((polyps.site[p] << 4) ^ polyps.variety[p]);
    digest.add(polyps.origin[p]);
  }
  for (let pair = 0; pair < urnDrawn.length; pair++) {
    if (urnDrawn[pair] !== 0) digest.add((pair << 24) ^ (urnDrawn[pair] << 12) ^ urnFused[pair]);
  }
  for (let o = 1; o <= state.pieces.count; o++) digest.add(colony[o]);
  const { covered } = state;
  const sinceBits = new Int32Array(covered.since.buffer);
  const coveredBits = new Int32Array(covered.day.buffer);
  for (let k = 0; k < covered.count; k++) {
    digest.add(covered.cell[k]);
    digest.add(covered.variety[k] ^ sinceBits[k]);
    digest.add(coveredBits[k]);
  }
  return digest.text();
}
