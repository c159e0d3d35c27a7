/**
 * The job with flocc 0.7. Two ways: its Terrain, a lattice with one rule for every cell and day, as its documentation
 * shows for cellular automata; or one Agent for each empty cell that has tissue beside it.
 */
import { Agent, Environment, Terrain } from 'flocc';
import { COVER, lot, setVariety, STEP_X, STEP_Y, sumOf, type Spread } from './spread';

class Lattice {
  readonly terrain: Terrain;
  readonly environment = new Environment();
  readonly #side: number;
  readonly #seed: number;
  readonly filled: { cell: number; variety: number }[] = [];
  cells = 0;

  constructor(side: number, seed: number) {
    this.#side = side;
    this.#seed = seed;
    // asynchronous: what is filled is written after the day, and cells that stay as they are need no writing
    this.terrain = new Terrain(side, side, { async: true, grayscale: true });
    this.terrain.init((x, y) => setVariety(side, x, y));
    this.environment.use(this.terrain);
  }

  sample(x: number, y: number): number {
    return this.terrain.sample(x, y) as number;
  }

  /** The variety that an empty cell takes over today, 0 for none. */
  look(x: number, y: number): number {
    const k = lot(this.#seed, this.environment.time + 1, y * this.#side + x);
    if (k === 8) return 0;
    const besideX = x + STEP_X[k];
    const besideY = y + STEP_Y[k];
    // a Terrain is a torus; the job is not
    const isOff = besideX < 0 || besideY < 0 || besideX === this.#side || besideY === this.#side;
    return isOff ? 0 : this.sample(besideX, besideY);
  }

  get isDone(): boolean {
    return this.cells >= COVER * this.#side * this.#side;
  }

  end(): Spread {
    const sum = sumOf(this.#side, (x, y) => this.sample(x, y));
    return { days: this.environment.time, cells: this.cells, sum };
  }
}

export function spreadByTerrain(side: number, seed: number): Spread {
  const lattice = new Lattice(side, seed);
  const { terrain, environment, filled } = lattice;
  for (let cell = 0; cell < side * side; cell++) {
    if (lattice.sample(cell % side, Math.floor(cell / side)) !== 0) lattice.cells++;
  }
  terrain.addRule((x, y) => {
    if (terrain.sample(x, y) !== 0) return;
    const variety = lattice.look(x, y);
    if (variety !== 0) filled.push({ cell: y * side + x, variety });
  });
  while (!lattice.isDone) {
    environment.tick();
    for (const { cell, variety } of filled) terrain.set(cell % side, Math.floor(cell / side), variety);
    lattice.cells += filled.length;
    filled.length = 0;
  }
  return lattice.end();
}

export function spreadByAgents(side: number, seed: number): Spread {
  const lattice = new Lattice(side, seed);
  const { terrain, environment } = lattice;
  const isFront = new Uint8Array(side * side);
  const filled: { agent: Agent; x: number; y: number; variety: number }[] = [];
  const opened: { x: number; y: number }[] = [];

  const tick = (agent: Agent): void => {
    const x = agent.get('x') as number;
    const y = agent.get('y') as number;
    const variety = lattice.look(x, y);
    if (variety !== 0) filled.push({ agent, x, y, variety });
  };
  const open = (x: number, y: number): void => {
    lattice.cells++;
    STEP_X.forEach((dx, k) => {
      const besideX = x + dx;
      const besideY = y + STEP_Y[k];
      if (besideX < 0 || besideY < 0 || besideX === side || besideY === side) return;
      const cell = besideY * side + besideX;
      if (isFront[cell] === 1 || lattice.sample(besideX, besideY) !== 0) return;
      isFront[cell] = 1;
      opened.push({ x: besideX, y: besideY });
    });
  };

  for (let cell = 0; cell < side * side; cell++) {
    const x = cell % side;
    const y = Math.floor(cell / side);
    if (lattice.sample(x, y) !== 0) open(x, y);
  }
  while (!lattice.isDone) {
    for (const at of opened) environment.addAgent(new Agent({ ...at, tick }));
    opened.length = 0;
    environment.tick();
    for (const { x, y, variety } of filled) terrain.set(x, y, variety);
    for (const { x, y } of filled) open(x, y);
    // an agent whose cell was filled moves on to one that opened: removing agents costs the library a search
    for (const { agent } of filled) {
      const at = opened.pop();
      if (at) agent.set(at);
      else environment.removeAgent(agent);
    }
    filled.length = 0;
  }
  return lattice.end();
}
