import { describe, expect, it } from 'vitest';
import { commit, EMPTY_HISTORY, redo, undo, type History, type PlanMoment } from '../../../src/plan/history';
import { smallPlan } from '../../fixtures/small-plan';

const [first, second, third] = ['first', 'second', 'third'].map((name) => smallPlan({ name }));

describe('undo and redo of whole plans', () => {
  it('walks back and forth over the same plan objects, with words, seeds and months', () => {
    let history = commit<PlanMoment>(EMPTY_HISTORY, {
      plan: first,
      seed: 'one',
      month: 2,
      words: 'Move piece p1',
    });
    history = commit(history, { plan: second, seed: 'two', month: 5, words: 'Turn piece p1' });

    const back = undo(history, { plan: third, seed: 'three', month: 8 });
    expect(back).toMatchObject({ words: 'Turn piece p1', seed: 'two', month: 5 });
    expect(back?.plan).toBe(second);
    const start = back && undo(back.history, back);
    expect(start?.plan).toBe(first);
    expect(start && undo(start.history, start)).toBeNull();

    const forth = start && redo(start.history, start);
    expect(forth).toMatchObject({ words: 'Move piece p1', seed: 'two', month: 5 });
    expect(forth?.plan).toBe(second);
    const end = forth && redo(forth.history, forth);
    expect(end).toMatchObject({ words: 'Turn piece p1', seed: 'three', month: 8 });
    expect(end?.plan).toBe(third);
    expect(end && redo(end.history, end)).toBeNull();
  });

  it('forgets what had been undone once something new is done', () => {
    const history = commit<PlanMoment>(EMPTY_HISTORY, {
      plan: first,
      seed: 'one',
      month: 0,
      words: 'Move piece p1',
    });
    const back = undo(history, { plan: second, seed: 'two', month: 0 });
    const anew = back && commit(back.history, { plan: first, seed: 'one', month: 0, words: 'Turn piece p1' });
    expect(anew?.future).toEqual([]);
    expect(anew?.past.map((entry) => entry.words)).toEqual(['Turn piece p1']);
  });

  it('keeps the last 200 entries', () => {
    let history: History<PlanMoment> = EMPTY_HISTORY;
    for (let k = 0; k < 205; k++)
      history = commit(history, { plan: first, seed: 'one', month: 0, words: String(k) });
    expect(history.past).toHaveLength(200);
    expect(history.past[0].words).toBe('5');
  });
});
