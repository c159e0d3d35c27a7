/** What lives on the tile only while a hand is on it: where the camera looks, ghost, drawn line, ruler, crosshair. */
import { untrack } from 'svelte';
import { section, type Section } from '../../measure/section';
import type { Piece, Xy } from '../../plan/plan';
import { CUT_START, type CutSettings, type Proposal } from '../cut/cut-settings';
import { partsOf, type Part } from '../cut/parts';
import type { Desk } from '../desk.svelte';
import { fitCamera, panBy, toMm, toPx, within, zoomAbout } from './camera';
import type { Camera } from '../../picture/scene';
import type { Size } from './camera';
import type { GapLine } from './gap';
import { happened } from './happened';
import { acrossTile, onTile, type SectionLine } from './section-line';
import { stampPiece } from './stamp';

const REVEAL_PX = 24;
/** Room for rounding. */
const WHOLE = 1 + 1e-9;

/** Acts when what is read changes, and not at first. */
function onChange(read: () => unknown, act: () => void): void {
  let isFirst = true;
  $effect(() => {
    read();
    if (!isFirst) untrack(act);
    isFirst = false;
  });
}

export class Hold {
  readonly #desk: Desk;
  /** Null while the whole tile is fitted, whatever the size of the canvas. */
  #camera = $state.raw<Camera | null>(null);
  size = $state.raw<Size>({ width: 560, height: 560 });

  /** Where the pointer or the crosshair would set a piece. */
  ghostAt = $state.raw<Xy | null>(null);
  /** Corners of the outline that is being drawn. */
  sketch = $state.raw<readonly Xy[]>([]);
  /** How the cut line tool is set, and the patch that it would cut out. */
  cut = $state.raw<CutSettings>(CUT_START);
  proposal = $state.raw<Proposal | null>(null);
  /** What the last cut did not do. */
  cutNote = $state('');
  ruler = $state.raw<{ readonly from: Xy; readonly to: Xy } | null>(null);
  /** Where the tile is cut open; it waits while other tools are in hand. */
  sectionLine = $state.raw<SectionLine | null>(null);
  /** The end that keys move. */
  sectionEnd = $state<'from' | 'to'>('to');
  /** A gap that a dragged piece has snapped to. */
  gap = $state.raw<GapLine | null>(null);
  /** The keyboard's place on the tile, once keys have moved it. */
  cross = $state.raw<Xy | null>(null);
  /** The tile has the focus and keys were used last. */
  byKeys = $state(false);
  /** Why the last try with a piece was refused; gone with whatever is done next. */
  refused = $state.raw<{ readonly words: string; readonly at: Xy } | null>(null);
  /** Said once by a screen reader. */
  said = $state('');

  readonly #fit: Camera = $derived.by(() => fitCamera(this.size, this.#desk.shown.tile));
  readonly camera: Camera = $derived.by(() =>
    this.#camera ? within(this.#camera, this.size, this.#desk.shown.tile) : this.#fit,
  );
  /** The whole tile is in the frame, and can neither be moved nor shrunk there. */
  readonly isWhole: boolean = $derived.by(() => this.camera.pxPerMm < this.#fit.pxPerMm * WHOLE);
  readonly ghost: Piece | null = $derived.by(() =>
    this.ghostAt !== null && this.#desk.tool === 'set' && this.#desk.stamp.variety !== ''
      ? stampPiece(this.#desk.plan, this.#desk.stamp, this.ghostAt)
      : null,
  );

  /** What the chosen step sets somewhere. */
  readonly parts: readonly Part[] = $derived.by(() =>
    // a plan that is refused may have more parts than can be found in time
    this.#desk.refusals.length > 0 ? [] : partsOf(this.#desk.shown, this.#desk.step),
  );

  /** What the line cuts through at the month shown; null without the tool, a line or a tile grown so far. */
  readonly section: Section | null = $derived.by(() => {
    const { tool, frame } = this.#desk;
    const line = this.sectionLine;
    return tool === 'section' && line && frame ? section(frame, line.from, line.to) : null;
  });

  /** Where keys would set a piece or a corner: at first in the middle of what is seen. */
  readonly crossAt: Xy = $derived.by(
    () => this.cross ?? [Math.round(this.camera.xMm), Math.round(this.camera.yMm)],
  );
  /** Changes with the plan on the desk and with the form of its tile, not with its pieces. */
  readonly #tileShown: string = $derived.by(() => {
    const { shape, sizeMm } = this.#desk.shown.tile;
    return `${this.#desk.opened} ${shape} ${sizeMm}`;
  });

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  mm(px: Xy): Xy {
    return toMm(this.camera, this.size, px[0], px[1]);
  }

