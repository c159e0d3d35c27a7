import { describe, expect, it } from 'vitest';
import { changeVariety, deletePieces, movePieces } from '../../../src/plan/edit';
import { Desk } from '../../../src/view/desk.svelte';
import type { Frame } from '../../../src/model/frame';
import { nothingBeneath } from '../../../src/model/layers';
import type { Reading } from '../../../src/measure/reading';
import { smallPlan } from '../../fixtures/small-plan';

const plan = smallPlan({ months: 12 });
const [first] = plan.pieces;
const placeOf = (desk: Desk) => desk.shown.pieces[0].at;

describe('a draft', () => {
  it('is shown but not kept until it is committed, and then is one entry', () => {
    const desk = new Desk(plan);
    for (const mm of [1, 2, 3]) desk.try(movePieces(desk.plan, [first.id], 0, mm));
    expect(desk.previewing).toBe(true);
    expect(desk.plan).toBe(plan);
    expect(placeOf(desk)).toEqual([first.at[0], first.at[1] + 3]);
    desk.commit();
    expect(desk.previewing).toBe(false);
    expect(desk.undoWords).toBe(`Move piece ${first.id}`);
    desk.undo();
    expect(desk.plan).toBe(plan);
    expect(desk.undoWords).toBeNull();
  });

  it('is dropped where it is refused', () => {
    const desk = new Desk(plan);
    desk.try(movePieces(desk.plan, [first.id], 500, 0));
    expect(desk.refusals.length).toBeGreaterThan(0);
    desk.commit();
    expect(desk.plan).toBe(plan);
    expect(desk.undoWords).toBeNull();
  });

  it('is what undo takes back first', () => {
    const desk = new Desk(plan);
    desk.do(movePieces(desk.plan, [first.id], 0, 1));
    desk.try(movePieces(desk.plan, [first.id], 0, 5));
    desk.undo();
    expect(placeOf(desk)).toEqual([first.at[0], first.at[1] + 1]);
    expect(desk.undoWords).not.toBeNull();
  });
});

describe('history', () => {
  it('goes back and forth over edits, seeds and opened plans, with the month that was shown', () => {
    const desk = new Desk(plan);
    desk.showMonth(5);
    desk.do(movePieces(desk.plan, [first.id], 0, 1));
    const moved = desk.plan;
    const seed = desk.seed;
    desk.changeSeed('another');
    desk.open({ plan: smallPlan({ name: 'other', months: 12 }), words: 'Open other' }, 8);
    expect([desk.plan.name, desk.month]).toEqual(['other', 8]);

    desk.undo();
    expect([desk.seed, desk.month]).toEqual(['another', 5]);
    desk.undo();
    expect([desk.plan, desk.seed]).toEqual([moved, seed]);
    desk.undo();
    expect(desk.plan).toBe(plan);
    for (const words of [`Move piece ${first.id}`, 'Grow with the seed another', 'Open other']) {
      expect(desk.redoWords).toBe(words);
      desk.redo();
    }
    expect([desk.plan.name, desk.seed, desk.redoWords]).toEqual(['other', 'another', null]);
  });

  it('brings back the seed of each step, also where the same preset is opened again', () => {
    const desk = new Desk(plan);
    desk.changeSeed('two');
    desk.open({ plan, words: 'Open the preset' });
    expect(desk.seed).toBe('two');
    desk.undo();
    expect(desk.seed).toBe('two');
    desk.undo();
    expect([desk.plan, desk.seed]).toEqual([plan, 'one']);
    desk.redo();
    expect(desk.seed).toBe('two');
  });

  it('forgets what was undone once something new is done', () => {
    const desk = new Desk(plan);
    desk.do(movePieces(desk.plan, [first.id], 0, 1));
    desk.undo();
    desk.do(changeVariety(desk.plan, 'a', { name: 'Moss' }));
    expect(desk.redoWords).toBeNull();
  });

  it('refuses an edit that cannot be, says why, and keeps nothing', () => {
    const desk = new Desk(plan);
    const refusals = desk.do(movePieces(desk.plan, [first.id], 500, 0));
    expect(refusals[0]?.where).toContain(first.id);
    expect(desk.undoWords).toBeNull();
  });

  it('makes no entry of an edit that changes nothing', () => {
    const desk = new Desk(plan);
    desk.do(movePieces(desk.plan, ['nobody'], 1, 1));
    expect(desk.undoWords).toBeNull();
  });

  it('begins empty on a restored plan', () => {
    const desk = new Desk(plan);
    desk.do(movePieces(desk.plan, [first.id], 0, 1));
    desk.restore(smallPlan({ name: 'kept' }), 'seven', 3);
    expect([desk.plan.name, desk.seed, desk.month, desk.undoWords]).toEqual(['kept', 'seven', 3, null]);
  });
});

describe('what names a piece or a month', () => {
  it('lets a deleted piece leave the selection', () => {
    const desk = new Desk(plan);
    desk.select([first.id]);
    desk.do(deletePieces(desk.plan, [first.id]));
    expect(desk.selection).toEqual([]);
  });

  it('keeps the month within the plan', () => {
    const desk = new Desk(smallPlan({ months: 12 }));
    desk.showMonth(99);
    expect(desk.month).toBe(12);
    desk.showMonth(-3);
    expect(desk.month).toBe(0);
  });
});

describe('the picture shown', () => {
  const side = plan.tile.sizeMm / 0.5 + 2;
  const frame = (month: number): Frame => ({
    month,
    columns: side,
    rows: side,
    cellMm: 0.5,
    label: new Uint8Array(1),
    seam: new Uint8Array(1),
    age: new Uint8Array(1),
    height: new Uint16Array(1),
    beneath: nothingBeneath(),
  });
  const reading = (month: number) => ({ month }) as Reading;
  const grown = (until: number) => {
    const months = Array.from({ length: until + 1 }, (_, month) => month);
    return { cellMm: 0.5, sites: null, frames: months.map(frame), readings: months.map(reading) };
  };

  it('is the last month grown until the run comes to the month asked for', () => {
    const desk = new Desk(plan);
    desk.showMonth(4);
    desk.showRun(grown(2));
    expect(desk.frame?.month).toBe(2);
    expect(desk.reading).toBeNull();
    desk.showRun(grown(6));
    expect([desk.frame?.month, desk.reading?.month]).toEqual([4, 4]);
  });

  it('stays where the plan that is open is opened again, which is no entry', () => {
    const desk = new Desk(plan);
    desk.showRun(grown(12));
    desk.open({ plan, words: 'Open it again' }, 7);
    expect([desk.frame?.month, desk.reading?.month, desk.undoWords]).toEqual([7, 7, null]);
  });

  it('stays while a new run catches up, but not on a tile of another size', () => {
    const desk = new Desk(plan);
    desk.showMonth(4);
    desk.showRun(grown(6));
    const before = desk.frame;
    desk.startRun(0.25);
    expect(desk.frame).toBe(before);
    expect(desk.reading?.month).toBe(4);
    desk.showRun(grown(1));
    expect(desk.frame).toBe(before);
    desk.do({ plan: { ...desk.plan, tile: { ...desk.plan.tile, sizeMm: 90 } }, words: 'Change the tile' });
    expect(desk.frame?.month).toBe(1);
  });
});
