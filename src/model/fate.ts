/**
 * Rule S: the verdict on a seam. It falls at nuclei and runs along the seam from there like a zip.
 *
 * Nuclei appear on open contact at a constant rate per mm and day, and spread at a constant speed: nucleation and
 * growth in one dimension (Kolmogorov 1937, Johnson & Mehl 1939, Avrami 1939-41). Where edges meet all along at once
 * the mean stretch is 2 sqrt(c / (pi J)) (Meijering 1953, Philips Res. Rep. 8: 270-290): the zip length.
 * The mean fused share equals the acceptance for every geometry, as each point takes the coin of the nucleus that
 * reaches it; only the spread between tiles differs.
 */
import { forNeighbours, queueFrom } from './contact';
import { polypOf, toSite } from './front';
import { pairIndex } from './layout';
import { exposeToLap } from './lap';
import { draw } from './noise';
import { veiledUntil } from './ridge';
import { addNucleus, FATE } from './seam-table';
import { sting } from './sting';
import { BARE, joinColonies, type State } from './state';
import { dequeue } from './zip';

/** Length of seam per open contact cell of one side, in cells: mean over all tilts, measured on the prototype. */
const LENGTH_PER_CELL = 1.122;

/** Verdicts already given run on up to day `now`. */
export function zip(state: State, now: number): void {
  const { row, seam, nuclei } = state;
  const queue = state.zip;
  while (queue.count > 0 && queue.day[0] <= now) {
    const day = queue.day[0];
    const nucleus = queue.nucleus[0];
    const r = row[queue.cell[0]];
    dequeue(queue);
    // the row may have been closed, or opened again towards another piece, since it was queued
    if (r === 0 || seam.fate[r] !== FATE.undecided || day < seam.touched[r]) continue;
    if (Math.min(seam.own[r], seam.other[r]) !== nuclei.originA[nucleus]) continue;
    if (Math.max(seam.own[r], seam.other[r]) !== nuclei.originB[nucleus]) continue;
    settle(state, r, nucleus, day);
  }
}

export function settle(state: State, r: number, nucleus: number, day: number): void {
  const { seam, nuclei } = state;
  const fate = nuclei.fate[nucleus];
  seam.fate[r] = fate;
  seam.settled[r] = day;
  seam.nucleus[r] = nucleus;
  if (fate === FATE.fused) joinColonies(state, seam.own[r], seam.other[r]);
  else if (fate === FATE.lapped) exposeToLap(state, r);
  else if (fate === FATE.dead) sting(state, r);
  forNeighbours(state, r, (n) => {
    queueFrom(state, r, n);
  });
}

/** Open contact of one polyp's cells with one piece across: how many cells, and the row nearest to the polyp's site. */
interface OpenSide {
  cells: number;
  row: number;
  toSiteMm2: number;
}

/** New nuclei on contacts still open at day `now`, by polyp side and piece across, in order of the two. */
export function nucleate(state: State, now: number): void {
  const { seam, layout, keys, polyps } = state;
  const { rates } = layout;
  const sides = openSides(state, now);
  for (const side of Float64Array.from(sides.keys()).sort()) {
    const open = sides.get(side);
    if (open === undefined) continue;
    const p = Math.floor(side / 65536);
    const chance = (rates.nucleiPerMmDay * LENGTH_PER_CELL * layout.cellMm * open.cells) / 2;
    if (draw(keys.nucleate, polyps.site[p], state.day * 65536 + (side % 65536)) >= chance) continue;
    // another side of the contact may have had its verdict this very day
    if (seam.fate[open.row] === FATE.undecided) settle(state, open.row, judge(state, open.row, now), now);
  }
}

/** By polyp * 65536 + piece across; rows that are decided or gone leave the list of open rows. */
function openSides(state: State, now: number): Map<number, OpenSide> {
  const { seam, layout, open, variety } = state;
  const sides = new Map<number, OpenSide>();
  let kept = 0;
  for (const r of open) {
    const cell = seam.cell[r];
    if (cell < 0 || seam.fate[r] !== FATE.undecided) continue;
    open[kept++] = r;
    if (seam.touched[r] + layout.rates.verdictDelayDays > now) continue;
    if (variety[cell] === BARE || variety[seam.partner[r]] === BARE) continue;
    const p = polypOf(state, cell);
    const side = p * 65536 + seam.other[r];
    const toSiteMm2 = toSite(state, cell, p);
    const known = sides.get(side);
    if (known === undefined) {
      sides.set(side, { cells: 1, row: r, toSiteMm2 });
      continue;
    }
    known.cells++;
    if (toSiteMm2 < known.toSiteMm2 || (toSiteMm2 === known.toSiteMm2 && cell < seam.cell[known.row])) {
      known.row = r;
      known.toSiteMm2 = toSiteMm2;
    }
  }
  open.length = kept;
  return sides;
}

/**
 * The two coins of a new nucleus. The first is Polya's urn: the n-th nucleus of a pair, f of them fused so far, fuses
 * with chance (A k + f) / (k + n), which is the beta-binomial of mean A; k is the pair's consistency.
 */
function judge(state: State, r: number, now: number): number {
  const { seam, layout, pieces, keys, nuclei, urnDrawn, urnFused } = state;
  const { pairs, rates, aggression } = layout;
  const a = pieces.variety[seam.own[r]];
  const b = pieces.variety[seam.other[r]];
  const pair = pairIndex(Math.min(a, b), Math.max(a, b));
  const fresh =
    seam.touched[r] <= pieces.freshUntilDay[seam.own[r]] &&
    seam.touched[r] <= pieces.freshUntilDay[seam.other[r]];
  const acceptance = pairs.acceptance[pair] * (fresh ? 1 : rates.rimFactor);
  const k = pairs.consistency[pair];
  const n = urnDrawn[pair];
  const chance = acceptance === 0 ? 0 : acceptance === 1 ? 1 : (acceptance * k + urnFused[pair]) / (k + n);
  let fate: number = FATE.ridge;
  if (draw(keys.coin, pair, n) < chance) {
    fate = FATE.fused;
    urnFused[pair]++;
  } else {
    const u = draw(keys.kind, pair, n);
    const lapChance = Math.min(1, rates.lapGain * Math.abs(aggression[a] - aggression[b]));
    if (u < rates.deadShare) fate = FATE.dead;
    else if (u < rates.deadShare + (1 - rates.deadShare) * lapChance) fate = FATE.lapped;
  }
  urnDrawn[pair]++;
  const veil = fate === FATE.ridge ? veiledUntil(keys, rates, pair, n, now) : 0;
  return addNucleus(nuclei, now, fate, seam.own[r], seam.other[r], veil);
}

/** Fused seams that turn to a ridge, a whole nucleus at a time (Hidaka et al. 1997, Coral Reefs 16: 13-20). */
export function revert(state: State, now: number): void {
  const { seam, layout, pieces, keys, nuclei } = state;
  const { pairs } = layout;
  const turned = new Set<number>();
  for (let k = 0; k < nuclei.count; k++) {
    if (nuclei.fate[k] !== FATE.fused) continue;
    const pair = pairIndex(pieces.variety[nuclei.originA[k]], pieces.variety[nuclei.originB[k]]);
    const chance = pairs.revertPerDay[pair];
    if (chance > 0 && draw(keys.revert, k, state.day) < chance) {
      nuclei.fate[k] = FATE.ridge;
      turned.add(k);
    }
  }
  if (turned.size === 0) return;
  for (let r = 1; r < seam.count; r++) {
    if (!turned.has(seam.nucleus[r])) continue;
    seam.fate[r] = FATE.ridge;
    seam.settled[r] = now;
  }
}
