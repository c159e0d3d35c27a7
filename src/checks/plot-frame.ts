/** Where the points of a plot lie on paper: scales, ticks and paths, for whoever draws it. */
import type { Axis, Plot, Series } from './plot';

export const PLOT_WIDTH = 360;
export const PLOT_HEIGHT = 220;
const LEFT = 48;
const RIGHT = 10;
const TOP = 10;
const BOTTOM = 40;

export interface Tick {
  readonly at: number;
  readonly label: string;
}

export interface PlotFrame {
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  /** One path a curve expected. */
  readonly lines: readonly { readonly name: string; readonly path: string }[];
  readonly dots: readonly {
    readonly name: string;
    readonly at: readonly { readonly x: number; readonly y: number }[];
  }[];
}

interface Scale {
  readonly low: number;
  readonly high: number;
  readonly log: boolean;
}

function scaleOf(axis: Axis, values: readonly number[]): Scale {
  const log = axis.log === true;
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (log) return { low: Math.log10(low) - 0.05, high: Math.log10(high) + 0.05, log };
  const margin = 0.05 * (high - low || 1);
  return { low: low === 0 ? 0 : low - margin, high: high + margin, log };
}

/** 0 to 1 along the axis. */
function along({ low, high, log }: Scale, value: number): number {
  return ((log ? Math.log10(value) : value) - low) / (high - low);
}

/** Four to eight round values; on a log axis 1, 2 and 5 times powers of ten. */
function tickValues({ low, high, log }: Scale): number[] {
  if (log) {
    const values: number[] = [];
    for (let power = Math.floor(low); power <= high; power++)
      for (const digit of high - low > 2.5 ? [1] : high - low > 1 ? [1, 2, 5] : [1, 1.5, 2, 3, 5, 7])
        values.push(digit * 10 ** power);
    return values.filter((value) => Math.log10(value) >= low && Math.log10(value) <= high);
  }
  const raw = (high - low) / 5;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = power * ([1, 2, 5, 10].find((times) => times * power >= raw) ?? 10);
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, k) => (first + k) * step);
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

export function frameOfPlot(plot: Plot): PlotFrame {
  const points = [...plot.expected, ...plot.found].flatMap((series) => series.points);
  const x = scaleOf(
    plot.x,
    points.map(([at]) => at),
  );
  const y = scaleOf(
    plot.y,
    points.map(([, at]) => at),
  );
  const width = PLOT_WIDTH - LEFT - RIGHT;
  const height = PLOT_HEIGHT - TOP - BOTTOM;
  const placeX = (value: number): number => tenths(LEFT + width * along(x, value));
  const placeY = (value: number): number => tenths(TOP + height * (1 - along(y, value)));
  const label = (value: number): string => String(Number(value.toPrecision(3)));
  const path = ({ points: along_ }: Series): string =>
    along_.map(([px, py], k) => `${k === 0 ? 'M' : 'L'}${placeX(px)} ${placeY(py)}`).join('');
  return {
    box: { x: LEFT, y: TOP, width, height },
    xTicks: tickValues(x).map((value) => ({ at: placeX(value), label: label(value) })),
    yTicks: tickValues(y).map((value) => ({ at: placeY(value), label: label(value) })),
    lines: plot.expected.map((series) => ({ name: series.name, path: path(series) })),
    dots: plot.found.map((series) => ({
      name: series.name,
      at: series.points.map(([px, py]) => ({ x: placeX(px), y: placeY(py) })),
    })),
  };
}
