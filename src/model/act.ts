/** A step of the plan done to the tile of its day. What each kind means is told in DEVELOPERS.md, 'Steps'. */
import { beginWork, countCuttings, countLost } from './count-work';
import { marked, ownPlaces } from './cell-list';
import { carried } from './covered';
import { clear, edgeOf, freshen, healBeside, isLiving, standBehind } from './clear';
import type { Cut, GridPath } from './cuts';
import { cellsInside, distances, forRunsInside, lowerAlong } from './distance';
import { named } from './pieces';
import { relocate, type Moved } from './relocate';
import { renumber } from './renumber';
import { before, reseam, type Before } from './reseam';
import { repolyp } from './repolyp';
import { knit } from './knit';
import { setFresh } from './set';
import { FLAG, type State } from './state';
import { wakeAll } from './wake-all';
import type { Work } from './works';

/** How far from a drawn stretch the rim still belongs to it, mm, where the trim is narrower than this. */
const NEAR_STRETCH_MM = 2;
/** How far behind a cut its exact depth is wanted, cells. */
const BEHIND = 4;
/** Saws are set this much off, cells: a band that ends on two lines of cells' centres takes one of them. */
const OFF_LATTICE = 1e-3;
/** A band of no more than this to either side can pass between two cells, cells. */
const THIN = 0.5;

/** Does the step to the tile as it stands at the start of day `now`. */
export function act(state: State, cut: Cut, now: number): void {
  const work = beginWork(state, cut.step, cut.day);
  const was = before(state);
  switch (cut.kind) {
    case 'trim':
      takeOff(state, trimmed(state, cut), now, work);
      break;
    case 'lift': {
      const is = named(state.pieces, cut.name);
      const off = marked(state.origin.length, (i) => is[state.origin[i]] === 1);
      if (!off.includes(1)) work.skipped++;
      takeOff(state, off, now, work);
      break;
    }
    case 'isolate':
      isolate(state, cut, now, work);
      break;
    case 'scrape':
      sawAlong(state, [cut.along], cut.halfWidth, now, work);
      break;
    case 'add': {
      const graft = setFresh(state, cut.fresh, now, work);
      finish(state, was);
      knit(state, graft, cut.seams, now);
      return;
    }
    case 'recut':
      recut(state, cut, was, now, work);
      return;
    case 'move':
      move(state, cut, was, now, work);
      return;
  }
  finish(state, was);
}

/** Left out, every cell's tissue is where it was, and no piece has got another number. */
function finish(
  state: State,
  was: Before,
  places: Int32Array = ownPlaces(state.origin.length),
  group: Uint16Array = new Uint16Array(state.pieces.count + 1),
): void {
  const { origin } = state;
  const isChanged = marked(origin.length, (i) => origin[i] !== was.origin[i] || places[i] !== i);
  state.covered = carried(state.covered, places, (i) => (state.flags[i] & FLAG.lapped) !== 0);
  reseam(state, was, places, group);
  repolyp(state, isChanged);
  wakeAll(state);
}

/** Marked tissue comes off as cuttings; the edges that stay heal. */
function takeOff(state: State, isOff: Uint8Array, now: number, work: Work): void {
  countCuttings(state, isOff, work);
  clear(state, isOff);
  healBeside(state, isOff, now);
}

/** Tissue within the width of the rim: of ground without tissue, the tile's edge included. */
function trimmed(state: State, { width, along, name }: Cut & { kind: 'trim' }): Uint8Array {
  const { layout, variety, origin } = state;
  const { columns, rows, cellMm } = layout;
  const ground = marked(variety.length, (i) => variety[i] === 0);
  if (along !== null) {
    const near = new Float32Array(ground.length).fill(Infinity);
    lowerAlong(near, along, Math.max(width, NEAR_STRETCH_MM / cellMm), columns, rows);
    near.forEach((d, i) => {
      if (d === Infinity) ground[i] = 0;
    });
  }
  const toRim = distances(ground, columns, rows);
  const is = name === 0 ? null : named(state.pieces, name);
  return marked(
    toRim.length,
    (i) => variety[i] !== 0 && toRim[i] - 0.5 < width && (is === null || is[origin[i]] === 1),
  );
}

