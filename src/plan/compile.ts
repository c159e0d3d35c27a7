/**
 * Plan -> Layout: the only place where millimetres become cells.
 * Cells of a piece are those whose centres lie inside its outline. Their starting day is the healing delay plus the
 * signed distance to the outline over the rim rate, so that a cut sits where it is drawn and not on the lattice.
 */
import { DEFAULTS, MINGLE_DEFAULTS } from '../model/defaults';
import {
  PAIR_STRIDE,
  pairIndex,
  type Layout,
  type PairTables,
  type PieceTable,
  type Rates,
} from '../model/layout';
import { dayOfMonth, perDay } from '../units/quantity';
import { acceptanceMean } from './acceptance';
import { cutsOf, healingOf, seamsOf } from './cuts';
import { partsOf } from './outline';
import { pairOf, type Mingle, type Pair, type Piece, type PlainPiece, type Plan } from './plan';
import { rasterise } from './rasterise';

/** A plan that refuse.ts passes, at a cell size in mm. */
export function compile(plan: Plan, cellMm: number): Layout {
  const across = Math.ceil(plan.tile.sizeMm / cellMm - 1e-9);
  const columns = across + 2;
  const cells = columns * columns;
  const inside = insideOf(plan, columns, cellMm);
  const grid = { columns, cellMm, inside };
  const layout = {
    columns,
    rows: columns,
    cellMm,
    inside,
    piece: new Uint16Array(cells),
    startDay: new Float32Array(cells),
    pieces: pieceTable(plan),
    varieties: plan.varieties.length,
    rimMmPerDay: Float64Array.from([0, ...plan.varieties.map((variety) => perDay(variety.rimMmPerMonth))]),
    aggression: Float64Array.from([0, ...plan.varieties.map((variety) => variety.aggression)]),
    pairs: pairTables(plan),
    rates: ratesOf(plan),
    cuts: cutsOf(plan, grid),
    seams: plan.pieces.flatMap((piece) => seamsOf(plan, piece, grid)),
    days: dayOfMonth(plan.months),
  };
  partsSet(plan).forEach(({ part }, index) => {
    setOnGrid(layout, part, index + 1);
  });
  return layout;
}

function insideOf(plan: Plan, columns: number, cellMm: number): Uint8Array {
  const inside = new Uint8Array(columns * columns);
  const half = plan.tile.sizeMm / 2;
  for (let r = 1; r < columns - 1; r++) {
    const y = (r - (columns - 1) / 2) * cellMm;
    for (let c = 1; c < columns - 1; c++) {
      const x = (c - (columns - 1) / 2) * cellMm;
      const on =
        plan.tile.shape === 'disc'
          ? x * x + y * y <= half * half
          : Math.abs(x) <= half && Math.abs(y) <= half;
      if (on) inside[r * columns + c] = 1;
    }
  }
  return inside;
}

function varietyNumber(plan: Plan, id: string): number {
  return plan.varieties.findIndex((variety) => variety.id === id) + 1;
}

/** What is set on day 0, one variety each, in the order of their numbers: patches of a graft one by one. */
function partsSet(plan: Plan): { readonly piece: Piece; readonly part: PlainPiece; readonly name: number }[] {
  return plan.pieces.flatMap((piece, k) => partsOf(piece).map((part) => ({ piece, part, name: k + 1 })));
}

/** The cells that no earlier piece holds, each with the day at which the rim stands there. */
function setOnGrid(layout: Layout, part: PlainPiece, number: number): void {
  const healed = layout.pieces.healedDay[number];
  const rate = layout.rimMmPerDay[layout.pieces.variety[number]];
  const { cells, depthMm } = rasterise(layout, part);
  cells.forEach((cell, k) => {
    if (layout.piece[cell] !== 0) return;
    layout.piece[cell] = number;
    layout.startDay[cell] = healed - depthMm[k] / rate;
  });
}

function pieceTable(plan: Plan): PieceTable {
  const parts = partsSet(plan);
  const healing = parts.map(({ piece }) => healingOf(plan, piece));
  return {
    count: parts.length,
    variety: Uint8Array.from([0, ...parts.map(({ part }) => varietyNumber(plan, part.variety))]),
    healedDay: Float64Array.from([0, ...healing.map(({ healingDays }) => healingDays)]),
    freshUntilDay: Float64Array.from([0, ...healing.map((one) => one.healingDays + one.freshDays)]),
    name: Uint16Array.from([0, ...parts.map(({ name }) => name)]),
    graft: Uint16Array.from([0, ...parts.map(({ piece, name }) => ('patches' in piece ? name : 0))]),
  };
}

