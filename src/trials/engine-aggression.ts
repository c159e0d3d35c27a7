/**
 * From abilities of a contest (log scale, any spread) to the engine's aggressions (0 to 1, of which only differences count).
 *
 * In the engine (model/fate.ts) a seam that did not fuse and is not dead is lapped, by the more aggressive, with chance
 * lapGain times the difference, else it is a ridge. In Davidson's model i lies above in a share
 * si / (si + sj + nu sqrt(si sj)) and j likewise; the first less the second, over lapGain, is the difference that the
 * engine would need. No aggressions give all of these at once: they are taken so that the squares of what is amiss are
 * least, which is the mean of each variety's differences from all (Jiang et al. 2011, Math. Program. 127: 203-244, for a
 * full table). That the engine's stronger never loses, and that its dead seams are a share of their own, is not mapped.
 */
import { DEFAULTS } from '../model/defaults';

/** Above less below, as a share, for a difference of abilities and Davidson's tie parameter. */
function leadOf(difference: number, tie: number): number {
  const half = Math.exp(difference / 2);
  return (half - 1 / half) / (half + 1 / half + tie);
}

/**
 * One aggression for each ability, about `centre` as far as 0 to 1 allows; where the spread is more than 1 it is drawn in.
 */
export function engineAggressions(abilities: readonly number[], tie: number, centre: number): number[] {
  const count = abilities.length;
  const raw = abilities.map(
    (own) =>
      abilities.reduce((sum, other) => sum + leadOf(own - other, tie), 0) / (count * DEFAULTS.lapGain.value),
  );
  const [least, most] = [Math.min(...raw), Math.max(...raw)];
  const drawnIn = Math.max(1, most - least);
  const shift = Math.min(1 - most / drawnIn, Math.max(-least / drawnIn, centre));
  return raw.map((value) => value / drawnIn + shift);
}
