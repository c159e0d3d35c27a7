import { describe, expect, it } from 'vitest';
import { addStep } from '../../../src/plan/edit-steps';
import { renamePlan, changeMonths } from '../../../src/plan/edit';
import type { Step } from '../../../src/plan/plan';
import { Workbench } from '../../../src/view/bench/workbench.svelte';
import { Desk } from '../../../src/view/desk.svelte';
import { smallPlan } from '../../fixtures/small-plan';

const trim = (id: string, day: number): Step => ({ id, day, kind: 'trim', widthMm: 1 });

/** A desk and a bench that hears of each change, as the page's effect tells it. */
function bench() {
  const desk = new Desk(smallPlan({ months: 8, steps: [trim('s1', 150)] }));
  const workbench = new Workbench(desk);
  const heard = (change: () => unknown): void => {
    change();
    workbench.hear(desk.plan, desk.seed, desk.opened);
  };
  heard(() => undefined);
  const tile = (k: number) => workbench.bench.tiles[k];
  return { desk, workbench, heard, tile };
}

describe('tiles on the bench', () => {
  it('take what is changed while they are shown, and no other plan', () => {
    const { desk, workbench, heard, tile } = bench();
    heard(() => workbench.addTile());
    heard(() => desk.do(renamePlan(desk.plan, 'Renamed')));
    expect(tile(0).plan.name).toBe('Renamed');
    heard(() => desk.open({ plan: smallPlan({ name: 'Other' }), words: 'Open Other' }));
    expect(workbench.at).toBeNull();
    heard(() => desk.do(renamePlan(desk.plan, 'Other again')));
    expect(tile(0).plan.name).toBe('Renamed');
  });

  it('are not written over by undo across tiles', () => {
    const { desk, workbench, heard, tile } = bench();
    heard(() => workbench.addTile());
    heard(() => desk.open({ plan: smallPlan({ name: 'Second' }), words: 'Open' }));
    heard(() => workbench.addTile());
    heard(() => workbench.open({ tile: 't1', branch: null }));
    heard(() => desk.do(renamePlan(desk.plan, 'First')));
    heard(() => desk.undo());
    heard(() => desk.undo());
    expect(workbench.at).toEqual({ tile: 't2', branch: null });
    heard(() => desk.do(renamePlan(desk.plan, 'Second, changed')));
    expect([tile(0).plan.name, tile(1).plan.name]).toEqual(['Small', 'Second, changed']);
  });

  it('come back after they were removed, and a bench after another was opened', () => {
    const { workbench, heard } = bench();
    heard(() => workbench.addTile());
    const before = workbench.bench;
    heard(() => workbench.removeTile('t1'));
    expect(workbench.at).toBeNull();
    heard(() => workbench.gone?.bringBack());
    expect(workbench.bench).toEqual(before);
    heard(() => workbench.replace({ seambenchBench: 1, name: 'Other', tiles: [], mothers: [] }));
    heard(() => workbench.gone?.bringBack());
    expect(workbench.bench).toEqual(before);
  });
});

describe('a branch', () => {
  it('begins at the month shown, takes its own changes and leaves the tile alone', () => {
    const { desk, workbench, heard, tile } = bench();
    desk.month = 4;
    heard(() => workbench.branchHere());
    expect(workbench.at).toEqual({ tile: 't1', branch: 'b1' });
    heard(() => desk.do(changeMonths(desk.plan, 6)));
    heard(() => desk.do(addStep(desk.plan, trim('s2', 121))));
    expect(tile(0).branches).toEqual([
      { id: 'b1', name: 'Branch 1', fromDay: 121, steps: [trim('s1', 150), trim('s2', 121)], months: 6 },
    ]);
    expect(tile(0).plan).toMatchObject({ months: 8, steps: [trim('s1', 150)] });
  });

  it('is kept as it was where the past is changed under it', () => {
    const { desk, workbench, heard, tile } = bench();
    desk.month = 4;
    heard(() => workbench.branchHere());
    const before = tile(0);
    heard(() => desk.do(addStep(desk.plan, trim('s2', 30))));
    expect(workbench.isAstray).toBe(true);
    expect(tile(0)).toEqual(before);
    heard(() => desk.undo());
    expect(workbench.isAstray).toBe(false);
  });

  it('is adopted by the tile as an edit that undo takes back', () => {
    const { desk, workbench, heard, tile } = bench();
    desk.month = 4;
    heard(() => workbench.branchHere());
    heard(() => desk.do(changeMonths(desk.plan, 6)));
    heard(() => workbench.adopt(tile(0), (tile(0).branches ?? [])[0]));
    expect(workbench.at).toEqual({ tile: 't1', branch: null });
    expect([desk.plan.months, tile(0).plan.months]).toEqual([6, 6]);
    heard(() => desk.undo());
    expect([desk.plan.months, tile(0).plan.months]).toEqual([8, 8]);
    expect(workbench.at).toEqual({ tile: 't1', branch: null });
  });

  it('of a branch begins no later than that one', () => {
    const { desk, workbench, heard, tile } = bench();
    desk.month = 4;
    heard(() => workbench.branchHere());
    desk.month = 6;
    heard(() => workbench.branchHere());
    expect(tile(0).branches?.map(({ fromDay }) => fromDay)).toEqual([121, 121]);
    heard(() => workbench.dropBranch(tile(0), (tile(0).branches ?? [])[1]));
    expect(workbench.at).toEqual({ tile: 't1', branch: null });
    heard(() => workbench.gone?.bringBack());
    expect(tile(0).branches).toHaveLength(2);
  });
});
