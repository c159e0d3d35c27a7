/**
 * The page's end of one engine worker: start, watch, cancel, restart.
 * A comlink call to a worker that has died never settles, so every call is raced with the worker's faults
 * and with a watch: a worker that neither answers nor says it is alive for 5 s counts as dead.
 */
import { proxy, wrap, type Endpoint, type Remote } from 'comlink';
import type { Reading } from '../measure/reading';
import type { Frame, PolypSites } from '../model/frame';
import type { GraftPiece } from '../plan/plan';
import type { CutOutAsk, EngineWorker, GrowAsk, Sink } from '../../workers/protocol';

/** One worker, or in tests one port, with a life that ends. */
export interface Line {
  readonly endpoint: Endpoint;
  /** A fault that came before anybody listened is told at once. */
  onFault(report: (reason: string) => void): void;
  end(): void;
}

export type Ended = 'whole' | 'cancelled' | 'failed';

export interface Fault {
  /** unavailable: no worker has ever answered here. */
  readonly kind: 'restarted' | 'stopped' | 'unavailable';
  readonly reason: string;
}

export interface Hearer {
  polyps(sites: PolypSites): void;
  /** May answer late for the month on screen, once it is drawn. */
  month(frame: Frame | null, reading: Reading): void | Promise<void>;
}

interface Watch {
  /** Quiet ticks in a row after which the worker counts as dead. */
  readonly quietTicks: number;
  readonly tickMs: number;
  /** A hidden page's worker may be held back by the browser: the watch rests. */
  readonly isHidden: () => boolean;
}

const PAGE_WATCH: Watch = { quietTicks: 10, tickMs: 500, isHidden: () => document.hidden };

export class Channel {
  readonly #open: () => Line;
  readonly #tell: (fault: Fault) => void;
  readonly #watch: Watch;
  #line: Line | null = null;
  #remote: Remote<EngineWorker> | null = null;
  #fault: (reason: string) => void = () => undefined;
  #faulted: Promise<string> = Promise.resolve('');
  #newest = 0;
  /** Ends the wait of the ask before; a dead worker would leave it waiting for ever. */
  #supersede: () => void = () => undefined;
  #quiet = 0;
  #everHeard = false;

  constructor(open: () => Line, tell: (fault: Fault) => void, watch: Watch = PAGE_WATCH) {
    this.#open = open;
    this.#tell = tell;
    this.#watch = watch;
  }

  /** The newest ask wins: an older one still running ends as 'cancelled' and nothing more is heard of it. */
  async grow(ask: Omit<GrowAsk, 'id'>, hearer: Hearer): Promise<Ended> {
    const first = await this.#ask(ask, hearer);
    if (typeof first === 'string') return first;
    this.#tell({ kind: 'restarted', reason: first.reason });
    const second = await this.#ask(ask, hearer);
    if (typeof second === 'string') return second;
    this.#tell({ kind: this.#everHeard ? 'stopped' : 'unavailable', reason: second.reason });
    return 'failed';
  }

  /** Null where nothing is cut out, or the engine fails: then its next run says so. */
  async cutOut(ask: CutOutAsk): Promise<GraftPiece | null> {
    try {
      return await Promise.race([this.#start().cutOut(ask), this.#faulted.then(() => null)]);
    } catch {
      return null;
    }
  }

  cancel(): void {
    const id = this.#newest++;
    this.#supersede();
    void this.#remote?.cancel(id);
  }

  close(): void {
    this.#newest++;
    this.#supersede();
    this.#endLine('closed');
  }

  async #ask(ask: Omit<GrowAsk, 'id'>, hearer: Hearer): Promise<Ended | { reason: string }> {
    const id = ++this.#newest;
    this.#supersede();
    const superseded = new Promise<'cancelled'>((resolve) => {
      this.#supersede = () => resolve('cancelled');
    });
    let timer: ReturnType<typeof setInterval> | undefined;
    try {
      const remote = this.#start();
      this.#quiet = 0;
      timer = setInterval(() => this.#tick(), this.#watch.tickMs);
      const answer = remote.grow({ ...ask, id }, proxy(this.#sink(id, hearer)));
      const faulted = this.#faulted.then((reason) => ({ reason }));
      const outcome = await Promise.race([superseded, answer, faulted]);
      return id === this.#newest ? outcome : 'cancelled';
    } catch (error) {
      // The engine threw (a bug by definition) or no worker could be made.
      if (id !== this.#newest) return 'cancelled';
      const reason = error instanceof Error ? error.message : String(error);
      this.#endLine(reason);
      return { reason };
    } finally {
      clearInterval(timer);
    }
  }

  #start(): Remote<EngineWorker> {
    if (this.#remote) return this.#remote;
    const line = this.#open();
    this.#faulted = new Promise((resolve) => {
      this.#fault = resolve;
    });
    line.onFault((reason) => {
      if (this.#line === line) this.#endLine(reason);
    });
    this.#line = line;
    this.#remote = wrap<EngineWorker>(line.endpoint);
    return this.#remote;
  }

  #endLine(reason: string): void {
    this.#line?.end();
    this.#line = null;
    this.#remote = null;
    this.#fault(reason);
  }

  #tick(): void {
    if (this.#watch.isHidden()) this.#quiet = 0;
    else if (++this.#quiet >= this.#watch.quietTicks) this.#endLine('the engine fell silent');
  }

  #sink(id: number, hearer: Hearer): Sink {
    const heard = (): boolean => {
      this.#quiet = 0;
      this.#everHeard = true;
      return id === this.#newest;
    };
    return {
      polyps: (_id, sites) => {
        if (heard()) hearer.polyps(sites);
      },
      month: (_id, frame, reading) => (heard() ? hearer.month(frame, reading) : undefined),
      alive: heard,
    };
  }
}
