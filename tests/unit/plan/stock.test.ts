import { describe, expect, it } from 'vitest';
import type { Mother } from '../../../src/plan/bench';
import type { Piece, Plan, Step } from '../../../src/plan/plan';
import { grownAreaMm2, ledgerOf, takesOf } from '../../../src/plan/stock';
import { discPiece, rectanglePiece, smallPlan, squarePiece } from '../../fixtures/small-plan';

const mother = (changes: Partial<Mother> = {}): Mother => ({
  id: 'm1',
  variety: 'Fern',
  areaMm2: 900,
  on: '2026-03-01',
  tank: 'left',
  ...changes,
});

/** Only Fern, of which 21 mm by 20 mm is taken: 420 mm2. */
const fern = (changes: Partial<Plan> = {}): Plan =>
  smallPlan({ pieces: [rectanglePiece('p1', 'a', [0, 0], 21, 20)], ...changes });

const adding = (day: number, piece: Piece, on?: boolean): Step => ({
  id: `s${day}`,
  day,
  kind: 'add',
  piece,
  ...(on === undefined ? {} : { on }),
});

describe('what a plan takes', () => {
  it('is its pieces of day 0 and those that are added, by variety', () => {
    const graft: Piece = {
      id: 'p3',
      at: [0, 15],
      turnDeg: 0,
      patches: [
        {
          variety: 'a',
          outline: [
            [0, 0],
            [2, 0],
            [2, 3],
            [0, 3],
          ],
        },
        {
          variety: 'b',
          outline: [
            [2, 0],
            [4, 0],
            [4, 5],
            [2, 5],
          ],
        },
      ],
    };
    const plan = smallPlan({
      pieces: [squarePiece('p1', 'a', -7, 0, 10), discPiece('p2', 'b', 7, 0, 10), graft],
      steps: [
        adding(40, squarePiece('p4', 'b', 0, -15, 3)),
        adding(20, squarePiece('p5', 'b', 0, -15, 4)),
        adding(30, squarePiece('p6', 'b', 0, -15, 5), false),
      ],
    });
    const takes = takesOf(plan).map(({ variety, day, areaMm2 }) => [
      variety,
      day,
      Number(areaMm2.toFixed(3)),
    ]);
    expect(takes).toEqual([
      ['Fern', 0, 106],
      ['Garnet', 0, Number((25 * Math.PI + 10).toFixed(3))],
      ['Garnet', 20, 16],
      ['Garnet', 40, 9],
    ]);
  });
});

describe('what a mother holds', () => {
  it('grows at the rim as a disc: 10 mm of radius and 2 months at 3 mm make 16 mm', () => {
    expect(grownAreaMm2(100 * Math.PI, 3, 2)).toBeCloseTo(256 * Math.PI, 9);
    expect(grownAreaMm2(100 * Math.PI, 3, -5)).toBeCloseTo(100 * Math.PI, 9);
  });

  it('counts from its own date to the day of the cut', () => {
    // 61 days at 3 mm a month of 30.4375 days, from a radius of 10 mm
    const [row] = ledgerOf([fern()], [mother({ areaMm2: 100 * Math.PI })], '2026-05-01').rows;
    expect(row.holdsMm2).toBeCloseTo(Math.PI * (10 + (3 * 61) / 30.4375) ** 2, 6);
    expect(row.keepMm2).toBeCloseTo((200 / 3) * Math.PI, 9);
  });
});

describe('the ledger', () => {
  it('refuses a plan that goes into the part that is kept, with the number', () => {
    const { rows, refusals } = ledgerOf([fern()], [mother()], '2026-03-01');
    expect(refusals.map(({ cure }) => cure)).toEqual([
      'This takes 420 mm² of Fern; the mother holds 900 mm² and you keep 600: 120 mm² too much',
    ]);
    expect(rows).toMatchObject([{ variety: 'Fern', takenMm2: 420, leftMm2: 0 }]);
  });

  it('lets exactly the rest be taken, of all mothers of the name', () => {
    const two = [
      mother({ areaMm2: 960 }),
      mother({ id: 'm2', variety: ' fern ', areaMm2: 300, tank: 'right' }),
    ];
    const { rows, refusals, warnings } = ledgerOf([fern()], two, '2026-03-01');
    expect(refusals).toEqual([]);
    expect(warnings).toEqual([]);
    expect(rows[0].leftMm2).toBeCloseTo(0, 6);
    const tooMuch = ledgerOf([fern()], [two[0], { ...two[1], keepShare: 0.8 }], '2026-03-01').refusals;
    expect(tooMuch[0].cure).toContain('and you keep 880: 40 mm² too much');
  });

  it('regrows between two cuts and never gives from the kept part', () => {
    const again = adding(61, squarePiece('p9', 'a', 0, 20, 10));
    const plan = smallPlan({ pieces: [rectanglePiece('p1', 'a', [0, 0], 15, 20)], steps: [again] });
    const { rows, refusals } = ledgerOf([plan], [mother()], '2026-03-01');
    expect(refusals).toEqual([]);
    // 600 mm² are left of 900 on day 0; 61 days at 3 mm a month
    const then = Math.PI * (Math.sqrt(600 / Math.PI) + (3 * 61) / 30.4375) ** 2;
    expect(rows[0].holdsMm2).toBeCloseTo(then, 6);
    expect(rows[0].leftMm2).toBeCloseTo(then - 600 - 100, 6);
    const soon = { ...plan, steps: [{ ...again, day: 1 }] };
    expect(ledgerOf([soon], [mother()], '2026-03-01').refusals[0].cure).toMatch(
      /^This takes 100 mm² of Fern on day 1;/u,
    );
  });

  it('adds up the plans that begin together', () => {
    const half = fern({ pieces: [rectanglePiece('p1', 'a', [0, 0], 20, 10)] });
    expect(ledgerOf([half], [mother()], '2026-03-01').refusals).toEqual([]);
    expect(ledgerOf([half, half], [mother()], '2026-03-01').refusals[0].cure).toContain('100 mm² too much');
  });

  it('warns where a variety lives in one tank, and where no mother is noted', () => {
    const small = smallPlan();
    const { warnings } = ledgerOf([small], [mother()], '2026-03-01');
    expect(warnings).toEqual([
      'Fern lives in one tank only (left), and 200 mm² may be cut after this plan: set a piece of it in another tank first.',
      'No mother of Garnet is noted: whether 79 mm² can be cut is not known.',
    ]);
    const last = ledgerOf([fern()], [mother()], '2026-03-01').warnings;
    expect(last[0]).toContain('this plan cuts the last of what may be cut');
    const untouched = ledgerOf(
      [fern()],
      [mother({ areaMm2: 9000 }), mother({ id: 'm2', variety: 'Garnet' })],
      '2026-03-01',
    );
    expect(untouched.warnings).toHaveLength(1);
    expect(untouched.rows).toHaveLength(2);
  });
});
