/** How hands move the view and not the plan; the canvas is 560 px square and shows a 60 mm tile. */
import { beforeEach, expect, test } from 'vitest';
import type { Xy } from '../../../src/plan/plan';
import type { Desk } from '../../../src/view/desk.svelte';
import type { Hold } from '../../../src/view/tile/hold.svelte';
import type { Pointer, Touch } from '../../../src/view/tile/pointer';
import { HALVES } from '../../fixtures/halves';
import { handOnTile, touchOf } from '../../fixtures/hand-on-tile';

let desk: Desk;
let hold: Hold;
let pointer: Pointer;

beforeEach(() => {
  ({ desk, hold, pointer } = handOnTile());
});

function touch(mm: Xy, more: Partial<Touch> = {}): Touch {
  return touchOf(hold, mm, more);
}

function drag(from: Xy, to: Xy, more: Partial<Touch> = {}): void {
  const [down, up] = [touch(from, more), touch(to, more)];
  pointer.press(down);
  pointer.move(up);
  pointer.lift(up);
}

test('a finger moves no piece before a tap has chosen it, be the whole tile shown or a part', () => {
  const finger = { kind: 'touch' };
  for (const zoom of [1, 2]) {
    hold.zoom(zoom);
    desk.select([]);
    drag([5, 0], [3, -1], finger);
    expect(desk.plan).toBe(HALVES);
    expect(desk.selection).toEqual([]);
  }
  pointer.press(touch([5, 0], finger));
  pointer.lift(touch([5, 0], finger));
  expect(desk.selection).toEqual(['p2']);
  const [from, to] = [touch([2, 0], finger), touch([4, 0], finger)];
  pointer.press(from);
  pointer.move(to);
  pointer.lift(to);
  expect(desk.plan.pieces[1].at[0]).toBeCloseTo(4, 2);
});

test('a drag beside the pieces moves the view once it is nearer than the whole tile, and never that', () => {
  const whole = hold.camera;
  drag([-25, -25], [25, 25]);
  expect(hold.camera).toEqual(whole);
  expect(hold.isWhole).toBe(true);

  hold.zoom(3);
  expect(hold.isWhole).toBe(false);
  pointer.press({ ...touch([0, 0]), button: 1 });
  pointer.move({ ...touch([0, 0]), px: [900, 900] });
  pointer.lift(touch([0, 0]));
  expect(hold.px([-30, -30])).toEqual([expect.closeTo(8, 6), expect.closeTo(8, 6)]);
  hold.zoom(0.01);
  expect(hold.camera).toEqual(whole);
});

test('a finger scrolls the page from the whole tile, except from what it can move there', () => {
  const letsScroll = (at: Xy): boolean => {
    pointer.press(touch(at, { kind: 'touch' }));
    const lets = pointer.letsScroll;
    pointer.cancel();
    return lets;
  };
  expect(letsScroll([-25, -25])).toBe(true);
  expect(letsScroll([20, 0])).toBe(true);
  desk.select(['p3']);
  expect(letsScroll([20, 0])).toBe(false);
  desk.select([]);
  desk.tool = 'ruler';
  expect(letsScroll([-25, -25])).toBe(false);
  desk.tool = 'choose';
  hold.zoom(2);
  expect(letsScroll([-10, -12])).toBe(false);
});
