/**
 * A section as SVG path data: skeleton layer by layer, the tissue on it, the surfaces of earlier months inside it.
 * Between two cells a line goes through the mean of their heights; at each cell's middle it has the height itself.
 */
import type { Layer, Section, Slice } from '../../measure/section';

/** From mm to px: x along the line, y up from the tile. */
export interface Scale {
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
  /** The stretch that is drawn. */
  readonly fromMm: number;
  readonly toMm: number;
}

export interface Body {
  readonly d: string;
  readonly variety: number | null;
  readonly is: Layer['is'];
  /** Its upper side alone. */
  readonly top: string;
}

type Point = readonly [x: number, y: number];

/** Steps of the surface from one stretch to another that are higher than this are drawn upright. */
const EDGE_MM = 0.5;

export function bodies({ slices }: Section, scale: Scale): Body[] {
  const seen = within(slices, scale);
  const levels = Math.max(0, ...seen.map(({ layers }) => layers.length));
  const found: Body[] = [];
  for (let level = 0; level < levels; level++)
    for (const [first, last] of runs(seen, (slice) => keyOf(slice.layers[level]))) {
      const { variety, is } = seen[first].layers[level];
      const top = side(seen, first, last, level, scale);
      const under = side(seen, first, last, level - 1, scale);
      found.push({ d: `${lineOf([...top, ...under.reverse()])}Z`, variety, is, top: lineOf(top) });
    }
  return found;
}

function keyOf(layer: Layer | undefined): string | null {
  return layer ? `${layer.is} ${layer.variety ?? ''}` : null;
}

/** Tissue on a stretch of skeleton, as a line. */
export interface Film {
  readonly d: string;
  readonly variety: number | null;
}

/**
 * The film of living tissue, a line for each variety's stretch. It wraps round a free edge: down to what lies beside it,
 * be it the tile, bare skeleton or tissue that is lapped.
 */
export function films({ slices }: Section, scale: Scale): Film[] {
  const seen = within(slices, scale);
  const living = (slice: Slice | undefined): Layer | undefined => {
    const top = slice?.layers.at(-1);
    return top?.is === 'living' ? top : undefined;
  };
  return runs(seen, (slice) => keyOf(living(slice))).map(([first, last]) => {
    const points: Point[] = [];
    const put = (mm: number, high: number): void => {
      points.push([scale.x(mm), scale.y(high)]);
    };
    /** The height at an end of the run, and where its edge is free the height beneath it, from the middle outwards. */
    const endOf = (own: Slice, beside: Slice | undefined): number[] => {
      const high = own.surfaceMm;
      if (beside === undefined) return [high];
      const step = high - beside.surfaceMm;
      if (living(beside) && Math.abs(step) <= EDGE_MM) return [high - step / 2];
      return step > 0 ? [high, beside.surfaceMm] : [high];
    };
    for (const high of endOf(seen[first], seen[first - 1]).reverse()) put(seen[first].fromMm, high);
    for (let k = first; k <= last; k++) {
      const { fromMm, toMm, surfaceMm } = seen[k];
      put((fromMm + toMm) / 2, surfaceMm);
      if (k < last) put(toMm, (surfaceMm + seen[k + 1].surfaceMm) / 2);
    }
    for (const high of endOf(seen[last], seen[last + 1])) put(seen[last].toMm, high);
    return { d: lineOf(points), variety: living(seen[first])?.variety ?? null };
  });
}

/** Where the surface lay in an earlier month, seen inside today's skeleton. Both sections are of one line and one grid. */
export function growthLine({ slices }: Section, older: Section, scale: Scale): string {
  let d = '';
  let isDown = false;
  slices.forEach((slice, k) => {
    const middle = (slice.fromMm + slice.toMm) / 2;
    const before = older.slices[k];
    const isIn = middle >= scale.fromMm && middle <= scale.toMm;
    const isShown = isIn && before.layers.length > 0 && before.surfaceMm < slice.surfaceMm - 0.02;
    if (isShown) d += `${isDown ? 'L' : 'M'}${px([scale.x(middle), scale.y(before.surfaceMm)])}`;
    isDown = isShown;
  });
  return d;
}

/** Whether two sections are cut alike, so that their slices are of the same cells. */
export function isAlike(a: Section, b: Section): boolean {
  return a.slices.length === b.slices.length;
}

