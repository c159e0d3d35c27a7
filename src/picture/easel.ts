/**
 * A picture and the scene on it. While scenes follow fast on each other and drawing is slow (graphics by software), it
 * is drawn with fewer pixels from fewer cells, so that the movement stays smooth, and sharp again once it rests.
 */
import type { Frame } from '../model/frame';
import type { Picture } from './picture';
import type { Grown, Scene } from './scene';

const MOVING_MS = 180;
/** What one drawing may take while things move: 30 a second, and time to fill the next month. */
const MOVING_DRAW_MS = 20;
const LEAST_SHARPNESS = 0.35;

type Brush = Pick<Picture, 'show' | 'resize' | 'look' | 'draw' | 'addGrain' | 'destroy'>;

export class Easel {
  readonly #picture: Brush;
  readonly #onScreen: () => Promise<void>;
  #scene: Scene | null = null;
  #grown: Grown = { frame: null, sites: null };
  #lastDrawn = -Infinity;
  /** What a drawing with all pixels takes until it is on screen, measured. */
  #sharpMs = 0;
  #hasGrain = false;
  #isClosed = false;
  #rest: ReturnType<typeof setTimeout> | undefined;

  /** `onScreen` settles once what was drawn has left for the screen. */
  constructor(picture: Brush, onScreen: () => Promise<void>) {
    this.#picture = picture;
    this.#onScreen = onScreen;
  }

  /** What was shown last. */
  get frame(): Frame | null {
    return this.#grown.frame;
  }

  /** Left out, `grown` stays what it was. Settles once it is on screen. */
  async show(scene: Scene, grown: Grown = this.#grown): Promise<void> {
    // since the last one was done, not asked for: a slow drawing must not pass for a pause
    const isMoving = performance.now() - this.#lastDrawn < MOVING_MS;
    this.#scene = scene;
    this.#grown = grown;
    clearTimeout(this.#rest);
    const isCoarse = isMoving && this.#sharpMs > MOVING_DRAW_MS;
    await this.#draw(isCoarse ? Math.max(LEAST_SHARPNESS, Math.sqrt(MOVING_DRAW_MS / this.#sharpMs)) : 1);
    if (isCoarse || !this.#hasGrain)
      this.#rest = setTimeout(() => void this.redraw(), isCoarse ? MOVING_MS : 0);
  }

  /** The scene once more, with all pixels and all grain. */
  async redraw(): Promise<void> {
    if (this.#isClosed) return;
    if (!this.#hasGrain) this.#picture.addGrain();
    this.#hasGrain = true;
    await this.#draw(1);
  }

  close(): void {
    this.#isClosed = true;
    clearTimeout(this.#rest);
    this.#picture.destroy();
  }

  async #draw(sharpness: number): Promise<void> {
    if (!this.#scene || this.#isClosed) return;
    const { widthPx, heightPx, pixelRatio, camera, tile, varieties, lightDeg } = this.#scene;
    const start = performance.now();
    // the first picture too is made from fewer cells, so that it is there sooner; the sharp one follows at once
    this.#picture.show(this.#grown, tile, varieties, lightDeg, sharpness < 1 || !this.#hasGrain);
    this.#picture.resize(widthPx, heightPx, pixelRatio * sharpness);
    this.#picture.look(camera);
    this.#picture.draw();
    await this.#onScreen();
    this.#lastDrawn = performance.now();
    if (sharpness === 1) this.#sharpMs = this.#lastDrawn - start;
  }
}
