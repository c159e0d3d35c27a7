/** Settled seams of a frame as lines, for a graft that is cut from it. Fused ones need none: patches come fused. */
import type { Frame } from '../model/frame';
import { FATE } from '../model/seam-table';
import { lengthOf } from '../units/polygon';

const NAMED = { [FATE.ridge]: 'ridge', [FATE.lapped]: 'lapped', [FATE.dead]: 'dead' } as const;

/** How far a line may run beside the seam, mm. */
const ASIDE_MM = 0.4;
const MOST_LINES = 200;
const MOST_POINTS = 500;

/** What of a frame a graft is made from. */
export type GraftFrame = Pick<Frame, 'columns' | 'rows' | 'cellMm' | 'label' | 'seam'>;

type Corner = readonly [number, number];

export interface SeamLine {
  /** Corners of the lattice, as in lattice-outline.ts. */
  readonly along: readonly Corner[];
  readonly is: 'ridge' | 'lapped' | 'dead';
}

/** The longest lines where there are too many. */
export function seamLines({ columns, cellMm, label, seam }: GraftFrame): SeamLine[] {
  const lines = ([FATE.ridge, FATE.lapped, FATE.dead] as const).flatMap((fate) => {
    const isOf = (i: number): boolean => (seam[i] & 7) === fate;
    const sides: [Corner, Corner][] = [];
    for (let i = 0; i + columns < label.length; i++) {
      const [x, y] = [i % columns, Math.floor(i / columns)];
      const meets = (j: number): boolean =>
        label[i] !== 0 && label[j] !== 0 && label[i] !== label[j] && (isOf(i) || isOf(j));
      if (meets(i + 1)) sides.push([[x + 1, y], [x + 1, y + 1]]); // prettier-ignore
      if (meets(i + columns)) sides.push([[x, y + 1], [x + 1, y + 1]]); // prettier-ignore
    }
    return chained(sides).flatMap((chain) =>
      inLengths(chain).map((along) => ({ along: simplified(along, ASIDE_MM / cellMm), is: NAMED[fate] })),
    );
  });
  return lines.sort((a, b) => lengthOf(b.along) - lengthOf(a.along)).slice(0, MOST_LINES);
}

/** Sides joined end to end as far as they go: from loose ends and forks first, then what runs round. */
function chained(sides: readonly (readonly [Corner, Corner])[]): Corner[][] {
  const at = new Map<string, { readonly corner: Corner; readonly ways: Set<string> }>();
  const open = (corner: Corner): Set<string> => {
    const key = corner.join(' ');
    const known = at.get(key) ?? { corner, ways: new Set<string>() };
    at.set(key, known);
    return known.ways;
  };
  for (const [a, b] of sides) {
    open(a).add(b.join(' '));
    open(b).add(a.join(' '));
  }
  const chains: Corner[][] = [];
  const follow = (start: string): void => {
    const chain: Corner[] = [];
    for (let key = start; ;) {
      const here = at.get(key);
      if (here === undefined) break;
      chain.push(here.corner);
      if (chain.length > 1 && here.ways.size !== 1) break;
      const [next] = here.ways;
      here.ways.delete(next);
      at.get(next)?.ways.delete(key);
      key = next;
    }
    chains.push(chain);
  };
  const forks = [...at].filter(([, { ways }]) => ways.size !== 2).map(([key]) => key);
  for (const key of [...forks, ...at.keys()]) while ((at.get(key)?.ways.size ?? 0) > 0) follow(key);
  return chains;
}

function inLengths(chain: readonly Corner[]): Corner[][] {
  const parts: Corner[][] = [];
  for (let k = 0; k + 1 < chain.length; k += MOST_POINTS - 1) parts.push(chain.slice(k, k + MOST_POINTS));
  return parts;
}

/**
 * Without the points that lie within `aside` of what is left (Douglas & Peucker 1973, Cartographica 10: 112-122).
 * A ring is halved first: its two ends are one point.
 */
function simplified(line: readonly Corner[], aside: number): readonly Corner[] {
  if (line.length < 3) return line;
  const last = line.length - 1;
  const [[x0, y0], [x1, y1]] = [line[0], line[last]];
  const [dx, dy] = [x1 - x0, y1 - y0];
  const length2 = dx * dx + dy * dy;
  let [farthest, split] = [-1, 0];
  line.forEach(([x, y], k) => {
    const [px, py] = [x - x0, y - y0];
    const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length2));
    const away = Math.hypot(px - along * dx, py - along * dy);
    if (away > farthest) [farthest, split] = [away, k];
  });
  if (farthest <= aside) return [line[0], line[last]];
  return [
    ...simplified(line.slice(0, split + 1), aside).slice(0, -1),
    ...simplified(line.slice(split), aside),
  ];
}
