/**
 * What a picture needs of a tile at a month: 5 bytes a cell, row-major, border cells included, and 7 bytes for each
 * layer that lies beneath another (model/covered.ts tells how layers come about).
 *
 * Thickness, all of it judgement and for pictures and sections only: tissue lays down skeleton by its age, RIM_MM at
 * its rim and then thickeningMonths to 63 % of thicknessMm; a piece comes with a crust of at least SET_CRUST_MM. A layer
 * that is covered stays as thick as it was on that day, and so does skeleton whose tissue has died at a dead seam. The layer on top of it is as thick as its age there asks for,
 * and its edge stands higher for a while: the lip. Walls of ridges are added on top (ridge.ts), and count as part of
 * the layer that they stand on. `height` is the surface of the topmost layer, so the layers of a cell fill it from the
 * tile up: without gaps, and never higher.
 */
import { DEFAULTS } from './defaults';
import { DAYS_PER_MONTH } from '../units/quantity';
import { byCell } from './covered';
import { expMinus, ridgeHeightMm, risesFrom } from './ridge';
import { liesOver } from './lap';
import type { Beneath } from './layers';
import { FATE, VEILED } from './seam-table';
import { BARE, FLAG, type State } from './state';
import { whole } from './steps';
import { eachStung } from './sting';

export interface Frame {
  readonly month: number;
  readonly columns: number;
  readonly rows: number;
  readonly cellMm: number;
  /** Variety 1..8, 0 empty, 255 died back. */
  readonly label: Uint8Array;
  /**
   * 0 off the seam. Low 3 bits: 1 undecided, 2 fused, 3 ridge, 4 lapped, 5 dead, 6 a ridge that still looks fused from
   * above. Bit 3: this side covers. Bits 4 to 7: the variety of the piece that the cell belongs to.
   */
  readonly seam: Uint8Array;
  /** Half months since tissue came, at most 254; 255 where there is none. */
  readonly age: Uint8Array;
  /** 0.01 mm above the tile. */
  readonly height: Uint16Array;
  readonly beneath: Beneath;
}

/** Polyp sites of a run, so that the picture shows polyps where the model has them. */
export interface PolypSites {
  /** Lattice of sites, row-major, `columns` x `rows`. */
  readonly columns: number;
  readonly rows: number;
  readonly spacingMm: number;
  /** Millimetres from the tile's centre of the corner of box (0, 0), both ways. */
  readonly originMm: number;
  /** Site within its box in 1/255 of the spacing: x, y for each box in turn. */
  readonly offset: Uint8Array;
}

/**
 * For the picture only, all judgement: a cut piece comes with some crust and tissue of some age; a ridge's half width;
 * how far the lip of lapping tissue stands above what it covers, and how long it takes to sink behind the lip; from how
 * far off a colony's own skeleton rises to where it lies on another's; the thin edge that a rim starts with.
 */
const SET_CRUST_MM = 0.9;
const SET_HALF_MONTHS = 12;
const RIDGE_HALF_WIDTH_MM = 0.9;
const LAP_STEP_MM = 0.9;
const LAP_SINKS_HALF_MONTHS = 3;
const LAP_RAMP_MM = 3;
const RIM_MM = 0.2;

/** Cells between two breaths: 10 to 20 ms. */
const STRIDE = 1 << 18;

