/**
 * The engine's step is one day, and it reads all times and rates from the layout. The same tile in steps of another
 * length is therefore the layout with its times divided and its rates multiplied by that length: where the engine says
 * day, read step. Growth, verdicts, zip, lapping and turnover then all run at the other step; draws are counted by
 * steps, so chance falls otherwise and only means over seeds can be compared.
 */
import type { Layout } from '../model/layout';

export function withSteps(layout: Layout, stepDays: number): Layout {
  const { pieces, pairs, rates } = layout;
  return {
    ...layout,
    startDay: layout.startDay.map((day) => day / stepDays),
    pieces: {
      ...pieces,
      healedDay: pieces.healedDay.map((day) => day / stepDays),
      freshUntilDay: pieces.freshUntilDay.map((day) => day / stepDays),
    },
    rimMmPerDay: layout.rimMmPerDay.map((rate) => rate * stepDays),
    pairs: {
      ...pairs,
      revertPerDay: pairs.revertPerDay.map((rate) => rate * stepDays),
      turnoverPerDay: pairs.turnoverPerDay.map((rate) => rate * stepDays),
    },
    rates: {
      ...rates,
      verdictDelayDays: rates.verdictDelayDays / stepDays,
      zipMmPerDay: rates.zipMmPerDay * stepDays,
      nucleiPerMmDay: rates.nucleiPerMmDay * stepDays,
      lapMmPerDay: rates.lapMmPerDay * stepDays,
      ridgeMmPerDay: rates.ridgeMmPerDay * stepDays,
      healingDays: rates.healingDays / stepDays,
      freshCutDays: rates.freshCutDays / stepDays,
    },
    days: Math.round(layout.days / stepDays),
  };
}
