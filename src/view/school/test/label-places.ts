/** Where the numbers of the seams stand: beside their rings, on the stage, over nothing that is to be read. */
import type { Xy } from '../../../plan/plan';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Ring {
  readonly at: Xy;
  /** A place across the seam: there the number stands if it can. */
  readonly across: Xy;
}

const AWAY_PX = 34;
/** Half of what a number's button takes. */
const HALF_PX = 22;
/** Tried one after the other: beside the seam, then turned from that and farther off. */
const TURNS = [0, 180, 40, -40, 140, -140, 90, -90].map((deg) => (deg * Math.PI) / 180);
const REACHES = [1, 1.7, 2.4];

export function labelPlaces(
  rings: readonly Ring[],
  { width, height }: { readonly width: number; readonly height: number },
  taken: readonly Box[],
): Xy[] {
  const boxes = [...taken];
  return rings.map(({ at, across }) => {
    const angle = Math.atan2(across[1] - at[1], across[0] - at[0]);
    const tried = REACHES.flatMap((reach) =>
      TURNS.map((turn): Xy => {
        const [far, to] = [AWAY_PX * reach, angle + turn];
        return [at[0] + far * Math.cos(to), at[1] + far * Math.sin(to)];
      }),
    );
    const place =
      tried.find((one) => {
        const box = around(one);
        const isOn = box.left >= 0 && box.top >= 0 && box.right <= width && box.bottom <= height;
        return isOn && boxes.every((other) => areApart(box, other));
      }) ?? tried[0];
    boxes.push(around(place));
    return place;
  });
}

function around([x, y]: Xy): Box {
  return { left: x - HALF_PX, top: y - HALF_PX, right: x + HALF_PX, bottom: y + HALF_PX };
}

function areApart(one: Box, other: Box): boolean {
  return (
    one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top
  );
}
