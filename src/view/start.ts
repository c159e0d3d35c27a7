/** Sets the desk up, asks for the first run, then puts the page together. */
import { mount } from 'svelte';
import { PRESETS } from '../plan/presets';
import App from './App.svelte';
import { Workbench } from './bench/workbench.svelte';
import { Desk } from './desk.svelte';
import { savePlan } from './files';
import { Growth } from './growth.svelte';
import { Keeping } from './keeping.svelte';
import { Notices } from './notices.svelte';
import { showOpening } from './opening';
import { Player } from './player.svelte';
import { showsPlan, viewIn } from './views';

export async function start(): Promise<void> {
  const target = document.querySelector('#app');
  if (target === null) throw new Error('index.html has no #app');
  const desk = new Desk(PRESETS[0].plan);
  const notices = new Notices();
  const save = (): void => savePlan(desk.plan, desk.seed);
  const workbench = new Workbench(desk);
  const keeping = new Keeping(desk, workbench, notices, save);
  const growth = new Growth(desk, notices, save);
  const player = new Player(desk);

  const isStill = matchMedia('(prefers-reduced-motion: reduce)').matches;
  const opening = showOpening(desk, player, isStill);
  const isShown = showsPlan(viewIn(location.hash));
  // what a first visit sees grows already while the store is asked; another plan takes its place
  if (isShown) growth.begin();
  // The store answers within milliseconds; the page waits for it so that nothing is shown and then replaced.
  const kept = await keeping.start();
  if (kept) {
    player.pause();
    desk.restore(kept.plan, kept.seed, kept.month);
    if (kept.rest) workbench.restore(kept.rest.tiles, kept.rest.at);
    if (isShown) growth.begin();
  }
  mount(App, {
    target,
    props: { desk, workbench, notices, keeping, growth, player, opening: kept ? null : opening },
  });
}
