/** The log with its photos, to and from one file. */
import { logFileText, type Photo } from '../../trials/log-file';
import type { Log } from '../../trials/trial';
import { download, fileName } from '../files';
import type { Photos } from './photos';

export async function saveLog(log: Log, photos: Photos): Promise<void> {
  const ids = log.trials.flatMap(({ readings }) =>
    readings.flatMap(({ photo }) => (photo === undefined ? [] : [photo])),
  );
  const held = new Map<string, Photo>();
  for (const id of ids) {
    const blob = await photos.read(id);
    if (blob) held.set(id, { type: blob.type, bytes: new Uint8Array(await blob.arrayBuffer()) });
  }
  download(`${fileName(log.name, 'trials')}.log.json`, logFileText(log, held));
}
