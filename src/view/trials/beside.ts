/** Puts a tile's layout on the desk, with its readings beside the model's months. */
import { daysBetween, lastDay } from '../../trials/last-seen';
import { trialPlan } from '../../trials/trial-plan';
import type { Trial } from '../../trials/trial';
import { DAYS_PER_MONTH } from '../../units/quantity';
import type { Desk } from '../desk.svelte';
import type { Notices } from '../notices.svelte';
import type { Logbook } from './logbook.svelte';
import type { Photos } from './photos';

export function openBeside(
  desk: Desk,
  notices: Notices,
  logbook: Logbook,
  photos: Photos,
  trial: Trial,
): void {
  const opened = trialPlan(logbook.log, trial);
  if ('refusals' in opened) {
    const [{ cure }] = opened.refusals;
    notices.tell({ id: 'log-layout', words: `The layout of tile ${trial.tag} cannot be grown. ${cure}.` });
    return;
  }
  const month = Math.round(daysBetween(trial.setOn, lastDay(trial)) / DAYS_PER_MONTH);
  desk.open({ plan: opened.plan, words: `Open tile ${trial.tag}` }, month, opened.seed ?? desk.seed);
  desk.logged = { trial, nameOf: (id) => logbook.nameOf(id), photoUrl: (id) => photos.url(id) };
  location.hash = '#/grow';
}
