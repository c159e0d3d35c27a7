/**
 * What a mouse, pen or fingers do on the tile. Positions come in CSS pixels of the canvas and leave in mm;
 * no cell is known here. A drag is a draft on the desk until the pointer goes up.
 */
import { movePieces, resizePiece, turnPieces } from '../../plan/edit';
import type { Piece, Xy } from '../../plan/plan';
import { keepLine, proposePatch, proposeRound } from '../cut/cut-tool';
import { gripPart, slidePart, swingPart } from '../cut/part-hand';
import type { Part } from '../cut/parts';
import type { Desk } from '../desk.svelte';
import { snapToGap } from './gap';
import { handleAt, handlesOf, resizeFactors } from './handles';
import type { Handle } from './handles';
import type { Hold } from './hold.svelte';
import { pieceAt } from './piece-at';
import { measured } from './ruler';
import { endAt } from './section-line';
import { closeSketch, setStamp } from './set-down';

/** What is needed of a pointer event. */
export interface Touch {
  readonly id: number;
  readonly px: Xy;
  readonly kind: string;
  readonly button: number;
  readonly shift: boolean;
  readonly alt: boolean;
}

const CLICK_PX = 4;
/** A finger rolls as it taps. */
const TAP_PX = 9;
const CLOSE_PX = 12;
const SNAP_PX = 14;
const FREEHAND_PX = 3;
const TURN_STEP_DEG = 15;

type Ids = readonly string[];

type Doing =
  | {
      kind: 'pan';
      /** What a press without a move chooses; null leaves the choice as it is. */ taps: Ids | null;
    }
  | { kind: 'move'; ids: Ids }
  | { kind: 'handle'; piece: Piece; handle: Handle }
  | {
      kind: 'sketch';
      drawn: boolean;
      /** A saw goes straight: corners before the drag; null where every wobble counts. */
      straightFrom: readonly Xy[] | null;
    }
  | { kind: 'patch' }
  | { kind: 'part' | 'turn part'; part: Part }
  | { kind: 'set' }
  | { kind: 'ruler' }
  | { kind: 'section' };

export class Pointer {
  readonly #desk: Desk;
  readonly #hold: Hold;
  readonly #down = new Map<number, Xy>();
  #doing: Doing | null = null;
  #from: Xy = [0, 0];
  #moved = false;
  /** The end of the section line that stays. */
  #fixed: Xy = [0, 0];

  constructor(desk: Desk, hold: Hold) {
    this.#desk = desk;
    this.#hold = hold;
  }

  press(touch: Touch): void {
    this.#down.set(touch.id, touch.px);
    if (this.#down.size > 1) {
      this.#giveUp();
      return;
    }
    this.#from = touch.px;
    this.#moved = false;
    this.#hold.refused = null;
    this.#doing = touch.button === 1 ? { kind: 'pan', taps: null } : this.#begin(touch);
  }

