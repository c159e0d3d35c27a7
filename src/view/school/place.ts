/** Where in School the address leads: the list, a lesson or the test. */
import type { Lesson } from '../../lessons/lesson';
import { LESSONS } from '../../lessons/order';
import type { OwnLesson } from './school.svelte';

export interface Place {
  readonly lesson: Lesson | null;
  /** The lesson is one of the learner's own. */
  readonly isOwn: boolean;
  readonly isTest: boolean;
  /** In the test: back at a tile whose calls are done. */
  readonly isLook: boolean;
}

/** '#/school/test/look': a place of its own, so that Back leads to the result. */
export const LOOK = '#/school/test/look';

/** '#/school/own/their-id' leads to one of `own`. */
export function placeIn([name, part]: readonly string[], own: readonly OwnLesson[]): Place {
  const isTest = name === 'test';
  const isOwn = name === 'own';
  const ownLesson = own.find(({ lesson }) => lesson?.id === part)?.lesson;
  return {
    lesson: (isOwn ? ownLesson : LESSONS.find(({ id }) => id === name)) ?? null,
    isOwn,
    isTest,
    isLook: isTest && part === 'look',
  };
}
