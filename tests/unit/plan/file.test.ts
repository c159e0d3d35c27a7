import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkPlan, digest, openPlan, planDigest, planText, type Opened } from '../../../src/plan/file';
import type { Refusal } from '../../../src/plan/plan';
import { smallPlan } from '../../fixtures/small-plan';

function refusalsOf(opened: Opened): readonly Refusal[] {
  if ('plan' in opened) throw new Error('A plan was opened where refusals were expected');
  return opened.refusals;
}

function planOf(opened: Opened) {
  if ('refusals' in opened) throw new Error(JSON.stringify(opened.refusals));
  return opened.plan;
}

const asOpened = (changes: object) => checkPlan({ ...smallPlan(), ...changes });

describe('the plan file', () => {
  it('opens the fixture of shape 1, with every field, and writes it in canonical form', () => {
    const text = readFileSync('tests/fixtures/plans/v1.json', 'utf8');
    const plan = planOf(openPlan(text));
    expect(plan).toEqual(JSON.parse(text));
    expect(planOf(openPlan(planText(plan)))).toEqual(plan);
  });

  it('writes equal plans alike, whatever the order of their keys, one line a piece', () => {
    const plan = smallPlan();
    const shuffled = Object.fromEntries(Object.entries(plan).reverse());
    expect(planText(planOf(checkPlan(shuffled)))).toBe(planText(plan));
    expect(planText({ ...plan, note: undefined })).toBe(planText(plan));
    expect(planText(plan).split('\n')).toContain(
      '    { "id": "p2", "variety": "b", "at": [7, 0], "turnDeg": 0, "disc": { "diameterMm": 10 } }',
    );
  });

  it('fills in what a file written by hand may leave out', () => {
    const { pairs, steps, pieces, ...rest } = smallPlan({ pairs: [] });
    const withoutTurns = pieces.map(({ turnDeg, ...piece }) =>
      turnDeg === 0 ? piece : { ...piece, turnDeg },
    );
    expect(planOf(checkPlan({ ...rest, pieces: withoutTurns }))).toEqual({ ...rest, pairs, steps, pieces });
  });

  it('opens text with a byte order mark', () => {
    expect(planOf(openPlan(`\uFEFF${planText(smallPlan())}`))).toEqual(smallPlan());
  });

  it.each([
    ['', 'the file', 'an empty file'],
    ['{"seambench":1,', 'line 1', 'text that is not JSON'],
    ['{\n  "seambench": 1,\n  "name": "x" "tile": {}\n}', 'line 3', 'text that is not JSON'],
    ['[]', 'the plan', 'a list of 0'],
    ['null', 'the plan', 'null'],
    ['"plan"', 'the plan', '"plan"'],
    ['{"seambench":2}', 'seambench', '2'],
    ['{"seambench":"1"}', 'seambench', '"1"'],
  ])('refuses %j with its place', (text, where, found) => {
    const [refusal] = refusalsOf(openPlan(text));
    expect(refusal).toMatchObject({ where, found });
  });

  it('says of a newer plan that it is newer', () => {
    const [refusal] = refusalsOf(openPlan('{"seambench":7}'));
    expect(refusal).toMatchObject({ where: 'seambench', found: '7', allowed: 'at most 1' });
    expect(refusal.cure).toContain('newer Seambench');
  });
});

describe('the seed in the file', () => {
  it('is written after the months, read back, and no part of the plan', () => {
    const plan = smallPlan();
    const text = planText(plan, 'tide');
    expect(text.split('\n')).toContain('  "seed": "tide"');
    expect(openPlan(text)).toEqual({ plan, seed: 'tide' });
  });

  it('may be missing, as in every file of an older program', () => {
    expect(openPlan(planText(smallPlan()))).toEqual({ plan: smallPlan(), seed: null });
  });

  it.each<[unknown, string]>([
    ['', '""'],
    [7, '7'],
    ['x'.repeat(101), `"${'x'.repeat(39)}…`],
  ])('is refused where it is no word: %j', (seed, found) => {
    const [refusal] = refusalsOf(asOpened({ seed }));
    expect(refusal).toMatchObject({ where: 'seed', found, allowed: 'words of 1 to 100 letters' });
  });
});

