/** Where in School the address leads: the list, a lesson or the test. */
import type { Lesson } from '../../lessons/lesson';
import { LESSONS } from '../../lessons/order';

export class Place {
  lesson = $state.raw<Lesson | null>(null);
  isTest = $state(false);

  constructor() {
    this.#read();
  }

  /** Follows the address until the returned function is called. */
  follow(): () => void {
    const read = (): void => this.#read();
    addEventListener('hashchange', read);
    return () => removeEventListener('hashchange', read);
  }

  #read(): void {
    const [, view, name] = location.hash.split('/');
    if (view !== 'school') return;
    this.lesson = LESSONS.find(({ id }) => id === name) ?? null;
    this.isTest = name === 'test';
  }
}
