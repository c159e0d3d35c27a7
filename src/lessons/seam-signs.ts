/**
 * Whether an eye can tell a seam from above. Read off the frame, since the picture is drawn from it: a fused seam shows
 * by specks of one colour in the other, a ridge by its crest, a lapped one by its lip; a look-alike by nothing; a bare
 * strip is there from the day of the verdict. The two thresholds are judgement, from pictures of many tiles.
 */
import type { Frame } from '../model/frame';
import type { Xy } from '../plan/plan';
import type { SeamKind } from './seam-kinds';

/** A crest or lip lower than this throws no shade that is seen beside the polyps'. */
const LEAST_HIGH_MM = 0.3;
/** One patch of 2 mm across: less is easily taken for a ragged rim. */
const LEAST_SPECKS_MM2 = 3;
const STEP_MM = 0.25;

/** Of a mark (seam-marks.ts). */
interface Place {
  readonly at: Xy;
  readonly is: SeamKind;
  readonly pair: readonly [number, number];
  readonly to: Xy;
}

/** Settled, and looks like a seam of which nothing is decided. */
export function isEarlySeam(frame: Frame, mark: Place): boolean {
  if (mark.is === 'veiled') return true;
  if (mark.is === 'ridge') return crestMm(frame, mark) < LEAST_HIGH_MM;
  if (mark.is === 'lapped') return lipMm(frame, mark) < LEAST_HIGH_MM;
  return mark.is === 'fused' && specksMm2(frame, mark.pair) < LEAST_SPECKS_MM2;
}

/** How far the surface at the seam stands above that to both sides of it. */
export function crestMm(frame: Frame, mark: Place): number {
  const flanks = [-3, -2.5, -2, -1.5, 1.5, 2, 2.5, 3].map((off) => surfaceMm(frame, mark, off));
  const around = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1].map((off) => surfaceMm(frame, mark, off));
  return Math.max(...around) - flanks.reduce((sum, height) => sum + height, 0) / flanks.length;
}

/** How far the surface on one side of the seam stands above that on the other. */
export function lipMm(frame: Frame, mark: Place): number {
  return Math.abs(surfaceMm(frame, mark, -0.75) - surfaceMm(frame, mark, 0.75));
}

/** Height of the surface beside the mark, in the mean of 3 mm along the seam; `off` is towards its `to`. */
function surfaceMm(frame: Frame, { at, to }: Pick<Place, 'at' | 'to'>, off: number): number {
  const reach = Math.hypot(to[0] - at[0], to[1] - at[1]);
  const [ux, uy] = [(to[0] - at[0]) / reach, (to[1] - at[1]) / reach];
  let [sum, count] = [0, 0];
  for (let along = -1.5; along <= 1.5; along += STEP_MM) {
    sum += frame.height[cellAt(frame, [at[0] + ux * off - uy * along, at[1] + uy * off + ux * along])] / 100;
    count++;
  }
  return sum / count;
}

function cellAt({ columns, rows, cellMm }: Frame, [x, y]: Xy): number {
  return Math.round(y / cellMm + (rows - 1) / 2) * columns + Math.round(x / cellMm + (columns - 1) / 2);
}

/** Area of either colour that lies apart from its colony, in the other. */
export function specksMm2(frame: Frame, pair: readonly [number, number]): number {
  const patches = patchesOf(frame, pair);
  const mostOf = (variety: number): number =>
    Math.max(0, ...patches.filter((patch) => patch.variety === variety).map(({ cells }) => cells));
  const colonies = new Map(pair.map((variety) => [variety, mostOf(variety)]));
  const specks = patches.filter(
    ({ variety, cells, isInOther }) => isInOther && cells !== colonies.get(variety),
  );
  return specks.reduce((sum, { cells }) => sum + cells, 0) * frame.cellMm ** 2;
}

interface Patch {
  readonly variety: number;
  readonly cells: number;
  /** Most of what it borders on is the other of the pair. */
  readonly isInOther: boolean;
}

/** Connected patches of the two colours. */
function patchesOf({ label, columns }: Frame, pair: readonly [number, number]): Patch[] {
  const seen = new Uint8Array(label.length);
  const patches: Patch[] = [];
  for (let i = 0; i < label.length; i++) {
    const variety = label[i];
    if (seen[i] !== 0 || !pair.includes(variety)) continue;
    const other = variety === pair[0] ? pair[1] : pair[0];
    let [cells, beside, besideOther] = [0, 0, 0];
    const open = [i];
    seen[i] = 1;
    for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
      cells++;
      for (const step of [1, -1, columns, -columns]) {
        const next = cell + step;
        if (label[next] !== variety) {
          beside++;
          if (label[next] === other) besideOther++;
        } else if (seen[next] === 0) {
          seen[next] = 1;
          open.push(next);
        }
      }
    }
    patches.push({ variety, cells, isInOther: besideOther * 2 > beside });
  }
  return patches;
}
