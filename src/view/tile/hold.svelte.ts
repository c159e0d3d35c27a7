/** What lives on the tile only while a hand is on it: where the camera looks, ghost, drawn line, ruler, crosshair. */
import type { Piece, Xy } from '../../plan/plan';
import type { Desk } from '../desk.svelte';
import { fitCamera, panBy, toMm, toPx, zoomAbout } from './camera';
import type { Camera, Size } from './camera';
import type { GapLine } from './gap';
import { stampPiece } from './stamp';

export class Hold {
  readonly #desk: Desk;
  /** Null while the whole tile is fitted, whatever the size of the canvas. */
  #camera = $state.raw<Camera | null>(null);
  size = $state.raw<Size>({ width: 560, height: 560 });

  /** Where the pointer or the crosshair would set a piece. */
  ghostAt = $state.raw<Xy | null>(null);
  /** Corners of the outline that is being drawn. */
  sketch = $state.raw<readonly Xy[]>([]);
  ruler = $state.raw<{ readonly from: Xy; readonly to: Xy } | null>(null);
  /** A gap that a dragged piece has snapped to. */
  gap = $state.raw<GapLine | null>(null);
  /** The keyboard's place on the tile, shown while keys move it. */
  cross = $state.raw<Xy | null>(null);
  /** Why the last try with a piece was refused; gone with the next one. */
  refused = $state.raw<{ readonly words: string; readonly at: Xy } | null>(null);
  /** Said once by a screen reader. */
  said = $state('');

  readonly camera: Camera = $derived.by(() => this.#camera ?? fitCamera(this.size, this.#desk.shown.tile));
  readonly ghost: Piece | null = $derived.by(() =>
    this.ghostAt !== null && this.#desk.tool === 'set' && this.#desk.stamp.variety !== ''
      ? stampPiece(this.#desk.plan, this.#desk.stamp, this.ghostAt)
      : null,
  );

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  mm(px: Xy): Xy {
    return toMm(this.camera, this.size, px[0], px[1]);
  }

  px(mm: Xy): Xy {
    return toPx(this.camera, this.size, mm);
  }

  zoom(factor: number, about?: Xy): void {
    const [x, y] = about ?? [this.size.width / 2, this.size.height / 2];
    this.#camera = zoomAbout(this.camera, this.size, this.#desk.shown.tile, x, y, factor);
  }

  pan(dxPx: number, dyPx: number): void {
    this.#camera = panBy(this.camera, this.#desk.shown.tile, dxPx, dyPx);
  }

  fit(): void {
    this.#camera = null;
  }

  /** Says at a place of the tile why something was not done there, so that nobody else need say it. */
  refuse(words: string, at: Xy): void {
    this.refused = { words, at };
    this.said = words;
    this.#desk.refused = [];
  }

  /** Leaves what was begun. True if there was something to leave. */
  leave(): boolean {
    const had = this.sketch.length > 0 || this.ruler !== null || this.refused !== null;
    this.sketch = [];
    this.ruler = null;
    this.gap = null;
    this.refused = null;
    return had;
  }
}
