/** What a drag with the ruler reads: from one piece to another the gap between them, else the length of the drag. */
import type { Plan, Xy } from '../../plan/plan';
import { gapLine, type GapLine } from './gap';
import { pieceAt } from './piece-at';

export interface Measured extends GapLine {
  /** 'Gap 13.0 mm', '25.7 mm'. */
  readonly words: string;
}

export function measured(plan: Plan, from: Xy, to: Xy): Measured {
  const [one, other] = [pieceAt(plan, from, 0), pieceAt(plan, to, 0)];
  if (one && other && one !== other) {
    const line = gapLine(one, other);
    return { ...line, words: `Gap ${line.gapMm.toFixed(1)} mm` };
  }
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return { from, to, gapMm: lengthMm, words: `${lengthMm.toFixed(1)} mm` };
}
