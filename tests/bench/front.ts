/** The two-variety job by our engine, by general-purpose agent libraries and by a plain array: see spread.ts. */
import { median, msOf, rowOf, type Bar, type Row, type Section } from './row';
import { SIDES, type Spread, type Spreader } from './spread';
import { agentscriptSpreaders } from './spread-agentscript';
import { spreadByArray } from './spread-array';
import { dayOfCover, spreadByEngine } from './spread-engine';
import { spreadByAgents, spreadByTerrain } from './spread-flocc';

const SEEDS = 16;
const PEER_SEEDS = 3;
const BAR_RATIO = { 400: 12, 1200: 25 };
/** Days to cover may differ so much between the engine and the peers: the rules are not the same, the job is. */
const DAYS_APART = 0.06;

const NOTES = [
  'ours does per cell: a day of arrival from 8 neighbours with noise of polyps, births of polyps and their colour,',
  '  contacts, verdicts, zip, reversion, lapping and turnover of polyps, day by day, and keeps what readings need',
  'each peer does per empty cell and day: one lot, one look at a neighbour, one comparison; nothing else',
  'the libraries are used at their best: each day asks only the empty cells beside tissue (agentscript: a list of',
  '  patches; flocc: an agent for each); all peers must come to the same cells, day for day, or the bench stops',
];

interface Peer {
  readonly name: string;
  readonly by: Spreader;
  readonly isLibrary: boolean;
}

/** The libraries as their own examples use them, every cell every day: too slow for more than one seed at 400. */
interface Usual {
  readonly name: string;
  readonly by: Spreader;
}

function mustAgree(name: string, found: Spread, first: Spread | undefined): void {
  if (first && (found.sum !== first.sum || found.days !== first.days)) {
    throw new Error(`${name} did not grow the same cells as the peer before it`);
  }
}

function benchSide(
  side: (typeof SIDES)[number],
  peers: readonly Peer[],
): { rows: Row[]; bars: Bar[]; note: string } {
  const name = `front-${side}`;
  const own: number[] = [];
  const ownDays: number[] = [];
  const peerMs = new Map(peers.map((peer) => [peer.name, [] as number[]]));
  const peerDays: number[] = [];
  for (let seed = 1; seed <= SEEDS; seed++) {
    const days = dayOfCover(side, seed);
    ownDays.push(days);
    own.push(msOf(() => spreadByEngine(side, seed, days)));
    if (seed > PEER_SEEDS) continue;
    let first: Spread | undefined;
    for (const peer of peers) {
      let found: Spread | undefined;
      peerMs.get(peer.name)?.push(msOf(() => (found = peer.by(side, seed))));
      if (!found) continue;
      mustAgree(peer.name, found, first);
      first = found;
    }
    if (first) peerDays.push(first.days);
    // a library leaves millions of objects; clearing them away also takes compiled code of ours, so warm up again
    globalThis.gc?.();
    spreadByEngine(side, seed, days);
  }
  const apart = median(peerDays) / median(ownDays) - 1;
  if (Math.abs(apart) > DAYS_APART) throw new Error(`the fronts of the peers run ${apart} slower than ours`);
  const rows = peers.map((peer) => rowOf(name, median(own), peer.name, median(peerMs.get(peer.name) ?? [])));
  const fastest = Math.min(...rows.filter((_, k) => peers[k].isLibrary).map((row) => row.ratio));
  return {
    rows,
    bars: [
      {
        words: `${name}, faster than the fastest library`,
        found: fastest,
        bar: BAR_RATIO[side],
        bound: 'least',
        unit: 'times',
      },
    ],
    note: `${name}: 60 % cover on day ${median(ownDays)} by ours, ${median(peerDays)} by the peers`,
  };
}

function usualNote({ name, by }: Usual, expected: Spread): string {
  let found: Spread | undefined;
  const ms = msOf(() => (found = by(SIDES[0], 1)));
  if (found) mustAgree(name, found, expected);
  return `front-${SIDES[0]}, ${name}: ${ms.toFixed(0)} ms (1 seed)`;
}

export async function benchFronts(): Promise<Section> {
  const agentscript = await agentscriptSpreaders();
  const peers: Peer[] = [
    { name: 'agentscript', by: agentscript.frontOnly, isLibrary: true },
    { name: 'flocc', by: spreadByAgents, isLibrary: true },
    { name: 'plain array', by: spreadByArray, isLibrary: false },
  ];
  const usual: Usual[] = [
    { name: 'agentscript asking every patch every day, as its examples do', by: agentscript.everyPatch },
    { name: 'flocc with a rule on its Terrain, as its documentation does', by: spreadByTerrain },
  ];
  // warmed up at the smaller side, ours and theirs
  spreadByEngine(SIDES[0], 0, dayOfCover(SIDES[0], 0));
  for (const peer of peers) peer.by(SIDES[0], 0);
  const found = SIDES.map((side) => benchSide(side, peers));
  const expected = spreadByArray(SIDES[0], 1);
  return {
    title: `Two varieties to 60 % cover (median of ${SEEDS} seeds; peers: ${PEER_SEEDS})`,
    rows: found.flatMap(({ rows }) => rows),
    bars: found.flatMap(({ bars }) => bars),
    notes: [...found.map(({ note }) => note), ...usual.map((way) => usualNote(way, expected)), ...NOTES],
  };
}
