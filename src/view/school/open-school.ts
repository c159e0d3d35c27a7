/** What was learned in this browser, opened once at the first visit of School. */
import { Autosave, type Trouble } from '../../keep/autosave';
import { openDrawer } from '../../keep/database';
import { SCHOOL_KIND } from '../../keep/school-record';
import type { Progress } from '../../lessons/progress';
import { download } from '../files';
import type { Notices } from '../notices.svelte';
import { School } from './school.svelte';

let opened: Promise<School> | null = null;

export function openSchool(notices: Notices): Promise<School> {
  opened ??= opening(notices);
  return opened;
}

async function opening(notices: Notices): Promise<School> {
  const school = new School((progress) => autosave.note(progress));
  const autosave: Autosave<Progress, Progress> = new Autosave(
    () => openDrawer('school'),
    SCHOOL_KIND,
    (trouble) => {
      if (trouble.kind === 'other-work') school.join(trouble.work);
      else tellTrouble(trouble, notices, () => void autosave.takeOver());
    },
    navigator.locks,
  );
  const kept = await autosave.start();
  if (kept) school.restore(kept);
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) void autosave.flush();
  });
  return school;
}

type Told = Exclude<Trouble<Progress>, { readonly kind: 'other-work' }>;

function tellTrouble(trouble: Told, notices: Notices, takeOver: () => void): void {
  switch (trouble.kind) {
    case 'full':
    case 'blocked':
      notices.tell({
        id: 'school-store',
        words:
          trouble.kind === 'full'
            ? 'The browser’s storage is full, so what you do in School is remembered in this page only. We try again every 10 seconds.'
            : 'The browser does not let this page store anything: what you do in School is forgotten when it closes. Calls of a test can still be saved as a file.',
        stays: true,
      });
      break;
    case 'saved-again':
      notices.tell({ id: 'school-store', words: 'What you do in School is stored again.' });
      break;
    case 'other-tab':
      notices.tell({
        id: 'school-tabs',
        words:
          'Another tab of Seambench is storing what is learned in School. What you do here is not stored unless you take over.',
        cures: [{ label: 'Take over', act: takeOver }],
        stays: true,
      });
      break;
    case 'writer':
      notices.drop('school-tabs');
      break;
    case 'aside':
      notices.tell({
        id: 'school-aside',
        words: `What was kept of School could not be read (${trouble.aside.why}). It is kept untouched, and School starts anew.`,
        cures: [
          {
            label: 'Download it',
            act: () => download('seambench-set-aside.json', JSON.stringify(trouble.aside.record, null, 2)),
          },
        ],
        stays: true,
      });
  }
}
