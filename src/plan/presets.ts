/** The plans that come with the program, in the order in which they are offered; the page opens on the first. */
import * as v from 'valibot';
import fastWrapsSlow from '../../presets/fast-wraps-slow.json';
import fiveInARing from '../../presets/five-in-a-ring.json';
import fiveJoints from '../../presets/five-joints.json';
import halvesThatFuse from '../../presets/halves-that-fuse.json';
import halvesThatWallUp from '../../presets/halves-that-wall-up.json';
import rarePatch from '../../presets/rare-patch.json';
import remix from '../../presets/remix.json';
import smallInARing from '../../presets/small-in-a-ring.json';
import strongNeighbour from '../../presets/strong-neighbour.json';
import threeColourMosaic from '../../presets/three-colour-mosaic.json';
import twoTakeOneWalls from '../../presets/two-take-one-walls.json';
import { PlanSchema, type Plan } from './plan';

/** A plan that comes with the program. */
class Preset {
  /** The name of its file, without '.json'. */
  readonly key: string;
  readonly #file: unknown;
  #plan: Plan | null = null;

  constructor(key: string, file: unknown) {
    this.key = key;
    this.#file = file;
  }

  /** Read when first asked for, so that the page opens sooner; always the same object. */
  get plan(): Plan {
    this.#plan ??= v.parse(PlanSchema, this.#file);
    return this.#plan;
  }
}

export const PRESETS: readonly Preset[] = [
  new Preset('two-take-one-walls', twoTakeOneWalls),
  new Preset('halves-that-fuse', halvesThatFuse),
  new Preset('halves-that-wall-up', halvesThatWallUp),
  new Preset('remix', remix),
  new Preset('rare-patch', rarePatch),
  new Preset('three-colour-mosaic', threeColourMosaic),
  new Preset('small-in-a-ring', smallInARing),
  new Preset('strong-neighbour', strongNeighbour),
  new Preset('five-in-a-ring', fiveInARing),
  new Preset('fast-wraps-slow', fastWrapsSlow),
  new Preset('five-joints', fiveJoints),
];