/** The frame of a tile, with a breath now and then: on the largest tile it takes a fifth of a second in all. */
export function* frameBySteps(state: State, month: number): Generator<undefined, Frame> {
  const { layout, variety, row, seam, arrival, flags, pieces } = state;
  const { columns, rows, cellMm } = layout;
  const cells = columns * rows;
  const age = new Uint8Array(cells).fill(255);
  const height = new Uint16Array(cells);
  const seamState = new Uint8Array(cells);
  const crust = crustByAge();
  for (let i = 0; i < cells; i++) {
    if (i % STRIDE === STRIDE - 1) yield;
    if (variety[i] === 0) continue;
    const old = halfMonths(arrival[i], state.day);
    const k = Math.floor(old);
    const lapped = (flags[i] & FLAG.lapped) !== 0;
    const set = (flags[i] & FLAG.set) !== 0;
    age[i] = set && !lapped ? Math.max(k, SET_HALF_MONTHS) : k;
    height[i] = Math.round(Math.max(crust(old), set && !lapped ? 100 * SET_CRUST_MM : 0));
    const r = row[i];
    if (r !== 0 && seam.touched[r] <= state.day)
      seamState[i] = outcome(state, r) | (covers(state, r) ? 8 : 0) | (pieces.variety[seam.own[r]] << 4);
  }
  yield;
  keepDead(state, crust, height);
  const beneath = layersOf(state, crust, height);
  rampUp(state, height);
  raiseRidges(state, height);
  yield;
  return { month, columns, rows, cellMm, label: variety.slice(), seam: seamState, age, height, beneath };
}

/** The frame in one go. */
export function frameOf(state: State, month: number): Frame {
  return whole(frameBySteps(state, month));
}

/** Half months from one day to another, at most 254. */
function halfMonths(from: number, to: number): number {
  return Math.min(254, (2 * Math.max(0, to - from)) / DAYS_PER_MONTH);
}

/** Thickness in 0.01 mm of tissue of an age in half months. */
function crustByAge(): (age: number) => number {
  const most = DEFAULTS.thicknessMm.value * 100;
  const byHalfMonth = Float64Array.from(
    { length: 256 },
    (_, k) => 100 * RIM_MM + most * (1 - expMinus(k / 2 / DEFAULTS.thickeningMonths.value)),
  );
  return (age) => {
    const k = Math.floor(age);
    // between half months the crust goes on rising: a step would show as a terrace
    return byHalfMonth[k] + (age - k) * (byHalfMonth[k + 1] - byHalfMonth[k]);
  };
}

/** Bare skeleton is no thicker than on the day on which the first dead contact in reach took its tissue. */
function keepDead(state: State, crust: (age: number) => number, height: Uint16Array): void {
  const { seam, variety, arrival, flags } = state;
  for (let r = 1; r < seam.count; r++) {
    if (seam.cell[r] < 0 || seam.fate[r] !== FATE.dead) continue;
    eachStung(state, r, (cell) => {
      if (variety[cell] !== BARE) return;
      const least = (flags[cell] & FLAG.set) !== 0 ? 100 * SET_CRUST_MM : 0;
      const then = crust(halfMonths(arrival[cell], seam.settled[r]));
      height[cell] = Math.min(height[cell], Math.round(Math.max(then, least)));
    });
  }
}

/** The layers beneath others, and the height of what lies on them, which is put into `height`. */
function layersOf(state: State, crust: (age: number) => number, height: Uint16Array): Beneath {
  const { covered, flags } = state;
  const order = byCell(covered);
  const beneath = {
    cell: new Int32Array(order.length),
    variety: new Uint8Array(order.length),
    top: new Uint16Array(order.length),
  };
  let top = 0;
  order.forEach((k, at) => {
    const cell = covered.cell[k];
    const isLowest = at === 0 || covered.cell[order[at - 1]] !== cell;
    const thick = crust(halfMonths(covered.since[k], covered.day[k]));
    // only what lay on the tile itself can have been set there
    top = isLowest ? Math.max(thick, (flags[cell] & FLAG.set) !== 0 ? 100 * SET_CRUST_MM : 0) : top + thick;
    beneath.cell[at] = cell;
    beneath.variety[at] = covered.variety[k];
    beneath.top[at] = Math.round(top);
    const since = halfMonths(covered.day[k], state.day);
    height[cell] = Math.round(
      top + crust(since) + 100 * LAP_STEP_MM * expMinus(since / LAP_SINKS_HALF_MONTHS),
    );
  });
  return beneath;
}