/** Height of the surface about a place: the greatest within `reachMm`. */
export function crestMm({ slices }: Section, atMm: number, reachMm: number): number {
  const near = slices.filter(({ fromMm, toMm }) => toMm >= atMm - reachMm && fromMm <= atMm + reachMm);
  return Math.max(0, ...near.map(({ surfaceMm }) => surfaceMm));
}

/** An eroded edge: teeth hanging from the surface, `stepPx` wide. `paper` is what is gone, `edge` what is left of it. */
export function roughened(
  section: Section,
  fromMm: number,
  toMm: number,
  scale: Scale,
  stepPx: number,
): { paper: string; edge: string } {
  const from = Math.max(fromMm, scale.fromMm);
  const to = Math.min(toMm, scale.toMm);
  const teeth = Math.max(2, Math.round((scale.x(to) - scale.x(from)) / stepPx));
  const edge = Array.from({ length: 2 * teeth + 1 }, (_, k): Point => {
    const mm = from + ((to - from) * k) / (2 * teeth);
    // depths differ from tooth to tooth, always alike
    const deep = k % 2 === 1 ? 3 + ((k * 7) % 5) : 0.5;
    return [scale.x(mm), Math.min(scale.y(0), scale.y(heightAt(section, mm)) + deep)];
  });
  const above = Math.min(...edge.map(([, y]) => y)) - 4;
  const lid: Point[] = [
    [scale.x(to), above],
    [scale.x(from), above],
  ];
  return { paper: `${lineOf([...edge, ...lid])}Z`, edge: lineOf(edge) };
}

/** Height of the surface at a place along the line, as it is drawn: straight from one cell's middle to the next. */
export function heightAt({ slices }: Section, atMm: number): number {
  const middle = ({ fromMm, toMm }: Slice): number => (fromMm + toMm) / 2;
  const next = slices.findIndex((slice) => middle(slice) >= atMm);
  const after = slices.at(next);
  if (after === undefined) return 0;
  const before = next > 0 ? slices[next - 1] : after;
  const gap = middle(after) - middle(before);
  const share = gap > 0 ? (atMm - middle(before)) / gap : 1;
  return before.surfaceMm + Math.min(1, share) * (after.surfaceMm - before.surfaceMm);
}

function within(slices: readonly Slice[], { fromMm, toMm }: Scale): Slice[] {
  return slices
    .filter((slice) => slice.toMm > fromMm && slice.fromMm < toMm)
    .map((slice) => ({
      ...slice,
      fromMm: Math.max(fromMm, slice.fromMm),
      toMm: Math.min(toMm, slice.toMm),
    }));
}

/** First and last of each run of slices with one key; null is none. */
function runs(slices: readonly Slice[], keyAt: (slice: Slice) => string | null): [number, number][] {
  const found: [number, number][] = [];
  let open: string | null = null;
  slices.forEach((slice, k) => {
    const key = keyAt(slice);
    if (key !== null && key === open) found[found.length - 1][1] = k;
    else if (key !== null) found.push([k, k]);
    open = key;
  });
  return found;
}

/** The upper side of a level over a run; level -1 is the tile. */
function side(slices: readonly Slice[], first: number, last: number, level: number, scale: Scale): Point[] {
  const height = (slice: Slice): number => (level < 0 ? 0 : slice.layers[level].toMm);
  const isTop = (slice: Slice): boolean => level === slice.layers.length - 1;
  /** Height at the edge of slice k towards its neighbour. */
  const edge = (k: number, beside: number): number => {
    const [own, other] = [slices[k], slices[beside] as Slice | undefined];
    if (other === undefined || level >= other.layers.length || isTop(own) !== isTop(other))
      return height(own);
    const isInside = beside >= first && beside <= last;
    if (!isInside && Math.abs(height(own) - height(other)) > EDGE_MM) return height(own);
    return (height(own) + height(other)) / 2;
  };
  const points: Point[] = [];
  const put = (mm: number, high: number): void => {
    points.push([scale.x(mm), scale.y(high)]);
  };
  for (let k = first; k <= last; k++) {
    const { fromMm, toMm } = slices[k];
    if (k === first) put(fromMm, edge(k, k - 1));
    put((fromMm + toMm) / 2, height(slices[k]));
    put(toMm, edge(k, k + 1));
  }
  return points;
}

function lineOf(points: readonly Point[]): string {
  return points.map((point, k) => `${k === 0 ? 'M' : 'L'}${px(point)}`).join('');
}

function px([x, y]: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
