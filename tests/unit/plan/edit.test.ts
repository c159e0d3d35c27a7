import { describe, expect, it } from 'vitest';
import * as edit from '../../../src/plan/edit';
import { varietiesOf } from '../../../src/plan/outline';
import { pairOf, type Plan } from '../../../src/plan/plan';
import { discPiece, smallPlan, squarePiece } from '../../fixtures/small-plan';

const plan = smallPlan();

describe('pieces', () => {
  it('moves some pieces, names the step and shares the rest', () => {
    const moved = edit.movePieces(plan, ['p1'], 0.12345, -2);
    expect(moved.words).toBe('Move piece p1');
    expect(moved.plan.pieces[0].at).toEqual([-6.877, -2]);
    expect(moved.plan.pieces[1]).toBe(plan.pieces[1]);
    expect(moved.plan.varieties).toBe(plan.varieties);
    expect(plan.pieces[0].at).toEqual([-7, 0]);
    expect(edit.movePieces(plan, ['p1', 'p2'], 1, 1).words).toBe('Move 2 pieces');
  });

  it('is the very same plan where nothing changes', () => {
    expect(edit.movePieces(plan, ['p9'], 1, 1).plan).toBe(plan);
    expect(edit.deletePieces(plan, ['p9']).plan).toBe(plan);
    expect(edit.duplicatePieces(plan, ['p9'], 1, 1).plan).toBe(plan);
    expect(edit.changeVariety(plan, 'z', { name: 'Moss' }).plan).toBe(plan);
    expect(edit.changePair(plan, 'a', 'a', { related: 'kin' }).plan).toBe(plan);
    expect(edit.changePair(plan, 'a', 'z', { related: 'kin' }).plan).toBe(plan);
  });

  it('sets a new piece at the end and one with a known id in its place', () => {
    const set = edit.setPiece(plan, discPiece('p3', 'a', 0, 20, 4));
    expect(set.plan.pieces.map((piece) => piece.id)).toEqual(['p1', 'p2', 'p3']);
    const again = edit.setPiece(plan, discPiece('p1', 'b', 0, 20, 4));
    expect(again.plan.pieces.flatMap(varietiesOf)).toEqual(['b', 'b']);
    expect(again.words).toBe('Set piece p1');
  });

  it('keeps turns within half a circle either way', () => {
    expect(edit.turnPieces(plan, ['p1'], 190).plan.pieces[0].turnDeg).toBe(-170);
    expect(edit.turnPieces(plan, ['p1'], -180).plan.pieces[0].turnDeg).toBe(180);
    expect(edit.turnPieces(plan, ['p1'], 720).plan.pieces[0].turnDeg).toBe(0);
    expect(edit.turnPieces(plan, ['p1'], 22.5).plan.pieces[0].at).toEqual([-7, 0]);
  });

  it('resizes an outline by its own sides and a disc all round', () => {
    const wide = edit.resizePiece(plan, 'p1', 2, 0.5).plan.pieces[0];
    expect('outline' in wide && wide.outline).toEqual([
      [-10, -2.5],
      [10, -2.5],
      [10, 2.5],
      [-10, 2.5],
    ]);
    const disc = (factorX: number, factorY: number) => {
      const piece = edit.resizePiece(plan, 'p2', factorX, factorY).plan.pieces[1];
      return 'disc' in piece ? piece.disc.diameterMm : null;
    };
    expect(disc(4, 1)).toBe(20);
    expect(disc(0, 0)).toBe(0.5);
    expect(disc(1e9, 1e9)).toBe(300);
  });

  it('never lets a side go below half a millimetre or turn over', () => {
    const flat = edit.resizePiece(plan, 'p1', 0, -3).plan.pieces[0];
    expect('outline' in flat && flat.outline[2]).toEqual([0.25, 0.25]);
  });

  it('duplicates with new ids, after the highest in use', () => {
    const gappy = smallPlan({ pieces: [squarePiece('p7', 'a', 0, 0, 4), discPiece('mine', 'b', 9, 0, 4)] });
    const copied = edit.duplicatePieces(gappy, ['mine', 'p7'], 0, 6);
    expect(copied.plan.pieces.map((piece) => piece.id)).toEqual(['p7', 'mine', 'p8', 'p9']);
    expect(copied.plan.pieces[3].at).toEqual([9, 6]);
    expect(edit.nextPieceId(gappy)).toBe('p8');
  });

  it('changes variety and edge', () => {
    const changed = edit.changePieces(plan, ['p1', 'p2'], { edge: 'rim' });
    expect(changed.plan.pieces.every((piece) => piece.edge === 'rim')).toBe(true);
    expect(changed.words).toBe('Change the edge of 2 pieces');
    expect(varietiesOf(edit.changePieces(plan, ['p1'], { variety: 'b' }).plan.pieces[0])).toEqual(['b']);
  });

  it('holds at the most pieces a plan can have', () => {
    const pieces = Array.from({ length: 1999 }, (_, k) => discPiece(`p${k + 1}`, 'a', 0, 0, 1));
    const full = edit.duplicatePieces(smallPlan({ pieces }), ['p1', 'p2'], 1, 1).plan;
    expect(full.pieces).toHaveLength(2000);
    expect(edit.setPiece(full, discPiece('new', 'a', 0, 0, 1)).plan).toBe(full);
    expect(edit.duplicatePieces(full, ['p1'], 1, 1).plan).toBe(full);
  });
});

