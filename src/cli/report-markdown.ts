/** The report as Markdown, with its plots as files beside it. */
import type { Outcome } from '../checks/outcome';
import { shiftWords, type LatticeTable } from '../checks/lattice-table';
import { tallyOf, type Report, type TopicReport } from '../checks/report';

const BOUND = { about: '', atLeast: 'at least ', atMost: 'at most ' };

function figure(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  return String(Number(value.toPrecision(Math.abs(value) >= 1000 ? 6 : 4)));
}

function markOf({ pass, known }: Outcome): string {
  if (pass) return 'passes';
  return known === null ? 'FALLS SHORT' : 'falls short, known';
}

/** The file of a topic's plot. */
export function plotFile(topic: TopicReport, k: number): string {
  return `${topic.title.toLowerCase().replaceAll(/[^a-z\d]+/gu, '-')}-${k + 1}.svg`;
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

function row(outcome: Outcome): string {
  const { name, claim, source, unit, expected, bound, found, interval, tolerance, because } = outcome;
  const range = interval === null ? '' : ` (${figure(interval[0])} to ${figure(interval[1])})`;
  const why = outcome.known === null ? because : `${because}. Known: ${outcome.known}`;
  const cells = [
    `**${name}**: ${claim}`,
    source,
    `${BOUND[bound]}${figure(expected)} ${unit}`,
    `${figure(found)}${range}`,
    `${figure(tolerance)}: ${why}`,
    markOf(outcome),
  ];
  return `| ${cells.map(cell).join(' | ')} |`;
}

/** Mean and spread at each grain, then the shifts; a shift beyond the bar is set in bold. */
function tableText({ seeds, grains, rows }: LatticeTable): string {
  const heads = [`measure (${seeds} seeds)`, ...grains, ...rows[0].shifts.map(({ words }) => words)];
  const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  return [
    line(heads),
    line(heads.map(() => '---')),
    ...rows.map(({ measure, unit, found, shifts }) =>
      line([
        `${measure}, ${unit}`,
        ...found.map(({ mean, spread }) => `${figure(mean)} ± ${figure(spread)}`),
        ...shifts.map((shift) => (shift.pass ? shiftWords(shift) : `**${shiftWords(shift)}**`)),
      ]),
    ),
  ].join('\n');
}

function topicText(topic: TopicReport): string {
  return [
    `## ${topic.title}`,
    '',
    '| claim | source | expected | found (95 %) | tolerance, and why | |',
    '| --- | --- | --- | --- | --- | --- |',
    ...topic.outcomes.map(row),
    '',
    ...topic.tables.flatMap((table) => [`### ${table.preset}`, '', tableText(table), '']),
    ...topic.plots.flatMap((plot, k) => [`![${plot.title}](${plotFile(topic, k)})`, '']),
  ].join('\n');
}

export function markdownOf(report: Report): string {
  const { checks, passed, known, short } = tallyOf(report);
  return [
    '# What the model was held against',
    '',
    `${report.madeOn}, model version ${report.modelVersion}. Made by \`${report.command}\`.`,
    '',
    `${checks} checks: ${passed} pass, ${known} fall short for a known reason, ${short} fall short otherwise.`,
    '',
    ...report.topics.map(topicText),
  ].join('\n');
}
