/**
 * A traced seam as SVG path data in CSS pixels, told by shape as well as by colour: fused two lines, ridge teeth,
 * lapped ticks on the covered side, dead dots, undecided dashes (dots and dashes are made by the stroke).
 */
import type { Xy } from '../../plan/plan';
import type { SeamLine, SeamOutcome } from '../../skin/seam-trace';

export interface SeamPath {
  readonly outcome: SeamOutcome;
  /** Where the seam runs. */
  readonly course: string;
  /** What tells the outcome. */
  readonly shape: string;
}

const TOOTH_PX = 8;
const TOOTH_HEIGHT_PX = 3.5;
const TICK_PX = 8;
const TICK_LENGTH_PX = 6;
const TWIN_PX = 1.25;
const STEP_PX = 2;

/** From the lowest up. */
const DRAWN: readonly SeamOutcome[] = ['fused', 'undecided', 'dead', 'lapped', 'ridge'];

interface Spot {
  readonly at: Xy;
  /** Unit normal, to the right of the line as it runs. */
  readonly right: Xy;
}

/** One path an outcome, so that the grounds of lines that meet do not darken each other; walls over what is fused. */
export function seamPaths(lines: readonly SeamLine[], toPx: (mm: Xy) => Xy): SeamPath[] {
  return DRAWN.map((outcome) => {
    const drawnLines = lines
      .filter((line) => line.outcome === outcome)
      .map((line) => {
        const px = line.points.map(toPx);
        const spots = spaced(px, STEP_PX);
        const course = drawn(spots.map(({ at }) => at));
        return { course, shape: shapeOf(line, px, spots, course) };
      });
    return {
      outcome,
      course: drawnLines.map(({ course }) => course).join(''),
      shape: drawnLines.map(({ shape }) => shape).join(''),
    };
  }).filter(({ course }) => course !== '');
}

function shapeOf(line: SeamLine, px: readonly Xy[], spots: readonly Spot[], course: string): string {
  if (line.outcome === 'ridge') {
    return drawn(
      spaced(px, TOOTH_PX / 2).map(({ at, right }, k) =>
        offset(at, right, k % 2 === 0 ? -TOOTH_HEIGHT_PX : TOOTH_HEIGHT_PX),
      ),
    );
  }
  if (line.outcome === 'fused') {
    return [-TWIN_PX, TWIN_PX]
      .map((by) => drawn(spots.map(({ at, right }) => offset(at, right, by))))
      .join('');
  }
  if (line.outcome !== 'lapped') return course;
  const ticks = spaced(px, TICK_PX).map(({ at, right }) =>
    drawn([at, offset(at, right, line.covered * TICK_LENGTH_PX)]),
  );
  return course + ticks.join('');
}

function offset([x, y]: Xy, [nx, ny]: Xy, by: number): Xy {
  return [x + nx * by, y + ny * by];
}

function drawn(points: readonly Xy[]): string {
  if (points.length < 2) return '';
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

/** Places at even steps along a line, its two ends among them. */
function spaced(px: readonly Xy[], stepPx: number): Spot[] {
  const spots: Spot[] = [];
  let due = 0;
  let right: Xy = [0, 1];
  for (let k = 1; k < px.length; k++) {
    const [from, to] = [px[k - 1], px[k]];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length === 0) continue;
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    right = [-uy, ux];
    for (; due <= length; due += stepPx) spots.push({ at: [from[0] + ux * due, from[1] + uy * due], right });
    due -= length;
  }
  if (px.length > 1) spots.push({ at: px[px.length - 1], right });
  return spots;
}

export interface SeamWord {
  readonly words: string;
  readonly outcome: SeamOutcome;
  /** Middle of the pill. */
  readonly px: Xy;
  readonly widthPx: number;
}

const LEAST_NAMED_PX = 40;
const MOST_WORDS = 4;
/** One seam may be traced in several stretches: it is named once. */
const SAME_WORD_PX = 320;
const CHARACTER_PX = 6.4;
const PILL_PADDING_PX = 18;
const PILL_HEIGHT_PX = 22;

/** Names beside the longest stretches, apart from each other and on the canvas. */
export function seamWords(
  lines: readonly SeamLine[],
  toPx: (mm: Xy) => Xy,
  width: number,
  height: number,
): SeamWord[] {
  const words: SeamWord[] = [];
  for (const line of [...lines].sort((a, b) => b.lengthMm - a.lengthMm)) {
    if (words.length === MOST_WORDS) break;
    const spots = spaced(line.points.map(toPx), 4).filter(
      ({ at }) => at[0] > 0 && at[0] < width && at[1] > 0 && at[1] < height,
    );
    if (spots.length * 4 < LEAST_NAMED_PX) continue;
    const word = wordAt(line.outcome, spots[Math.floor(spots.length / 2)], width, height);
    if (words.every((other) => isClear(other, word))) words.push(word);
  }
  return words;
}

function wordAt(outcome: SeamOutcome, { at, right }: Spot, width: number, height: number): SeamWord {
  const widthPx = outcome.length * CHARACTER_PX + PILL_PADDING_PX;
  const clear = 12 + Math.abs(right[0]) * (widthPx / 2) + Math.abs(right[1]) * (PILL_HEIGHT_PX / 2);
  const side = right[0] < -0.2 || (Math.abs(right[0]) <= 0.2 && right[1] > 0) ? -1 : 1;
  const [x, y] = offset(at, right, side * clear);
  const [left, top] = [widthPx / 2 + 4, PILL_HEIGHT_PX / 2 + 4];
  return {
    words: outcome,
    outcome,
    px: [Math.min(width - left, Math.max(left, x)), Math.min(height - top, Math.max(top, y))],
    widthPx,
  };
}

function isClear(one: SeamWord, other: SeamWord): boolean {
  const [dx, dy] = [Math.abs(one.px[0] - other.px[0]), Math.abs(one.px[1] - other.px[1])];
  if (one.outcome === other.outcome) return Math.hypot(dx, dy) > SAME_WORD_PX;
  return dx - (one.widthPx + other.widthPx) / 2 > 6 || dy - PILL_HEIGHT_PX > 6;
}
