/** The model on one screen: a day is the rules below, in this order. */
import { act } from './act';
import { nucleate, revert, zip } from './fate';
import { lap } from './lap';
import type { Layout } from './layout';
import { keysOf } from './noise';
import { slownessOf } from './polyps';
import { growDay, paceOf, type Pace } from './rim';
import { setPieces } from './set';
import type { State } from './state';
import { turnOver, TURNOVER_DAYS } from './turnover';
import { wakeAll } from './wake-all';

/**
 * Grows a layout. Yields the tile as set (day 0), then the same State object after each day, so that the caller sets
 * the pace and reads what it wants. (layout, seed) decides every bit.
 */
export function grow(layout: Layout, seed: string): Generator<State, void> {
  const state = setPieces(layout, seed);
  doSteps(state, 0);
  return daysOf(state);
}

/** Grows a kept tile on, which is changed. Yields it as it stands, then after each day. */
export function growOn(state: State): Generator<State, void> {
  return daysOf(state);
}

/** The word by which one future of a past is drawn: the day belongs to who it is. */
export function futureSeed(seed: string, fromDay: number, word: string): string {
  return `${seed} from day ${fromDay}: ${word}`;
}

/**
 * Draws the noise of all that is to come anew: the tile as it stands keeps what it is, and every polyp born from now on,
 * every verdict and every change falls out by `seed`. Odds from today are odds over such futures.
 */
export function redraw(state: State, seed: string): void {
  const { polyps, layout } = state;
  state.keys = keysOf(seed);
  for (let p = 0; p < polyps.variety.length; p++)
    if (polyps.variety[p] === 0)
      polyps.slowness[p] = slownessOf(polyps.site[p], polyps.generation[p], layout, state.keys);
  wakeAll(state);
}

/** On its own, so that a run does not hold on to the layout's grids. */
function* daysOf(state: State): Generator<State, void> {
  const pace = paceOf(state);
  yield state;
  while (state.day < state.layout.days) {
    growOneDay(state, pace);
    yield state;
  }
}

function growOneDay(state: State, pace: Pace): void {
  const now = state.day + 1;
  doSteps(state, now);
  growDay(state, pace);
  afterGrowth(state, now);
  state.day = now;
}

/** Steps of the day, before it grows. */
export function doSteps(state: State, now: number): void {
  for (const cut of state.layout.cuts) if (cut.day === now) act(state, cut, now);
}

/** What follows growth each day: verdicts run on before new ones fall, else domains come out too short. */
export function afterGrowth(state: State, now: number): void {
  zip(state, now);
  nucleate(state, now);
  revert(state, now);
  lap(state);
  if (now % TURNOVER_DAYS === 0) turnOver(state);
}
