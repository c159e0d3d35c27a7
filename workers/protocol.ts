/** What the page and its workers may say to each other, and nothing else. */
import type { ProxyMarked } from 'comlink';
import type { Frame, PolypSites } from '../src/model/frame';
import type { Reading } from '../src/measure/reading';
import type { Grown, Scene } from '../src/picture/scene';
import type { GraftPiece, Plan } from '../src/plan/plan';
import type { SeamLine } from '../src/skin/seam-trace';

export interface GrowAsk {
  readonly id: number;
  readonly plan: Plan;
  readonly seed: string;
  readonly cellMm: number;
  /** Frames wanted (the live tile) or readings alone (ranges over seeds). */
  readonly frames: boolean;
  /** First month wanted, where the page has the earlier ones of a run that is the same so far; 0 when left out. */
  readonly from?: number;
  /** The month on screen: the run waits until that one is answered, so that it is drawn first. */
  readonly month?: number;
}

export interface CutOutAsk extends Pick<GrowAsk, 'plan' | 'seed' | 'cellMm'> {
  readonly step: string;
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
  /** What an isolating step of the plan takes out, as a piece of its own; null where that is nothing. */
  cutOut(ask: CutOutAsk): Promise<GraftPiece | null>;
  cancel(id: number): void;
}

export type GraphicsNews = (news: 'lost' | 'restored') => void;

/** Draws on canvases that the page handed over, each with a number of the page's. */
export interface EaselWorker {
  /** Rejects where there is no WebGL. */
  open(id: number, canvas: OffscreenCanvas, news: GraphicsNews & ProxyMarked): Promise<void>;
  /** Answered once drawn. Left out, `grown` stays what it was. */
  show(id: number, scene: Scene, grown?: Grown): Promise<void>;
  /** Of the frame that was shown last. */
  seams(id: number): Promise<SeamLine[]>;
  close(id: number): Promise<void>;
}
