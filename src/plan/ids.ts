/** Ids of things in a list: fresh ones, and those that stand there twice. */

interface Named {
  readonly id: string;
}

/** The highest number among ids such as 'p7'; 0 where there is none. */
export function highestNumber(letter: string, things: readonly Named[]): number {
  const form = new RegExp(`^${letter}(\\d{1,9})$`, 'u');
  return things.reduce((highest, { id }) => Math.max(highest, Number(form.exec(id)?.[1] ?? 0)), 0);
}

/** The letter and one more than the highest number in use, so that a new thing is never taken for a removed one. */
export function nextId(letter: string, things: readonly Named[]): string {
  return `${letter}${highestNumber(letter, things) + 1}`;
}

/** Things whose id an earlier one has, each with the place of that first one. */
export function repeats<T extends Named>(
  things: readonly T[],
): { readonly thing: T; readonly index: number; readonly first: number }[] {
  const places = new Map<string, number>();
  return things.flatMap((thing, index) => {
    const first = places.get(thing.id);
    if (first !== undefined) return [{ thing, index, first }];
    places.set(thing.id, index);
    return [];
  });
}
