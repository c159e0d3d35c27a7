/** Whatever is done to a plan, in any order, it stays a plan by the schema; undo and redo bring every plan back. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import * as edit from '../../src/plan/edit';
import { openPlan, planText } from '../../src/plan/file';
import { commit, EMPTY_HISTORY, redo, undo, type History, type PlanMoment } from '../../src/plan/history';
import { PlanSchema, type Plan } from '../../src/plan/plan';
import { refuse } from '../../src/plan/refuse';
import { discPiece, smallPlan, squarePiece } from '../fixtures/small-plan';

type Change = (plan: Plan) => edit.Edit;

const anyMm = fc.double({ noNaN: true, min: -5000, max: 5000 });
const share = fc.double({ noNaN: true, min: 0, max: 1 });
/** Picks by number, so that most picks exist; now and then one that does not. */
const pick = fc.nat(12);
const picks = fc.array(pick, { minLength: 1, maxLength: 4 });

function pieceId(plan: Plan, at: number): string {
  return plan.pieces.at(at)?.id ?? `absent-${at}`;
}

function varietyId(plan: Plan, at: number): string {
  return plan.varieties[at % (plan.varieties.length + 1)]?.id ?? 'absent';
}

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(picks, anyMm, anyMm).map<Change>(([at, dx, dy]) => (plan) => {
    return edit.movePieces(plan, at.map((k) => pieceId(plan, k)), dx, dy); // prettier-ignore
  }),
  fc.tuple(pick, anyMm, anyMm).map<Change>(
    ([at, x, y]) =>
      (plan) =>
        edit.placePiece(plan, pieceId(plan, at), [x, y]),
  ),
  fc.tuple(picks, anyMm).map<Change>(([at, deg]) => (plan) => {
    return edit.turnPieces(plan, at.map((k) => pieceId(plan, k)), deg); // prettier-ignore
  }),
  fc.tuple(pick, anyMm, anyMm).map<Change>(([at, x, y]) => (plan) => {
    return edit.resizePiece(plan, pieceId(plan, at), x / 100, y / 100);
  }),
  fc.tuple(picks, anyMm, anyMm).map<Change>(([at, dx, dy]) => (plan) => {
    return edit.duplicatePieces(plan, at.map((k) => pieceId(plan, k)), dx, dy); // prettier-ignore
  }),
  picks.map<Change>((at) => (plan) => edit.deletePieces(plan, at.map((k) => pieceId(plan, k)))), // prettier-ignore
  fc.tuple(pick, fc.boolean()).map<Change>(([at, round]) => (plan) => {
    const [id, variety] = [edit.nextPieceId(plan), plan.varieties[at % plan.varieties.length].id];
    return edit.setPiece(
      plan,
      round ? discPiece(id, variety, at, 9 - at, 3) : squarePiece(id, variety, at - 9, at, 4),
    );
  }),
  fc
    .tuple(pick, pick, fc.constantFrom('cut' as const, 'rim' as const))
    .map<Change>(([at, kind, edge]) => (plan) => {
      const variety = plan.varieties[kind % plan.varieties.length].id;
      return edit.changePieces(plan, [pieceId(plan, at)], kind % 2 === 0 ? { edge } : { variety });
    }),
  fc.constant<Change>((plan) => edit.addVariety(plan)),
  pick.map<Change>((at) => (plan) => edit.removeVariety(plan, varietyId(plan, at))),
  fc.tuple(pick, fc.string({ maxLength: 200 }), share).map<Change>(([at, name, aggression]) => (plan) => {
    return edit.changeVariety(plan, varietyId(plan, at), { name, aggression });
  }),
  fc.tuple(pick, pick, share).map<Change>(([a, b, acceptance]) => (plan) => {
    return edit.changePair(plan, varietyId(plan, a), varietyId(plan, b), { acceptance, mingle: 'through' });
  }),
  fc.tuple(pick, pick).map<Change>(([a, b]) => (plan) => {
    return edit.changePair(plan, varietyId(plan, a), varietyId(plan, b), {
      related: 'kin',
      mingle: undefined,
    });
  }),
  fc.integer({ min: 20, max: 300 }).map<Change>((sizeMm) => (plan) => edit.changeTile(plan, { sizeMm })),
  fc.integer({ min: 1, max: 36 }).map<Change>((months) => (plan) => edit.changeMonths(plan, months)),
  fc
    .option(share, { nil: undefined })
    .map<Change>((deadShare) => (plan) => edit.changeSettings(plan, { deadShare })),
  fc.string({ maxLength: 2000 }).map<Change>((note) => (plan) => edit.changeNote(plan, note)),
  fc.string({ maxLength: 200 }).map<Change>((name) => (plan) => edit.renamePlan(plan, name)),
);

