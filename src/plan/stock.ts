/**
 * The mother ledger: what a plan cuts from each variety's mother colonies, what they hold by then, and what stays.
 * A mother is taken for a disc of its area whose rim grows at the variety's rate: after t months it holds
 * pi (sqrt(A / pi) + v t)^2 mm2. That is an upper bound: nothing dies back, no rim is hemmed in, and where it was cut it
 * heals to a disc at once. The kept part is a share of the area as it was measured and does not move: of a share of
 * what is left, many small cuts would leave nothing.
 */
import { dayOfDate, DAYS_PER_MONTH } from '../units/quantity';
import type { Mother } from './bench';
import { partsOf, pieceAreaMm2 } from './outline';
import type { Piece, Plan, Refusal } from './plan';
import { isOn } from './steps';

/** Part of a mother that is kept where the grower says nothing. Judgement, no source. */
export const KEEP_SHARE = 2 / 3;
/** Takes that differ from what is allowed by rounding alone, mm2. */
const ROUNDING_MM2 = 1e-6;

/** What is cut from the stock of one variety on one day. */
export interface Take {
  readonly variety: string;
  /** Days after the plan's day 0. */
  readonly day: number;
  readonly areaMm2: number;
}

/** The stock of one variety on the day of its last cut, or on the plan's day 0 where nothing is cut. */
export interface StockRow {
  readonly variety: string;
  /** Null where no mother of the variety is noted. */
  readonly holdsMm2: number | null;
  readonly keepMm2: number;
  readonly takenMm2: number;
  /** What may still be cut after the plan has taken its own; never below 0. */
  readonly leftMm2: number;
  readonly tanks: readonly string[];
}

export interface Ledger {
  readonly rows: readonly StockRow[];
  readonly refusals: readonly Refusal[];
  readonly warnings: readonly string[];
}

interface Standing {
  readonly keepMm2: number;
  readonly tank: string;
  areaMm2: number;
  day: number;
}

/** One variety under one name, however it is written. */
export function sameVariety(name: string): string {
  return name.trim().toLowerCase();
}

/** Upper bound of a colony's area `months` after it was measured; before that it counts as measured. */
export function grownAreaMm2(areaMm2: number, rimMmPerMonth: number, months: number): number {
  const radiusMm = Math.sqrt(areaMm2 / Math.PI) + rimMmPerMonth * Math.max(0, months);
  return Math.PI * radiusMm * radiusMm;
}

/**
 * The pieces of day 0, of a graft each patch by its variety, and those that steps add from stock; what a step adds of
 * several patches was cut out of a tile and costs no mother. In order of days.
 */
export function takesOf(plan: Plan): Take[] {
  const names = new Map(plan.varieties.map(({ id, name }) => [id, name]));
  const sums = new Map<string, Take>();
  const take = (piece: Piece, day: number): void => {
    for (const part of partsOf(piece)) {
      const variety = names.get(part.variety) ?? part.variety;
      const key = `${day} ${sameVariety(variety)}`;
      const before = sums.get(key)?.areaMm2 ?? 0;
      sums.set(key, { variety, day, areaMm2: before + pieceAreaMm2(part) });
    }
  };
  for (const piece of plan.pieces) take(piece, 0);
  for (const step of plan.steps)
    if (step.kind === 'add' && isOn(step) && !('patches' in step.piece)) take(step.piece, step.day);
  return [...sums.values()].sort((a, b) => a.day - b.day);
}

/**
 * What the plans come to together when all begin on `from` (ISO date). Varieties in the order in which plans name
 * them, each at the rim rate of the first plan that does.
 */
export function ledgerOf(plans: readonly Plan[], mothers: readonly Mother[], from: string): Ledger {
  const rates = new Map<string, { readonly name: string; readonly rimMmPerMonth: number }>();
  for (const { varieties } of plans)
    for (const { name, rimMmPerMonth } of varieties)
      if (!rates.has(sameVariety(name))) rates.set(sameVariety(name), { name, rimMmPerMonth });
  const takes = plans.flatMap(takesOf).sort((a, b) => a.day - b.day);
  const [rows, refusals]: [StockRow[], Refusal[]] = [[], []];
  for (const [key, { name, rimMmPerMonth }] of rates) {
    const own = mothers.filter(({ variety }) => sameVariety(variety) === key);
    const cuts = takes.filter(({ variety }) => sameVariety(variety) === key);
    if (own.length === 0 && cuts.length === 0) continue;
    const row =
      own.length === 0 ? withoutMother(name, cuts) : withMothers(name, own, cuts, rimMmPerMonth, from);
    rows.push(row.row);
    refusals.push(...row.refusals);
  }
  return { rows, refusals, warnings: rows.flatMap(warningsOf) };
}

