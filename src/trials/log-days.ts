/**
 * Days to the verdict of a pair, from a log, with those still undecided counted as such: for pairs of each group, pairs
 * across groups, and those of which a group is not noted. A verdict counts from the reading that first told it.
 */
import { kaplanMeier, medianDays, medianRange, type Step } from '../stats/lifetimes';
import { type Dates, datesOf, type FitChoice, type LeftOut, placing, tallied, WHOLE_LOG } from './fit-choice';
import { grouped } from './grouped';
import { lastDay } from './last-seen';
import { kindOf, type PairKind } from './pair-table';
import type { Log } from './trial';
import { type PairVerdict, verdictsOf } from './verdicts';

export interface DaysFit {
  readonly kind: PairKind;
  /** Of pairs within one. */
  readonly group: string | null;
  readonly part: string;
  readonly verdicts: readonly PairVerdict[];
  readonly n: number;
  readonly settled: number;
  /** Null where less than half have settled; the interval's ends where they cannot be told. */
  readonly medianDays: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly steps: readonly Step[];
  readonly dates: Dates | null;
  readonly leftOut: readonly LeftOut[];
}

interface Sorted extends Pick<DaysFit, 'kind' | 'group' | 'part'> {
  readonly verdict: PairVerdict | null;
  readonly why: string | null;
}

export function daysFits(log: Log, choice: FitChoice = WHOLE_LOG): DaysFit[] {
  const place = placing(log, choice);
  const varieties = new Map(log.varieties.map((variety) => [variety.id, variety]));
  const sorted = verdictsOf(log).flatMap((verdict): Sorted[] => {
    const [a, b] = [varieties.get(verdict.a), varieties.get(verdict.b)];
    if (!a || !b) return [];
    const kind = kindOf(a, b);
    const group = kind === 'within' ? a.group : null;
    const placed = place(verdict.trial, 0, Math.max(1, verdict.days));
    if ('why' in placed) return [{ kind, group, part: '', verdict: null, why: placed.why }];
    return verdict.days === 0 && !verdict.isSettled
      ? [{ kind, group, part: placed.part, verdict: null, why: 'never looked at after setting' }]
      : [{ kind, group, part: placed.part, verdict, why: null }];
  });
  return [...grouped(sorted, ({ kind, group, part }) => JSON.stringify([kind, group, part])).values()].map(
    (own) => {
      const [{ kind, group, part }] = own;
      const verdicts = own.flatMap(({ verdict }) => (verdict === null ? [] : [verdict]));
      const steps = kaplanMeier(verdicts.map(({ days, isSettled }) => ({ days, settled: isSettled })));
      return {
        kind,
        group,
        part,
        verdicts,
        n: verdicts.length,
        settled: verdicts.filter(({ isSettled }) => isSettled).length,
        medianDays: medianDays(steps),
        ...medianRange(steps),
        steps,
        dates: datesOf(verdicts.flatMap(({ trial }) => [trial.setOn, lastDay(trial)])),
        leftOut: tallied(own.flatMap(({ why }) => (why === null ? [] : [why]))),
      };
    },
  );
}
