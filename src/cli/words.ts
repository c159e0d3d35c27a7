/** The words after a command, read as options. */
import { parseArgs, type ParseArgsConfig } from 'node:util';

/** Bad input, told in a sentence with exit code 2. */
export class Refused extends Error {}

/** Throws Refused with the usage where a word is no option. */
export function parsedWords<T extends ParseArgsConfig>(config: T, usage: string) {
  try {
    return parseArgs(config);
  } catch (error) {
    const why = error instanceof Error ? error.message.split(/\.\s/u)[0] : 'These options make no sense';
    throw new Refused(`${why}. ${usage}`);
  }
}
