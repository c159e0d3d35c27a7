/** Steps in words for the page: what one does, and what it took. */
import type { StepReading } from '../../measure/reading';
import { short } from '../../plan/piece-name';
import type { Plan, Step, StepKind } from '../../plan/plan';
import { facesOfRecut, isolateKerfMm } from '../../plan/steps';

export const KINDS: readonly { readonly kind: StepKind; readonly label: string; readonly words: string }[] = [
  { kind: 'trim', label: 'Trim', words: 'Cuts the rim back by a width, all round or along a line.' },
  {
    kind: 'recut',
    label: 'Recut',
    words: 'Saws the tile into parts, which can be turned and change places.',
  },
  { kind: 'isolate', label: 'Isolate', words: 'Cuts a patch out with a margin; the hole heals over.' },
  { kind: 'scrape', label: 'Scrape', words: 'Takes a strip of tissue off, so that a seam meets anew.' },
  { kind: 'move', label: 'Move', words: 'Breaks a piece off and sets it elsewhere, turned.' },
  { kind: 'lift', label: 'Lift', words: 'Takes a piece off the tile.' },
  { kind: 'add', label: 'Add', words: 'Sets a new piece, from stock or cut out of another tile.' },
];

/** A pin's mark, in a box of 12 by 12: shape tells the kind. */
export const GLYPHS: Readonly<Record<StepKind, string>> = {
  trim: 'M6 1a5 5 0 1 0 0 10A5 5 0 1 0 6 1Z',
  recut: 'M1 1h10v10H1ZM6 1v10M1 6h10',
  isolate: 'M2 2h8v8H2Z',
  scrape: 'M1 8L8 1l3 3-7 7Z',
  move: 'M1 6h10M8 3l3 3-3 3',
  lift: 'M6 11V1M3 4l3-3 3 3',
  add: 'M6 1v10M1 6h10',
};

export function labelOf(kind: StepKind): string {
  return KINDS.find((one) => one.kind === kind)?.label ?? kind;
}

function mm(value: number): string {
  return `${short(value)} mm`;
}

/** 'trim 3 mm all round'. */
export function deed(plan: Plan, step: Step): string {
  switch (step.kind) {
    case 'trim':
      return `trim ${mm(step.widthMm)} ${step.along ? 'along a line' : 'all round'}${step.piece ? ` of ${step.piece}` : ''}`;
    case 'recut': {
      const parts = facesOfRecut(plan.tile, step).length;
      const set = step.then.length > 0 ? `, ${step.then.length} set anew` : '';
      return `recut into ${parts} parts, kerf ${mm(step.kerfMm)}${set}`;
    }
    case 'isolate':
      return `cut out a patch, kerf ${mm(isolateKerfMm(step))}`;
    case 'scrape':
      return `scrape a strip of ${mm(step.widthMm)}`;
    case 'move':
      return `move ${step.piece}${step.turnDeg === 0 ? '' : `, turned ${short(step.turnDeg)}°`}`;
    case 'lift':
      return `lift ${step.piece}`;
    case 'add':
      return 'patches' in step.piece ? 'add a cutting' : 'add a piece';
  }
}

/** 'Day 122: trim 3 mm all round (off)'. */
export function pinWords(plan: Plan, step: Step): string {
  return `Day ${step.day}: ${deed(plan, step)}${step.on === false ? ' (switched off)' : ''}`;
}

/** What a step took by the month shown, or null where it took nothing. */
export function tookWords(plan: Plan, reading: StepReading): string | null {
  const nameOf = (id: string): string => plan.varieties.find((variety) => variety.id === id)?.name ?? id;
  const areas = (mm2: Readonly<Record<string, number>>): string =>
    Object.entries(mm2)
      .filter(([, area]) => area >= 0.5)
      .map(([id, area]) => `${Math.round(area)} mm² ${nameOf(id)}`)
      .join(', ');
  const said: string[] = [];
  if (reading.cuttings > 0) {
    const count = reading.cuttings === 1 ? '1 cutting' : `${reading.cuttings} cuttings`;
    const two = reading.twoColoured > 0 ? `, ${reading.twoColoured} of two colours` : '';
    const of = areas(reading.cutMm2);
    said.push(`${count}${two}${of === '' ? '' : `: ${of}`}`);
  }
  const lost = areas(reading.lostMm2);
  if (lost !== '') said.push(`lost ${lost}`);
  if (reading.skipped > 0) said.push(`${reading.skipped} found nothing there`);
  return said.length === 0 ? null : `${said.join('; ')}.`;
}
