/** Where in School the address leads: the list, a lesson or the test. */
import type { Lesson } from '../../lessons/lesson';
import { LESSONS } from '../../lessons/order';

export interface Place {
  readonly lesson: Lesson | null;
  readonly isTest: boolean;
  /** In the test: back at a tile whose calls are done. */
  readonly isLook: boolean;
}

/** '#/school/test/look': a place of its own, so that Back leads to the result. */
export const LOOK = '#/school/test/look';

export function placeIn([name, part]: readonly string[]): Place {
  const isTest = name === 'test';
  return {
    lesson: LESSONS.find(({ id }) => id === name) ?? null,
    isTest,
    isLook: isTest && part === 'look',
  };
}
