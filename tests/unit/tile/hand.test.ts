/** What pointer and keys do to the plan on a real desk; the canvas is 560 px square and shows a 60 mm tile. */
import { beforeEach, expect, test } from 'vitest';
import { gapMm } from '../../../src/plan/outline';
import type { Piece, Xy } from '../../../src/plan/plan';
import { Desk } from '../../../src/view/desk.svelte';
import { handlesOf } from '../../../src/view/tile/handles';
import { Hold } from '../../../src/view/tile/hold.svelte';
import { pressKey } from '../../../src/view/tile/keys';
import type { Key } from '../../../src/view/tile/keys';
import { pieceAt } from '../../../src/view/tile/piece-at';
import type { Pointer, Touch } from '../../../src/view/tile/pointer';
import { HALVES } from '../../fixtures/halves';
import { handOnTile, touchOf } from '../../fixtures/hand-on-tile';

let desk: Desk;
let hold: Hold;
let pointer: Pointer;

beforeEach(() => {
  ({ desk, hold, pointer } = handOnTile());
});

function piece(id: string): Piece {
  const found = desk.plan.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

function touch(mm: Xy, more: Partial<Touch> = {}): Touch {
  return touchOf(hold, mm, more);
}

function drag(from: Xy, to: Xy, more: Partial<Touch> = {}): void {
  pointer.press(touch(from, more));
  pointer.move(touch([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], more));
  pointer.move(touch(to, more));
}

function press(key: string, more: Partial<Key> = {}): boolean {
  return pressKey(
    { key, shiftKey: false, ctrlKey: false, metaKey: false, altKey: false, ...more },
    desk,
    hold,
  );
}

test('a click chooses a piece, a click on the bare tile none', () => {
  pointer.press(touch([-12, 3]));
  pointer.lift(touch([-12, 3]));
  expect(desk.selection).toEqual(['p1']);
  pointer.press(touch([20, 0], { shift: true }));
  pointer.lift(touch([20, 0], { shift: true }));
  expect(desk.selection).toEqual(['p1', 'p3']);
  pointer.press(touch([-25, -25]));
  pointer.lift(touch([-25, -25]));
  expect(desk.selection).toEqual([]);
});

test('a drag is a draft until the pointer lifts, and then one entry for Undo', () => {
  drag([20, 0], [20, 12]);
  expect(desk.previewing).toBe(true);
  expect(piece('p3').at).toEqual([20, 0]);
  pointer.lift(touch([20, 12]));
  expect(piece('p3').at[1]).toBeCloseTo(12, 2);
  expect(desk.undoWords).toBe('Move piece p3');
  desk.undo();
  expect(desk.plan).toBe(HALVES);
});

test('what the system takes away, or Escape, drops the draft', () => {
  drag([20, 0], [20, 12]);
  pointer.cancel();
  expect(desk.previewing).toBe(false);
  pointer.lift(touch([20, 12]));
  expect(desk.plan).toBe(HALVES);
});

test('a drag onto another piece is refused and leaves the plan as it was', () => {
  drag([20, 0], [3, 0]);
  expect(desk.refusals.length).toBeGreaterThan(0);
  pointer.lift(touch([3, 0]));
  expect(desk.plan).toBe(HALVES);
});

test('with a gap to snap to, a piece stops at it; with Alt it does not', () => {
  desk.snapGapMm = 2;
  drag([20, 0], [12.6, 0]);
  expect(hold.gap?.gapMm).toBeCloseTo(2, 2);
  pointer.lift(touch([12.6, 0]));
  expect(gapMm(piece('p2'), piece('p3'))).toBeCloseTo(2, 2);
  desk.undo();
  drag([20, 0], [12.6, 0], { alt: true });
  pointer.lift(touch([12.6, 0], { alt: true }));
  expect(gapMm(piece('p2'), piece('p3'))).toBeCloseTo(1.6, 2);
});

test('handles resize and turn the chosen piece', () => {
  desk.select(['p1']);
  const handles = handlesOf(piece('p1'), hold.camera, hold.size);
  const right = handles.find(({ along }) => along[0] === 1 && along[1] === 0);
  const turn = handles.find(({ kind }) => kind === 'turn');
  if (!right || !turn) throw new Error('no handles');
  drag(hold.mm(right.px), [-8, 0]);
  pointer.lift(touch([-8, 0]));
  expect(pieceAt(desk.plan, [-7.9, 0], 0)).toBeNull();
  expect(pieceAt(desk.plan, [-8.1, 0], 0)?.id).toBe('p1');
  // About 17 degrees by hand; Shift turns in steps of 15.
  const tilted: Xy = [-12 + 12 * Math.sin(0.3), -12 * Math.cos(0.3)];
  drag(hold.mm(turn.px), tilted, { shift: true });
  pointer.lift(touch(tilted, { shift: true }));
  expect(piece('p1').turnDeg).toBe(15);
});

test('two fingers zoom and drop what one finger had begun', () => {
  const before = hold.camera.pxPerMm;
  drag([20, 0], [20, 5], { kind: 'touch' });
  pointer.press({ ...touch([0, 0], { kind: 'touch' }), id: 2 });
  expect(desk.previewing).toBe(false);
  pointer.move({ ...touch([-20, -5], { kind: 'touch' }), id: 2 });
  expect(hold.camera.pxPerMm).toBeGreaterThan(before);
  pointer.lift({ ...touch([-20, -5], { kind: 'touch' }), id: 2 });
  expect(desk.plan).toBe(HALVES);
});

test('a finger chooses when it lifts, so that the first of two chooses nothing', () => {
  pointer.press(touch([20, 0], { kind: 'touch' }));
  expect(desk.selection).toEqual([]);
  pointer.press({ ...touch([0, 0], { kind: 'touch' }), id: 2 });
  pointer.lift(touch([20, 0], { kind: 'touch' }));
  pointer.lift({ ...touch([0, 0], { kind: 'touch' }), id: 2 });
  expect(desk.selection).toEqual([]);
  pointer.press(touch([20, 0], { kind: 'touch' }));
  pointer.lift(touch([20, 0], { kind: 'touch' }));
  expect(desk.selection).toEqual(['p3']);
});

test('a size goes in steps of 0.5 mm, with Alt freely', () => {
  const rightOf = (id: string): Xy => {
    const right = handlesOf(piece(id), hold.camera, hold.size).find(({ along }) => along[0] === 1);
    if (!right) throw new Error('no handle');
    return hold.mm(right.px);
  };
  desk.select(['p3']);
  drag(rightOf('p3'), [24.67, 0]);
  pointer.lift(touch([24.67, 0]));
  expect(piece('p3')).toMatchObject({ disc: { diameterMm: 9.5 } });
  drag(rightOf('p3'), [23.67, 0], { alt: true });
  pointer.lift(touch([23.67, 0], { alt: true }));
  const free = piece('p3');
  expect('disc' in free && free.disc.diameterMm).toBeCloseTo(7.34, 2);
});

test('set: a click sets the stamp and chooses it; where it cannot be, the reason is shown there', () => {
  desk.tool = 'set';
  desk.stamp = { shape: 'disc', sizeMm: 6, variety: 'c' };
  pointer.press(touch([0, 20]));
  pointer.lift(touch([0, 20]));
  expect(desk.selection).toEqual(['p4']);
  pointer.press(touch([0, 20]));
  pointer.lift(touch([0, 20]));
  expect(desk.plan.pieces).toHaveLength(4);
  expect(hold.refused?.words).toMatch(/^The new piece lies on the Amber disc of 6 mm, /u);
});

test('outline: clicks and a click on the first corner make a piece', () => {
  desk.tool = 'outline';
  for (const at of [
    [-10, 15],
    [10, 15],
    [10, 25],
    [-10, 25],
    [-10, 15],
  ] satisfies Xy[]) {
    pointer.press(touch(at));
    pointer.lift(touch(at));
  }
  expect(hold.sketch).toEqual([]);
  expect(desk.plan.pieces).toHaveLength(4);
  expect(pieceAt(desk.plan, [0, 20], 0)?.id).toBe('p4');
});

function drawOutline(corners: readonly Xy[]): void {
  desk.tool = 'outline';
  for (const at of corners) {
    pointer.press(touch(at));
    pointer.lift(touch(at));
  }
}

test('outline: one that crosses itself is refused with that reason and keeps its corners to be mended', () => {
  const bow: Xy[] = [
    [-10, 15],
    [10, 25],
    [10, 15],
    [-10, 25],
  ];
  drawOutline([...bow, bow[0]]);
  expect(hold.refused?.words).toContain('crosses itself');
  expect(hold.sketch).toHaveLength(4);
  expect(desk.plan).toBe(HALVES);
  press('Backspace');
  press('Backspace');
  expect(hold.refused).toBeNull();
  drawOutline([[-10, 25], bow[0]]);
  expect(desk.plan.pieces).toHaveLength(4);
  expect(hold.sketch).toEqual([]);
});

test('outline: one that reaches beyond the tile keeps its corners; Escape clears them', () => {
  drawOutline([
    [0, 15],
    [10, 15],
    [10, 40],
    [0, 15],
  ]);
  expect(hold.refused?.words).toMatch(/^The new piece reaches 10\.0 mm beyond the tile: /u);
  expect(hold.sketch).toHaveLength(3);
  press('Escape');
  expect(hold.sketch).toEqual([]);
  expect(hold.refused).toBeNull();
});

test('ruler: a drag reads millimetres and changes nothing', () => {
  desk.tool = 'ruler';
  drag([0, 20], [3, 24]);
  pointer.lift(touch([3, 24]));
  const { from, to } = hold.ruler ?? { from: [0, 0], to: [0, 0] };
  expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(5, 6);
  expect(desk.plan).toBe(HALVES);
});

test('keys: step through pieces, nudge, turn, duplicate', () => {
  press('n');
  press('n');
  press('n');
  expect(desk.selection).toEqual(['p3']);
  press('N', { shiftKey: true });
  expect(desk.selection).toEqual(['p2']);
  press('ArrowDown');
  press('ArrowDown', { shiftKey: true });
  expect(piece('p2').at).toEqual([2, 5.5]);
  press(']');
  press('{', { shiftKey: true });
  expect(piece('p2').turnDeg).toBe(4);
  press('d', { ctrlKey: true });
  expect(desk.plan.pieces).toHaveLength(4);
  expect(desk.selection).toEqual(['p4']);
  expect(desk.refusals).toEqual([]);
});

test('keys: set a piece at the crosshair, draw an outline corner by corner', () => {
  desk.tool = 'set';
  desk.stamp = { shape: 'square', sizeMm: 4, variety: 'b' };
  for (let k = 0; k < 4; k++) press('ArrowDown', { shiftKey: true });
  press('Enter');
  expect(piece('p4').at).toEqual([0, 20]);
  desk.tool = 'outline';
  press('ArrowRight', { shiftKey: true });
  press('Enter');
  press('ArrowRight', { shiftKey: true });
  press('Enter');
  press('Backspace');
  expect(hold.sketch).toHaveLength(1);
  press('Enter');
  press('ArrowDown', { shiftKey: true });
  press('Enter');
  press('Enter');
  expect(desk.plan.pieces).toHaveLength(5);
});

test('keys: the crosshair begins in the middle of what is seen and never leaves it', () => {
  desk.tool = 'outline';
  expect(hold.crossAt).toEqual([0, 0]);
  hold.zoom(4);
  for (let k = 0; k < 3; k++) press('ArrowRight', { shiftKey: true });
  expect(hold.cross).toEqual([15, 0]);
  expect(hold.px([15, 0])[0]).toBeLessThanOrEqual(560);
});

test('keys that mean nothing here are left to others', () => {
  expect(press('z', { ctrlKey: true })).toBe(false);
  expect(press('s')).toBe(false);
  expect(press('Enter')).toBe(false);
});

test('a refused drag leaves its reason at the piece, once', () => {
  drag([-12, 3], [200, 3]);
  expect(desk.previewing).toBe(true);
  pointer.lift(touch([200, 3]));
  expect(piece('p1')).toBe(HALVES.pieces.find(({ id }) => id === 'p1'));
  expect(hold.refused?.words).toMatch(/\S\.$/u);
  expect(hold.said).toBe(hold.refused?.words);
  expect(desk.refused).toEqual([]);
});

test('a tile with as many pieces as it may hold says so when another is set or duplicated', () => {
  const [model] = HALVES.pieces;
  const pieces = Array.from({ length: 2000 }, (_, k) => ({ ...model, id: `p${k + 1}` }));
  desk = new Desk({ ...HALVES, pieces });
  hold = new Hold(desk);
  desk.select(['p7']);
  expect(press('d', { ctrlKey: true })).toBe(true);
  expect(hold.refused?.words).toContain('2000');
  expect(desk.selection).toEqual(['p7']);

  hold.leave();
  desk.tool = 'set';
  press('Enter');
  expect(hold.refused?.words).toContain('2000');
  expect(desk.plan.pieces).toHaveLength(2000);
});
