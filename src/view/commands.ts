/** What a person can do from a button or a key: one row each, read by buttons, keys and the help list. */
import { deletePieces } from '../plan/edit';
import type { Desk } from './desk.svelte';
import type { Player } from './player.svelte';
import { showsPlan, type View } from './views';

export interface Command {
  readonly label: string;
  /** As the help list prints it. */
  readonly keys: string;
  readonly words: string;
  readonly matches: (event: KeyboardEvent) => boolean;
  /** False leaves the key to whoever else wants it. */
  readonly can: () => boolean;
  readonly act: () => void;
  /** Its key works in this view only, or where the plan is shown; left out: everywhere. */
  readonly only?: View | 'plan';
}

export type CommandName =
  | 'undo'
  | 'redo'
  | 'save'
  | 'open'
  | 'play'
  | 'monthBack'
  | 'monthOn'
  | 'seams'
  | 'pieces'
  | 'section'
  | 'remove'
  | 'leave'
  | 'help';

export type Commands = Readonly<Record<CommandName, Command>>;

export interface Doors {
  readonly save: () => void;
  readonly open: () => void;
  readonly help: () => void;
}

const plain = (event: KeyboardEvent): boolean => !event.ctrlKey && !event.metaKey && !event.altKey;
const withCtrl = (event: KeyboardEvent): boolean => (event.ctrlKey || event.metaKey) && !event.altKey;
const key = (letter: string) => (event: KeyboardEvent) => plain(event) && event.key.toLowerCase() === letter;

export function commandsOf(desk: Desk, player: Player, doors: Doors): Commands {
  const always = (): boolean => true;
  return {
    undo: {
      only: 'plan',
      label: 'Undo',
      keys: 'Ctrl+Z',
      words: 'Takes back the last change of the plan.',
      matches: (event) => withCtrl(event) && !event.shiftKey && event.key.toLowerCase() === 'z',
      can: () => desk.undoWords !== null || desk.previewing,
      act: () => desk.undo(),
    },
    redo: {
      only: 'plan',
      label: 'Redo',
      keys: 'Ctrl+Shift+Z or Ctrl+Y',
      words: 'Makes again the change that was taken back.',
      matches: (event) =>
        withCtrl(event) &&
        ((event.shiftKey && event.key.toLowerCase() === 'z') || event.key.toLowerCase() === 'y'),
      can: () => desk.redoWords !== null,
      act: () => desk.redo(),
    },
    save: {
      only: 'plan',
      label: 'Save',
      keys: 'Ctrl+S',
      words: 'Saves the plan as a file on your disk.',
      matches: (event) => withCtrl(event) && event.key.toLowerCase() === 's',
      can: always,
      act: doors.save,
    },
    open: {
      only: 'plan',
      label: 'Open',
      keys: 'Ctrl+O',
      words: 'Opens a plan file from your disk; Undo brings this plan back.',
      matches: (event) => withCtrl(event) && event.key.toLowerCase() === 'o',
      can: always,
      act: doors.open,
    },
    play: {
      only: 'grow',
      label: 'Play',
      keys: 'Space',
      words: 'Plays the months one after another, or stops.',
      matches: (event) => plain(event) && event.key === ' ',
      can: always,
      act: () => player.toggle(),
    },
    monthBack: {
      only: 'grow',
      label: 'One month back',
      keys: 'Page Up',
      words: 'Shows the month before.',
      matches: (event) => plain(event) && event.key === 'PageUp',
      can: () => desk.month > 0,
      act: () => player.step(-1),
    },
    monthOn: {
      only: 'grow',
      label: 'One month on',
      keys: 'Page Down',
      words: 'Shows the next month.',
      matches: (event) => plain(event) && event.key === 'PageDown',
      can: () => desk.month < desk.shown.months,
      act: () => player.step(1),
    },
    seams: {
      only: 'grow',
      label: 'Seams',
      keys: 'S',
      words: 'Draws each seam by what became of it: fused, ridge, lapped, dead or undecided.',
      matches: key('s'),
      can: always,
      act: () => (desk.seams = !desk.seams),
    },
    pieces: {
      only: 'grow',
      label: 'Pieces',
      keys: 'P',
      words: 'Draws the outlines of the pieces as they were set on day 0.',
      matches: key('p'),
      can: always,
      act: () => (desk.outlines = !desk.outlines),
    },
    section: {
      only: 'grow',
      label: 'Section',
      keys: 'X',
      words: 'Takes the section tool in hand, or puts it down.',
      matches: key('x'),
      can: always,
      act: () => (desk.tool = desk.tool === 'section' ? 'choose' : 'section'),
    },
    remove: {
      only: 'grow',
      label: 'Delete',
      keys: 'Delete',
      words: 'Takes the chosen pieces off the tile.',
      matches: (event) => plain(event) && (event.key === 'Delete' || event.key === 'Backspace'),
      can: () => desk.selection.length > 0,
      act: () => desk.do(deletePieces(desk.plan, desk.selection)),
    },
    leave: {
      only: 'grow',
      label: 'Leave',
      keys: 'Escape',
      words: 'Drops what is being dragged, then the tool, then the choice of pieces, then that of a step.',
      matches: (event) => event.key === 'Escape',
      can: () => desk.previewing || desk.tool !== 'choose' || desk.selection.length > 0 || desk.step !== null,
      act: () => leave(desk),
    },
    help: {
      label: 'Keys',
      keys: '?',
      words: 'Lists every key.',
      matches: (event) => plain(event) && event.key === '?',
      can: always,
      act: doors.help,
    },
  };
}

function leave(desk: Desk): void {
  if (desk.previewing) desk.drop();
  else if (desk.tool !== 'choose') desk.tool = 'choose';
  else if (desk.selection.length > 0) desk.select([]);
  else desk.step = null;
}

/** Keys that a control in focus wants for itself. */
function wantsKey(target: EventTarget | null, event: KeyboardEvent): boolean {
  if (!(target instanceof Element)) return false;
  if (target.closest('input, textarea, select, [contenteditable]')) {
    // A field knows its own undo only while it is being typed in; Save and Open work everywhere.
    return !(withCtrl(event) && ['s', 'o'].includes(event.key.toLowerCase()));
  }
  if (target.closest('dialog')) return true;
  return event.key === ' ' && target.closest('button, a, summary, [role=slider]') !== null;
}

/** Runs the first command that the key stands for. */
export function pressed(event: KeyboardEvent, commands: Readonly<Record<string, Command>>, view: View): void {
  if (event.defaultPrevented || wantsKey(event.target, event)) return;
  const command = Object.values(commands).find(
    ({ only = view, matches, can }) =>
      (only === 'plan' ? showsPlan(view) : only === view) && matches(event) && can(),
  );
  if (!command) return;
  event.preventDefault();
  command.act();
}
