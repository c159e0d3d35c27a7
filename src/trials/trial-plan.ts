/** The plan of a tile's layout: as it was drawn in Grow, or square pieces side by side where only that was noted. */
import { openPlan } from '../plan/file';
import { freshVariety } from '../plan/fresh-variety';
import {
  LONGEST_MONTHS,
  type PlainPiece,
  type Plan,
  type Refusal,
  type Variety,
  type Xy,
} from '../plan/plan';
import { DAYS_PER_MONTH } from '../units/quantity';
import { daysBetween, lastDay } from './last-seen';
import type { Log, Trial } from './trial';

const LEAST_MONTHS = 12;
const PIECE_MM = 20;
/** Free tile round the pieces, mm. */
const MARGIN_MM = 20;
const TILE_MM = [20, 300] as const;

export type TrialPlan =
  { readonly plan: Plan; readonly seed: string | null } | { readonly refusals: readonly Refusal[] };

/** Grown at least as long as the tile has been read. */
export function trialPlan(log: Log, trial: Trial): TrialPlan {
  const { layout } = trial;
  if ('plan' in layout) {
    const opened = openPlan(JSON.stringify(layout.plan));
    return 'refusals' in opened ? opened : { plan: longEnough(opened.plan, trial), seed: layout.seed };
  }
  const { pieceMm = PIECE_MM, gapMm = 0 } = layout;
  const pitchMm = pieceMm + gapMm;
  const columns = Math.ceil(Math.sqrt(trial.varieties.length));
  const rows = Math.ceil(trial.varieties.length / columns);
  const sizeMm = Math.max(TILE_MM[0], Math.min(TILE_MM[1], Math.ceil(columns * pitchMm + 2 * MARGIN_MM)));
  const plan: Plan = {
    seambench: 1,
    name: `Tile ${trial.tag}`,
    tile: { shape: 'square', sizeMm },
    varieties: varietiesOf(log, trial),
    pairs: [],
    pieces: trial.varieties.map((variety, k): PlainPiece => {
      const [column, row] = [k % columns, Math.floor(k / columns)];
      const at: Xy = [(column - (columns - 1) / 2) * pitchMm, (row - (rows - 1) / 2) * pitchMm];
      return { id: `p${k + 1}`, variety, at, turnDeg: 0, outline: square(pieceMm / 2) };
    }),
    steps: [],
    months: LEAST_MONTHS,
  };
  return { plan: longEnough(plan, trial), seed: null };
}

function square(halfMm: number): Xy[] {
  return [[-halfMm, -halfMm], [halfMm, -halfMm], [halfMm, halfMm], [-halfMm, halfMm]]; // prettier-ignore
}

/** Rates are the planning values: those of the farm come by 'Use these rates'. */
function varietiesOf(log: Log, trial: Trial): Variety[] {
  const made: Variety[] = [];
  for (const id of trial.varieties) {
    const noted = log.varieties.find((variety) => variety.id === id);
    const fresh = freshVariety(made);
    made.push({ ...fresh, id, name: noted?.name ?? id, colour: noted?.colour ?? fresh.colour });
  }
  return made;
}

function longEnough(plan: Plan, trial: Trial): Plan {
  const months = Math.ceil(daysBetween(trial.setOn, lastDay(trial)) / DAYS_PER_MONTH);
  return { ...plan, months: Math.min(LONGEST_MONTHS, Math.max(plan.months, months)) };
}
