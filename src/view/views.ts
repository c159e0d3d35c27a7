/** The views and their addresses: '#/grow'. */
export const VIEWS = ['grow', 'bench', 'trials', 'school', 'knows'] as const;
export type View = (typeof VIEWS)[number];

export function viewIn(hash: string): View {
  return VIEWS.find((view) => hash === `#/${view}` || hash.startsWith(`#/${view}/`)) ?? 'grow';
}

/** Whether the view shows the plan on the desk: elsewhere it does not grow. */
export function showsPlan(view: View): boolean {
  return view === 'grow' || view === 'bench';
}
