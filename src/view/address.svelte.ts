/** What follows the view in the address: '#/trials/tiles/t12' gives 'tiles' and 't12'. */
import type { View } from './views';

export class Address {
  readonly #view: View;
  parts = $state.raw<readonly string[]>([]);

  constructor(view: View) {
    this.#view = view;
    this.#read();
  }

  /** Follows the address until the returned function is called. */
  follow(): () => void {
    const read = (): void => this.#read();
    addEventListener('hashchange', read);
    return () => removeEventListener('hashchange', read);
  }

  #read(): void {
    const [, view, ...parts] = location.hash.split('/');
    if (view === this.#view) this.parts = parts;
  }
}
