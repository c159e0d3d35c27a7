/**
 * What is being drawn over a photo, in px of the photo. It is kept until the page closes, so that opening the photo
 * again goes on where it was left. Colours and kinds of seams hang on places, not on numbers of faces: a line drawn
 * later leaves them where they were.
 */
import {
  awayFrom,
  bordersOf,
  drawnGraft,
  faceAt,
  isSeam,
  mmPerPxOf,
  type SeamKind,
} from '../../plan/drawn-graft';
import { freshVariety } from '../../plan/fresh-variety';
import { MAX_VARIETIES, type GraftPiece, type Variety } from '../../plan/plan';
import { crossMoreThan, facesOf, somewhereInside, type FaceOfLines } from '../../units/faces';
import { isInside, isSimple, type Point } from '../../units/polygon';
import { simplify, simplifyOutline } from '../../units/simplify';
import type { Photo } from './read-photo';
import { onPaths } from './snap';

export const STEPS = ['Photo', 'Scale', 'Colours', 'Seams'] as const;
/** Corners that move the line by less than so much are not needed, px of the photo. */
const NEEDLESS_PX = 0.25;
const MOST_CORNERS = 500;
const MOST_CROSSINGS = 200;
/** So few that their borders are fewer than the seams that a plan may hold. */
const MOST_PATCHES = 60;

interface At<T> {
  readonly at: Point;
  readonly is: T;
}

interface Mark {
  readonly kind: SeamKind;
  /** Of a lapped border the variety that lies over the other; null where that is not known. */
  readonly over: string | null;
}

const FUSED: Mark = { kind: 'fused', over: null };

export class Drawing {
  photo = $state.raw<Photo | null>(null);
  step = $state(0);
  /** The two points a known distance apart, and which of them the hand or the keys set. */
  ends = $state.raw<readonly [Point | null, Point | null]>([null, null]);
  end = $state<0 | 1>(0);
  distanceMm = $state<number | null>(null);
  outline = $state.raw<readonly Point[]>([]);
  isClosed = $state(false);
  lines = $state.raw<readonly (readonly Point[])[]>([]);
  /** The line in the hand. */
  line = $state.raw<readonly Point[]>([]);
  /** What a tap does once the outline is closed. */
  tool = $state<'line' | 'colour'>('line');
  brush = $state('');
  kind = $state<SeamKind>('ridge');
  /** Varieties that the plan has not yet. */
  added = $state.raw<readonly Variety[]>([]);
  /** What the last try fell short of. */
  note = $state('');
  #paints = $state.raw<readonly At<string>[]>([]);
  #marks = $state.raw<readonly At<Mark>[]>([]);

