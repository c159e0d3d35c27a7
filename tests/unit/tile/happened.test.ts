import { expect, test } from 'vitest';
import { deletePieces, movePieces, turnPieces } from '../../../src/plan/edit';
import { Desk } from '../../../src/view/desk.svelte';
import { happened } from '../../../src/view/tile/happened';
import { HALVES } from '../../fixtures/halves';

test('what was done is told with how the piece stands now; undo and redo too', () => {
  const desk = new Desk(HALVES);
  let before = desk.plan;
  const told = (act: () => void): string => {
    before = desk.plan;
    act();
    return happened(desk.told, before, desk.plan);
  };
  expect(told(() => desk.do(movePieces(desk.plan, ['p3'], 0, 2)))).toBe(
    'Done: Move piece p3, disc of 8 mm, 20.0 mm right of and 2.0 mm below the middle.',
  );
  expect(told(() => desk.do(turnPieces(desk.plan, ['p1'], 15)))).toBe(
    'Done: Turn piece p1, 10.0 by 20.0 mm, 12.0 mm left of the middle, turned 15 degrees.',
  );
  expect(told(() => desk.do(deletePieces(desk.plan, ['p3'])))).toBe('Done: Delete piece p3.');
  expect(told(() => desk.undo())).toBe(
    'Undone: Delete piece p3, disc of 8 mm, 20.0 mm right of and 2.0 mm below the middle.',
  );
  expect(told(() => desk.redo())).toBe('Done again: Delete piece p3.');
  expect(told(() => desk.do(movePieces(desk.plan, ['p1', 'p2'], 0, 1)))).toBe('Done: Move 2 pieces.');
});
