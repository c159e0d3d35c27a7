/**
 * A frame made ready to be drawn: smooth fields at the frame's cells, in bytes, for a shader or for the processor.
 * Made once per grid and tile, filled again for each month. Knows no Pixi.
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
  readonly #borrowed: Int32Array;
  readonly #label: Uint8Array;
  readonly #height: Float32Array;
  readonly #age: Float32Array;
  readonly #scratch: { a: Float32Array; b: Float32Array };

  constructor(columns: number, rows: number, cellMm: number, tile: Tile) {
    const cells = columns * rows;
    this.columns = columns;
    this.rows = rows;
    this.cellMm = cellMm;
    this.first = new Uint8Array(cells * 4);
    this.second = new Uint8Array(cells * 4);
    this.surface = new Uint8Array(cells * 4);
    this.relief = new Uint8Array(cells * 4);
    this.#borrowed = borrowedCells(columns, rows, cellMm, tile);
    this.#label = new Uint8Array(cells);
    this.#height = new Float32Array(cells);
    this.#age = new Float32Array(cells);
    this.#scratch = { a: new Float32Array(cells), b: new Float32Array(cells) };
  }

  fits(frame: Frame): boolean {
    return frame.columns === this.columns && frame.rows === this.rows && frame.cellMm === this.cellMm;
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
    this.#label.set(frame.label);
    for (let i = 0; i < frame.height.length; i++) {
      this.#height[i] = frame.height[i] * 0.01;
      this.#age[i] = frame.age[i] === NO_AGE ? 0 : frame.age[i];
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
    const turn = (2 * Math.PI) / LINE_HALF_MONTHS;
    for (let i = 0; i < height.length; i++) {
      if (this.#label[i] !== 0 && this.#label[i] !== BARE)
        height[i] += LINE_HEIGHT_MM * Math.cos(this.#age[i] * turn);
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
