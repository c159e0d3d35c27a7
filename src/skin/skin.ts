/**
 * A frame made ready to be drawn: smooth fields at the frame's cells, in bytes, for a shader or for the processor.
 * Made once per grid and tile, filled again for each month: about 0.1 ms per 1000 cells. Knows no Pixi.
 */
import type { Frame } from '../model/frame';
import type { Tile } from '../plan/plan';
import { boxBlur, softenGrid } from './blur';
import { fillShares } from './coverage';
import type { Shares } from './coverage';
import { borrowedCells } from './edge';
import { fillRelief, lightFrom } from './relief';

const BARE = 255;
const NO_AGE = 255;
/** Growth lines once a month, as the frames come: two half months. */
const LINE_HALF_MONTHS = 2;
const LINE_HEIGHT_MM = 0.045;

/** Height of the growth lines over one period of age, in steps of 1/32 half month. */
const LINE_STEPS = 32;
const LINES = Float32Array.from(
  { length: LINE_STEPS * LINE_HALF_MONTHS },
  (_, k) => LINE_HEIGHT_MM * Math.cos((2 * Math.PI * k) / (LINE_STEPS * LINE_HALF_MONTHS)),
);

/** Grids wider than this are read at every other cell, so that a month is ready soon. */
const MOST_COLUMNS = 820;

/** Cells read: every one, every other, and while things move half as many again each way. */
function stepOf({ columns, rows }: Frame, isCoarse: boolean): number {
  const halves = columns % 2 === 0 && rows % 2 === 0;
  return (columns > MOST_COLUMNS && halves ? 2 : 1) * (isCoarse && halves ? 2 : 1);
}

export class Skin implements Shares {
  readonly columns: number;
  readonly rows: number;
  readonly cellMm: number;
  readonly first: Uint8Array<ArrayBuffer>;
  readonly second: Uint8Array<ArrayBuffer>;
  /** R empty, G bare, B paleness of a young rim or a crest, A age of what is there (255 = 36 months). */
  readonly surface: Uint8Array<ArrayBuffer>;
  /** See fillRelief. */
  readonly relief: Uint8Array<ArrayBuffer>;
  readonly #step: number;
  readonly #borrowed: Int32Array;
  readonly #label: Uint8Array;
  readonly #height: Float32Array;
  readonly #age: Float32Array;
  readonly #scratch: { a: Float32Array; b: Float32Array };

  constructor(frame: Frame, tile: Tile, isCoarse = false) {
    this.#step = stepOf(frame, isCoarse);
    // what is left over at the far edge is a border cell or two
    this.columns = Math.floor(frame.columns / this.#step);
    this.rows = Math.floor(frame.rows / this.#step);
    this.cellMm = frame.cellMm * this.#step;
    const cells = this.columns * this.rows;
    this.first = new Uint8Array(cells * 4);
    this.second = new Uint8Array(cells * 4);
    this.surface = new Uint8Array(cells * 4);
    this.relief = new Uint8Array(cells * 4);
    this.#borrowed = borrowedCells(this.columns, this.rows, this.cellMm, tile);
    this.#label = new Uint8Array(cells);
    this.#height = new Float32Array(cells);
    this.#age = new Float32Array(cells);
    this.#scratch = { a: new Float32Array(cells), b: new Float32Array(cells) };
  }

  fits(frame: Frame, isCoarse = false): boolean {
    const step = stepOf(frame, isCoarse);
    return (
      step === this.#step &&
      Math.floor(frame.columns / step) === this.columns &&
      Math.floor(frame.rows / step) === this.rows &&
      frame.cellMm * step === this.cellMm
    );
  }

  /** Everything from the frame; `light` alone is enough when only the light was turned. */
  fill(frame: Frame, lightDeg: number): void {
    this.#read(frame);
    fillShares(this.#label, this.columns, this.rows, this.cellMm, this);
    this.#smoothAge();
    this.#smoothHeight();
    this.light(lightDeg);
    this.#paleness();
  }

  light(lightDeg: number): void {
    fillRelief(
      this.#height,
      this.columns,
      this.rows,
      this.cellMm,
      lightFrom(lightDeg),
      this.#scratch,
      this.relief,
    );
  }

  #read(frame: Frame): void {
    const step = this.#step;
    for (let row = 0, i = 0; row < this.rows; row++) {
      let from = (row * step + step - 1) * frame.columns + step - 1;
      for (let column = 0; column < this.columns; column++, i++, from += step) {
        this.#label[i] = frame.label[from];
        this.#height[i] = frame.height[from] * 0.01;
        this.#age[i] = frame.age[from] === NO_AGE ? 0 : frame.age[from];
      }
    }
    for (let k = 0; k < this.#borrowed.length; k += 2) {
      const to = this.#borrowed[k];
      const from = this.#borrowed[k + 1];
      this.#label[to] = this.#label[from];
      this.#height[to] = this.#height[from];
      this.#age[to] = this.#age[from];
    }
  }

  /** Ages come in half months; a blur over about one rim's advance of that time makes a slope of the steps. */
  #smoothAge(): void {
    const radius = Math.max(1, Math.round(0.6 / this.cellMm));
    boxBlur(this.#age, this.columns, this.rows, radius, this.#scratch.a);
    boxBlur(this.#age, this.columns, this.rows, radius, this.#scratch.a);
    for (let i = 0; i < this.#age.length; i++)
      this.surface[i * 4 + 3] = Math.min(255, this.#age[i] * 3.54 + 0.5);
  }

  #smoothHeight(): void {
    const height = this.#height;
    for (let i = 0; i < height.length; i++) {
      if (this.#label[i] !== 0 && this.#label[i] !== BARE)
        height[i] += LINES[(this.#age[i] * LINE_STEPS) & (LINES.length - 1)];
    }
    softenGrid(height, this.columns, this.rows, this.#scratch.a);
    if (this.cellMm < 0.35) softenGrid(height, this.columns, this.rows, this.#scratch.a);
  }

  #paleness(): void {
    const open = this.#scratch.a;
    for (let i = 0; i < open.length; i++) open[i] = this.#label[i] === 0 ? 1 : 0;
    const radius = Math.max(1, Math.round(0.9 / this.cellMm));
    boxBlur(open, this.columns, this.rows, radius, this.#scratch.b);
    boxBlur(open, this.columns, this.rows, radius, this.#scratch.b);
    for (let i = 0; i < open.length; i++) {
      const young = 1 / (1 + 0.08 * this.#age[i] * this.#age[i]);
      const rim = Math.min(1, 2 * open[i]) * young;
      const crest = 0.65 * Math.min(1, Math.max(0, (this.relief[i * 4 + 3] - 140) / 115));
      this.surface[i * 4 + 2] = 255 * Math.max(rim, crest);
    }
  }
}
