/** What the page and its workers may say to each other, and nothing else. */
import type { ProxyMarked } from 'comlink';
import type { Frame } from '../src/model/frame';
import type { Reading } from '../src/measure/reading';
import type { Plan } from '../src/plan/plan';

/** Polyp sites of a run, so that the picture shows polyps where the model has them. */
export interface PolypSites {
  /** Lattice of sites, row-major, `columns` x `rows`. */
  readonly columns: number;
  readonly rows: number;
  readonly spacingMm: number;
  /** Millimetres from the tile's centre of lattice box (0, 0)'s corner. */
  readonly originMm: number;
  /** Site within its box in 1/255 of the spacing: x, y for each box in turn. */
  readonly offset: Uint8Array;
}

export interface GrowAsk {
  readonly id: number;
  readonly plan: Plan;
  readonly seed: string;
  readonly cellMm: number;
  /** Frames wanted (the live tile) or readings alone (ranges over seeds). */
  readonly frames: boolean;
}

export interface Sink {
  polyps(id: number, sites: PolypSites): void | Promise<void>;
  /** frame is null where no frames were asked for. */
  month(id: number, frame: Frame | null, reading: Reading): void | Promise<void>;
  alive(id: number, day: number): void;
}

export interface EngineWorker {
  ready(): Promise<{ model: number }>;
  grow(ask: GrowAsk, sink: Sink & ProxyMarked): Promise<'whole' | 'cancelled'>;
  cancel(id: number): void;
}