/** Clears a band about the paths; what was there is lost. Returns by piece whether it was cut. */
function sawAlong(
  state: State,
  paths: readonly GridPath[],
  half: number,
  now: number,
  work: Work,
): Uint8Array {
  const { columns, rows } = state.layout;
  const depth = new Float32Array(state.variety.length).fill(Infinity);
  for (const path of paths)
    lowerAlong(
      depth,
      path.map(([x, y]) => [x + OFF_LATTICE, y + 0.6 * OFF_LATTICE]),
      half + BEHIND,
      columns,
      rows,
    );
  depth.forEach((d, i) => (depth[i] = d - half));
  const isOff = marked(depth.length, (i) => depth[i] < 0);
  countLost(state, isOff, work);
  clear(state, isOff);
  const wounded = healBeside(state, isOff, now, depth);
  if (half > THIN) return wounded;
  // between two lines of cells the blade takes none, and yet it parts them
  const living = (i: number): boolean => isLiving(state, i);
  const beside = marked(depth.length, (i) => depth[i] <= 1 && living(i));
  standBehind(state, beside, living, now + state.layout.rates.healingDays, depth).forEach(
    (one, o) => (wounded[o] |= one),
  );
  freshen(state, wounded, now);
  return wounded;
}

/** What is cut out leaves the tile less the kerf; half the kerf is lost on each side of the line. */
function isolate(
  state: State,
  { around, halfKerf }: Cut & { kind: 'isolate' },
  now: number,
  work: Work,
): void {
  const { columns, rows } = state.layout;
  sawAlong(state, [[...around, around[0]]], halfKerf, now, work);
  const isOff = cellsInside([around], columns, rows);
  countCuttings(state, isOff, work);
  clear(state, isOff);
}

function recut(state: State, cut: Cut & { kind: 'recut' }, was: Before, now: number, work: Work): void {
  const { columns, rows } = state.layout;
  const wounded = sawAlong(state, cut.lines, cut.halfKerf, now, work);
  const face = new Uint16Array(state.variety.length);
  cut.faces.forEach(({ rings }, k) => {
    forRunsInside(rings, columns, rows, (row, first, last) => {
      face.fill(k + 1, row * columns + first, row * columns + last + 1);
    });
  });
  const group = renumber(
    state,
    (i) => face[i],
    (k) => cut.faces[k - 1].name,
    wounded,
    now,
    cut.coin,
  );
  const moves: Moved[] = cut.placed.map(({ name, rigid }) => ({
    group: cut.faces.findIndex((one) => one.name === name) + 1,
    rigid,
  }));
  const from = relocate(state, moves, (i) => group[state.origin[i]], work);
  finish(state, was, from, group);
}

/** The piece is broken off whatever it has grown together with: both sides heal as cut edges do. */
function move(
  state: State,
  { name, rigid }: Cut & { kind: 'move' },
  was: Before,
  now: number,
  work: Work,
): void {
  const { pieces, origin, layout } = state;
  const is = named(pieces, name);
  const ours = marked(origin.length, (i) => is[origin[i]] === 1);
  const theirs = marked(origin.length, (i) => origin[i] !== 0 && is[origin[i]] === 0);
  const healed = now + layout.rates.healingDays;
  const isOurs = (i: number): boolean => ours[i] === 1 && isLiving(state, i);
  const isTheirs = (i: number): boolean => theirs[i] === 1 && isLiving(state, i);
  const parted = [edgeOf(state, theirs, isOurs), edgeOf(state, ours, isTheirs)];
  const wounded = standBehind(state, parted[0], isOurs, healed);
  standBehind(state, parted[1], isTheirs, healed).forEach((one, o) => (wounded[o] |= one));
  freshen(state, wounded, now);
  const group = renumber(
    state,
    (i) => ours[i],
    () => 0,
    wounded,
    now,
    false,
  );
  const from = relocate(state, [{ group: 1, rigid }], (i) => group[origin[i]], work);
  finish(state, was, from, group);
}
