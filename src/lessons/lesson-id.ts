/** A lesson's name in the address, made of its title. */
const MOST_LETTERS = 36;

/** 'Our slow tank' gives 'our-slow-tank'; where that is taken, 'our-slow-tank-2'. */
export function lessonId(title: string, taken: readonly string[]): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z\d]+/gu, '-')
    .replace(/^-/u, '')
    .slice(0, MOST_LETTERS)
    .replace(/-$/u, '');
  const base = plain === '' ? 'lesson' : plain;
  let id = base;
  for (let number = 2; taken.includes(id); number++) id = `${base}-${number}`;
  return id;
}
