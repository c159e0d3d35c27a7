/** Where in School the address leads: the list, a lesson, one that is being written, or the test. */
import type { Lesson } from '../../lessons/lesson';
import { LESSONS } from '../../lessons/order';
import type { OwnLesson } from './school.svelte';

export interface Place {
  readonly lesson: Lesson | null;
  /** The lesson is one of the learner's own. */
  readonly isOwn: boolean;
  /** Which lesson is being written: '' for a new one; null for none. */
  readonly writes: string | null;
  readonly isTest: boolean;
  /** In the test: back at a tile whose calls are done. */
  readonly isLook: boolean;
}

/** '#/school/test/look': a place of its own, so that Back leads to the result. */
export const LOOK = '#/school/test/look';

/** '#/school/own/their-id' leads to one of `own`, '#/school/write/their-id' to where it is changed. */
export function placeIn([name, part]: readonly string[], own: readonly OwnLesson[]): Place {
  const isTest = name === 'test';
  const isOwn = name === 'own';
  const ownLesson = own.find(({ lesson }) => lesson?.id === part)?.lesson;
  return {
    lesson: (isOwn ? ownLesson : LESSONS.find(({ id }) => id === name)) ?? null,
    isOwn,
    writes: name === 'write' ? (part ?? '') : null,
    isTest,
    isLook: isTest && part === 'look',
  };
}
