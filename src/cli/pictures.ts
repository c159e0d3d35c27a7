/** The folder that `--pictures` names: one PNG for each reading. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { frameOf, polypSites } from '../model/frame';
import type { State } from '../model/state';
import type { Plan } from '../plan/plan';
import { Refused } from './words';
import { drawTile } from './png';

/** Side of a picture in pixels, within what shows a polyp and what a screen holds. */
const SIDE_PX = 800;
const LEAST_PX_PER_MM = 4;
const MOST_PX_PER_MM = 12;

export class Pictures {
  readonly #folder: string;
  readonly #plan: Plan;
  readonly #pxPerMm: number;

  /** Makes the folder at once, so that a wrong name is told before anything has been grown. */
  constructor(folder: string, plan: Plan) {
    try {
      mkdirSync(folder, { recursive: true });
    } catch {
      throw new Refused(
        `The folder ${folder} for pictures cannot be made: check its name and your rights to it.`,
      );
    }
    this.#folder = folder;
    this.#plan = plan;
    this.#pxPerMm = Math.min(MOST_PX_PER_MM, Math.max(LEAST_PX_PER_MM, SIDE_PX / plan.tile.sizeMm));
  }

  /** A seed may be any word, so it is written in the form that an address would have. */
  write(state: State, seed: string, month: number): void {
    const name = `seed-${encodeURIComponent(seed)}-month-${String(month).padStart(2, '0')}.png`;
    const png = drawTile(frameOf(state, month), polypSites(state), this.#plan, this.#pxPerMm);
    try {
      writeFileSync(join(this.#folder, name), png);
    } catch {
      throw new Refused(
        `The picture ${name} cannot be written to ${this.#folder}: is there room, and may you write?`,
      );
    }
  }
}
