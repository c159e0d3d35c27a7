/** Where in Trials the address leads: '#/trials/tiles/t12'. */
export const SECTIONS = ['tiles', 'read', 'readings', 'pairs', 'rates', 'tanks'] as const;
export type Section = (typeof SECTIONS)[number];

export function addressOf(section: Section, tile?: string): string {
  return tile === undefined ? `#/trials/${section}` : `#/trials/${section}/${tile}`;
}

export class Place {
  section = $state<Section>('tiles');
  /** The id of a trial; null where none is named. */
  tile = $state<string | null>(null);

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
    const [, view, section, tile] = location.hash.split('/');
    if (view !== 'trials') return;
    this.section = SECTIONS.find((name) => name === section) ?? 'tiles';
    this.tile = tile ?? null;
  }
}
