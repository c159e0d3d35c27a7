/** The fits as pictures: what was noted beside what was fitted. */
import { curve, type Plot, type Series } from '../../checks/plot';
import type { Step } from '../../stats/lifetimes';
import type { DaysFit } from '../../trials/log-days';
import type { RidgeFit } from '../../trials/log-ridge';
import type { GrowthSpan, RimFit } from '../../trials/log-rim';
import type { LoggedSurvival } from '../../trials/log-survival';
import { DAYS_PER_MONTH } from '../../units/quantity';

type Points = Series['points'];

/** A span that weighs less is taken for a loss. */
const LOSS = 0.05;

const isLoss = ({ weight }: GrowthSpan): boolean => weight < LOSS;
const middle = ({ fromDay, toDay }: GrowthSpan): number => (fromDay + toDay) / 2 / DAYS_PER_MONTH;

/** Without the series that hold nothing. */
function filled(series: readonly Series[]): Series[] {
  return series.filter(({ points }) => points.length > 0);
}

/** Rates from reading to reading, about the fitted one: what is left over of the fit. */
export function ratesPlot({ variety, rate, spans }: RimFit): Plot | null {
  if (rate === null) return null;
  const last = Math.max(...spans.map(({ toDay }) => toDay)) / DAYS_PER_MONTH;
  const level = (y: number): Points => [[0, y], [last, y]]; // prettier-ignore
  const { rimMmPerMonth, low, high } = rate;
  return {
    title: `${variety.name}: rates from reading to reading`,
    x: { label: 'months since the tile was set' },
    y: { label: 'mm a month' },
    expected: [
      { name: 'rim rate', points: level(rimMmPerMonth) },
      ...(low === null || high === null
        ? []
        : [
            { name: 'low end of its 95 % range', points: level(low) },
            { name: 'high end', points: level(high) },
          ]),
    ],
    found: filled([
      {
        name: 'from one reading to the next',
        points: spans.filter((span) => !isLoss(span)).map((span) => [middle(span), span.rate] as const),
      },
      {
        name: 'taken for a loss',
        points: spans.filter(isLoss).map((span) => [middle(span), span.rate] as const),
      },
    ]),
  };
}

/** Radii as they were read, and growth at the fitted rate from where the tiles began on average. */
export function radiiPlot({ variety, rate, spans }: RimFit): Plot | null {
  if (rate === null) return null;
  const { rimMmPerMonth } = rate;
  const months = (day: number): number => day / DAYS_PER_MONTH;
  const total = spans.reduce((sum, { weight }) => sum + weight, 0);
  const start =
    spans.reduce(
      (sum, { weight, fromMm, fromDay }) => sum + weight * (fromMm - rimMmPerMonth * months(fromDay)),
      0,
    ) / total;
  const ends = [
    Math.min(...spans.map(({ fromDay }) => fromDay)),
    Math.max(...spans.map(({ toDay }) => toDay)),
  ];
  const read = new Map(
    spans.flatMap(({ trial, fromDay, fromMm, toDay, toMm }) => [
      [`${trial.id} ${fromDay}`, [months(fromDay), fromMm] as const],
      [`${trial.id} ${toDay}`, [months(toDay), toMm] as const],
    ]),
  );
  return {
    title: `${variety.name}: radii`,
    x: { label: 'months since the tile was set' },
    y: { label: 'mm' },
    expected: [
      {
        name: 'growth at the rim rate',
        points: ends.map((day) => [months(day), start + rimMmPerMonth * months(day)] as const),
      },
    ],
    found: [{ name: 'as read, all tiles, until they met', points: [...read.values()] }],
  };
}

export function ridgePlot({ heights, firstMmPerMonth, heightAt }: RidgeFit): Plot | null {
  if (firstMmPerMonth === null) return null;
  const last = Math.max(...heights.map(({ months }) => months));
  return {
    title: 'Height of ridges',
    x: { label: 'months since the ridge began' },
    y: { label: 'mm' },
    expected: [curve('fitted', 0, last, heightAt)],
    found: [
      {
        name: 'as read, all seams',
        points: heights.map(({ months, heightMm }) => [months, heightMm] as const),
      },
    ],
  };
}

const CLASSES = 6;

export function survivalPlot({ group, points, curve, fit }: LoggedSurvival): Plot | null {
  if (fit === null) return null;
  const sorted = [...points].sort((a, b) => a.areaMm2 - b.areaMm2);
  const size = Math.ceil(sorted.length / CLASSES);
  const classes = Array.from({ length: Math.ceil(sorted.length / size) }, (_, k) =>
    sorted.slice(k * size, (k + 1) * size),
  );
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    title: `${group ?? 'All groups'}: cuttings alive after 90 days`,
    x: { label: 'size when set, mm²', log: true },
    y: { label: 'share alive' },
    expected: [
      { name: 'fitted chance', points: curve.map(({ areaMm2, chance }) => [areaMm2, chance] as const) },
      { name: 'low end of its 95 % range', points: curve.map(({ areaMm2, low }) => [areaMm2, low] as const) },
      { name: 'high end', points: curve.map(({ areaMm2, high }) => [areaMm2, high] as const) },
    ],
    found: [
      {
        name: `share of each ${size}, by size`,
        points: classes.map((own) => [
          10 ** mean(own.map(({ areaMm2 }) => Math.log10(areaMm2))),
          mean(own.map(({ alive }) => (alive ? 1 : 0))),
        ]),
      },
      { name: 'each cutting', points: sorted.map(({ areaMm2, alive }) => [areaMm2, alive ? 1 : 0] as const) },
    ],
  };
}

/** A curve that stays level until its next step. */
function stairs(steps: readonly Step[], until: number, pick: (step: Step) => number | null): Points {
  const points: [number, number][] = [[0, 1]];
  for (const step of steps) {
    const [, before] = points[points.length - 1];
    points.push([step.days, before], [step.days, pick(step) ?? before]);
  }
  points.push([until, points[points.length - 1][1]]);
  return points;
}

export function daysPlot(fit: DaysFit, called: string): Plot | null {
  const { steps, verdicts } = fit;
  if (steps.length === 0) return null;
  const until = Math.max(...verdicts.map(({ days }) => days));
  const leftAt = (days: number): number => steps.findLast((step) => step.days <= days)?.left ?? 1;
  return {
    title: `${called}: pairs not yet settled`,
    x: { label: 'days since the tile was set' },
    y: { label: 'share' },
    expected: [
      { name: 'not yet settled', points: stairs(steps, until, ({ left }) => left) },
      { name: 'low end of its 95 % range', points: stairs(steps, until, ({ low }) => low) },
      { name: 'high end', points: stairs(steps, until, ({ high }) => high) },
    ],
    found: filled([
      {
        name: 'last seen, still undecided',
        points: verdicts
          .filter(({ isSettled }) => !isSettled)
          .map(({ days }) => [days, leftAt(days)] as const),
      },
    ]),
  };
}
