/** The rooms stand in three places: the array that is enforced, the drawing for people, and the folders on the disk. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ROOMS } from '../../.dependency-cruiser.mjs';

const root = new URL('../../', import.meta.url);

/** Rooms in a drawing such as 'a < b < {c, d} < e', each with the earlier rooms that it must not import. */
function readDrawing(text: string): Record<string, string[]> {
  const [line = '', ...beside] = text.split('\n').filter((row) => row.trim() !== '');
  const notKnown: Record<string, string[]> = {};
  for (const step of line.split('<')) {
    const rooms = step.replace(/[{}\s]/gu, '').split(',');
    for (const [at, room] of rooms.entries()) notKnown[room] = rooms.slice(0, at);
  }
  for (const row of beside) {
    const [, room = '', not = ''] = /\\_ (\w+) \(not ([\w, ]+)\)/u.exec(row) ?? [];
    notKnown[room] = not.split(', ');
  }
  return notKnown;
}

test('the drawing in DEVELOPERS.md is the order that is enforced', () => {
  const page = readFileSync(new URL('DEVELOPERS.md', root), 'utf8');
  const drawing = /## Who may import whom[\s\S]*?```\n([\s\S]*?)```/u.exec(page)?.[1] ?? '';
  const drawn = readDrawing(drawing);

  expect(Object.keys(drawn)).toEqual(ROOMS.map(({ room }) => room));
  for (const { room, not } of ROOMS) {
    // model imports units alone, which its own rule says; the drawing says it in a line below
    const beyondOrder = room === 'model' ? not.filter((other) => other !== 'stats') : not;
    expect(drawn[room], room).toEqual(beyondOrder);
  }
});

test('every folder of src is a room, and every room is a folder', () => {
  const folders = readdirSync(new URL('src/', root), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => `src/${entry.name}`);
  const rooms = ROOMS.map(({ folder }) => folder);

  expect(folders.filter((folder) => !rooms.includes(folder))).toEqual([]);
  expect(rooms.filter((folder) => !existsSync(new URL(`${folder}/`, root)))).toEqual([]);
});
