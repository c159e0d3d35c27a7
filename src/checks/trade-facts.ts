/** What growers see on their tiles and nobody has published: held against the defaults of the model. */
import { takeCensus } from '../measure/census';
import { areasMm2 } from '../measure/cover';
import { balanceOf } from '../measure/balance';
import { touchingPairOfRow } from '../measure/seam';
import { swirlOf } from '../measure/swirl';
import { veinWidthMm } from '../measure/vein-width';
import { frameOf } from '../model/frame';
import { grow } from '../model/grow';
import type { Layout } from '../model/layout';
import { FATE } from '../model/seam-table';
import { BARE, type State } from '../model/state';
import { compile } from '../plan/compile';
import { layOut, type LayoutName } from '../plan/layouts';
import type { Plan, Step } from '../plan/plan';
import { Skin } from '../skin/skin';
import { meanOf, type Mean } from '../stats/intervals';
import { dayOfMonth } from '../units/quantity';
import { grown, overSeeds, seedWords } from './bench-tile';
import { type Check, once, PRACTICE, type Topic } from './check';
import { dealtSquares } from './recut';

const CELL_MM = 0.5;
const SEEDS = 16;
const BECAUSE = `a direction and not a figure is known; ${SEEDS} seeds`;

interface Graft {
  readonly layout: LayoutName;
  readonly varieties: number;
  readonly cutMm: number;
  readonly gapMm?: number;
  readonly spanMm: number;
  readonly months: number;
  readonly acceptance?: number;
  readonly rims?: readonly number[];
  readonly aggression?: readonly number[];
}

/** A tile of 80 mm with all that the program starts with, but for the odds. */
function planOf(graft: Graft): Plan {
  const ids = ['a', 'b', 'c'].slice(0, graft.varieties);
  const tile = { shape: 'square', sizeMm: 80 } as const;
  return {
    seambench: 1,
    name: 'check',
    tile,
    varieties: ids.map((id, k) => ({
      id,
      name: id,
      colour: '#808080',
      rimMmPerMonth: graft.rims?.[k] ?? 3,
      aggression: graft.aggression?.[k] ?? 0.2,
    })),
    pairs: ids.flatMap((a, k) => ids.slice(k + 1).map((b) => ({ a, b, acceptance: graft.acceptance ?? 1 }))),
    pieces: layOut(graft.layout, {
      tile,
      varieties: ids,
      cutMm: graft.cutMm,
      gapMm: graft.gapMm ?? 0,
      spanMm: graft.spanMm,
    }),
    steps: [],
    months: graft.months,
  };
}

function layoutOf(graft: Graft): Layout {
  return compile(planOf(graft), CELL_MM);
}

function swirl(state: State): number {
  return swirlOf(state, takeCensus(state)) ?? Number.NaN;
}

function veinMm(state: State): number {
  return veinWidthMm(state, takeCensus(state), touchingPairOfRow(state)) ?? Number.NaN;
}

const HALVES: Graft = { layout: 'halves', varieties: 2, cutMm: 18, spanMm: 36, months: 18 };

/** Share of tissue on the other colour's side: within the cut, and in what has grown since. */
function strayed(state: State): { cut: number; rim: number } {
  const { variety, layout } = state;
  const { columns, rows } = layout;
  const tissue = [0, 0];
  const wrong = [0, 0];
  for (let i = 0; i < variety.length; i++) {
    if (variety[i] === 0 || variety[i] === BARE) continue;
    const x = ((i % columns) - (columns - 1) / 2) * CELL_MM;
    const y = (Math.floor(i / columns) - (rows - 1) / 2) * CELL_MM;
    const where = Math.max(Math.abs(x), Math.abs(y)) > 18 ? 1 : 0;
    tissue[where]++;
    if ((variety[i] === 1) !== x < 0) wrong[where]++;
  }
  return { cut: wrong[0] / tissue[0], rim: wrong[1] / tissue[1] };
}

/** Halves at months 3 and 18, by seed. */
const halvesGrown = once(() => {
  const layout = layoutOf(HALVES);
  return seedWords(SEEDS).map((seed) => {
    const found = new Map<number, { swirl: number; cut: number; rim: number }>();
    for (const state of grow(layout, seed))
      if (state.day === dayOfMonth(3) || state.day === dayOfMonth(18))
        found.set(state.day, { swirl: swirl(state), ...strayed(state) });
    const [early, late] = [...found.values()];
    return { early, late };
  });
});

const halfAndHalf: readonly Check[] = [
  {
    name: 'halves first stay half and half',
    claim: 'after 3 months at least 95 % of the tissue of a fused half-and-half stands on its own side',
    source: PRACTICE,
    unit: 'share of what was cut',
    expected: 0.95,
    bound: 'atLeast',
    tolerance: 0,
    because: BECAUSE,
    run: () => meanOf(halvesGrown().map(({ early }) => 1 - early.cut)),
  },
  {
    name: 'then veins come',
    claim: 'from month 3 to 18 the swirl of a fused half-and-half rises: late over early',
    source: PRACTICE,
    unit: 'swirl over swirl',
    expected: 1,
    bound: 'atLeast',
    tolerance: 0,
    because: BECAUSE,
    run: () => meanOf(halvesGrown().map(({ early, late }) => late.swirl / early.swirl)),
  },
  {
    name: 'veins come along the rim',
    claim:
      'at month 18 the other colour has a greater share of the grown rim than of the cut: one over the other',
    source: PRACTICE,
    unit: 'share over share',
    expected: 1,
    bound: 'atLeast',
    tolerance: 0,
    because: BECAUSE,
    run: () => {
      const late = halvesGrown().map((run) => run.late);
      return meanOf(late.map(({ rim }) => rim)).mean / meanOf(late.map(({ cut }) => cut)).mean;
    },
  },
];

