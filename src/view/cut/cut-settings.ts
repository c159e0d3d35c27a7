/** How the cut line tool is set, and what it proposes before it cuts. */
import { DEFAULTS } from '../../model/defaults';
import type { Xy } from '../../plan/plan';
import { LEAST_MARGIN_MM } from '../../plan/survival';
import type { CutOut } from './patch';

export const CUT_WAYS = ['saw', 'trim', 'scrape', 'round', 'patch'] as const;
export type CutWay = (typeof CUT_WAYS)[number];

/** How the cut line tool is set. */
export interface CutSettings {
  readonly way: CutWay;
  readonly kerfMm: number;
  readonly trimMm: number;
  readonly scrapeMm: number;
  readonly marginMm: number;
}

export const CUT_START: CutSettings = {
  way: 'saw',
  kerfMm: DEFAULTS.kerfMm.value,
  trimMm: 3,
  scrapeMm: 2,
  marginMm: LEAST_MARGIN_MM,
};

/** A patch that could be cut out, before it is. */
export interface Proposal {
  readonly around: readonly Xy[];
  readonly cutOut: CutOut;
  /** Where its colour was pressed; null of an outline that was drawn. */
  readonly at: Xy | null;
}
