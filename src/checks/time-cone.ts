/**
 * How many verdicts a seam takes, by the time cone of Kolmogorov, Johnson, Mehl & Avrami: a nucleus can fall at (x, t)
 * only if none fell before in the cone from which a verdict would have reached x by t. So the mean number is
 *   sum over days of integral J exp(-J A(x, t)) dx,
 * A = mm days of open contact in that cone (Cahn 1996, Mater. Res. Soc. Symp. Proc. 398: 425, the time cone method, from
 * memory). It holds for contact that opens from a middle outward as well as for contact all at once; a verdict waits at
 * the tip of the contact for it to open.
 */
export interface OpeningSeam {
  readonly halfLengthMm: number;
  /** Day on which the two sides touch, by distance from the middle; never falling. */
  readonly touchedDay: (xMm: number) => number;
  readonly days: number;
  readonly delayDays: number;
  readonly nucleiPerMmDay: number;
  readonly zipMmPerDay: number;
}

const STEP_MM = 0.5;

export function meanNuclei(seam: OpeningSeam): number {
  const { halfLengthMm, touchedDay, days, delayDays, nucleiPerMmDay: rate, zipMmPerDay } = seam;
  const count = Math.round((2 * halfLengthMm) / STEP_MM);
  const places = Array.from({ length: count }, (_, k) => (k + 0.5) * STEP_MM - halfLengthMm);
  const touched = places.map((x) => touchedDay(Math.abs(x)));
  /** Verdicts fall at the end of whole days. */
  const firstDay = touched.map((day) => Math.ceil(day + delayDays));
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const ways = places.map((x, from) => ({
      days: Math.abs(places[k] - x) / zipMmPerDay,
      open: openWay(touched, from, k, zipMmPerDay),
      first: firstDay[from],
    }));
    for (let day = firstDay[k]; day <= days; day++) {
      let cone = 0;
      for (const way of ways) {
        if (way.open > day) continue;
        cone += Math.max(0, Math.min(day - 1, Math.floor(day - way.days)) - way.first + 1);
      }
      sum += rate * Math.exp(-rate * cone * STEP_MM) * STEP_MM;
    }
  }
  return sum;
}

/** Earliest day by which the contact itself lets a verdict from one place reach another. */
function openWay(touched: readonly number[], from: number, to: number, zipMmPerDay: number): number {
  const step = from <= to ? 1 : -1;
  let day = -Infinity;
  for (let at = from; at !== to + step; at += step) {
    day = Math.max(day + (at === from ? 0 : STEP_MM / zipMmPerDay), touched[at]);
  }
  return day;
}
