/**
 * The log's file in parts: photos of some years are longer than a text can be. What trials/log-file.ts writes has a line
 * for each photo, so that one photo is in memory at a time; a file in another form is read as a whole.
 */
import { readJson } from '../plan/file';
import type { Refusal } from '../plan/plan';
import {
  logHead,
  lostPhoto,
  MOST_LETTERS,
  openLogFile,
  type Photo,
  photoLine,
  PHOTOS_LINE,
  photosIn,
} from './log-file';
import type { Log } from './trial';

/** The parts of the file, in order: the log, then each photo as it comes. */
export async function* logFileParts(
  log: Log,
  photos: AsyncIterable<readonly [string, Photo]>,
): AsyncGenerator<string> {
  yield logHead(log);
  let before = `,\n${PHOTOS_LINE}\n`;
  let end = '\n}\n';
  for await (const [id, photo] of photos) {
    yield before + photoLine(id, photo);
    before = ',\n';
    end = '\n  }\n}\n';
  }
  yield end;
}

export type OpenedStream =
  { readonly log: Log; readonly leftOut: readonly Refusal[] } | { readonly refusals: readonly Refusal[] };

/** Hands over each photo once the log before it is found to be good. */
export async function openLogStream(
  chunks: AsyncIterable<string>,
  keep: (id: string, photo: Photo) => Promise<void>,
): Promise<OpenedStream> {
  const head: string[] = [];
  let letters = 0;
  let log: Log | null = null;
  const leftOut: Refusal[] = [];
  for await (const line of linesIn(chunks)) {
    if (log) {
      if (line === '  }') break;
      leftOut.push(...(await keepPhoto(line, keep)));
      continue;
    }
    if (line === PHOTOS_LINE) {
      const opened = openLogFile(`${head.join('\n').replace(/,$/u, '')}\n}`);
      if ('refusals' in opened) return opened;
      log = opened.log;
      continue;
    }
    letters += line.length + 1;
    // what is longer is refused by its length below
    if (letters <= MOST_LETTERS) head.push(line);
  }
  if (log) return { log, leftOut };
  if (letters > MOST_LETTERS) return { refusals: [tooLong(letters)] };
  const opened = openLogFile(head.join('\n'));
  if ('refusals' in opened) return opened;
  for (const [id, photo] of opened.photos) await keep(id, photo);
  return { log: opened.log, leftOut: opened.leftOut };
}

async function keepPhoto(
  line: string,
  keep: (id: string, photo: Photo) => Promise<void>,
): Promise<readonly Refusal[]> {
  const read = readJson(`{${line.replace(/,$/u, '')}}`);
  if (!('value' in read)) return [lostPhoto('photos', 'a photo that breaks off', 'A photo')];
  const { photos, leftOut } = photosIn(read.value);
  for (const [id, photo] of photos) await keep(id, photo);
  return leftOut;
}

/** Lines without their ends; a line may come in many chunks. */
async function* linesIn(chunks: AsyncIterable<string>): AsyncGenerator<string> {
  let begun: string[] = [];
  for await (const chunk of chunks) {
    const [first, ...others] = chunk.split('\n');
    begun.push(first);
    for (const other of others) {
      yield begun.join('').replace(/\r$/u, '');
      begun = [other];
    }
  }
  const last = begun.join('');
  if (last !== '') yield last;
}

function tooLong(letters: number): Refusal {
  return {
    where: 'the file',
    found: `${letters} letters in another form than Seambench saves`,
    allowed: 'a log as Seambench saves it, in JSON',
    cure: 'This file is too long to be read at once: choose the one that Seambench has saved, as it was saved',
  };
}
