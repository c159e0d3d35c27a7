/**
 * A section as SVG path data: skeleton layer by layer, and the tissue on it.
 * Between two cells a line goes through the mean of their heights; at each cell's middle it has the height itself.
 */
import type { Joint, Layer, Section, Slice } from '../../measure/section';

/** From mm to px: x along the line, y up from the tile. */
export interface Scale {
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
  /** The stretch that is drawn. */
  readonly fromMm: number;
  readonly toMm: number;
}

/** Part of a body or of its tissue that is of one variety. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly variety: number | null;
}

/** One skeleton: fused varieties are one, and what a joint parts is two. */
export interface Body {
  readonly d: string;
  readonly is: Layer['is'];
  readonly stretches: readonly Stretch[];
  /** Its upper side alone; where it is covered, with the side on which it stood against what covers it. */
  readonly top: string;
}

export type Point = readonly [x: number, y: number];

/** Steps of the surface from one stretch to another that are higher than this are drawn upright. */
export const EDGE_MM = 0.5;

/** A seam that stays moves less than this under the line. */
export const SAME_SEAM_MM = 1;

/** Whether a joint's two sides are two skeletons. Once a lapped one covers anything its lip is told by its layers. */
export function isParting({ kind, fromMm, toMm }: Joint): boolean {
  return kind !== 'fused' && (kind !== 'lapped' || fromMm === toMm);
}

export function bodies(section: Section, scale: Scale): Body[] {
  const seen = within(section.slices, scale);
  const parted = edgesAt(seen, section.joints.filter(isParting));
  const levels = Math.max(0, ...seen.map(({ layers }) => layers.length));
  const found: Body[] = [];
  for (let level = 0; level < levels; level++)
    for (const [first, last] of runs(seen, (slice) => keyOf(slice.layers[level]), parted)) {
      const { is } = seen[first].layers[level];
      const top = side(seen, first, last, level, scale);
      const under = side(seen, first, last, level - 1, scale);
      const stretches = stretchesOf(seen, first, last, level);
      const face = is === 'covered' ? facesOf(seen, first, last, level, scale) : '';
      found.push({ d: `${lineOf([...top, ...under.reverse()])}Z`, is, stretches, top: lineOf(top) + face });
    }
  return found;
}

/** Living skeleton is one whatever its colours; of what is covered each variety stands for itself. */
function keyOf(layer: Layer | undefined): string | null {
  if (!layer) return null;
  return layer.is === 'covered' ? `covered ${layer.variety}` : layer.is;
}

function stretchesOf(slices: readonly Slice[], first: number, last: number, level: number): Stretch[] {
  return runs(slices.slice(first, last + 1), ({ layers }) => String(layers[level].variety)).map(([a, b]) => ({
    fromMm: slices[first + a].fromMm,
    toMm: slices[first + b].toMm,
    variety: slices[first + a].layers[level].variety,
  }));
}

/** Ends of a covered layer that stood against another's skeleton, from its top down: there the two met before it was lapped. */
function facesOf(slices: readonly Slice[], first: number, last: number, level: number, scale: Scale): string {
  const { variety, fromMm: below } = slices[first].layers[level];
  return [
    { beside: first - 1, end: first, mm: slices[first].fromMm },
    { beside: last + 1, end: last, mm: slices[last].toMm },
  ]
    .filter(({ beside }) => {
      const other = slices.at(beside)?.layers[level];
      return beside >= 0 && other !== undefined && other.variety !== variety;
    })
    .map(({ end, mm }) =>
      lineOf([
        [scale.x(mm), scale.y(slices[end].layers[level].toMm)],
        [scale.x(mm), scale.y(below)],
      ]),
    )
    .join('');
}

/** A place of a run of colours, 0 to 1, and the variety that has its own colour there. */
export interface Stop {
  readonly offset: number;
  readonly variety: number | null;
}

/** Where each colour of a run stands; between two stops they pass into each other, over at most `blendMm`. */
export function colourStops(stretches: readonly Stretch[], blendMm: number): Stop[] {
  const fromMm = stretches[0].fromMm;
  const lengthMm = stretches[stretches.length - 1].toMm - fromMm;
  return stretches.flatMap((one, k) => {
    const half = Math.min(blendMm, one.toMm - one.fromMm) / 2;
    const [isFirst, isLast] = [k === 0, k === stretches.length - 1];
    const ends = [one.fromMm + (isFirst ? 0 : half), one.toMm - (isLast ? 0 : half)];
    return ends.map((mm) => ({ offset: (mm - fromMm) / lengthMm, variety: one.variety }));
  });
}

