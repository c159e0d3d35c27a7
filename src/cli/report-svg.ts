/** A plot of the report as an SVG file. */
import { frameOfPlot, PLOT_HEIGHT, PLOT_WIDTH } from '../checks/plot-frame';
import type { Plot } from '../checks/plot';

/** Okabe & Ito 2008: told apart by most colour-blind people. */
const INKS = ['#0072b2', '#d55e00', '#009e73', '#cc79a7', '#000000'];

function inkOf(k: number): string {
  return INKS[k % INKS.length];
}

function safe(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

export function svgOf(plot: Plot): string {
  const { box, xTicks, yTicks, lines, dots } = frameOfPlot(plot);
  const bottom = box.y + box.height;
  const keys = [...lines.map(({ name }) => `— ${name}`), ...dots.map(({ name }) => `● ${name}`)];
  const inks = [...lines.map((_, k) => inkOf(k)), ...dots.map((_, k) => inkOf(k))];
  const height = PLOT_HEIGHT + 14 * keys.length;
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${PLOT_WIDTH} ${height}" width="${PLOT_WIDTH}" height="${height}" font-family="sans-serif" font-size="10">`,
    `<title>${safe(plot.title)}</title>`,
    `<rect width="${PLOT_WIDTH}" height="${height}" fill="#ffffff"/>`,
    `<rect x="${box.x}" y="${box.y}" width="${box.width}" height="${box.height}" fill="none" stroke="#888888"/>`,
    ...xTicks.map(
      ({ at, label }) => `<text x="${at}" y="${bottom + 13}" text-anchor="middle">${label}</text>`,
    ),
    ...yTicks.map(
      ({ at, label }) => `<text x="${box.x - 4}" y="${at + 3}" text-anchor="end">${label}</text>`,
    ),
    `<text x="${box.x + box.width / 2}" y="${bottom + 30}" text-anchor="middle">${safe(plot.x.label)}</text>`,
    `<text transform="translate(10 ${box.y + box.height / 2}) rotate(-90)" text-anchor="middle">${safe(plot.y.label)}</text>`,
    ...lines.map(({ path }, k) => `<path d="${path}" fill="none" stroke="${inkOf(k)}"/>`),
    ...dots.flatMap(({ at }, k) =>
      at.map(({ x, y }) => `<circle cx="${x}" cy="${y}" r="2.5" fill="${inkOf(k)}"/>`),
    ),
    ...keys.map(
      (key, k) => `<text x="${box.x}" y="${PLOT_HEIGHT + 6 + 14 * k}" fill="${inks[k]}">${safe(key)}</text>`,
    ),
    '</svg>',
  ];
  return `${parts.join('\n')}\n`;
}
