/** Tags and names are typed by hand: capitals and blanks make no difference to which tile or variety is meant. */
export function nameKey(name: string): string {
  return name.normalize('NFC').trim().replaceAll(/\s+/gu, ' ').toLowerCase();
}
