/** Steps -> Cuts: what of plan/compile.ts concerns steps. Millimetres become cells, names become numbers. */
import { DEFAULTS } from '../model/defaults';
import type { Cut, Fresh, GridPath, GridPoint, KnownSeam, Rigid } from '../model/cuts';
import { FATE } from '../model/seam-table';
import { perDay } from '../units/quantity';
import { partsOf } from './outline';
import type { Piece, Plan, Step, Xy } from './plan';
import { rasterise, type Grid } from './rasterise';
import { faceName, facesOfRecut, followPieces, isolateKerfMm, pieceNumbers, type Standing } from './steps';

/** Number of a name that no piece has: that of a recut which is switched off. */
const NOBODY = 65_535;

export function cutsOf(plan: Plan, grid: Grid): Cut[] {
  if (plan.steps.length === 0) return [];
  const cuts: Cut[] = [];
  const number = pieceNumbers(plan);
  const context = { plan, grid, nameOf: (name: string) => number.get(name) ?? NOBODY };
  followPieces(plan, (step, standing) => {
    cuts.push(cutOf(step, standing, context));
  });
  return cuts;
}

interface Context {
  readonly plan: Plan;
  readonly grid: Grid;
  readonly nameOf: (name: string) => number;
}

function cutOf(step: Step, standing: ReadonlyMap<string, Standing>, { plan, grid, nameOf }: Context): Cut {
  const { cellMm } = grid;
  const dated = { step: step.id, day: step.day };
  switch (step.kind) {
    case 'trim':
      return {
        ...dated,
        kind: 'trim',
        width: step.widthMm / cellMm,
        along: step.along ? toGrid(step.along, grid) : null,
        name: step.piece === undefined ? 0 : nameOf(step.piece),
      };
    case 'recut':
      return {
        ...dated,
        kind: 'recut',
        lines: step.lines.map((line) => toGrid(line, grid)),
        halfKerf: step.kerfMm / 2 / cellMm,
        faces: facesOfRecut(plan.tile, step).map(({ rings }, k) => ({
          name: nameOf(faceName(step, k)),
          rings: rings.map((ring) => toGrid(ring, grid)),
        })),
        placed: step.then.map((to) => ({
          name: nameOf(to.piece),
          rigid: rigidTo(standing.get(to.piece), to, grid),
        })),
        coin: step.coin ?? false,
      };
    case 'move':
      return {
        ...dated,
        kind: 'move',
        name: nameOf(step.piece),
        rigid: rigidTo(standing.get(step.piece), step, grid),
      };
    case 'lift':
      return { ...dated, kind: 'lift', name: nameOf(step.piece) };
    case 'add':
      return {
        ...dated,
        kind: 'add',
        fresh: freshOf(plan, step.piece, nameOf(step.piece.id), grid),
        seams: seamsOf(plan, step.piece, grid),
      };
    case 'isolate':
      return {
        ...dated,
        kind: 'isolate',
        around: toGrid(step.around, grid),
        halfKerf: isolateKerfMm(step) / 2 / cellMm,
      };
    case 'scrape':
      return {
        ...dated,
        kind: 'scrape',
        along: toGrid(step.along, grid),
        halfWidth: step.widthMm / 2 / cellMm,
      };
  }
}

function pointTo([x, y]: Xy, { columns, cellMm }: Grid): GridPoint {
  return [x / cellMm + (columns - 1) / 2, y / cellMm + (columns - 1) / 2];
}

function toGrid(path: readonly Xy[], grid: Grid): GridPath {
  return path.map((point) => pointTo(point, grid));
}

/** A piece that is not there yet stays where it is put: the step will find nothing to move. */
function rigidTo(now: Standing | undefined, to: Standing, grid: Grid): Rigid {
  const turn = ((to.turnDeg - (now?.turnDeg ?? 0)) * Math.PI) / 180;
  // to 1e-12, so that every host has the same bits
  const exact = (value: number): number => Math.round(value * 1e12) / 1e12 + 0;
  return {
    cos: exact(Math.cos(turn)),
    sin: exact(Math.sin(turn)),
    from: pointTo(now?.at ?? to.at, grid),
    to: pointTo(to.at, grid),
  };
}

/** Healing of a piece's edges, days; and how long they count as freshly cut after that. */
export function healingOf(plan: Plan, piece: Piece): { healingDays: number; freshDays: number } {
  if (piece.edge === 'rim') return { healingDays: 0, freshDays: -Infinity };
  return {
    healingDays: plan.settings?.healingDays ?? DEFAULTS.healingDays.value,
    freshDays: DEFAULTS.freshCutDays.value,
  };
}

function freshOf(plan: Plan, piece: Piece, name: number, grid: Grid): Fresh[] {
  const { healingDays, freshDays } = healingOf(plan, piece);
  return partsOf(piece).map((part) => {
    const variety = plan.varieties.findIndex(({ id }) => id === part.variety);
    const { cells, depthMm } = rasterise(grid, part);
    const rate = perDay(plan.varieties[variety].rimMmPerMonth);
    return {
      name,
      variety: variety + 1,
      cells,
      startDays: Float32Array.from(depthMm, (depth) => healingDays - depth / rate),
      healingDays,
      freshDays,
      graft: 'patches' in piece ? name : 0,
    };
  });
}

export function seamsOf({ varieties }: Plan, piece: Piece, grid: Grid): KnownSeam[] {
  if (!('patches' in piece) || piece.seams === undefined) return [];
  const turn = (piece.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [x0, y0] = piece.at;
  return piece.seams.map(({ along, is, over }) => ({
    along: toGrid(
      along.map(([x, y]): Xy => [x0 + x * cos - y * sin, y0 + x * sin + y * cos]),
      grid,
    ),
    fate: FATE[is],
    over: over === undefined ? 0 : 1 + varieties.findIndex((variety) => variety.id === over),
  }));
}
