/** The smooth fields of a frame as textures: filled anew for each month, made anew for another grid or tile. */
import { BufferImageSource } from 'pixi.js';
import type { Frame } from '../model/frame';
import type { Tile } from '../plan/plan';
import { Skin } from '../skin/skin';

export function dataTexture(
  bytes: Uint8Array<ArrayBuffer>,
  width: number,
  height: number,
  smooth: boolean,
): BufferImageSource {
  return new BufferImageSource({
    resource: bytes,
    width,
    height,
    format: 'rgba8unorm',
    alphaMode: 'no-premultiply-alpha',
    scaleMode: smooth ? 'linear' : 'nearest',
    addressMode: 'clamp-to-edge',
    autoGarbageCollect: false,
  });
}

export class Fields {
  readonly #skin: Skin;
  readonly #tileKey: string;
  readonly #isCoarse: boolean;
  readonly first: BufferImageSource;
  readonly second: BufferImageSource;
  readonly surface: BufferImageSource;
  readonly relief: BufferImageSource;
  #frame: Frame | null = null;
  #lightDeg = NaN;

  constructor(frame: Frame, tile: Tile, isCoarse: boolean) {
    this.#skin = new Skin(frame, tile, isCoarse);
    this.#tileKey = keyOf(tile);
    this.#isCoarse = isCoarse;
    const { columns, rows, first, second, surface, relief } = this.#skin;
    this.first = dataTexture(first, columns, rows, true);
    this.second = dataTexture(second, columns, rows, true);
    this.surface = dataTexture(surface, columns, rows, true);
    this.relief = dataTexture(relief, columns, rows, true);
  }

  get widthMm(): number {
    return this.#skin.columns * this.#skin.cellMm;
  }

  get heightMm(): number {
    return this.#skin.rows * this.#skin.cellMm;
  }

  get cellMm(): number {
    return this.#skin.cellMm;
  }

  fits(frame: Frame, tile: Tile): boolean {
    return this.#tileKey === keyOf(tile) && this.#skin.fits(frame, this.#isCoarse);
  }

  fill(frame: Frame, lightDeg: number): void {
    if (frame !== this.#frame) {
      this.#skin.fill(frame, lightDeg);
      for (const field of [this.first, this.second, this.surface, this.relief]) field.update();
    } else if (lightDeg !== this.#lightDeg) {
      this.#skin.light(lightDeg);
      this.relief.update();
    }
    this.#frame = frame;
    this.#lightDeg = lightDeg;
  }

  destroy(): void {
    for (const field of [this.first, this.second, this.surface, this.relief]) field.destroy();
  }
}

function keyOf({ shape, sizeMm }: Tile): string {
  return `${shape} ${sizeMm}`;
}
