/**
 * Where the rims of two discs meet that grow at unlike rates: a branch of a fourth-order curve on the near side, then
 * a logarithmic spiral, since the fast rim cannot pass through the slow one's ground and creeps along its edge.
 * Weighted crystal growth: Schaudt & Drysdale 1991 (7th ACM Symp. Comput. Geom.); Okabe, Boots, Sugihara & Chiu 2000,
 * Spatial Tessellations. Closed form for equal starting discs derived anew and compared with a two-front solver.
 */
export interface MeetingDiscs {
  /** Fast over slow rate, above 1. */
  readonly ratio: number;
  /** Between the centres. */
  readonly apartMm: number;
  readonly radiusMm: number;
}

/** Where the curve turns to the spiral: angle at the slow centre from the direction of the fast one, and radius. */
export function turnOf({ ratio: k, apartMm: d, radiusMm: a }: MeetingDiscs): {
  angle: number;
  radiusMm: number;
} {
  const c = (k - 1) * a;
  const radiusMm = c / k + Math.sqrt((c * c) / (k * k) + (d * d - c * c) / (k * k - 1));
  const far = k * radiusMm - c;
  return { angle: Math.acos((radiusMm * radiusMm + d * d - far * far) / (2 * radiusMm * d)), radiusMm };
}

/** Distance of the meeting line from the slow centre, mm, at an angle (radians, 0 towards the fast centre). */
export function meetingRadiusMm(discs: MeetingDiscs, angle: number): number {
  const { ratio: k, apartMm: d, radiusMm: a } = discs;
  const turn = turnOf(discs);
  if (angle > turn.angle) return turn.radiusMm * Math.exp((angle - turn.angle) / Math.sqrt(k * k - 1));
  const c = (k - 1) * a;
  const half = d * Math.cos(angle) - k * c;
  return (-half + Math.sqrt(half * half + (k * k - 1) * (d * d - c * c))) / (k * k - 1);
}
