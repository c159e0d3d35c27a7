/** Pairs that cannot be: the schema knows no varieties, and each pair is said once. */
import { pairOf, type Pair, type Plan, type Refusal } from './plan';

/** 'pieces[2] (p3)' */
export function placeInFile(list: string, index: number, id: string): string {
  return `${list}[${index}] (${id})`;
}

export function pairRefusals(plan: Plan, index: number): Refusal[] {
  const pair = plan.pairs[index];
  const where = placeInFile('pairs', index, `${pair.a} with ${pair.b}`);
  const names = `${varietyName(plan, pair.a)} and ${varietyName(plan, pair.b)}`;
  const refusals = strangers(plan, pair, where);
  if (pair.a === pair.b) {
    refusals.push({
      where,
      found: `the variety ${pair.a} paired with itself`,
      allowed: 'two different varieties: pieces of one variety always fuse',
      cure: `The variety ${varietyName(plan, pair.a)} is paired with itself, but pieces of one variety always fuse: take that pair out`,
    });
  } else if (pairOf(plan, pair.a, pair.b) !== pair) {
    refusals.push({
      where,
      found: `${pair.a} with ${pair.b} a second time`,
      allowed: 'each pair once, in either order',
      cure: `The pair ${names} is listed twice: take one of the two out`,
    });
  }
  return [...refusals, ...acceptanceRefusals(pair, where, names)];
}

/** The id where there is no name to be had. */
function varietyName(plan: Plan, id: string): string {
  const name = plan.varieties.find((variety) => variety.id === id)?.name ?? '';
  return name === '' ? `“${id}”` : name;
}

function strangers(plan: Plan, pair: Pair, where: string): Refusal[] {
  const known = plan.varieties.map((variety) => variety.id);
  return [...new Set([pair.a, pair.b])]
    .filter((id) => !known.includes(id))
    .map((id) => ({
      where,
      found: `the variety ${id}, which is not there`,
      allowed: `one of ${known.join(', ')}`,
      cure: `A pair speaks of a variety “${id}” that is not there: add it, or take that pair out`,
    }));
}

function acceptanceRefusals(pair: Pair, where: string, names: string): Refusal[] {
  const refusals: Refusal[] = [];
  if (pair.acceptance !== undefined && pair.related !== undefined) {
    refusals.push({
      where,
      found: 'both acceptance and related',
      allowed: 'one of the two: related stands in place of acceptance',
      cure: `The pair ${names} has both a chance to take and a kinship: keep one of the two`,
    });
  }
  if (typeof pair.acceptance === 'object' && pair.acceptance.took > pair.acceptance.tried) {
    const { took, tried } = pair.acceptance;
    refusals.push({
      where: `${where}.acceptance`,
      found: `${took} took of ${tried} tried`,
      allowed: 'took no greater than tried',
      cure: `The pair ${names} took ${took} times of only ${tried} tried: lower the first number to ${tried} or raise the second to ${took}`,
    });
  }
  return refusals;
}