/** Two layers stand higher than one: the colony's own skeleton beside them rises to them, and no cliff is left. */
function rampUp({ layout, origin, flags, ring, covered }: State, height: Uint16Array): void {
  if (covered.count === 0) return;
  const { columns, rows, cellMm } = layout;
  const reach = Math.ceil(LAP_RAMP_MM / cellMm);
  const flat = height.slice();
  for (let k = 0; k < covered.count; k++) {
    const cell = covered.cell[k];
    for (let axis = 0; axis < 8; axis += 2) {
      const own = cell + ring[axis];
      if (origin[own] !== origin[cell] || (flags[own] & FLAG.lapped) !== 0 || flat[own] >= flat[cell])
        continue;
      const step = flat[cell] - flat[own];
      const column = own % columns;
      const line = (own - column) / columns;
      for (let y = Math.max(1, line - reach); y <= Math.min(rows - 2, line + reach); y++) {
        for (let x = Math.max(1, column - reach); x <= Math.min(columns - 2, column + reach); x++) {
          const i = y * columns + x;
          if (origin[i] !== origin[cell] || (flags[i] & FLAG.lapped) !== 0) continue;
          const off =
            (cellMm * Math.sqrt((x - column) * (x - column) + (y - line) * (y - line))) / LAP_RAMP_MM;
          if (off < 1)
            height[i] = Math.max(height[i], flat[i] + step * (1 - off) * (1 - off) * (1 + 2 * off));
        }
      }
    }
  }
}

/** The low 3 bits of Frame.seam. */
function outcome({ seam, nuclei, day }: State, r: number): number {
  const isVeiled = seam.fate[r] === FATE.ridge && nuclei.veiledUntil[seam.nucleus[r]] > day;
  return isVeiled ? VEILED : seam.fate[r];
}

function covers(state: State, r: number): boolean {
  return state.seam.fate[r] === FATE.lapped && liesOver(state, r);
}

/** Adds the wall of each ridge contact: a soft profile about its mid-point. */
function raiseRidges(state: State, height: Uint16Array): void {
  const { layout, seam, nuclei, variety } = state;
  const { columns, rows, cellMm, rates } = layout;
  const wall = new Uint16Array(height.length);
  const reach = Math.ceil(RIDGE_HALF_WIDTH_MM / cellMm);
  for (let r = 1; r < seam.count; r++) {
    if (seam.cell[r] < 0 || seam.fate[r] !== FATE.ridge) continue;
    const top = 100 * ridgeHeightMm(state.day - risesFrom(seam, nuclei, r), rates);
    if (top === 0) continue;
    const x = ((seam.cell[r] % columns) + (seam.partner[r] % columns)) / 2;
    const y = (Math.floor(seam.cell[r] / columns) + Math.floor(seam.partner[r] / columns)) / 2;
    for (let dy = -reach; dy <= reach; dy++) {
      for (let dx = -reach; dx <= reach; dx++) {
        const column = (seam.cell[r] % columns) + dx;
        const line = Math.floor(seam.cell[r] / columns) + dy;
        if (column < 0 || column >= columns || line < 0 || line >= rows) continue;
        const i = line * columns + column;
        if (variety[i] === 0) continue;
        const ex = (column - x) * cellMm;
        const ey = (line - y) * cellMm;
        const f = 1 - (ex * ex + ey * ey) / (RIDGE_HALF_WIDTH_MM * RIDGE_HALF_WIDTH_MM);
        if (f > 0) wall[i] = Math.max(wall[i], top * f * f);
      }
    }
  }
  for (let i = 0; i < height.length; i++) height[i] += wall[i];
}

export function polypSites(state: State): PolypSites {
  const { columns, rows, spacingMm, cornerMm, xMm, yMm } = state.polyps;
  const offset = new Uint8Array(2 * columns * rows);
  for (let p = 0; p < columns * rows; p++) {
    offset[2 * p] = Math.round(255 * ((xMm[p] - cornerMm) / spacingMm - (p % columns)));
    offset[2 * p + 1] = Math.round(255 * ((yMm[p] - cornerMm) / spacingMm - Math.floor(p / columns)));
  }
  return { columns, rows, spacingMm, originMm: cornerMm, offset };
}
