/** All that is fitted to a log, or to a part of it. */
import { type FitChoice, WHOLE_LOG } from './fit-choice';
import { type AggressionFit, aggressionFits } from './log-contests';
import { type DaysFit, daysFits } from './log-days';
import { type RidgeFit, ridgeFits } from './log-ridge';
import { type RimFit, rimFits } from './log-rim';
import { type LoggedSurvival, survivalOfLog } from './log-survival';
import type { Log } from './trial';

export interface LogFits {
  readonly rim: readonly RimFit[];
  readonly aggression: readonly AggressionFit[];
  readonly survival: readonly LoggedSurvival[];
  readonly days: readonly DaysFit[];
  readonly ridge: readonly RidgeFit[];
}

export function logFits(log: Log, choice: FitChoice = WHOLE_LOG): LogFits {
  return {
    rim: rimFits(log, choice),
    aggression: aggressionFits(log, choice),
    survival: survivalOfLog(log, choice),
    days: daysFits(log, choice),
    ridge: ridgeFits(log, choice),
  };
}
