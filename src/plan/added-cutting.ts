/** What is cut out of one grown tile, added to another by a step. */
import { branchPlan, type Bench } from './bench';
import type { Edit } from './edit';
import { changeStep } from './edit-steps';
import { freshVariety } from './fresh-variety';
import { varietiesOf } from './outline';
import type { GraftPiece, Pair, Plan, Variety } from './plan';
import { isOn } from './steps';
import { sameVariety } from './stock';

/** An isolating step of a tile: where a cutting can be taken. */
export interface CuttingSource {
  readonly plan: Plan;
  readonly seed: string;
  readonly step: string;
  /** 'Winter tile, day 122'. */
  readonly words: string;
}

/** All that is cut out of the tile shown, and of the other tiles of the bench and their branches. */
export function cuttingsOf(shown: Plan, seed: string, bench: Bench): CuttingSource[] {
  const taken = (plan: Plan, of: string, name: string, fromDay = 0): CuttingSource[] =>
    plan.steps
      .filter((step) => step.kind === 'isolate' && isOn(step) && step.day >= fromDay)
      .map(({ id, day }) => ({ plan, seed: of, step: id, words: `${name}, day ${day}` }));
  const others = bench.tiles.flatMap((tile) => [
    ...(tile.plan === shown ? [] : taken(tile.plan, tile.seed, tile.name)),
    ...(tile.branches ?? []).flatMap((branch) =>
      taken(branchPlan(tile.plan, branch), tile.seed, `${tile.name}, ${branch.name}`, branch.fromDay),
    ),
  ]);
  return [...taken(shown, seed, 'this tile'), ...others];
}

/**
 * The step adds the cutting in place of what it added. Varieties of the two plans are told apart by name; those that
 * the plan lacks come along, with what is known of their pairs.
 */
export function addCutting(plan: Plan, step: string, from: Plan, cutting: GraftPiece): Edit {
  const adds = plan.steps.find(({ id }) => id === step);
  if (adds?.kind !== 'add') return { plan, words: 'Set a cutting' };
  const held = new Set(varietiesOf(cutting));
  const varieties: Variety[] = [...plan.varieties];
  const isNow = new Map<string, string>();
  for (const variety of from.varieties.filter(({ id }) => held.has(id))) {
    const known = varieties.find(({ name }) => sameVariety(name) === sameVariety(variety.name));
    const isTaken = varieties.some(({ id }) => id === variety.id);
    const own = known ?? (isTaken ? { ...variety, id: freshVariety(varieties).id } : variety);
    if (known === undefined) varieties.push(own);
    isNow.set(variety.id, own.id);
  }
  const hadBoth = ({ a, b }: Pair): boolean =>
    [a, b].every((id) => plan.varieties.some((variety) => variety.id === id));
  const come = from.pairs.flatMap((pair): Pair[] => {
    const [a, b] = [isNow.get(pair.a), isNow.get(pair.b)];
    return a === undefined || b === undefined || hadBoth({ a, b }) ? [] : [{ ...pair, a, b }];
  });
  const named = (id: string): string => isNow.get(id) ?? id;
  const { id, at, turnDeg } = adds.piece;
  const piece: GraftPiece = {
    ...cutting,
    id,
    at,
    turnDeg,
    patches: cutting.patches.map((patch) => ({ ...patch, variety: named(patch.variety) })),
    ...(cutting.seams && {
      seams: cutting.seams.map(({ over, ...seam }) =>
        over === undefined ? seam : { ...seam, over: named(over) },
      ),
    }),
  };
  const known = { ...plan, varieties, pairs: [...plan.pairs, ...come] };
  return { plan: changeStep(known, step, { piece }).plan, words: `Set a cutting of ${from.name}` };
}
