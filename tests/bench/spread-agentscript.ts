/**
 * The job with agentscript 0.10: a Model whose patches hold a variety. Two ways: each day asks every patch, as the
 * library's own examples do, or only a list of the empty patches that have tissue beside them.
 */
import type { AgentArray as Agents, Patch } from 'agentscript/dist/agentscript2d.js';
import { COVER, lot, setVariety, STEP_X, STEP_Y, sumOf, type Spreader } from './spread';

/** The library is made for the page and wants a canvas while it loads; nothing is drawn here. */
class NoCanvas {
  getContext(): object {
    return {};
  }
}

interface Spreaders {
  readonly everyPatch: Spreader;
  readonly frontOnly: Spreader;
}

export async function agentscriptSpreaders(): Promise<Spreaders> {
  Object.assign(globalThis, { OffscreenCanvas: NoCanvas });
  const { AgentArray, Model, World } = await import('agentscript/dist/agentscript2d.js');
  Reflect.deleteProperty(globalThis, 'OffscreenCanvas');

  class Lattice extends Model {
    readonly side: number;
    readonly seed: number;
    cells = 0;
    readonly filled: { patch: Patch; variety: number }[] = [];

    constructor(side: number, seed: number) {
      super(new World({ minX: 0, maxX: side - 1, minY: 0, maxY: side - 1, minZ: 0, maxZ: 1 }));
      this.side = side;
      this.seed = seed;
    }

    override setup(): void {
      this.patches.setDefault('variety', 0);
      this.patches.ask((patch) => {
        const set = setVariety(this.side, patch.id % this.side, Math.floor(patch.id / this.side));
        if (set === 0) return;
        patch.variety = set;
        this.cells++;
        this.came(patch);
      });
    }

    /** Tissue came to this patch. */
    came(_patch: Patch): void {}

    override step(): void {
      this.patches.ask((patch) => this.look(patch));
      this.fill();
    }

    look(patch: Patch): void {
      if (patch.variety !== 0) return;
      const k = lot(this.seed, this.ticks + 1, patch.id);
      if (k === 8) return;
      const { neighbors } = patch;
      // on the edge the list is shorter; the library counts y upwards
      const beside = neighbors.length === 8 ? neighbors[k] : patch.patchAt(STEP_X[k], -STEP_Y[k]);
      if (beside && beside.variety !== 0) this.filled.push({ patch, variety: beside.variety });
    }

    fill(): void {
      for (const { patch, variety } of this.filled) {
        patch.variety = variety;
        this.cells++;
        this.came(patch);
      }
      this.filled.length = 0;
    }
  }

  class FrontLattice extends Lattice {
    front: Agents<Patch> = new AgentArray<Patch>();

    override setup(): void {
      this.patches.setDefault('isFront', false);
      super.setup();
    }

    override came(patch: Patch): void {
      patch.neighbors.ask((beside) => {
        if (beside.variety !== 0 || beside.isFront) return;
        beside.isFront = true;
        this.front.push(beside);
      });
    }

    override step(): void {
      this.front.ask((patch) => this.look(patch));
      this.front = this.front.filter((patch) => patch.variety === 0);
      this.fill();
    }
  }

  const by =
    (Kind: typeof Lattice): Spreader =>
    (side, seed) => {
      const model = new Kind(side, seed);
      model.setup();
      while (model.cells < COVER * side * side) model.step();
      const sum = sumOf(side, (x, y) => model.patches[y * side + x].variety);
      return { days: model.ticks, cells: model.cells, sum };
    };
  return { everyPatch: by(Lattice), frontOnly: by(FrontLattice) };
}