  readonly mmPerPx: number | null = $derived.by(() => {
    const [from, to] = this.ends;
    return from && to && this.distanceMm !== null ? mmPerPxOf([from, to], this.distanceMm) : null;
  });
  readonly faces: readonly FaceOfLines[] = $derived(this.isClosed ? this.#facesWith(this.lines) : []);
  /** By face; null where nothing was said. */
  readonly colours: readonly (string | null)[] = $derived.by(() => {
    const colours: (string | null)[] = this.faces.map(() => null);
    for (const { at, is } of this.#paints) {
      const face = faceAt(this.faces, this.mm(at));
      if (face >= 0) colours[face] = is;
    }
    return colours;
  });
  readonly #varieties: readonly string[] = $derived(this.colours.map((colour) => colour ?? ''));
  readonly borders = $derived(bordersOf(this.faces).filter((border) => isSeam(border, this.#varieties)));
  /** By border. Who lay over a colour that was changed since is not known any more. */
  readonly #said: readonly Mark[] = $derived(
    this.borders.map(({ along, faces }) => {
      const own = this.#marks.filter(({ at }) => awayFrom(along, this.mm(at)) < 0.01);
      const { kind, over } = own.at(-1)?.is ?? FUSED;
      return { kind, over: faces.some((face) => this.colours[face] === over) ? over : null };
    }),
  );
  readonly kinds: readonly SeamKind[] = $derived(this.#said.map(({ kind }) => kind));
  readonly overs: readonly (string | null)[] = $derived(this.#said.map(({ over }) => over));

  begin(photo: Photo): void {
    if (this.photo) URL.revokeObjectURL(this.photo.url);
    this.photo = photo;
    this.ends = [null, null];
    this.end = 0;
    this.distanceMm = null;
    this.outline = this.lines = this.line = this.#paints = this.#marks = [];
    this.isClosed = false;
    this.note = '';
    this.step = 1;
  }

  mm([x, y]: Point): Point {
    const scale = this.mmPerPx ?? 1;
    return [x * scale, y * scale];
  }

  px([x, y]: Point): Point {
    const scale = this.mmPerPx ?? 1;
    return [x / scale, y / scale];
  }

  varietiesWith(planned: readonly Variety[]): readonly Variety[] {
    return [...planned, ...this.added.filter(({ id }) => !planned.some((variety) => variety.id === id))];
  }

  addVariety(planned: readonly Variety[]): void {
    const all = this.varietiesWith(planned);
    if (all.length >= MAX_VARIETIES) {
      this.note = `A plan has at most ${MAX_VARIETIES} varieties.`;
      return;
    }
    const fresh = freshVariety(all);
    this.added = [...this.added, fresh];
    this.brush = fresh.id;
    this.tool = 'colour';
  }

  /** A tap or Space at a place of the photo; `reach` is how near counts as on, px of the photo. */
  tap(point: Point, reach: number): void {
    this.note = '';
    if (this.step === 1) this.#setEnd(point, reach);
    else if (this.step === 3) this.#markNear(point, reach);
    else if (this.step !== 2) return;
    else if (!this.isClosed) this.#corner(point, reach);
    else if (this.tool === 'line') this.#lineTo(point, reach);
    else {
      const face = faceAt(this.faces, this.mm(point));
      if (face >= 0) this.paint(face, this.brush);
    }
  }

  moveEnd(which: 0 | 1, to: Point): void {
    this.ends = which === 0 ? [to, this.ends[1]] : [this.ends[0], to];
  }

  paint(face: number, variety: string): void {
    this.#paints = [...this.#paints, { at: this.px(somewhereInside(this.faces[face].rings)), is: variety }];
  }

  mark(border: number, kind: SeamKind, over: string | null = null): void {
    this.#marks = [...this.#marks, { at: this.px(this.borders[border].at), is: { kind, over } }];
  }

  /** Enter: closes the outline, or ends the line. */
  finish(): void {
    this.note = '';
    if (this.step !== 2) return;
    if (!this.isClosed) this.#close();
    else if (this.line.length > 1) this.#keepLine(this.line);
  }

  /** Backspace: the last thing of this step. */
  takeBack(): void {
    this.note = '';
    if (this.step === 1) {
      const last = this.ends[1] ? 1 : 0;
      this.ends = last === 1 ? [this.ends[0], null] : [null, null];
      this.end = last;
    } else if (this.step === 3) this.#marks = this.#marks.slice(0, -1);
    else if (this.step !== 2) return;
    else if (!this.isClosed) this.outline = this.outline.slice(0, -1);
    else if (this.tool === 'colour' && this.#paints.length > 0) this.#paints = this.#paints.slice(0, -1);
    else if (this.line.length > 0) this.line = this.line.slice(0, -1);
    else if (this.lines.length > 0) this.lines = this.lines.slice(0, -1);
    else this.isClosed = false;
  }

  /** What the step still wants; empty once it is done. */
  wants(): string {
    if (this.step === 0 && !this.photo) return 'Choose a photo first.';
    if (this.step === 1) {
      if (!this.ends[0] || !this.ends[1]) return 'Set both points on the photo.';
      if (this.distanceMm === null) return 'Type the distance between the two points, in mm.';
      if (this.mmPerPx === null) return 'The two points lie on each other: move one of them.';
    }
    if (this.step === 2) {
      if (!this.isClosed) return 'Draw the outline round the colony and close it.';
      if (this.line.length > 0) return 'A line is not ended: take it to the outline, or take it back.';
      const bare = this.colours.indexOf(null);
      if (bare >= 0) return `Say which variety patch ${bare + 1} is.`;
      if (this.#varieties.every((variety) => variety === '')) return 'No patch is coral yet: colour one.';
    }
    return '';
  }

  piece(id: string): GraftPiece | null {
    const { faces, borders, kinds, overs } = this;
    return drawnGraft({ faces, varieties: this.#varieties, borders, kinds, overs }, id);
  }

  #facesWith(lines: readonly (readonly Point[])[]): FaceOfLines[] {
    const mm = (path: readonly Point[]): Point[] => path.map((point) => this.mm(point));
    return facesOf(mm(this.outline), lines.map(mm));
  }

  #setEnd(point: Point, reach: number): void {
    const near = this.ends.findIndex((end) => end && isNear(end, point, reach));
    if (near >= 0) {
      this.end = near === 0 ? 0 : 1;
      return;
    }
    this.moveEnd(this.end, point);
    const other = this.end === 0 ? 1 : 0;
    if (!this.ends[other]) this.end = other;
  }

  #corner(point: Point, reach: number): void {
    if (this.outline.length > 2 && isNear(this.outline[0], point, reach)) this.#close();
    else this.outline = [...this.outline, point];
  }

  #close(): void {
    if (this.outline.length < 3) this.note = 'An outline wants at least three corners.';
    else if (!isSimple(this.outline))
      this.note = 'The outline crosses itself: take corners back and go round once.';
    else {
      this.outline = simplifyOutline(this.outline, MOST_CORNERS, NEEDLESS_PX);
      this.isClosed = true;
      this.tool = 'line';
    }
  }

  /** On the outline or on another line the line ends; so it does outside, and at its own beginning. */
  #lineTo(point: Point, reach: number): void {
    const { line } = this;
    const round = [...this.outline, this.outline[0]];
    const met = onPaths([round, ...this.lines], point, reach);
    if (line.length > 2 && isNear(line[0], point, reach)) {
      this.#keepLine([...line, line[0]]);
      return;
    }
    this.line = [...line, met ?? point];
    if (line.length > 0 && (met !== null || !isInside(this.outline, point))) this.#keepLine(this.line);
  }

  #keepLine(line: readonly Point[]): void {
    const lines = [...this.lines, simplify(line, NEEDLESS_PX)];
    if (crossMoreThan(lines, MOST_CROSSINGS)) {
      this.note = 'The lines cross too often: take some back.';
      return;
    }
    const count = this.#facesWith(lines).length;
    if (count > MOST_PATCHES)
      this.note = `More than ${MOST_PATCHES} patches: leave the smallest out, or draw the tile as two pieces.`;
    else if (count <= this.faces.length)
      this.note = 'That line parts nothing yet: begin and end it on the outline, or close it round a patch.';
    else {
      this.lines = lines;
      this.line = [];
    }
  }

  #markNear(point: Point, reach: number): void {
    const away = this.borders.map(({ along }) => awayFrom(along, this.mm(point)));
    const least = Math.min(...away);
    if (least <= reach * (this.mmPerPx ?? 1)) this.mark(away.indexOf(least), this.kind);
    else this.note = 'No border of two varieties is so near: tap on one, or choose from the list.';
  }
}

function isNear([ax, ay]: Point, [bx, by]: Point, reach: number): boolean {
  return Math.hypot(ax - bx, ay - by) <= reach;
}

/** The one drawing of the page. */
export const drawing = new Drawing();
