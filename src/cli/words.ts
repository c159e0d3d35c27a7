/** The words after a command: read as options, run, and what is wrong with them said. */
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

/** Runs a command on the words after it: what is refused is said on stderr with exit 2; a fault of ours is thrown. */
export function asCommand(run: (words: readonly string[]) => void): void {
  // The reader may have seen enough: `… | head` is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(0);
  });

  try {
    run(process.argv.slice(2));
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 2;
  }
}
