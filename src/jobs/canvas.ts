/**
 * The page's end of a canvas that a worker draws on. One scene is on its way at a time and the newest waits, so that
 * a drawing that takes long makes the picture coarser in time and never the page slow. The first canvas is begun before
 * the page's program is loaded: graphics start and the shader compiles meanwhile.
 */
import { proxy, transfer, wrap } from 'comlink';
import type { EaselWorker } from '../../workers/protocol';
import type { Frame } from '../model/frame';
import type { Drawn, Grown, Scene } from '../picture/scene';
import type { SeamLine } from '../skin/seam-trace';
import { lineTo } from './line';

/** no-graphics: this browser draws nothing in workers. stopped: the worker died; another canvas starts another. */
export type CanvasNews = 'lost' | 'restored' | 'no-graphics' | 'stopped';

interface Wanted {
  readonly scene: Scene;
  readonly grown: Grown;
}

let easels: EaselWorker | null = null;
let count = 0;
const canvases = new Set<Canvas>();

function startEasels(): EaselWorker {
  if (easels) return easels;
  const line = lineTo(
    new Worker(new URL('../../workers/easel.worker.ts', import.meta.url), { type: 'module' }),
  );
  line.onFault(() => {
    line.end();
    easels = null;
    for (const canvas of canvases) canvas.tell('stopped');
  });
  easels = wrap<EaselWorker>(line.endpoint);
  return easels;
}

export class Canvas {
  readonly element: HTMLCanvasElement;
  readonly #id = ++count;
  /** None where no worker can be made. */
  #easels: EaselWorker | null = null;
  readonly #open: Promise<boolean>;
  #hear: ((news: CanvasNews) => void) | null = null;
  #drawn: (drawn: Drawn) => void = () => undefined;
  /** Of frames that were on it before: scrubbing back traces nothing anew. */
  readonly #seams = new WeakMap<Frame, readonly SeamLine[]>();
  #early: CanvasNews | null = null;
  #sent: Grown | null = null;
  #next: Wanted | null = null;
  #isBusy = false;

  constructor(start: () => EaselWorker = startEasels, element = document.createElement('canvas')) {
    this.element = element;
    this.element.setAttribute('aria-hidden', 'true');
    canvases.add(this);
    this.#open = this.#opened(start);
  }

  /** Who shows the canvas; what came before is told at once. `drawn` hears what now stands on it. */
  follow(hear: (news: CanvasNews) => void, drawn: (drawn: Drawn) => void): void {
    this.#hear = hear;
    this.#drawn = drawn;
    if (this.#early !== null) hear(this.#early);
  }

  tell(news: CanvasNews): void {
    if (this.#hear) this.#hear(news);
    else this.#early = news;
  }

  show(scene: Scene, grown: Grown): void {
    this.#next = { scene, grown };
    if (!this.#isBusy) void this.#send();
  }

  close(): void {
    canvases.delete(this);
    this.#next = null;
    this.#hear = () => undefined;
    this.#drawn = () => undefined;
    this.element.remove();
    void this.#easels?.close(this.#id);
  }

  async #opened(start: () => EaselWorker): Promise<boolean> {
    try {
      this.#easels = start();
      const canvas = this.element.transferControlToOffscreen();
      await this.#easels.open(
        this.#id,
        transfer(canvas, [canvas]),
        proxy((news: CanvasNews) => this.tell(news)),
      );
      return true;
    } catch {
      this.tell('no-graphics');
      return false;
    }
  }

  async #send(): Promise<void> {
    this.#isBusy = true;
    try {
      const easels = (await this.#open) ? this.#easels : null;
      if (!easels) return;
      while (this.#next) {
        const { scene, grown } = this.#next;
        this.#next = null;
        const isSame = grown.frame === this.#sent?.frame && grown.sites === this.#sent.sites;
        this.#sent = grown;
        if (isSame) await easels.show(this.#id, scene);
        else this.#drawn({ frame: grown.frame, seams: await this.#showNew(easels, scene, grown) });
      }
    } catch {
      this.tell('stopped');
    } finally {
      this.#isBusy = false;
    }
  }

  async #showNew(easels: EaselWorker, scene: Scene, grown: Grown): Promise<readonly SeamLine[]> {
    await easels.show(this.#id, scene, grown);
    const { frame } = grown;
    if (frame === null) return [];
    const seams = this.#seams.get(frame) ?? (await easels.seams(this.#id));
    this.#seams.set(frame, seams);
    return seams;
  }
}

let waiting: Canvas | null = null;

/** Begins the canvas that the next takeCanvas gets. */
export function beginCanvas(): void {
  waiting = new Canvas();
}

export function takeCanvas(): Canvas {
  const canvas = waiting ?? new Canvas();
  waiting = null;
  return canvas;
}
