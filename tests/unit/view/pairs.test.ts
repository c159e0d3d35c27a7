import { describe, expect, it } from 'vitest';
import { pairsOnTile } from '../../../src/view/grow/pairs';
import type { Plan } from '../../../src/plan/plan';
import { discPiece, smallPlan } from '../../fixtures/small-plan';

const [fern, garnet] = smallPlan().varieties;
const three = (...pieces: Plan['pieces']): Plan =>
  smallPlan({ varieties: [fern, garnet, { ...fern, id: 'c', name: 'Amber' }], pieces });
const names = (rows: ReturnType<typeof pairsOnTile>['here']) => rows.map(({ a, b }) => `${a.id}${b.id}`);

describe('pairs of the panel', () => {
  it('come first where both varieties have a piece on the tile', () => {
    const { here, others } = pairsOnTile(
      three(discPiece('p1', 'a', -9, 0, 8), discPiece('p2', 'c', 9, 0, 8)),
    );
    expect(names(here)).toEqual(['ac']);
    expect(names(others)).toEqual(['ab', 'bc']);
  });

  it('are all asked for while no two varieties are on the tile', () => {
    const { here, others } = pairsOnTile(three(discPiece('p1', 'a', 0, 0, 8)));
    expect(names(here)).toEqual(['ab', 'ac', 'bc']);
    expect(others).toEqual([]);
  });
});
