/** What the page and its workers may say to each other, and nothing else. */
import type { ProxyMarked } from 'comlink';
import type { Frame, PolypSites } from '../src/model/frame';
import type { Reading } from '../src/measure/reading';
import type { Plan } from '../src/plan/plan';

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
