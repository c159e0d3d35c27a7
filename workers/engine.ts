/**
 * Grows one plan at a time: days in slices of 20 ms, months measure by measure, so that a cancel is heard within
 * 100 ms on the largest tile. The newest ask wins; frames leave month by month.
 */
import { releaseProxy, transfer, type ProxyMarked, type Remote } from 'comlink';
import { readBySteps } from '../src/measure/read';
import { MODEL_VERSION } from '../src/model/defaults';
import { frameBySteps, polypSites, type Frame } from '../src/model/frame';
import { arraysOf } from '../src/model/layers';
import { grow, growOn } from '../src/model/grow';
import { compile } from '../src/plan/compile';
import { dayOfMonth } from '../src/units/quantity';
import { cutOut } from './cut-out';
import { breathe } from './pace';
import { Past } from './past';
import type { Reading } from '../src/measure/reading';
import type { EngineWorker, GrowAsk, Sink } from './protocol';

const SLICE_MS = 20;
const ALIVE_MS = 250;
/** Frames that the page has not yet answered for; more would pile up megabytes. */
const UNANSWERED = 2;

export function makeEngine(): EngineWorker {
  let wanted = 0;
  const past = new Past();

  async function run(ask: GrowAsk, sink: Remote<Sink>): Promise<'whole' | 'cancelled'> {
    const { id, plan, seed } = ask;
    const underway = new Set<Promise<void>>();
    const ids = ['', ...plan.varieties.map((variety) => variety.id)];
    let month = ask.from ?? 0;
    let sliceStart = performance.now();
    let lastAlive = 0;

    /** Lets messages in. False once another run is wanted, or none. */
    async function turn(day: number): Promise<boolean> {
      if (performance.now() - lastAlive > ALIVE_MS) {
        lastAlive = performance.now();
        void sink.alive(id, day);
      }
      await breathe();
      sliceStart = performance.now();
      return wanted === id;
    }

    /** Works a step at a time, and lets messages in before each. */
    async function whole<T>(steps: Generator<undefined, T>, day: number): Promise<T | 'cancelled'> {
      for (;;) {
        if (!(await turn(day))) return 'cancelled';
        const step = steps.next();
        if (step.done) return step.value;
      }
    }

    const layout = compile(plan, ask.cellMm);
    const kept = month > 0 ? past.find(ask, layout, dayOfMonth(month)) : null;
    for (const state of kept ? growOn(kept) : grow(layout, seed)) {
      if (state.day === 0 && month === 0 && ask.frames) await sink.polyps(id, polypSites(state));
      // runs without frames are many and short: they would drive out what is worth keeping
      if (ask.frames) past.keep(ask, state);
      if (state.day === dayOfMonth(month)) {
        const frame = ask.frames ? await whole(frameBySteps(state, month), state.day) : null;
        const reading = await whole(readBySteps(state, ids, seed, month), state.day);
        if (frame === 'cancelled' || reading === 'cancelled') return 'cancelled';
        const sent = send(sink, id, frame, reading);
        underway.add(sent);
        void sent.finally(() => underway.delete(sent));
        if (month === ask.month) await sent;
        else if (underway.size >= UNANSWERED) await Promise.race(underway);
        if (++month > plan.months) break;
      }
      if (performance.now() - sliceStart >= SLICE_MS && !(await turn(state.day))) return 'cancelled';
    }
    await Promise.all(underway);
    return wanted === id ? 'whole' : 'cancelled';
  }

  return {
    ready: () => Promise.resolve({ model: MODEL_VERSION }),
    async grow(ask: GrowAsk, sink: Sink & ProxyMarked) {
      // On this side of the channel a proxied argument is comlink's remote; its types say so only to the caller.
      const remote = sink as unknown as Remote<Sink> & { [releaseProxy]: () => void };
      wanted = ask.id;
      try {
        return await run(ask, remote);
      } finally {
        remote[releaseProxy]();
      }
    },
    cutOut: (ask) => Promise.resolve(cutOut(past, ask, ask.step)),
    cancel(id: number) {
      if (wanted === id) wanted = 0;
    },
  };
}

async function send(sink: Remote<Sink>, id: number, frame: Frame | null, reading: Reading): Promise<void> {
  const buffers = frame ? arraysOf(frame).map((array) => array.buffer) : [];
  await sink.month(id, frame && transfer(frame, buffers), reading);
}
