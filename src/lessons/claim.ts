/** Reads what a lesson claims off grown tiles. */
import type { Reading, SeamMm } from '../measure/reading';
import type { Frame } from '../model/frame';
import { VEILED } from '../model/seam-table';
import type { Plan } from '../plan/plan';
import type { Amount, Claim, Lesson } from './lesson';

/** A tile at a month: its numbers, and what its picture is drawn from where a claim asks for it. */
export interface Look {
  readonly reading: Reading;
  readonly frame: Frame | null;
}

/** A tile that has to be grown for a claim: the lesson's own is 0, that of the n-th thing to try is n. */
export interface ClaimRun {
  readonly tile: number;
  readonly plan: Plan;
  readonly months: readonly number[];
  readonly needsFrames: boolean;
}

function amountsOf({ amount, less, by }: Claim): Amount[] {
  return [amount, less, by].filter((one) => one !== undefined);
}

/** What has to be grown for these claims; none of a thing to try that the lesson does not have. */
export function runsOf(
  { plan, tries }: Pick<Lesson, 'plan' | 'tries'>,
  claims: readonly Claim[],
): ClaimRun[] {
  const amounts = claims.flatMap(amountsOf);
  return [plan, ...tries.map((one) => one.plan)].flatMap((own, tile): ClaimRun[] => {
    const asked = amounts.filter((amount) => (amount.try ?? 0) === tile);
    if (asked.length === 0) return [];
    const months = [...new Set(asked.map(({ month }) => month))];
    const needsFrames = asked.some(({ of }) => of === 'looks-fused');
    return [{ tile, plan: { ...own, months: Math.max(1, ...months) }, months, needsFrames }];
  });
}

/** The claim's number on one seed; null where there is none, as of a seam that is not there. */
export function valueOf(
  { amount, less, by }: Claim,
  lookAt: (tile: number, month: number) => Look | undefined,
): number | null {
  const read = (one: Amount): number | null => {
    const look = lookAt(one.try ?? 0, one.month);
    return look ? amountOf(one, look) : null;
  };
  const value = read(amount);
  const taken = less ? read(less) : 0;
  const divisor = by ? read(by) : 1;
  return value === null || taken === null || divisor === null || divisor === 0
    ? null
    : (value - taken) / divisor;
}

function amountOf({ of, pair, variety }: Amount, { reading, frame }: Look): number | null {
  switch (of) {
    case 'looks-fused':
      return frame && veiledShare(frame);
    case 'tissue':
      return variety === undefined ? null : (reading.varieties[variety]?.share ?? null);
    case 'cut':
      return variety === undefined ? null : cutShare(reading, variety);
    case 'vein-width':
      return reading.veinWidthMm;
    case 'radius':
      return Math.sqrt(reading.coverMm2 / Math.PI);
    default: {
      const seam = pair ? seamOf(reading, pair) : reading.seam;
      return seam && seam.lengthMm > 0 ? seam[`${of}Mm`] / seam.lengthMm : null;
    }
  }
}

function seamOf({ pairs }: Reading, [one, other]: readonly [string, string]): SeamMm | null {
  return pairs.find(({ a, b }) => (a === one && b === other) || (a === other && b === one)) ?? null;
}

/** Of all that was cut out as pieces, the share that is of the variety. */
function cutShare({ steps }: Reading, variety: string): number | null {
  const all = steps.flatMap(({ cutMm2 }) => Object.entries(cutMm2));
  const sum = all.reduce((total, [, mm2]) => total + mm2, 0);
  const own = all.reduce((total, [id, mm2]) => total + (id === variety ? mm2 : 0), 0);
  return sum > 0 ? own / sum : null;
}

/** Of the cells of all seams, those that look fused from above and are a ridge. */
function veiledShare(frame: Frame): number | null {
  let [veiled, seam] = [0, 0];
  for (const bits of frame.seam) {
    if ((bits & 7) === 0) continue;
    seam++;
    if ((bits & 7) === VEILED) veiled++;
  }
  return seam > 0 ? veiled / seam : null;
}
