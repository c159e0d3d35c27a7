/** The cut line tool and the parts of a recut under hand and keys, on a real desk: 560 px for a tile of 60 mm. */
import { beforeEach, describe, expect, test } from 'vitest';
import type { StepOf, Xy } from '../../../src/plan/plan';
import { facesOfRecut } from '../../../src/plan/steps';
import type { Desk } from '../../../src/view/desk.svelte';
import type { Hold } from '../../../src/view/tile/hold.svelte';
import { pressKey } from '../../../src/view/tile/keys';
import type { Pointer, Touch } from '../../../src/view/tile/pointer';
import { handOnTile, touchOf } from '../../fixtures/hand-on-tile';

let desk: Desk;
let hold: Hold;
let pointer: Pointer;

beforeEach(() => {
  ({ desk, hold, pointer } = handOnTile());
});

function drag(way: readonly Xy[], more: Partial<Touch> = {}): void {
  const touches = way.map((mm) => touchOf(hold, mm, more));
  pointer.press(touches[0]);
  for (const touch of touches.slice(1)) pointer.move(touch);
  pointer.lift(touches[touches.length - 1]);
}

function press(...keys: string[]): void {
  for (const key of keys) {
    const shiftKey = key.startsWith('Shift+');
    const plain = { ctrlKey: false, metaKey: false, altKey: false };
    pressKey({ key: key.replace('Shift+', ''), shiftKey, ...plain }, desk, hold);
  }
}

function first<K extends StepOf<'recut'>['kind'] | 'trim' | 'scrape'>(kind: K): StepOf<K> {
  const step = desk.plan.steps.find((one) => one.kind === kind);
  if (!step) throw new Error(`no ${kind}`);
  return step as StepOf<K>;
}

const parts = (): number => facesOfRecut(desk.plan.tile, first('recut')).length;

describe('a saw line', () => {
  beforeEach(() => {
    desk.tool = 'cut';
    desk.showMonth(2);
  });

  test('drawn from edge to edge is a recut on the day shown; the next joins it, as one entry each', () => {
    // 2 mm short of either edge: meant to reach it
    drag([[0, -28], [3, 0], [0, 28]]); // prettier-ignore
    expect(first('recut')).toMatchObject({ day: 60, kerfMm: 0.8, then: [] });
    expect(first('recut').lines[0]).toHaveLength(2);
    expect(parts()).toBe(2);
    expect(desk.step).toBe(first('recut').id);
    drag([[-28, 5], [28, 5]]); // prettier-ignore
    expect(desk.plan.steps).toHaveLength(1);
    expect(parts()).toBe(4);
    expect(desk.undoWords).toBe('Change the lines of the recut of day 60');
    desk.undo();
    expect(parts()).toBe(2);
    desk.undo();
    expect(desk.plan.steps).toEqual([]);
  });

  test('on another day, or with no step chosen, begins a recut of its own', () => {
    drag([[0, -28], [0, 28]]); // prettier-ignore
    desk.step = null;
    drag([[9, -28], [9, 28]]); // prettier-ignore
    desk.showMonth(3);
    drag([[-9, -28], [-9, 28]]); // prettier-ignore
    expect(desk.plan.steps.map(({ day }) => day)).toEqual([60, 60, 91]);
  });

  test('that parts nothing says so', () => {
    drag([[-10, 0], [10, 0]]); // prettier-ignore
    expect(hold.cutNote).toContain('parts nothing');
  });

  test('by corners: clicks set them, one on the last ends the line', () => {
    for (const at of [[-29, 0], [0, 10], [29, 0], [29, 0]] as Xy[]) drag([at]); // prettier-ignore
    expect(first('recut').lines[0]).toHaveLength(3);
    expect(parts()).toBe(2);
  });

  test('by keys: Enter sets corners at the crosshair, and on the last one ends the line', () => {
    hold.cross = [0, -29];
    press('Enter', ...Array<string>(11).fill('Shift+ArrowDown'), 'ArrowDown', 'ArrowDown', 'Enter', 'Enter');
    expect(parts()).toBe(2);
    expect(hold.sketch).toEqual([]);
  });
});

test('trim and scrape follow every turn of the hand', () => {
  desk.tool = 'cut';
  hold.cut = { ...hold.cut, way: 'trim', trimMm: 1.5 };
  const bow: Xy[] = [[-20, -10], [-10, -20], [0, -24], [10, -20], [20, -10]]; // prettier-ignore
  drag(bow);
  expect(first('trim')).toMatchObject({ widthMm: 1.5, day: 1 });
  expect(first('trim').along).toHaveLength(5);
  hold.cut = { ...hold.cut, way: 'scrape' };
  drag([[0, -20], [1, 0], [0, 20]]); // prettier-ignore
  expect(first('scrape')).toMatchObject({ widthMm: 2 });
});

describe('parts of the chosen recut', () => {
  beforeEach(() => {
    desk.tool = 'cut';
    drag([[0, -28], [0, 28]]); // prettier-ignore
    drag([[-28, 0], [28, 0]]); // prettier-ignore
    desk.tool = 'choose';
  });

  const then = (): StepOf<'recut'>['then'] => first('recut').then;

  test('are dragged: a draft until the pointer lifts, then one entry', () => {
    const { id } = first('recut');
    const touch = (mm: Xy): Touch => touchOf(hold, mm);
    pointer.press(touch([-15, -20]));
    pointer.move(touch([-16, -20]));
    pointer.move(touch([-17, -20]));
    expect(desk.previewing).toBe(true);
    pointer.lift(touch([-17, -20]));
    expect(then()).toEqual([{ piece: `${id}.1`, at: [-17, -15], turnDeg: 0 }]);
    expect(desk.undoWords).toBe(`Move ${id}.1 in the recut of day 1`);
  });

  test('dropped on the place of their like they change places', () => {
    const { id } = first('recut');
    drag([[-15, -20], [0, -20], [14, -20]]); // prettier-ignore
    expect(then()).toEqual([
      { piece: `${id}.1`, at: [15, -15], turnDeg: 0 },
      { piece: `${id}.2`, at: [-15, -15], turnDeg: 0 },
    ]);
  });

  test('are moved by a finger only once a tap has chosen them', () => {
    drag([[-15, -20], [-15, -10], [-15, 0]], { kind: 'touch' }); // prettier-ignore
    expect(then()).toEqual([]);
    drag([[-15, -20], [-18, -20], [-20, -20]], { kind: 'touch' }); // prettier-ignore
    expect(then()).toHaveLength(1);
  });

  test('by keys: N chooses, arrows nudge, brackets turn; Escape lets go', () => {
    const { id } = first('recut');
    press('n', 'n', 'ArrowRight', 'Shift+ArrowDown', ']', 'Shift+]');
    expect(then()).toEqual([{ piece: `${id}.2`, at: [15.5, -10], turnDeg: 6 }]);
    press('Escape');
    expect(desk.part).toBeNull();
  });
});
