/** The rim at finer cells, and at half and double the engine's day. */
import { type Check, once, type Topic } from './check';
import { rateRatios } from './fronts';

const CELLS_MM = [0.125, 0.25, 0.5];
const STEPS_DAYS = [0.5, 1, 2];
const RIM = 3;

function stepChecks(cellMm: number, stepDays: number): Check[] {
  const ratios = once(() => rateRatios(RIM, cellMm, 30, stepDays));
  const step = stepDays === 1 ? 'a day' : `${stepDays} days`;
  const common = {
    source:
      'definition of the rim rate; first-order eikonal solver: Tsitsiklis 1995, IEEE Trans. Autom. Control 40: 1528-1538',
    unit: 'of the asked rate',
    expected: 0,
    tolerance: 0.01,
    because: 'asked for; neither cell nor step may matter more than 1 %',
  };
  return [
    {
      ...common,
      name: `rim rate at cell ${cellMm} mm and steps of ${step}`,
      claim: `the rim advances at the asked ${RIM} mm/month: worst of 72 directions over 30 mm`,
      run: () =>
        ratios().reduce((worst, ratio) => (Math.abs(ratio - 1) > Math.abs(worst) ? ratio - 1 : worst), 0),
    },
    {
      ...common,
      name: `round rim at cell ${cellMm} mm and steps of ${step}`,
      claim: 'a disc stays a disc: fastest less slowest of 72 directions',
      run: () => Math.max(...ratios()) - Math.min(...ratios()),
    },
  ];
}

export const STEPS: Topic = {
  title: 'Rims at other cells and steps',
  quick: false,
  checks: CELLS_MM.flatMap((cellMm) =>
    // days at 0.25 and 0.5 mm are among the quick checks
    STEPS_DAYS.filter((stepDays) => stepDays !== 1 || cellMm < 0.25).flatMap((stepDays) =>
      stepChecks(cellMm, stepDays),
    ),
  ),
};