  px(mm: Xy): Xy {
    return toPx(this.camera, this.size, mm);
  }

  /** A path as the points of a polygon or polyline over the tile. */
  points(path: readonly Xy[]): string {
    return path
      .map((mm) =>
        this.px(mm)
          .map((px) => px.toFixed(1))
          .join(),
      )
      .join(' ');
  }

  zoom(factor: number, about?: Xy): void {
    const [x, y] = about ?? [this.size.width / 2, this.size.height / 2];
    this.#camera = zoomAbout(this.camera, this.size, this.#desk.shown.tile, x, y, factor);
    if (this.isWhole) this.fit();
  }

  pan(dxPx: number, dyPx: number): void {
    if (!this.isWhole) this.#camera = panBy(this.camera, this.size, this.#desk.shown.tile, dxPx, dyPx);
  }

  fit(): void {
    this.#camera = null;
  }

  /** Moves the view just so far that a place is seen. */
  reveal(at: Xy): void {
    const [x, y] = this.px(at);
    const beyond = (px: number, framePx: number): number =>
      px < REVEAL_PX ? REVEAL_PX - px : Math.min(0, framePx - REVEAL_PX - px);
    this.pan(beyond(x, this.size.width), beyond(y, this.size.height));
  }

  /** Lays the section line, its ends kept on the tile. */
  laySection(line: SectionLine): void {
    const { tile } = this.#desk.shown;
    this.sectionLine = { from: onTile(line.from, tile), to: onTile(line.to, tile) };
  }

  /** Level across the whole tile, at the height of what is seen; upright where it lies so already. */
  layAcross(): void {
    this.sectionLine = acrossTile(
      this.#desk.shown.tile,
      [this.camera.xMm, this.camera.yMm],
      this.sectionLine,
    );
    this.sectionEnd = 'to';
    this.saySection();
  }

  saySection(): void {
    if (this.section === null) return;
    const { lengthMm, joints } = this.section;
    this.said = `Section of ${lengthMm.toFixed(1)} mm, ${joints.length} ${joints.length === 1 ? 'seam' : 'seams'}.`;
  }

  /** True if there was one. */
  takeBackCorner(): boolean {
    if (this.sketch.length === 0) return false;
    this.sketch = this.sketch.slice(0, -1);
    this.refused = null;
    return true;
  }

  /** To be called while a component starts: leaves what belongs to an older plan, month or tool; tells what was done. */
  follow(): void {
    const desk = this.#desk;
    onChange(
      () => this.#tileShown,
      () => {
        this.fit();
        this.sectionLine = null;
      },
    );
    onChange(
      () => desk.opened,
      () => (this.sketch = []),
    );
    onChange(
      () => desk.tool,
      () => {
        this.ruler = null;
        this.ghostAt = null;
        this.sketch = [];
      },
    );
    onChange(
      () => [desk.plan, desk.month, desk.tool],
      () => {
        this.refused = null;
        this.proposal = null;
      },
    );
    onChange(
      () => [desk.tool, desk.month, desk.step],
      () => (this.cutNote = ''),
    );
    onChange(
      () => desk.step,
      () => (this.#desk.part = null),
    );
    $effect(() => {
      if (desk.previewing) untrack(() => (this.refused = null));
    });
    let before = untrack(() => desk.plan);
    onChange(
      () => desk.plan,
      () => {
        this.said = happened(desk.told, before, desk.plan);
        before = desk.plan;
      },
    );
  }

  /** Says at a place of the tile why something was not done there, so that nobody else need say it. */
  refuse(words: string, at: Xy): void {
    this.refused = { words, at };
    this.said = words;
    this.#desk.refused = [];
  }

  /** Leaves what was begun. True if there was something to leave. */
  leave(): boolean {
    const isCut = this.#desk.tool === 'section' && this.sectionLine !== null;
    const had =
      this.sketch.length > 0 ||
      this.ruler !== null ||
      this.refused !== null ||
      this.proposal !== null ||
      this.#desk.part !== null ||
      isCut;
    this.proposal = null;
    this.#desk.part = null;
    if (isCut) this.sectionLine = null;
    this.sketch = [];
    this.ruler = null;
    this.gap = null;
    this.refused = null;
    return had;
  }
}