function ratesOf(plan: Plan): Rates {
  const { settings = {} } = plan;
  const zipLengthMm = settings.zipLengthMm ?? DEFAULTS.zipLengthMm.value;
  const zipMmPerDay = DEFAULTS.zipMmPerDay.value;
  return {
    roughness: settings.roughness ?? DEFAULTS.roughness.value,
    polypMm: settings.polypMm ?? DEFAULTS.polypMm.value,
    polypJitter: DEFAULTS.polypJitter.value,
    verdictDelayDays: DEFAULTS.verdictDelayDays.value,
    zipMmPerDay,
    // zip length Z = 2 sqrt(c / (pi J)), Meijering 1953
    nucleiPerMmDay: (4 * zipMmPerDay) / (Math.PI * zipLengthMm * zipLengthMm),
    rimFactor: settings.rimFactor ?? DEFAULTS.rimFactor.value,
    deadShare: settings.deadShare ?? DEFAULTS.deadShare.value,
    veiledShare: settings.veiledShare ?? DEFAULTS.veiledShare.value,
    lapGain: DEFAULTS.lapGain.value,
    lapMmPerDay: perDay(DEFAULTS.lapMmPerMonth.value),
    stingMm: settings.stingMm ?? DEFAULTS.stingMm.value,
    ridgeMmPerDay: perDay(DEFAULTS.ridgeMmPerMonth.value),
    ridgeCapMm: DEFAULTS.ridgeCapMm.value,
    healingDays: settings.healingDays ?? DEFAULTS.healingDays.value,
    freshCutDays: DEFAULTS.freshCutDays.value,
  };
}

function mingleOf(pair: Pair | undefined): Mingle {
  const mingle = pair?.mingle ?? 'veins';
  return typeof mingle === 'string' ? MINGLE_DEFAULTS[mingle] : mingle;
}

/**
 * Interleave I (mm per sqrt(mm)) to the sideways step of a birth, in polyps: fitted on the prototype to
 * variance / advance = p (0.08 + 0.22 z + 0.62 z z); 0.08 is the floor that the polyp lattice itself brings.
 */
function scatterOf(interleave: number, polypMm: number): number {
  const w = (interleave * interleave) / polypMm;
  return w > 0.08 ? (Math.sqrt(0.0484 + 2.48 * (w - 0.08)) - 0.22) / 1.24 : 0;
}

/** Tables of zeros. */
export function blankPairTables(): PairTables {
  const table = (): Float64Array => new Float64Array(PAIR_STRIDE * PAIR_STRIDE);
  return {
    acceptance: table(),
    consistency: table(),
    revertPerDay: table(),
    scatter: table(),
    stray: table(),
    strayReachMm: table(),
    weave: table(),
    weaveReachMm: table(),
    lean: table(),
    turnoverPerDay: table(),
  };
}

function pairTables(plan: Plan): PairTables {
  const tables = blankPairTables();
  const polypMm = plan.settings?.polypMm ?? DEFAULTS.polypMm.value;
  plan.varieties.forEach((a, row) => {
    plan.varieties.forEach((b, column) => {
      const pair = pairOf(plan, a.id, b.id);
      const mingle = mingleOf(pair);
      const k = pairIndex(row + 1, column + 1);
      tables.acceptance[k] = acceptanceMean(pair);
      tables.consistency[k] = pair?.consistency ?? DEFAULTS.consistency.value;
      tables.revertPerDay[k] = perDay(pair?.revertPerMonth ?? 0);
      tables.scatter[k] = scatterOf(mingle.interleave, polypMm);
      tables.stray[k] = mingle.stray;
      tables.strayReachMm[k] = mingle.strayReachMm;
      tables.weave[k] = mingle.weave;
      tables.weaveReachMm[k] = mingle.weaveReachMm;
      tables.lean[k] = mingle.lean;
      tables.turnoverPerDay[k] = perDay(mingle.turnoverPerMonth);
    });
  });
  return tables;
}
