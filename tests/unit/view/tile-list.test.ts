/** Which tiles the list shows: what is still awaited stands apart from what nobody reads any more. */
import { expect, it } from 'vitest';
import { tilesFor, type Shown } from '../../../src/view/trials/tile-list';
import { logOf, tileOfTwo, variety } from '../../fixtures/log';

it('tells tiles that are not settled yet from those no longer read', () => {
  const log = logOf(
    [variety('a'), variety('b')],
    [
      tileOfTwo('read', ['a', 'b'], [{ on: '2026-10-01', saw: 'undecided' }]),
      tileOfTwo('left', ['a', 'b'], [{ on: '2026-03-01', saw: 'undecided' }]),
      tileOfTwo('done', ['a', 'b'], [{ on: '2026-10-01', saw: 'fused' }]),
    ],
  );
  const found = (shown: Shown) => tilesFor(log, '', 'unread', shown, '2026-11-01').map(({ id }) => id);
  expect(found('all')).toEqual(['done', 'read', 'left']);
  expect(found('open')).toEqual(['read']);
  expect(found('unread')).toEqual(['left']);
});
