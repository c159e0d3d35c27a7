/** The log of this browser, opened once at the first visit of Trials: it and its undo outlast a look at another view. */
import { Autosave } from '../../keep/autosave';
import { openDrawer } from '../../keep/database';
import { LOG_KIND, type LogRecord, type LogWork } from '../../keep/log-record';
import type { Notices } from '../notices.svelte';
import { storeTrouble } from '../store-trouble';
import { Logbook } from './logbook.svelte';
import { Photos } from './photos';
import { saveLog } from './log-file';

export interface OpenLog {
  readonly logbook: Logbook;
  readonly photos: Photos;
}

let opened: Promise<OpenLog> | null = null;

export function openLogbook(notices: Notices): Promise<OpenLog> {
  opened ??= opening(notices);
  return opened;
}

async function opening(notices: Notices): Promise<OpenLog> {
  const photos = new Photos();
  const logbook = new Logbook((work) => autosave.note(work));
  const tell = storeTrouble<LogWork, LogRecord>(
    notices,
    {
      called: 'log of trials',
      save: { label: 'Save the log', act: () => void saveLog(logbook.log, photos) },
      otherName: ({ log }) => log.name,
      open: ({ log }) => logbook.do({ log, words: `Open ${log.name}` }),
    },
    () => autosave,
  );
  const autosave: Autosave<LogWork, LogRecord> = new Autosave(
    () => openDrawer('log'),
    LOG_KIND,
    tell,
    navigator.locks,
  );
  const kept = await autosave.start();
  if (kept) {
    logbook.restore(kept);
    if (autosave.isSoleWriter) await photos.sweep(kept);
  }
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) void autosave.flush();
  });
  return { logbook, photos };
}
