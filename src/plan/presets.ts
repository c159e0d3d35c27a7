/** The plans that come with the program, in the order in which they are offered; the page opens on the first. */
import * as v from 'valibot';
import fastWrapsSlow from '../../presets/fast-wraps-slow.json';
import fiveInARing from '../../presets/five-in-a-ring.json';
import halvesThatFuse from '../../presets/halves-that-fuse.json';
import halvesThatWallUp from '../../presets/halves-that-wall-up.json';
import smallInARing from '../../presets/small-in-a-ring.json';
import strongNeighbour from '../../presets/strong-neighbour.json';
import threeColourMosaic from '../../presets/three-colour-mosaic.json';
import twoTakeOneWalls from '../../presets/two-take-one-walls.json';
import { PlanSchema, type Plan } from './plan';

export interface Preset {
  /** The name of its file, without '.json'. */
  readonly key: string;
  readonly plan: Plan;
}

export const PRESETS: readonly Preset[] = [
  { key: 'two-take-one-walls', plan: v.parse(PlanSchema, twoTakeOneWalls) },
  { key: 'halves-that-fuse', plan: v.parse(PlanSchema, halvesThatFuse) },
  { key: 'halves-that-wall-up', plan: v.parse(PlanSchema, halvesThatWallUp) },
  { key: 'three-colour-mosaic', plan: v.parse(PlanSchema, threeColourMosaic) },
  { key: 'small-in-a-ring', plan: v.parse(PlanSchema, smallInARing) },
  { key: 'strong-neighbour', plan: v.parse(PlanSchema, strongNeighbour) },
  { key: 'five-in-a-ring', plan: v.parse(PlanSchema, fiveInARing) },
  { key: 'fast-wraps-slow', plan: v.parse(PlanSchema, fastWrapsSlow) },
];
