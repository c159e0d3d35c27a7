/**
 * No function of the host whose last bits may differ grows a tile. ECMAScript leaves sin, exp, pow, hypot and their like
 * to the host ('implementation-approximated', ECMA-262, Math); + - * / are exact by IEEE 754, sqrt is so in every engine
 * (tests/browser/same-bits.test.ts), and the functions named EXACT give numbers that the standard fixes.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import ts from 'typescript';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { grow } from '../../../src/model/grow';
import { frameOf } from '../../../src/model/frame';
import { compile } from '../../../src/plan/compile';
import { randomPlan } from '../../fixtures/random-plan';

const EXACT = new Set(
  'abs ceil floor round trunc sign min max imul clz32 fround sqrt PI SQRT2 SQRT1_2'.split(' '),
);
const INEXACT = Object.getOwnPropertyNames(Math).filter(
  (name) => !EXACT.has(name) && typeof Reflect.get(Math, name) === 'function',
);

/** Uses of Math in a text that are not an exact function named in full, and powers. */
function inexactUses(text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && node.text === 'Math') {
      const { parent } = node;
      const exact =
        ts.isPropertyAccessExpression(parent) && parent.expression === node && EXACT.has(parent.name.text);
      if (!exact) found.push(parent.getText());
    }
    if (
      node.kind === ts.SyntaxKind.AsteriskAsteriskToken ||
      node.kind === ts.SyntaxKind.AsteriskAsteriskEqualsToken
    )
      found.push(node.parent.getText());
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('text.ts', text, ts.ScriptTarget.Latest, true));
  return found;
}

afterEach(() => vi.restoreAllMocks());

describe('the engine is exact', () => {
  it('in its text: no file of src/model, nor of src/units that it imports, uses one', () => {
    const files = ['model', 'units'].flatMap((room) =>
      readdirSync(`src/${room}`).map((file) => `src/${room}/${file}`),
    );
    const imported = files.filter(
      (file) =>
        file.startsWith('src/model/') ||
        files.some(
          (by) =>
            by.startsWith('src/model/') &&
            readFileSync(by, 'utf8').includes(file.replace(/^src\/(.*)\.ts$/u, "'../$1'")),
        ),
    );
    expect(imported.length).toBeGreaterThan(20);
    for (const file of imported) expect(inexactUses(readFileSync(file, 'utf8')), file).toEqual([]);
  });

  it('and the search finds what it is for', () => {
    const uses = ['Math.sin(x)', 'Math["exp"](x)', 'x ** 0.5', 'const { pow } = Math', 'Math.random()'];
    for (const use of uses) expect(inexactUses(`${use};`), use).toHaveLength(1);
    expect(inexactUses('Math.sqrt(Math.abs(x)) * 2')).toEqual([]);
  });

  it('in its runs: none is called from day 0 to the last, libraries included', () => {
    expect(INEXACT).toEqual(expect.arrayContaining(['sin', 'atan2', 'exp', 'log', 'pow', 'hypot', 'cbrt']));
    fc.assert(
      fc.property(randomPlan(6, 32), fc.nat(1e6), (plan, seed) => {
        const layout = compile(plan, 0.5);
        const called: string[] = [];
        for (const name of INEXACT)
          vi.spyOn(Math, name as 'sin').mockImplementation(() => {
            called.push(name);
            return NaN;
          });
        for (const state of grow(layout, String(seed))) if (state.day === layout.days) frameOf(state, 6);
        vi.restoreAllMocks();
        expect(called).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });
});