describe('faults of shape, as refusals', () => {
  it.each<[string, object, string, string, string]>([
    ['months', { months: 40 }, 'months', '40', 'a whole number from 1 to 36'],
    ['half a month', { months: 1.5 }, 'months', '1.5', 'a whole number from 1 to 36'],
    [
      'a key too many',
      { colour: 'red' },
      'colour',
      '"colour", which this place does not know',
      'nothing here',
    ],
    [
      'a step of no kind',
      { steps: [{ id: 's1', day: 3 }] },
      'steps[0] (s1).kind',
      'nothing',
      'one of "trim", "recut", "move", "lift", "add", "isolate", "scrape"',
    ],
    [
      'a trim without a width',
      { steps: [{ id: 's1', day: 3, kind: 'trim' }] },
      'steps[0] (s1).widthMm',
      'nothing',
      'a number of mm',
    ],
    [
      'no variety',
      { varieties: [], pairs: [], pieces: [] },
      'varieties',
      'a list of 0',
      'a list of 1 to 8 varieties',
    ],
    ['a tile', { tile: { shape: 'hexagon', sizeMm: 60 } }, 'tile.shape', '"hexagon"', '"square" or "disc"'],
    [
      'a missing rate',
      { varieties: [{ id: 'a', name: '', colour: '#123456', aggression: 0 }] },
      'varieties[0] (a).rimMmPerMonth',
      'nothing',
      'a number of mm per month',
    ],
    [
      'an acceptance',
      { pairs: [{ a: 'a', b: 'b', acceptance: 'often' }] },
      'pairs[0] (a with b).acceptance',
      '"often"',
      'a number from 0 to 1, or { "took": 3, "tried": 10 }',
    ],
    [
      'tries',
      { pairs: [{ a: 'a', b: 'b', acceptance: { took: 1.5, tried: 3 } }] },
      'pairs[0] (a with b).acceptance.took',
      '1.5',
      'a whole number from 0 to 10000',
    ],
    [
      'mingle',
      { pairs: [{ a: 'a', b: 'b', mingle: 'well' }] },
      'pairs[0] (a with b).mingle',
      '"well"',
      '"hardly", "veins", "through", or an object with all its numbers',
    ],
    [
      'a disc',
      { pieces: [{ id: 'p7', variety: 'a', at: [0, 0], turnDeg: 0, disc: { diameterMm: -3 } }] },
      'pieces[0] (p7).disc.diameterMm',
      '-3',
      'a number from 0.5 to 300',
    ],
    [
      'a corner',
      { pieces: [{ id: 'p7', variety: 'a', at: [0, 0], turnDeg: 0, outline: [[0, 0], [1, 0], [1]] }] },
      'pieces[0] (p7).outline[2][1]',
      'nothing',
      'a number from -1000 to 1000',
    ],
    [
      'neither outline nor disc',
      { pieces: [{ id: 'p7', variety: 'a', at: [0, 0], turnDeg: 0 }] },
      'pieces[0] (p7).outline',
      'nothing',
      'a list of corners [x, y] in mm, or a disc or patches in its place',
    ],
    [
      'both outline and disc',
      {
        pieces: [{ id: 'p7', variety: 'a', at: [0, 0], turnDeg: 0, outline: [], disc: { diameterMm: 3 } }],
      },
      'pieces[0] (p7).disc',
      'a disc beside an outline',
      'an outline or a disc, not both',
    ],
    ['no piece at all', { pieces: [7] }, 'pieces[0]', '7', 'a piece with an outline: a list of corners [x, y] in mm, or a disc or patches in its place'], // prettier-ignore
  ])('%s', (_, changes, where, found, allowed) => {
    expect(refusalsOf(asOpened(changes))).toContainEqual(
      expect.objectContaining({ where, found, allowed }) as Refusal,
    );
  });

  it('says what to do', () => {
    const [fern, garnet] = smallPlan().varieties;
    const piece = { id: 'p7', variety: 'b', at: [-18, 0] };
    const cases: [object, string][] = [
      [{ months: 40 }, 'The number of months of the plan is 40: it must be a whole number from 1 to 36'],
      [{ tile: undefined }, 'The tile is missing: it must be a shape and a size in mm'],
      [{ tile: [1] }, 'The tile is a list of 1: it must be a shape and a size in mm'],
      [{ extra: 1 }, 'The entry “extra” in the plan means nothing here: take it out'],
      [{ varieties: [fern, { ...garnet, rimMmPerMonth: 20 }] }, 'The rim rate of Garnet is 20: it must be a number from 0.2 to 15 mm a month'],
      [{ varieties: [fern, { ...garnet, name: 7 }] }, 'The name of variety 2 in the file is 7: it must be words of at most 200 letters'],
      [{ pairs: [{ a: 'a', b: 'b', acceptance: 'often' }] }, 'The chance to take of the pair Fern and Garnet is “often”: it must be a number from 0 to 1, or how many took of how many tried'],
      [{ pieces: [{ ...piece, outline: [[0, 0], [1, 0], [1]] }] }, 'The y of corner 3 of the outline of piece 1 in the file (Garnet, 18 mm left of the middle) is missing: it must be a number from -1000 to 1000'],
      [{ pieces: [{ ...piece, outline: [], disc: { diameterMm: 3 } }] }, 'Piece 1 in the file (Garnet, 18 mm left of the middle) has an outline and a diameter: keep one of the two'],
      [{ pieces: [7] }, 'Piece 1 in the file is 7: it must be a piece with an outline or a diameter'],
      [{ steps: [{ id: 's1', day: 30, kind: 'scrape', along: [[0, 0], [1]], widthMm: 2 }] }, 'The y of point 2 of the drawn line of step 1 in the file (scrape) is missing: it must be a number from -1000 to 1000'],
    ]; // prettier-ignore
    for (const [changes, cure] of cases) {
      expect(refusalsOf(asOpened(changes)).map((refusal) => refusal.cure)).toContain(cure);
    }
  });

  it.each(['{"name":"other","version":3}', '[1,2]', 'null', '{}'])(
    'says of other JSON, %s, that it is no plan, and nothing else',
    (text) => {
      const refusals = refusalsOf(openPlan(text));
      expect(refusals).toHaveLength(1);
      expect(refusals[0].cure).toMatch(/^This is not a Seambench plan/u);
    },
  );

  it('refuses an id that would name a slot of every object', () => {
    const varieties = [{ ...smallPlan().varieties[0], id: '__proto__' }];
    expect(refusalsOf(asOpened({ varieties, pairs: [], pieces: [] }))[0].where).toBe(
      'varieties[0] (__proto__).id',
    );
  });

  it('goes on to what the schema cannot say', () => {
    const opened = asOpened({ pairs: [{ a: 'a', b: 'x' }] });
    expect(refusalsOf(opened)[0].where).toBe('pairs[0] (a with x)');
  });
});

