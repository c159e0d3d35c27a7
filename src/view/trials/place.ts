/** The parts of Trials and their addresses: '#/trials/tiles/t12'. */
export const SECTIONS = ['tiles', 'read', 'readings', 'pairs', 'rates', 'tanks'] as const;
export type Section = (typeof SECTIONS)[number];

export function addressOf(section: Section, tile?: string): string {
  return tile === undefined ? `#/trials/${section}` : `#/trials/${section}/${tile}`;
}

/** The section and the id of a trial that the address names. */
export function placeIn([section, tile]: readonly string[]): { section: Section; tile: string | null } {
  return { section: SECTIONS.find((name) => name === section) ?? 'tiles', tile: tile ?? null };
}