/** Tissue on a stretch of skeleton, as a line. */
export interface Film {
  readonly d: string;
  readonly stretches: readonly Stretch[];
}

/** The notch between the crests of two walls: tissue goes down into it on both sides. */
export interface Notch {
  readonly atMm: number;
  /** From the middle to a crest. */
  readonly halfMm: number;
  readonly footMm: number;
  /** Between the two sides at the foot. */
  readonly openMm: number;
}

/**
 * The film of living tissue, a line for each skeleton; over a look-alike's groove it is closed. It wraps round a free
 * edge: down to what lies beside it, be it the tile, bare skeleton or tissue that is lapped.
 */
export function films(section: Section, scale: Scale, notches: readonly Notch[]): Film[] {
  const seen = within(section.slices, scale);
  const parted = edgesAt(
    seen,
    section.joints.filter(({ kind }) => kind !== 'fused' && kind !== 'veiled'),
  );
  const living = (slice: Slice | undefined): Layer | undefined => {
    const top = slice?.layers.at(-1);
    return top?.is === 'living' ? top : undefined;
  };
  return runs(seen, (slice) => (living(slice) ? 'living' : null), parted).map(([first, last]) => {
    let points: [mm: number, high: number][] = [];
    /** The height at an end of the run, and where its edge is free the height beneath it, from the middle outwards. */
    const endOf = (own: Slice, beside: Slice | undefined): number[] => {
      const high = own.surfaceMm;
      if (beside === undefined) return [high];
      const step = high - beside.surfaceMm;
      if (living(beside) && Math.abs(step) <= EDGE_MM) return [high - step / 2];
      return step > 0 ? [high, beside.surfaceMm] : [high];
    };
    const [startMm, endMm] = [seen[first].fromMm, seen[last].toMm];
    for (const high of endOf(seen[first], seen[first - 1]).reverse()) points.push([startMm, high]);
    for (let k = first; k <= last; k++) {
      const { fromMm, toMm, surfaceMm } = seen[k];
      points.push([(fromMm + toMm) / 2, surfaceMm]);
      if (k < last) points.push([toMm, (surfaceMm + seen[k + 1].surfaceMm) / 2]);
    }
    for (const high of endOf(seen[last], seen[last + 1])) points.push([endMm, high]);
    for (const { atMm, halfMm, footMm, openMm } of notches) {
      for (const by of [-1, 1]) {
        if (Math.abs(atMm - (by < 0 ? endMm : startMm)) > SAME_SEAM_MM / 2) continue;
        points = points.filter(([mm]) => by * (mm - atMm) > halfMm);
        const crest = atMm + by * halfMm;
        const wall: [number, number][] = [
          [crest, heightAt(section, crest)],
          [atMm + (by * openMm) / 2, footMm],
        ];
        points = by < 0 ? [...points, ...wall] : [...wall.reverse(), ...points];
      }
    }
    const tops = seen.map((slice) => ({ ...slice, layers: slice.layers.slice(-1) }));
    const path = points.map(([mm, high]): Point => [scale.x(mm), scale.y(high)]);
    return { d: lineOf(path), stretches: stretchesOf(tops, first, last, 0) };
  });
}

/** For each joint between them the slice that begins nearest to it. */
export function edgesAt(slices: readonly Slice[], joints: readonly Joint[]): Set<number> {
  const found = new Set<number>();
  for (const { atMm } of joints) {
    const k = slices.findIndex(({ fromMm, toMm }) => fromMm <= atMm && atMm < toMm);
    if (k < 0) continue;
    const { fromMm, toMm } = slices[k];
    found.add(atMm - fromMm <= toMm - atMm ? k : k + 1);
  }
  return found;
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

/** First and last of each run of slices with one key; null is none, and a run ends before each slice of `parted`. */
function runs(
  slices: readonly Slice[],
  keyAt: (slice: Slice) => string | null,
  parted: ReadonlySet<number> = new Set(),
): [number, number][] {
  const found: [number, number][] = [];
  let open: string | null = null;
  slices.forEach((slice, k) => {
    const key = keyAt(slice);
    if (key !== null && key === open && !parted.has(k)) found[found.length - 1][1] = k;
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

export function lineOf(points: readonly Point[]): string {
  return points.map((point, k) => `${k === 0 ? 'M' : 'L'}${px(point)}`).join('');
}

function px([x, y]: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
