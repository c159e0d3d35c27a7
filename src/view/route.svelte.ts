/** The view in the address: '#/grow'. Back and Forward work because the browser keeps the addresses. */
export const VIEWS = ['grow', 'bench', 'trials', 'school', 'knows'] as const;
export type View = (typeof VIEWS)[number];

function viewIn(hash: string): View {
  return VIEWS.find((view) => hash === `#/${view}`) ?? 'grow';
}

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
