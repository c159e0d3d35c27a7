/** Where in School the address leads: the list, a lesson or the test. */
import type { Lesson } from '../../lessons/lesson';
import { LESSONS } from '../../lessons/order';

export interface Place {
  readonly lesson: Lesson | null;
  readonly isTest: boolean;
}

export function placeIn([name]: readonly string[]): Place {
  return { lesson: LESSONS.find(({ id }) => id === name) ?? null, isTest: name === 'test' };
}
