/** The view in the address. Back and Forward work because the browser keeps the addresses. */
import { viewIn, type View } from './views';

export class Route {
  view = $state<View>(viewIn(location.hash));

  /** Follows the address until the returned function is called. */
  follow(): () => void {
    const read = () => {
      this.view = viewIn(location.hash);
    };
    addEventListener('hashchange', read);
    return () => removeEventListener('hashchange', read);
  }
}
