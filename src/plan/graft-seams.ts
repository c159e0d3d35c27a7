/** Settled seams of a frame as lines, for a graft that is cut from it. Fused ones need none: patches come fused. */
import type { Frame } from '../model/frame';
import { FATE } from '../model/seam-table';
import { lengthOf } from '../units/polygon';
import { simplify } from '../units/simplify';

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
  /** Of a lapped one: the label of the side that covers, 0 where none is known to. */
  readonly over: number;
}

/** The longest lines where there are too many. */
export function seamLines({ columns, cellMm, label, seam }: GraftFrame): SeamLine[] {
  const lines = ([FATE.ridge, FATE.lapped, FATE.dead] as const).flatMap((fate) => {
    const isOf = (i: number): boolean => (seam[i] & 7) === fate;
    /** By the label that covers. */
    const sides = new Map<number, [Corner, Corner][]>();
    const put = (i: number, j: number, side: [Corner, Corner]): void => {
      if (label[i] === 0 || label[j] === 0 || label[i] === label[j] || !(isOf(i) || isOf(j))) return;
      const covers =
        fate === FATE.lapped ? [i, j].find((cell) => isOf(cell) && (seam[cell] & 8) !== 0) : undefined;
      const over = covers === undefined ? 0 : label[covers];
      const known = sides.get(over) ?? [];
      known.push(side);
      sides.set(over, known);
    };
    for (let i = 0; i + columns < label.length; i++) {
      const [x, y] = [i % columns, Math.floor(i / columns)];
      put(i, i + 1, [[x + 1, y], [x + 1, y + 1]]); // prettier-ignore
      put(i, i + columns, [[x, y + 1], [x + 1, y + 1]]); // prettier-ignore
    }
    return [...sides].flatMap(([over, own]) =>
      chained(own).flatMap((chain) =>
        inLengths(chain).map((along) => ({
          along: simplify(along, ASIDE_MM / cellMm),
          is: NAMED[fate],
          over,
        })),
      ),
    );
  });
  return lines.sort((a, b) => lengthOf(b.along) - lengthOf(a.along)).slice(0, MOST_LINES);
}

/** Sides joined end to end as far as they go: from loose ends and forks first, then what runs round. */
export function chained(sides: readonly (readonly [Corner, Corner])[]): Corner[][] {
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
