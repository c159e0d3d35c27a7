/** The report of `npm run validate` as data: what the page shows and what is written as Markdown. */
import type { Outcome } from './outcome';
import { judge } from './outcome';
import type { LatticeTable } from './lattice-table';
import type { Plot } from './plot';
import type { Topic } from './check';

export interface Report {
  /** ISO date of the run. */
  readonly madeOn: string;
  readonly modelVersion: number;
  /** How to make it again. */
  readonly command: string;
  readonly topics: readonly TopicReport[];
}

export interface TopicReport {
  readonly title: string;
  readonly outcomes: readonly Outcome[];
  readonly plots: readonly Plot[];
  readonly tables: readonly LatticeTable[];
}

export function reportOn(topic: Topic): TopicReport {
  return {
    title: topic.title,
    outcomes: topic.checks.map(judge),
    plots: topic.plots?.() ?? [],
    tables: topic.tables?.() ?? [],
  };
}

export interface Tally {
  readonly checks: number;
  readonly passed: number;
  /** Fall short for a reason that is known. */
  readonly known: number;
  readonly short: number;
}

export function tallyOf({ topics }: Pick<Report, 'topics'>): Tally {
  const outcomes = topics.flatMap((topic) => topic.outcomes);
  const passed = outcomes.filter(({ pass }) => pass).length;
  const known = outcomes.filter((outcome) => outcome.known !== null).length;
  return { checks: outcomes.length, passed, known, short: outcomes.length - passed - known };
}
