/** Five small tiles from two halves to fine swirl, so that a number between 0 and 1 means something. */

/** Middle of the swirl that each picture stands for. */
export const SWIRL_STEPS = [0.05, 0.2, 0.4, 0.6, 0.85] as const;

/** How much of the picture is waves instead of halves, and how many waves go across it. */
const WAVES: readonly { share: number; across: number }[] = [
  { share: 0.08, across: 1.5 },
  { share: 0.5, across: 1.6 },
  { share: 0.85, across: 2.2 },
  { share: 1, across: 3.4 },
  { share: 1, across: 6 },
];

/** Crossing waves with fixed phases: a field without corners whose zero line wanders. */
function field(x: number, y: number): number {
  return (
    Math.sin(6.28 * (0.97 * x + 0.36 * y) + 0.7) +
    Math.sin(6.28 * (-0.55 * x + 0.83 * y) + 2.1) +
    0.8 * Math.sin(6.28 * (0.31 * x - 1.21 * y) + 4.4) +
    0.6 * Math.sin(6.28 * (1.63 * x + 0.71 * y) + 1.3)
  );
}

/** True where the second colour lies; x and y from 0 to 1. */
function isSecond(step: number, x: number, y: number): boolean {
  const { share, across } = WAVES[step];
  const halves = (x - 0.5) * 5;
  return (1 - share) * halves + share * field(x * across, y * across) > 0;
}

/** Squares across a picture. */
export const SIDE = 44;

/** Where the second colour lies, as a path of rows: paths need no canvas, of which the first holds a page up. */
export const SECOND: readonly string[] = SWIRL_STEPS.map((_, step) =>
  Array.from({ length: SIDE }, (_row, y) => rowPath(step, y)).join(''),
);

function rowPath(step: number, y: number): string {
  let path = '';
  let from = -1;
  for (let x = 0; x <= SIDE; x++) {
    const isIn = x < SIDE && isSecond(step, x / SIDE, y / SIDE);
    if (isIn && from < 0) from = x;
    if (isIn || from < 0) continue;
    path += `M${from} ${y}h${x - from}v1H${from}z`;
    from = -1;
  }
  return path;
}

/** The picture whose middle is nearest. */
export function nearestStep(swirl: number): number {
  let nearest = 0;
  SWIRL_STEPS.forEach((middle, step) => {
    if (Math.abs(middle - swirl) < Math.abs(SWIRL_STEPS[nearest] - swirl)) nearest = step;
  });
  return nearest;
}
