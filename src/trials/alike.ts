/**
 * A hint that two varieties may be one genotype under two names. Pieces of one genotype always fuse, and meet all others
 * alike; but distinct genotypes may do so too, so it is never more than a hint:
 * a genetic test tells, or a self-graft control beside the pair.
 */
import type { PairCell, PairTable } from './pair-table';

export interface Alike {
  readonly cell: PairCell;
  /** Others that both were tried with, all of which they met alike. */
  readonly met: number;
  readonly words: string;
}

/** Judgement: fewer tries or common neighbours say too little. */
const LEAST_TRIED = 3;
const LEAST_MET = 3;

export function alikePairs(table: PairTable): Alike[] {
  const tried = table.noted.filter((cell) => cell.tried > 0 && cell.kind !== 'self');
  const neighbours = new Map<string, Map<string, PairCell>>();
  const add = (one: string, other: string, cell: PairCell) =>
    neighbours.set(one, (neighbours.get(one) ?? new Map<string, PairCell>()).set(other, cell));
  for (const cell of tried) {
    add(cell.a.id, cell.b.id, cell);
    add(cell.b.id, cell.a.id, cell);
  }
  return tried.flatMap((cell): Alike[] => {
    if (cell.tried < LEAST_TRIED || cell.took < cell.tried) return [];
    const [ofA, ofB] = [neighbours.get(cell.a.id), neighbours.get(cell.b.id)];
    const common = [...(ofA?.keys() ?? [])].filter((id) => ofB?.has(id));
    const isAlike = common.every((id) => meets(ofA?.get(id)) === meets(ofB?.get(id)));
    if (common.length < LEAST_MET || !isAlike) return [];
    const words = `${cell.a.name} and ${cell.b.name} fused in all ${cell.tried} tries and met ${common.length} others alike: they may be one genotype under two names. A genetic test would tell, or a graft of each with itself beside the pair.`;
    return [{ cell, met: common.length, words }];
  });
}

/** What most of the pair's tries came to. */
function meets(cell: PairCell | undefined): 'takes' | 'does not' | undefined {
  return cell && (2 * cell.took > cell.tried ? 'takes' : 'does not');
}
