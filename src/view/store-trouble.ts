/** What the person is told when work cannot be stored, or when other work is stored; the same for the plan and the log. */
import type { Autosave, Trouble } from '../keep/autosave';
import { download } from './files';
import type { Cure, Notices } from './notices.svelte';

export interface KeptThing<Work> {
  /** In words: 'plan', 'log of trials'. */
  readonly called: string;
  readonly save: Cure;
  /** What stands in the store as well: its name, and how it is opened. */
  readonly otherName: (work: Work) => string;
  readonly open: (work: Work) => void;
}

/** `takeOver` is asked when it is needed: the store is being made when this is. */
export function storeTrouble<Work extends object, Stored>(
  notices: Notices,
  { called, save, otherName, open }: KeptThing<Work>,
  autosave: () => Autosave<Work, Stored>,
): (trouble: Trouble<Work>) => void {
  const [store, tabs, other, aside] = ['store', 'tabs', 'other-work', 'aside'].map((id) => `${id} ${called}`);
  return (trouble) => {
    switch (trouble.kind) {
      case 'full':
        notices.tell({
          id: store,
          words: `The browser’s storage is full, so changes of the ${called} are kept in this page only. Save it as a file; we try again every 10 seconds.`,
          cures: [save],
          stays: true,
        });
        break;
      case 'blocked':
        notices.tell({
          id: store,
          words: `The browser does not let this page store anything, so changes of the ${called} are lost when it closes. Save it as a file.`,
          cures: [save],
          stays: true,
        });
        break;
      case 'saved-again':
        notices.tell({ id: store, words: `Changes of the ${called} are stored again.` });
        break;
      case 'other-tab':
        notices.tell({
          id: tabs,
          words: `Another tab of Seambench is storing the ${called}. Changes here are not stored unless you take over.`,
          cures: [{ label: 'Take over', act: () => void autosave().takeOver() }],
          stays: true,
        });
        break;
      case 'writer':
        notices.drop(tabs);
        break;
      case 'other-work': {
        const { work } = trouble;
        notices.tell({
          id: other,
          words: `This browser also holds “${otherName(work)}”, stored by another tab or an earlier visit. Open it to go on with it; Undo brings this ${called} back.`,
          cures: [
            {
              label: 'Open it',
              act: () => {
                notices.drop(other);
                open(work);
              },
            },
          ],
          stays: true,
        });
        break;
      }
      case 'aside': {
        const text = JSON.stringify(trouble.aside.record, null, 2);
        notices.tell({
          id: aside,
          words: `The ${called} of your last visit could not be read (${trouble.aside.why}). It is kept untouched.`,
          cures: [{ label: 'Download it', act: () => download('seambench-set-aside.json', text) }],
          stays: true,
        });
      }
    }
  };
}
