/** The pairs of a plan as the panel lists them: every two varieties, also those the plan says nothing of. */
import { acceptanceMean } from '../../plan/acceptance';
import { varietiesOf } from '../../plan/outline';
import { pairOf, type Pair, type Plan, type Variety } from '../../plan/plan';
import { piecesEver } from '../../plan/steps';

export interface PairRow {
  readonly a: Variety;
  readonly b: Variety;
  /** What the plan says of the pair; undefined for an unknown pair. */
  readonly said: Pair | undefined;
}

/** Below this chance the mingling of colours is not asked for. */
const MAY_FUSE = 0.1;

/** In the order of the varieties, so that a row keeps its place while its chance is changed. */
function pairRows(plan: Plan): PairRow[] {
  const { varieties } = plan;
  return varieties.flatMap((a, index) =>
    varieties.slice(index + 1).map((b) => ({ a, b, said: pairOf(plan, a.id, b.id) })),
  );
}

/** Those that can meet on the tile, and the others; where none can meet yet, all are asked for. */
export function pairsOnTile(plan: Plan): { readonly here: PairRow[]; readonly others: PairRow[] } {
  const set = new Set(piecesEver(plan).flatMap(varietiesOf));
  const rows = pairRows(plan);
  if (set.size < 2) return { here: rows, others: [] };
  const isHere = ({ a, b }: PairRow) => set.has(a.id) && set.has(b.id);
  return { here: rows.filter(isHere), others: rows.filter((row) => !isHere(row)) };
}

export function mayFuse(row: PairRow): boolean {
  return acceptanceMean(row.said) >= MAY_FUSE;
}

/** The three ways in which a grower may say how readily a pair takes. */
export const FORMS = ['tries', 'chance', 'kinship'] as const;
export type Form = (typeof FORMS)[number];

export function formOf(said: Pair | undefined): Form {
  if (said?.related !== undefined) return 'kinship';
  return typeof said?.acceptance === 'number' ? 'chance' : 'tries';
}

/** The same belief said in another form, as near as that form allows. */
export function inForm(form: Form, said: Pair | undefined): Partial<Pair> {
  const mean = acceptanceMean(said);
  if (form === 'chance') return { acceptance: Math.round(mean * 1000) / 1000 };
  if (form === 'tries') return { acceptance: triesNear(mean) };
  const kinship = mean >= 0.95 ? 'self' : mean >= 0.3 ? 'kin' : mean >= 0.02 ? 'unknown' : 'unrelated';
  return { related: kinship };
}

/** Ten tries with about this mean; an unknown pair is no try at all. */
function triesNear(mean: number): { took: number; tried: number } {
  const tried = mean > 0.04 && mean < 0.06 ? 0 : 10;
  return { took: Math.max(0, Math.min(tried, Math.round(mean * (tried + 1) - 0.05))), tried };
}
