/** The parts of a frame that hold its bytes. Apart from frame.ts, for the page needs them and not how frames are made. */

/** Layers that lie beneath the topmost one: by cell, and of one cell from the lowest up. */
export interface Beneath {
  readonly cell: Int32Array;
  readonly variety: Uint8Array;
  /** Of the layer's upper side, 0.01 mm above the tile. */
  readonly top: Uint16Array;
}

export function nothingBeneath(): Beneath {
  return { cell: new Int32Array(0), variety: new Uint8Array(0), top: new Uint16Array(0) };
}

interface Parts {
  readonly label: Uint8Array;
  readonly seam: Uint8Array;
  readonly age: Uint8Array;
  readonly height: Uint16Array;
  readonly beneath: Beneath;
}

/** All arrays of a frame: what one thread hands to another, and what a frame weighs. */
export function arraysOf({
  label,
  seam,
  age,
  height,
  beneath,
}: Parts): (Uint8Array | Uint16Array | Int32Array)[] {
  return [label, seam, age, height, beneath.cell, beneath.variety, beneath.top];
}