const RECUT_SEEDS = 8;
const STRIPS: Graft = { layout: 'strips', varieties: 3, cutMm: 12, spanMm: 36, months: 14 };

/** Vein width of recut over left alone, six months after the cut at month 8. Each seed has a deal of its own. */
const recutRatio = once((): Mean => {
  const plan = planOf(STRIPS);
  const left = compile(plan, CELL_MM);
  const day = dayOfMonth(8);
  const trim: Step = { id: 'trim', day, kind: 'trim', widthMm: 3 };
  return meanOf(
    seedWords(RECUT_SEEDS).map((seed, k) => {
      const steps = [trim, dealtSquares(plan.tile, 5, day, 0xc07 + k)];
      return veinMm(grown(compile({ ...plan, steps }, CELL_MM), seed)) / veinMm(grown(left, seed));
    }),
  );
});

const recutFiner: Check = {
  name: 'trimmed and recut grows finer',
  claim:
    'a fused three-colour graft, trimmed at month 8, cut to squares of 5 mm and set anew, has narrower veins at month 14 than one left alone',
  source: PRACTICE,
  unit: 'width over width',
  expected: 1,
  bound: 'atMost',
  tolerance: 0,
  because: `a direction and not a figure is known; ${RECUT_SEEDS} seeds`,
  run: () => recutRatio(),
};

const fineCuts: Check = {
  name: 'small cuts make fine colour',
  claim: 'a chequer of 4 mm cuts has narrower veins at month 12 than one of 12 mm cuts',
  source: PRACTICE,
  unit: 'width over width',
  expected: 1,
  bound: 'atMost',
  tolerance: 0,
  because: BECAUSE,
  run: () => {
    const [fine, coarse] = [4, 12].map((cutMm) => {
      const layout = layoutOf({ layout: 'chequer', varieties: 2, cutMm, spanMm: 24, months: 12 });
      return overSeeds(layout, SEEDS, veinMm);
    });
    return meanOf(fine.map((width, k) => width / coarse[k]));
  },
};

const unevenRates: Check = {
  name: 'a faster colour takes over',
  claim: 'of fused strips at 3.6 and 2.4 mm/month the balance falls from month 3 to 18',
  source: PRACTICE,
  unit: 'balance',
  expected: 0,
  bound: 'atLeast',
  tolerance: 0,
  because: BECAUSE,
  run: () => {
    const layout = layoutOf({ ...HALVES, layout: 'strips', cutMm: 6, spanMm: 24, rims: [3.6, 2.4] });
    return meanOf(
      seedWords(SEEDS).map((seed) => {
        const balances: number[] = [];
        for (const state of grow(layout, seed))
          if (state.day === dayOfMonth(3) || state.day === dayOfMonth(18))
            balances.push(balanceOf(areasMm2(takeCensus(state)), layout.pieces) ?? Number.NaN);
        return balances[0] - balances[1];
      }),
    );
  },
};

const paleWall: Check = {
  name: 'a wall is a pale line',
  claim:
    'where two halves refused, the picture is paler on the wall than on the tissue beside it, at month 12',
  source: PRACTICE,
  unit: 'of 255 steps of paleness',
  expected: 20,
  bound: 'atLeast',
  tolerance: 0,
  because: 'a line that is 8 % paler than its ground is seen; one seed, all ridge contacts',
  run: () => {
    const plan = planOf({ ...HALVES, acceptance: 0, months: 12 });
    const state = grown(compile(plan, 0.25), '1');
    const frame = frameOf(state, 12);
    const skin = new Skin(frame, plan.tile);
    skin.fill(frame, 315);
    const wall: number[] = [];
    const beside: number[] = [];
    for (let i = 0; i < frame.label.length; i++) {
      if ((frame.seam[i] & 7) !== FATE.ridge) continue;
      wall.push(skin.surface[4 * i + 2]);
      // 3 mm to either side
      for (const away of [-12, 12]) beside.push(skin.surface[4 * (i + away) + 2]);
    }
    return meanOf(wall).mean - meanOf(beside).mean;
  },
};

const risesOver: Check = {
  name: 'one side rises over the other',
  claim: 'where the stronger neighbour laps, its lip stands higher than the tissue 1 mm ahead of it, month 6',
  source: PRACTICE,
  unit: 'mm',
  expected: 0.3,
  bound: 'atLeast',
  tolerance: 0,
  because: `a step of 0.3 mm throws a shadow that is seen; ${SEEDS} seeds, all contacts lapped at least 10 days ago`,
  run: () => {
    const layout = layoutOf({ ...HALVES, acceptance: 0, aggression: [1, 0], months: 6 });
    const sure = { ...layout, rates: { ...layout.rates, lapGain: 2, deadShare: 0 } };
    return meanOf(
      seedWords(SEEDS).map((seed) => {
        const { seam, height } = frameOf(grown(sure, seed), 6);
        const steps: number[] = [];
        // bit 3: this side covers; the stronger half lies left, so it covers to the right
        for (let i = 0; i < seam.length; i++)
          if ((seam[i] & 15) === (FATE.lapped | 8)) steps.push((height[i] - height[i + 2]) / 100);
        return meanOf(steps).mean;
      }),
    );
  },
};

export const TRADE_FACTS: Topic = {
  title: 'What growers see',
  quick: false,
  checks: [...halfAndHalf, recutFiner, fineCuts, unevenRates, paleWall, risesOver],
};
