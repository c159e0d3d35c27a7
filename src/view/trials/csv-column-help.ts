/** What each column of the log's CSV holds, for who writes a table by hand. */
import { LOG_COLUMNS, type LogColumn } from '../../trials/log-csv-columns';

export interface ColumnHelp {
  readonly words: string;
  readonly example: string;
}

export const COLUMN_HELP: Readonly<Record<LogColumn, ColumnHelp>> = {
  tag: {
    words: 'What stands on the tile’s tag. Every row of a tile or a reading needs it.',
    example: 'A-14',
  },
  set_on: {
    words: 'The day the tile was set. One row of each tile needs it.',
    example: '2026-01-05',
  },
  varieties: {
    words: 'All on the tile, with semicolons. Left out, they are those that its rows name.',
    example: 'Fern; Garnet',
  },
  tank: { words: 'Where the tile hangs, or where an event was.', example: 'North' },
  light: { words: 'The tile’s light, in your words.', example: 'blue, 200' },
  flow: { words: 'The water’s flow, in your words.', example: 'gentle' },
  temperature: { words: 'In your words.', example: '25.5' },
  piece_mm: { words: 'Size of the pieces as they were set, in mm.', example: '20' },
  gap_mm: { words: 'Gap between the pieces, in mm.', example: '2' },
  on: { words: 'The day of the reading or the event.', example: '2026-04-02' },
  by: { words: 'Initials of who read it.', example: 'JK' },
  variety: { words: 'The variety that the row speaks of; of a pair, one of the two.', example: 'Fern' },
  with: { words: 'The other one of the pair.', example: 'Garnet' },
  saw: {
    words: 'Of the pair: fused, ridge, lapped, dead, undecided, not met or cant tell.',
    example: 'lapped',
  },
  over: { words: 'Of a lapped or dead seam: the variety that lies over the other.', example: 'Garnet' },
  share: { words: 'Part of the seam that was so; all of it where empty.', example: '40 %' },
  ridge_mm: { words: 'Height of the ridge, in mm.', example: '0.8' },
  radius_mm: { words: 'Size of the variety: its radius, or half its mean width, in mm.', example: '14.5' },
  area_mm2: { words: 'Or its area, in mm2.', example: '660' },
  outline: { words: 'Or the corners of its outline, in mm.', example: '0 0; 10 0; 10 8' },
  state: { words: 'Of the variety: alive, died or lost.', example: 'died' },
  photo: { words: 'Id of a photo that is in the log; pictures do not travel by CSV.', example: 'p3' },
  note: { words: 'Anything else.', example: 'pale rim' },
  reading: { words: '2 for a second reading of the same day by the same person.', example: '2' },
  group: { words: 'Of the variety: its species, or what you take for one.', example: 'Montipora' },
  colour: { words: 'Of the variety.', example: '#2f7d4f' },
  worth: { words: 'Of the variety: what a merge with it is worth to you.', example: '3' },
  event: {
    words: 'Makes the row an event of the tank: dip, pest, move, fault, light or other.',
    example: 'move',
  },
  plan: {
    words: 'In place of piece_mm and gap_mm: a plan file with its seed, on one line.',
    example: '',
  },
  log: { words: 'The log’s name, on a row of its own; an empty log takes it.', example: 'North house' },
};

/** In the order of the columns. */
export const COLUMNS_HELP = LOG_COLUMNS.map((column) => ({ column, ...COLUMN_HELP[column] }));
