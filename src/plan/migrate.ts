/**
 * From every older shape of a plan file to today's, one numbered step at a time. A released step is frozen.
 * A file for each shape stays in tests/fixtures/plans for ever.
 */
import type { Refusal } from './plan';

export interface MigrationStep {
  /** The number of the shape that comes out; the one that goes in is one less. */
  readonly to: number;
  readonly why: string;
  readonly up: (old: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;
}

const STEPS: readonly MigrationStep[] = [];

/** What each kind of file is called, by the name under which its shape is numbered. */
const KINDS = {
  seambench: 'plan',
  seambenchBench: 'bench',
  seambenchLog: 'log',
  seambenchLesson: 'lesson',
} as const;
export type NumberedBy = keyof typeof KINDS;

export type Migrated = { readonly value: unknown } | { readonly refusals: readonly Refusal[] };

/** What is no object, or has no whole number where its shape is numbered, goes on as it is: the schema says what is wrong. */
export function migrate(
  value: unknown,
  steps: readonly MigrationStep[] = STEPS,
  numberedBy: NumberedBy = 'seambench',
): Migrated {
  const newest = steps.length + 1;
  let plan = value;
  for (let shape = shapeOf(value, numberedBy); shape !== null && isObject(plan); shape += 1) {
    if (shape === newest) break;
    if (shape > newest) return { refusals: [tooNew(numberedBy, shape, newest)] };
    const step = steps[shape - 1];
    if (step.to !== shape + 1) throw new Error(`Migration ${shape} leads to ${step.to}, not to ${shape + 1}`);
    plan = { ...step.up(plan), [numberedBy]: step.to };
  }
  return { value: plan };
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function shapeOf(value: unknown, numberedBy: string): number | null {
  if (!isObject(value)) return null;
  const shape = value[numberedBy];
  return typeof shape === 'number' && Number.isInteger(shape) && shape >= 1 ? shape : null;
}

function tooNew(numberedBy: NumberedBy, found: number, newest: number): Refusal {
  return {
    where: numberedBy,
    found: String(found),
    allowed: `at most ${newest}`,
    cure: `This ${KINDS[numberedBy]} was written by a newer Seambench: open it there, or update this one`,
  };
}
