import { afterEach, describe, expect, it } from 'vitest';
import { Channel } from '../../../src/jobs/channel';
import { FrameStore, type KeptRun } from '../../../src/jobs/frame-store';
import { runKey, TileRun, type Wanted } from '../../../src/jobs/tile-run';
import { changeVariety, movePieces } from '../../../src/plan/edit';
import { testLine } from '../../fixtures/engine-line';
import { smallPlan } from '../../fixtures/small-plan';

const plan = smallPlan({ months: 2 });
const exact = { plan, seed: 'one', draft: false };

const running: TileRun[] = [];
afterEach(() => running.splice(0).forEach((run) => run.close()));

interface Heard {
  began: number[];
  last: KeptRun | null;
  ended: { wanted: Wanted; cellMm: number }[];
}

function tileRun(budgetBytes = 128_000_000, monthShown = 2) {
  const heard: Heard = { began: [], last: null, ended: [] };
  const watch = { quietTicks: 1000, tickMs: 500, isHidden: () => false };
  const channel = new Channel(
    () => testLine(),
    () => undefined,
    watch,
  );
  const run = new TileRun(
    channel,
    new FrameStore(budgetBytes),
    {
      began: ({ cellMm }) => heard.began.push(cellMm),
      grown: (kept) => void (heard.last = kept),
      ended: (how, wanted, cellMm) => {
        if (how === 'whole') heard.ended.push({ wanted, cellMm });
      },
    },
    () => monthShown,
  );
  running.push(run);
  return { run, heard };
}

const until = (heard: Heard, count: number) =>
  expect.poll(() => heard.ended.length, { timeout: 20_000 }).toBe(count);

describe('the run behind the tile', () => {
  it('is exact for a plan that is kept', async () => {
    const { run, heard } = tileRun();
    run.show(exact);
    await until(heard, 1);
    expect(heard.ended[0].cellMm).toBe(0.25);
    expect(heard.last?.whole).toBe(true);
    expect(heard.last?.sites).not.toBeNull();
    expect(heard.last?.frames.map((frame) => frame?.month)).toEqual([0, 1, 2]);
  });

  it('is coarse for a draft, and exact once it rests', async () => {
    const { run, heard } = tileRun();
    run.show({ ...exact, draft: true });
    // On a slow machine the rest comes before the coarse run is whole, which then gives way.
    await expect.poll(() => heard.ended.at(-1)?.cellMm, { timeout: 20_000 }).toBe(0.25);
    expect(heard.began).toEqual([0.5, 0.25]);
  });

  it('ends as the plan kept, where a draft is kept while its exact run is underway', async () => {
    const { run, heard } = tileRun();
    run.show({ ...exact, draft: true });
    await expect.poll(() => heard.began.at(-1), { timeout: 20_000 }).toBe(0.25);
    run.show(exact);
    await expect.poll(() => heard.ended.at(-1)?.cellMm, { timeout: 20_000 }).toBe(0.25);
    expect(heard.ended.at(-1)?.wanted.draft).toBe(false);
  });

  it('is not begun again for a name, a colour or the same plan', async () => {
    const { run, heard } = tileRun();
    run.show(exact);
    await until(heard, 1);
    run.show({ ...exact, plan: changeVariety(plan, 'a', { name: 'Moss', colour: '#112233' }).plan });
    await until(heard, 2);
    expect(heard.began).toEqual([0.25]);
  });

  it('comes from the store when a plan comes back, as undo does', async () => {
    const { run, heard } = tileRun();
    run.show(exact);
    await until(heard, 1);
    run.show({ ...exact, plan: movePieces(plan, ['p1'], 0, 3).plan });
    await until(heard, 2);
    const before = heard.last;
    run.show(exact);
    // At once: no turn of the message loop lies between.
    expect(heard.ended).toHaveLength(3);
    expect(heard.last).not.toBe(before);
  });

  it('shows something of a drag that never rests, and ends on the newest', async () => {
    const { run, heard } = tileRun();
    let newest = plan;
    const start = performance.now();
    for (let step = 0; performance.now() - start < 1500; step++) {
      newest = movePieces(plan, ['p1'], 0, step / 100).plan;
      run.show({ plan: newest, seed: 'one', draft: true });
      await new Promise((resolve) => setTimeout(resolve, 8));
    }
    const during = heard.began.length;
    expect(during).toBeGreaterThan(2);
    run.show({ plan: newest, seed: 'one', draft: false });
    await expect.poll(() => heard.ended.at(-1)?.cellMm, { timeout: 20_000 }).toBe(0.25);
    expect(heard.ended.at(-1)?.wanted.plan).toBe(newest);
  });

  it('grows again for a month whose frame was dropped', async () => {
    const { run, heard } = tileRun(400_000, 1);
    run.show(exact);
    await until(heard, 1);
    expect(heard.last?.frames[1]).not.toBeNull();
    expect(heard.last?.frames).toContain(null);
    run.again(exact);
    await until(heard, 2);
    expect(heard.last?.frames[1]?.month).toBe(1);
  });
});

describe('who a run is', () => {
  it('follows from what grows: plan, seed and cell', () => {
    const key = runKey(plan, 'one', 0.5);
    expect(runKey({ ...plan, name: 'other', note: 'x' }, 'one', 0.5)).toBe(key);
    expect(runKey(plan, 'two', 0.5)).not.toBe(key);
    expect(runKey(plan, 'one', 0.25)).not.toBe(key);
    expect(runKey(movePieces(plan, ['p1'], 1, 0).plan, 'one', 0.5)).not.toBe(key);
  });
});