describe('digests', () => {
  it('is FNV-1a of 64 bits (test vectors of draft-eastlake-fnv, from memory)', () => {
    expect(digest('')).toBe('cbf29ce484222325');
    expect(digest('a')).toBe('af63dc4c8601ec8c');
    expect(digest('foobar')).toBe('85944171f73967e8');
  });

  it('agrees with the definition in whole numbers of any length', () => {
    const text = planText(smallPlan({ name: 'Größe – 尺寸 🪸' }));
    let hash = 0xcbf29ce484222325n;
    for (const byte of new TextEncoder().encode(text)) {
      hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
    }
    expect(digest(text)).toBe(hash.toString(16).padStart(16, '0'));
  });

  it('knows a run by what growth depends on', () => {
    const plan = smallPlan();
    const [fern, garnet] = plan.varieties;
    const same = smallPlan({
      name: 'other',
      note: 'x',
      varieties: [{ ...fern, name: 'Moss', colour: '#000001' }, garnet],
    });
    expect(planDigest(same)).toBe(planDigest(plan));
    const faster = smallPlan({ varieties: [{ ...fern, rimMmPerMonth: 3.1 }, garnet] });
    expect(planDigest(faster)).not.toBe(planDigest(plan));
    expect(planDigest(smallPlan({ months: 4 }))).not.toBe(planDigest(plan));
  });
});
