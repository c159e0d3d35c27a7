/**
 * A picture and the scene on it. While scenes follow fast on each other and drawing is slow (graphics by software), it
 * is drawn with fewer pixels, so that the movement stays smooth, and sharp again once it rests.
 */
import type { Picture } from './picture';
import type { Grown, Scene } from './scene';

const MOVING_MS = 180;
/** What one drawing may take while things move: 30 a second, and time to fill the next month. */
const MOVING_DRAW_MS = 14;
const LEAST_SHARPNESS = 0.35;

type Drawn = Pick<Picture, 'turnLight' | 'show' | 'resize' | 'look' | 'draw' | 'destroy'>;

export class Easel {
  readonly #picture: Drawn;
  #scene: Scene | null = null;
  #grown: Grown = { frame: null, sites: null };
  #lastDrawn = -Infinity;
  /** What a drawing with all pixels takes, measured. */
  #sharpMs = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(picture: Drawn) {
    this.#picture = picture;
  }

  /** Left out, `grown` stays what it was. */
  show(scene: Scene, grown: Grown = this.#grown): void {
    // since the last one was done, not asked for: a slow drawing must not pass for a pause
    const isMoving = performance.now() - this.#lastDrawn < MOVING_MS;
    this.#scene = scene;
    this.#grown = grown;
    this.#picture.turnLight(scene.lightDeg);
    this.#picture.show(grown.frame, grown.sites, scene.tile, scene.varieties);
    clearTimeout(this.#rest);
    if (isMoving && this.#sharpMs > MOVING_DRAW_MS) {
      this.#draw(Math.max(LEAST_SHARPNESS, Math.sqrt(MOVING_DRAW_MS / this.#sharpMs)));
      this.#rest = setTimeout(() => this.redraw(), MOVING_MS);
    } else {
      this.redraw();
    }
  }

  /** The scene once more, with all pixels. */
  redraw(): void {
    const start = performance.now();
    this.#draw(1);
    this.#sharpMs = performance.now() - start;
  }

  close(): void {
    clearTimeout(this.#rest);
    this.#picture.destroy();
  }

  #draw(sharpness: number): void {
    if (!this.#scene) return;
    const { widthPx, heightPx, pixelRatio, camera } = this.#scene;
    this.#picture.resize(widthPx, heightPx, pixelRatio * sharpness);
    this.#picture.look(camera);
    this.#picture.draw();
    this.#lastDrawn = performance.now();
  }
}
