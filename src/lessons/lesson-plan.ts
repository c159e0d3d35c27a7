/** The small tiles of lessons: they grow in a fraction of a second. Varieties are invented. */
import type { Pair, Plan, PlainPiece, Settings, Step, Variety, Xy } from '../plan/plan';

const NOTE = 'The tile of a lesson. The farm and its varieties are invented; the rates are planning values.';

export const FERN: Variety = variety('fern', 'Fern', '#2f8a5b');
export const AMBER: Variety = variety('amber', 'Amber', '#dd8a2e');
export const GARNET: Variety = variety('garnet', 'Garnet', '#961f3a');
export const HEATHER: Variety = variety('heather', 'Heather', '#b48ad2');

function variety(id: string, name: string, colour: string): Variety {
  return { id, name, colour, rimMmPerMonth: 3, aggression: 0.2 };
}

interface Parts {
  readonly name: string;
  readonly sizeMm: number;
  readonly months: number;
  readonly varieties: readonly Variety[];
  readonly pairs?: readonly Pair[];
  readonly pieces: Plan['pieces'];
  readonly steps?: readonly Step[];
  readonly settings?: Settings;
}

export function lessonPlan({ name, sizeMm, months, varieties, pairs, pieces, steps, settings }: Parts): Plan {
  const plan: Plan = {
    seambench: 1,
    name,
    tile: { shape: 'square', sizeMm },
    varieties,
    pairs: pairs ?? [],
    pieces,
    steps: steps ?? [],
    months,
    note: NOTE,
  };
  return settings ? { ...plan, settings } : plan;
}

export function disc(id: string, of: Variety, at: Xy, diameterMm: number): PlainPiece {
  return { id, variety: of.id, at, turnDeg: 0, disc: { diameterMm } };
}

export function block(id: string, of: Variety, at: Xy, widthMm: number, heightMm: number): PlainPiece {
  const [x, y] = [widthMm / 2, heightMm / 2];
  return { id, variety: of.id, at, turnDeg: 0, outline: [[-x, -y], [x, -y], [x, y], [-x, y]] }; // prettier-ignore
}