const changes = fc.array(change, { minLength: 1, maxLength: 30 });

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

describe('edits', () => {
  it('keep a plan valid by the schema, mutate nothing, say what they did and repeat no id', () => {
    fc.assert(
      fc.property(changes, (made) => {
        let plan = frozen(smallPlan());
        for (const next of made) {
          const { plan: after, words } = next(plan);
          const parsed = v.safeParse(PlanSchema, after);
          expect(parsed.issues).toBeUndefined();
          expect(words).toMatch(/^[A-Z]\w+ /u);
          plan = frozen(after);
        }
        const remarks = refuse(plan).filter(
          ({ found }) => !/beyond the tile|on top of/u.test(found), // where pieces lie is for refuse.ts
        );
        expect(remarks).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it('share every piece that they do not name', () => {
    fc.assert(
      fc.property(changes, change, (made, last) => {
        const before = made.reduce((plan, next) => next(plan).plan, smallPlan());
        const after = last(before).plan;
        const kept = new Set<unknown>(before.pieces);
        for (const piece of after.pieces) {
          const old = before.pieces.find(({ id }) => id === piece.id);
          if (!kept.has(piece) && old) expect(piece).not.toBe(old);
        }
        if (after.pieces === before.pieces || after.varieties === before.varieties) return;
        // Only a variety that goes takes its pieces along.
        expect(after.varieties.length).toBeLessThan(before.varieties.length);
      }),
    );
  });

  it('come back by undo and go again by redo, to the same objects', () => {
    fc.assert(
      fc.property(changes, (made) => {
        const plans = [smallPlan()];
        let history: History<PlanMoment> = EMPTY_HISTORY;
        for (const [k, next] of made.entries()) {
          const { plan, words } = next(plans[k]);
          history = commit(history, { plan: plans[k], seed: String(k), month: k, words });
          plans.push(plan);
        }
        const last = made.length;
        let now: PlanMoment = { plan: plans[last], seed: String(last), month: last };
        for (let k = last - 1; k >= 0; k--) {
          const step = undo(history, now);
          if (!step) throw new Error(`No way back to ${k}`);
          expect(step.plan).toBe(plans[k]);
          expect(step.month).toBe(k);
          [history, now] = [step.history, step];
        }
        expect(undo(history, now)).toBeNull();
        for (let k = 1; k <= last; k++) {
          const step = redo(history, now);
          if (!step) throw new Error(`No way on to ${k}`);
          expect(step.plan).toBe(plans[k]);
          [history, now] = [step.history, step];
        }
        expect(redo(history, now)).toBeNull();
      }),
    );
  });

  it('are written and read back as they were, wherever refuse lets them pass', () => {
    let passed = 0;
    fc.assert(
      fc.property(changes, (made) => {
        const plan = made.reduce((before, next) => next(before).plan, smallPlan());
        const text = planText(plan);
        const opened = openPlan(text);
        const refusals = refuse(plan);
        if (refusals.length > 0) {
          expect(opened).toEqual({ refusals });
          return;
        }
        passed += 1;
        expect(opened).toEqual({ plan, seed: null });
        expect('plan' in opened && planText(opened.plan)).toBe(text);
      }),
      { numRuns: 400 },
    );
    expect(passed).toBeGreaterThan(20);
  });
});
