/** What a picture needs of a tile at a month: 5 bytes a cell, row-major, border cells included. */
export interface Frame {
  readonly month: number;
  readonly columns: number;
  readonly rows: number;
  readonly cellMm: number;
  /** Variety 1..8, 0 empty, 255 died back. */
  readonly label: Uint8Array;
  /** Low 3 bits: 0 none, 1 undecided, 2 fused, 3 ridge, 4 lapped, 5 dead. Bit 3: this side covers. */
  readonly seam: Uint8Array;
  /** Half months since tissue came, at most 254; 255 where there is none. */
  readonly age: Uint8Array;
  /** 0.01 mm above the tile. */
  readonly height: Uint16Array;
}