interface Judged {
  readonly row: StockRow;
  readonly refusals: readonly Refusal[];
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function withoutMother(variety: string, cuts: readonly Take[]): Judged {
  const takenMm2 = sum(cuts.map(({ areaMm2 }) => areaMm2));
  return { row: { variety, holdsMm2: null, keepMm2: 0, takenMm2, leftMm2: 0, tanks: [] }, refusals: [] };
}

/** Cuts in order of days; each takes from every mother in proportion to what that one may give. */
function withMothers(
  variety: string,
  mothers: readonly Mother[],
  cuts: readonly Take[],
  rimMmPerMonth: number,
  from: string,
): Judged {
  const start = dayOfDate(from);
  const stock = mothers.map(({ areaMm2, on, keepShare = KEEP_SHARE, tank }): Standing => ({
    areaMm2,
    tank,
    keepMm2: areaMm2 * keepShare,
    day: dayOfDate(on),
  }));
  const keepMm2 = sum(stock.map((mother) => mother.keepMm2));
  const refusals: Refusal[] = [];
  const byDay = new Map<number, number>(cuts.length === 0 ? [[0, 0]] : []);
  for (const { day, areaMm2 } of cuts) byDay.set(day, (byDay.get(day) ?? 0) + areaMm2);
  let [holdsMm2, leftMm2] = [0, 0];
  for (const [day, takenMm2] of byDay) {
    for (const mother of stock) growTo(mother, start + day, rimMmPerMonth);
    holdsMm2 = sum(stock.map(({ areaMm2 }) => areaMm2));
    const spare = stock.map((mother) => Math.max(0, mother.areaMm2 - mother.keepMm2));
    const spareMm2 = sum(spare);
    if (takenMm2 > spareMm2 + ROUNDING_MM2)
      refusals.push(refusal(variety, day, takenMm2, holdsMm2, spareMm2));
    const part = spareMm2 > 0 ? Math.min(1, takenMm2 / spareMm2) : 0;
    stock.forEach((mother, k) => (mother.areaMm2 -= spare[k] * part));
    leftMm2 = Math.max(0, spareMm2 - takenMm2);
  }
  const takenMm2 = sum(cuts.map(({ areaMm2 }) => areaMm2));
  const tanks = [...new Set(stock.map(({ tank }) => tank.trim()))];
  return { row: { variety, holdsMm2, keepMm2, takenMm2, leftMm2, tanks }, refusals };
}

function growTo(mother: Standing, day: number, rimMmPerMonth: number): void {
  const months = (day - mother.day) / DAYS_PER_MONTH;
  mother.areaMm2 = grownAreaMm2(mother.areaMm2, rimMmPerMonth, months);
  mother.day = Math.max(mother.day, day);
}

function refusal(
  variety: string,
  day: number,
  takenMm2: number,
  holdsMm2: number,
  spareMm2: number,
): Refusal {
  const [takes, holds] = [Math.round(takenMm2), Math.round(holdsMm2)];
  const keep = Math.round(holdsMm2 - spareMm2);
  const over = Math.max(1, Math.round(takenMm2 - spareMm2));
  const when = day === 0 ? '' : ` on day ${day}`;
  const words = `This takes ${takes} mm² of ${variety}${when}; the mother holds ${holds} mm² and you keep ${keep}`;
  return {
    where: `the stock of ${variety}`,
    found: `${takes} mm² taken${when}`,
    allowed: `at most ${Math.round(spareMm2)} mm²`,
    cure: `${words}: ${over} mm² too much`,
  };
}

function warningsOf({ variety, holdsMm2, takenMm2, leftMm2, tanks }: StockRow): string[] {
  if (takenMm2 === 0) return [];
  const takes = Math.round(takenMm2);
  if (holdsMm2 === null)
    return [`No mother of ${variety} is noted: whether ${takes} mm² can be cut is not known.`];
  if (tanks.length > 1) return [];
  const tank = tanks[0] === '' ? 'one tank only' : `one tank only (${tanks[0]})`;
  const left = Math.round(leftMm2);
  const rest =
    left === 0 ? 'this plan cuts the last of what may be cut' : `${left} mm² may be cut after this plan`;
  return [`${variety} lives in ${tank}, and ${rest}: set a piece of it in another tank first.`];
}