describe('varieties and pairs', () => {
  it('adds up to eight varieties, each with an id, a name and a colour of its own', () => {
    let grown = plan;
    for (let k = 0; k < 9; k++) grown = edit.addVariety(grown).plan;
    expect(grown.varieties).toHaveLength(8);
    for (const key of ['id', 'name', 'colour'] as const) {
      expect(new Set(grown.varieties.map((variety) => variety[key])).size).toBe(8);
    }
    expect(edit.addVariety(grown).plan).toBe(grown);
  });

  it('fills the first free letter', () => {
    const [, second] = plan.varieties;
    const added = edit.addVariety(smallPlan({ varieties: [second], pairs: [], pieces: [] }));
    expect(added.plan.varieties[1].id).toBe('a');
    expect(added.words).toBe(`Add ${added.plan.varieties[1].name}`);
  });

  it('changes a variety in words that name the change', () => {
    expect(edit.changeVariety(plan, 'a', { rimMmPerMonth: 4 }).words).toBe('Change the rim rate of Fern');
    expect(edit.changeVariety(plan, 'a', { name: 'Moss' }).words).toBe('Rename Fern to Moss');
    expect(edit.changeVariety(plan, 'a', { colour: '#123456' }).words).toBe('Change the colour of Fern');
    expect(edit.changeVariety(plan, 'a', { aggression: 1 }).plan.varieties[0].aggression).toBe(1);
  });

  it('removes a variety with its pieces and pairs, but never the last', () => {
    const without = edit.removeVariety(plan, 'b');
    expect(without.words).toBe('Remove Garnet');
    expect(without.plan.pieces.map((piece) => piece.id)).toEqual(['p1']);
    expect(without.plan.pairs).toEqual([]);
    expect(edit.removeVariety(without.plan, 'a').plan).toBe(without.plan);
  });

  it('finds a pair in either order, and the newer of tries and kinship replaces the older', () => {
    const kin = edit.changePair(plan, 'b', 'a', { related: 'kin' }).plan;
    expect(kin.pairs).toEqual([{ a: 'a', b: 'b', related: 'kin' }]);
    const number = edit.changePair(kin, 'a', 'b', { acceptance: 0.4 }).plan;
    expect(number.pairs).toEqual([{ a: 'a', b: 'b', acceptance: 0.4 }]);
    expect(edit.changePair(number, 'a', 'b', { mingle: 'through' }).words).toBe('Change Fern with Garnet');
  });

  it('adds a pair that was not listed, and takes a value back', () => {
    const none: Plan = smallPlan({ pairs: [] });
    const added = edit.changePair(none, 'b', 'a', { mingle: 'hardly' }).plan;
    expect(pairOf(added, 'a', 'b')).toEqual({ a: 'b', b: 'a', mingle: 'hardly' });
    expect(edit.changePair(added, 'a', 'b', { mingle: undefined }).plan.pairs).toEqual([{ a: 'b', b: 'a' }]);
  });
});

describe('the tile and the rest', () => {
  it('changes tile, months, name', () => {
    expect(edit.changeTile(plan, { shape: 'disc' }).plan.tile).toEqual({ shape: 'disc', sizeMm: 60 });
    expect(edit.changeMonths(plan, 9)).toMatchObject({ plan: { months: 9 }, words: 'Grow for 9 months' });
    expect(edit.renamePlan(plan, 'Tile 4').plan.name).toBe('Tile 4');
  });

  it('sets settings and takes them back until none is left', () => {
    const rough = edit.changeSettings(plan, { roughness: 0.2, stingMm: 2 }).plan;
    expect(edit.changeSettings(rough, { stingMm: undefined }).plan.settings).toEqual({ roughness: 0.2 });
    const bare = edit.changeSettings(rough, { stingMm: undefined, roughness: undefined }).plan;
    expect(bare).toEqual(plan);
    expect('settings' in bare).toBe(false);
  });

  it('empties a tile of pieces and of all that was said of pairs and growth, and keeps the varieties', () => {
    const said = edit.changeSettings(plan, { deadShare: 0 }).plan;
    expect(said.pairs.length).toBeGreaterThan(0);
    const { plan: bare } = edit.emptyTile(said);
    expect(bare).toMatchObject({ pieces: [], pairs: [], varieties: said.varieties, tile: said.tile });
    expect('settings' in bare).toBe(false);
  });

  it('writes a note and removes it', () => {
    const noted = edit.changeNote(plan, 'for May').plan;
    expect(noted.note).toBe('for May');
    expect('note' in edit.changeNote(noted, '').plan).toBe(false);
  });
});