  move(touch: Touch): void {
    const before = this.#down.get(touch.id);
    if (before === undefined) {
      this.#hover(touch);
      return;
    }
    if (this.#down.size > 1) {
      this.#pinch(touch, before);
      return;
    }
    this.#down.set(touch.id, touch.px);
    const still = touch.kind === 'touch' ? TAP_PX : CLICK_PX;
    if (Math.hypot(touch.px[0] - this.#from[0], touch.px[1] - this.#from[1]) >= still) this.#moved = true;
    if (this.#doing !== null && this.#moved) this.#drag(this.#doing, touch, before);
  }

  lift(touch: Touch): void {
    const was = this.#down.delete(touch.id);
    const doing = this.#doing;
    this.#doing = null;
    if (!was || doing === null) return;
    if (doing.kind === 'part' || doing.kind === 'turn part') {
      const [refusal] = this.#desk.commit();
      if (refusal) this.#hold.refuse(`${refusal.cure}.`, doing.part.at);
    } else if (doing.kind === 'patch') {
      proposePatch(this.#desk, this.#hold, this.#hold.mm(touch.px));
    } else if (doing.kind === 'move' || doing.kind === 'handle') {
      this.#hold.gap = null;
      const [refusal] = this.#desk.commit();
      const id = doing.kind === 'move' ? doing.ids[0] : doing.piece.id;
      const piece = this.#desk.plan.pieces.find((one) => one.id === id);
      if (refusal && piece) this.#hold.refuse(`${refusal.cure}.`, piece.at);
      if (!this.#moved && doing.kind === 'move') this.#choose(touch, doing.ids);
    } else if (doing.kind === 'set') {
      setStamp(this.#desk, this.#hold, this.#hold.mm(touch.px));
      if (touch.kind !== 'mouse') this.#hold.ghostAt = null;
    } else if (doing.kind === 'ruler') {
      const { ruler } = this.#hold;
      if (ruler) this.#hold.said = measured(this.#desk.plan, ruler.from, ruler.to).words;
    } else if (doing.kind === 'section') {
      this.#hold.saySection();
    } else if (doing.kind === 'sketch') {
      this.#endStroke(doing, touch.px);
    } else if (doing.kind === 'pan' && !this.#moved && doing.taps) {
      this.#desk.select(doing.taps);
    }
  }

  /** The system took the pointer away, or Escape was pressed: nothing is kept. */
  cancel(): void {
    this.#down.clear();
    this.#giveUp();
  }

  leave(): void {
    this.#hold.ghostAt = null;
  }

  /** Whether a piece lies under a pixel. */
  isOn(px: Xy): boolean {
    return pieceAt(this.#desk.plan, this.#hold.mm(px), 0) !== null;
  }

  /** Whether the finger that is down has nothing to do on the tile, so that it may scroll the page. */
  get letsScroll(): boolean {
    return this.#down.size === 1 && this.#hold.isWhole && this.#doing?.kind === 'pan';
  }

  get busy(): boolean {
    return this.#doing !== null;
  }

  #begin(touch: Touch): Doing {
    const { tool } = this.#desk;
    const at = this.#hold.mm(touch.px);
    if (tool === 'set') {
      this.#hold.ghostAt = at;
      return { kind: 'set' };
    }
    if (tool === 'outline') return { kind: 'sketch', drawn: false, straightFrom: null };
    if (tool === 'cut') return this.#beginCut(at);
    if (tool === 'ruler') {
      this.#hold.ruler = { from: at, to: at };
      return { kind: 'ruler' };
    }
    if (tool === 'section') return this.#beginSection(touch, at);
    return this.#grasp(touch, at);
  }

  /** One of the line's ends, or a new line from here once the pointer moves. */
  #beginSection(touch: Touch, at: Xy): Doing {
    const hold = this.#hold;
    const { sectionLine } = hold;
    const end =
      sectionLine &&
      endAt(touch.px, hold.px(sectionLine.from), hold.px(sectionLine.to), touch.kind === 'touch');
    hold.sectionEnd = end ?? 'to';
    this.#fixed = end && sectionLine ? sectionLine[end === 'to' ? 'from' : 'to'] : at;
    return { kind: 'section' };
  }

  #beginCut(at: Xy): Doing {
    const { cut, sketch } = this.#hold;
    if (cut.way === 'patch') return { kind: 'patch' };
    const straightFrom = cut.way !== 'saw' ? null : sketch.length > 0 ? sketch : [at];
    return { kind: 'sketch', drawn: false, straightFrom };
  }

  #grasp(touch: Touch, at: Xy): Doing {
    const { plan, selection } = this.#desk;
    const finger = touch.kind === 'touch';
    const grip = this.#gripAt(touch.px, finger) ?? gripPart(this.#desk, this.#hold, touch.px, finger);
    if (grip) return grip;
    const piece = pieceAt(plan, at, (finger ? 12 : 3) / this.#hold.camera.pxPerMm);
    if (piece === null) return { kind: 'pan', taps: touch.shift ? null : [] };
    if (selection.includes(piece.id)) {
      return touch.shift
        ? { kind: 'pan', taps: selection.filter((id) => id !== piece.id) }
        : { kind: 'move', ids: selection };
    }
    const ids = touch.shift ? [...selection, piece.id] : [piece.id];
    // A finger on its way over the tile must change nothing: it moves only what a tap has chosen.
    if (finger) return { kind: 'pan', taps: ids };
    this.#desk.select(ids);
    return { kind: 'move', ids };
  }

  /** The handle of the one chosen piece under a pixel. */
  #gripAt(px: Xy, finger: boolean): Doing | null {
    const { plan, selection } = this.#desk;
    const piece = selection.length === 1 ? plan.pieces.find(({ id }) => id === selection[0]) : undefined;
    const handle = piece && handleAt(handlesOf(piece, this.#hold.camera, this.#hold.size), px, finger);
    return piece && handle ? { kind: 'handle', piece, handle } : null;
  }

  /** A press and lift on a piece, without a move, chooses it alone; with Shift it joins the others. */
  #choose(touch: Touch, ids: readonly string[]): void {
    const piece = pieceAt(this.#desk.plan, this.#hold.mm(touch.px), 0);
    this.#desk.select(touch.shift || piece === null ? ids : [piece.id]);
  }

  #hover(touch: Touch): void {
    if (touch.kind === 'touch') return;
    this.#hold.ghostAt = this.#desk.tool === 'set' ? this.#hold.mm(touch.px) : null;
  }

  #drag(doing: Doing, touch: Touch, before: Xy): void {
    const hold = this.#hold;
    const at = hold.mm(touch.px);
    if (doing.kind === 'pan') hold.pan(touch.px[0] - before[0], touch.px[1] - before[1]);
    else if (doing.kind === 'set') hold.ghostAt = at;
    else if (doing.kind === 'ruler') hold.ruler = { from: hold.mm(this.#from), to: at };
    else if (doing.kind === 'section')
      hold.laySection(
        hold.sectionEnd === 'to' ? { from: this.#fixed, to: at } : { from: at, to: this.#fixed },
      );
    else if (doing.kind === 'sketch') this.#stroke(doing, touch.px);
    else if (doing.kind === 'move') this.#slide(doing.ids, at, touch.alt);
    else if (doing.kind === 'handle') this.#handle(doing, touch, at);
    else if (doing.kind === 'part') slidePart(this.#desk, doing.part, hold.mm(this.#from), at);
    else if (doing.kind === 'turn part')
      swingPart(this.#desk, doing.part, hold.mm(this.#from), at, touch.shift);
  }

  #slide(ids: readonly string[], at: Xy, free: boolean): void {
    const [desk, hold] = [this.#desk, this.#hold];
    const from = hold.mm(this.#from);
    const [dx, dy] = [at[0] - from[0], at[1] - from[1]];
    if (desk.selection !== ids) desk.select(ids);
    if (desk.snapGapMm === null || free) {
      hold.gap = null;
      desk.try(movePieces(desk.plan, ids, dx, dy));
      return;
    }
    const snapped = snapToGap(desk.plan, ids, dx, dy, desk.snapGapMm, SNAP_PX / hold.camera.pxPerMm);
    hold.gap = snapped.line;
    desk.try(movePieces(desk.plan, ids, snapped.dxMm, snapped.dyMm));
  }

  #handle({ piece, handle }: { piece: Piece; handle: Handle }, touch: Touch, at: Xy): void {
    const { shift: inSteps, alt: free } = touch;
    const [desk, hold] = [this.#desk, this.#hold];
    const from = hold.mm(this.#from);
    if (handle.kind === 'turn') {
      const angle = (place: Xy): number => Math.atan2(place[1] - piece.at[1], place[0] - piece.at[0]);
      let turn = ((angle(at) - angle(from)) * 180) / Math.PI;
      if (inSteps) turn = Math.round((piece.turnDeg + turn) / TURN_STEP_DEG) * TURN_STEP_DEG - piece.turnDeg;
      desk.try(turnPieces(desk.plan, [piece.id], turn));
      return;
    }
    const [fx, fy] = resizeFactors(piece, handle, from, at, { even: inSteps, free });
    desk.try(resizePiece(desk.plan, piece.id, fx, fy));
  }

  /** Drawing freely: a corner every few pixels. */
  #stroke(doing: { drawn: boolean; straightFrom: readonly Xy[] | null }, px: Xy): void {
    const { sketch } = this.#hold;
    if (doing.straightFrom) {
      doing.drawn = true;
      this.#hold.sketch = [...doing.straightFrom, this.#hold.mm(px)];
      return;
    }
    if (!doing.drawn && sketch.length === 0) this.#hold.sketch = [this.#hold.mm(this.#from)];
    doing.drawn = true;
    const last = this.#hold.px(this.#hold.sketch[this.#hold.sketch.length - 1]);
    if (Math.hypot(px[0] - last[0], px[1] - last[1]) < FREEHAND_PX) return;
    this.#hold.sketch = [...this.#hold.sketch, this.#hold.mm(px)];
  }

  /** A line is done when the stroke ends, or at a click on its last corner. */
  #endLine(drawn: boolean, px: Xy): void {
    const { sketch } = this.#hold;
    const last = sketch.length > 1 ? this.#hold.px(sketch[sketch.length - 1]) : null;
    if (drawn || (last && Math.hypot(px[0] - last[0], px[1] - last[1]) < CLOSE_PX))
      keepLine(this.#desk, this.#hold);
    else this.#hold.sketch = [...sketch, this.#hold.mm(px)];
  }

  /** A click adds a corner; on the first corner it closes the outline, and so does a stroke that comes back to it. */
  #endStroke({ drawn }: { drawn: boolean }, px: Xy): void {
    const { sketch } = this.#hold;
    const isCut = this.#desk.tool === 'cut';
    if (isCut && this.#hold.cut.way !== 'round') {
      this.#endLine(drawn, px);
      return;
    }
    const first = sketch.length > 0 ? this.#hold.px(sketch[0]) : px;
    const home = sketch.length > 2 && Math.hypot(px[0] - first[0], px[1] - first[1]) < CLOSE_PX;
    if (home) (isCut ? proposeRound : closeSketch)(this.#desk, this.#hold);
    else if (!drawn) this.#hold.sketch = [...sketch, this.#hold.mm(px)];
  }

  #pinch(touch: Touch, before: Xy): void {
    const other = [...this.#down].find(([id]) => id !== touch.id)?.[1];
    this.#down.set(touch.id, touch.px);
    if (!other) return;
    const was = Math.hypot(before[0] - other[0], before[1] - other[1]);
    const is = Math.hypot(touch.px[0] - other[0], touch.px[1] - other[1]);
    this.#hold.pan((touch.px[0] - before[0]) / 2, (touch.px[1] - before[1]) / 2);
    if (was > 0) {
      const middle: Xy = [(touch.px[0] + other[0]) / 2, (touch.px[1] + other[1]) / 2];
      this.#hold.zoom(is / was, middle);
    }
  }

  #giveUp(): void {
    this.#doing = null;
    this.#hold.gap = null;
    this.#hold.ghostAt = null;
    this.#desk.drop();
  }
}
