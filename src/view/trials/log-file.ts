/** The log with its photos, to and from one file; one photo at a time, for those of years are longer than a text can be. */
import type { Photo } from '../../trials/log-file';
import { logFileParts, openLogStream, type OpenedStream } from '../../trials/log-stream';
import type { Log } from '../../trials/trial';
import { downloadBlob, fileName } from '../files';
import type { Photos } from './photos';

export async function saveLog(log: Log, photos: Photos): Promise<void> {
  const parts: Blob[] = [];
  // as blobs the browser may keep them on the disk
  for await (const part of logFileParts(log, photosOf(log, photos))) parts.push(new Blob([part]));
  downloadBlob(`${fileName(log.name, 'trials')}.log.json`, new Blob(parts, { type: 'application/json' }));
}

async function* photosOf(log: Log, photos: Photos): AsyncGenerator<readonly [string, Photo]> {
  const ids = log.trials.flatMap(({ readings }) => readings.flatMap(({ photo }) => photo ?? []));
  for (const id of new Set(ids)) {
    const blob = await photos.read(id);
    if (blob) yield [id, { type: blob.type, bytes: new Uint8Array(await blob.arrayBuffer()) }];
  }
}

/** `isStored` is false where a photo is in this page only, because the browser's storage took it not. */
export async function openLog(
  file: File,
  photos: Photos,
): Promise<OpenedStream & { readonly isStored: boolean }> {
  let isStored = true;
  const opened = await openLogStream(textOf(file), async (id, { type, bytes }) => {
    isStored = (await photos.put(id, new Blob([bytes], { type }))) && isStored;
  });
  return { ...opened, isStored };
}

async function* textOf(file: File): AsyncGenerator<string> {
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  for (let part = await reader.read(); !part.done; part = await reader.read()) yield part.value;
}
