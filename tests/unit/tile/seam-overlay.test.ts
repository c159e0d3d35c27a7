import { wcagContrast } from 'culori';
import { describe, expect, it } from 'vitest';
import { SEAM_OUTCOMES, type SeamLine, type SeamOutcome } from '../../../src/skin/seam-trace';
import { seamPaths } from '../../../src/view/tile/seam-overlay';
import { SEAM_STROKES } from '../../../src/view/tile/seam-strokes';

function line(outcome: SeamOutcome, points: SeamLine['points'] = straight(0)): SeamLine {
  return { outcome, points, lengthMm: 20, covered: 1 };
}

function straight(yMm: number): SeamLine['points'] {
  return [
    [0, yMm],
    [20, yMm],
  ];
}

const paths = (lines: readonly SeamLine[]) => seamPaths(lines, ([x, y]) => [10 * x, 10 * y]);

const STEPS = [0, 51, 102, 153, 204, 255];
const TISSUES = STEPS.flatMap((r) => STEPS.flatMap((g) => STEPS.map((b) => [r, g, b])));

const rgbOf = (hex: string): number[] => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
const css = (rgb: readonly number[]): string => `rgb(${rgb.map(Math.round).join(' ')})`;

describe('what a seam is can be seen on tissue of any colour', () => {
  // WCAG 2.2, 1.4.11: what a graphic is understood by stands out by 3:1 from what lies beside it
  it.each(SEAM_OUTCOMES)('%s stands out by 3:1 from the ground it brings along', (outcome) => {
    const grounds = SEAM_STROKES[outcome].slice(0, -1);
    const top = SEAM_STROKES[outcome][grounds.length];
    expect(top.opacity).toBe(1);
    for (const tissue of TISSUES) {
      const ground = grounds.reduce<number[]>(
        (under, { colour, opacity }) =>
          rgbOf(colour).map((value, k) => value * opacity + under[k] * (1 - opacity)),
        tissue,
      );
      expect(wcagContrast(top.colour, css(ground)), css(tissue)).toBeGreaterThanOrEqual(3);
    }
  });

  it.each(SEAM_OUTCOMES)('%s is wider on its ground than by itself', (outcome) => {
    const [path] = paths([line(outcome)]);
    const reach = (d: string): number =>
      Math.max(...[...d.matchAll(/ (-?[\d.]+)/gu)].map(([, y]) => Math.abs(Number(y))));
    const half = SEAM_STROKES[outcome].map(({ on, widthPx }) => reach(path[on]) + widthPx / 2);
    expect(half[0]).toBeGreaterThan(half[half.length - 1]);
  });
});

describe('an outcome is told without its colour', () => {
  it('each has a shape or a pattern of its own', () => {
    const looks = SEAM_OUTCOMES.map((outcome) => {
      const [{ shape }] = paths([line(outcome)]);
      return `${shape} ${SEAM_STROKES[outcome].at(-1)?.dash}`;
    });
    expect(new Set(looks).size).toBe(SEAM_OUTCOMES.length);
  });

  it('fused is two lines on one ground, side by side', () => {
    const [{ course, shape }] = paths([line('fused')]);
    const heights = shape
      .split('M')
      .slice(1)
      .map((rail) => Number(rail.split('L')[0].split(' ')[1]));
    expect(heights).toHaveLength(2);
    expect(heights[0]).toBe(-heights[1]);
    expect(course.split('M')).toHaveLength(2);
  });
});

it('lines of one outcome are one path, so that where they meet nothing darkens; walls come last', () => {
  const drawn = paths([
    line('ridge'),
    line('fused'),
    line('fused', straight(5)),
    line('undecided', straight(9)),
  ]);
  expect(drawn.map(({ outcome }) => outcome)).toEqual(['fused', 'undecided', 'ridge']);
  expect(drawn[0].course.split('M')).toHaveLength(3);
});
