/** What each column of the log's CSV holds, for who writes a table by hand. */
import { LOG_COLUMNS, type LogColumn } from '../../trials/log-csv-columns';

interface ColumnHelp {
  /** As the page calls it. */
  readonly name: string;
  readonly words: string;
  readonly example: string;
}

const COLUMN_HELP: Readonly<Record<LogColumn, ColumnHelp>> = {
  tag: {
    name: 'tile tag',
    words: 'What stands on the tile’s tag. Every row of a tile or a reading needs it.',
    example: 'A-14',
  },
  set_on: {
    name: 'tile set on',
    words: 'The day the tile was set. One row of each tile needs it.',
    example: '2026-01-05',
  },
  varieties: {
    name: 'all varieties on the tile',
    words: 'All on the tile, with semicolons. Left out, they are those that its rows name.',
    example: 'Fern; Garnet',
  },
  tank: { name: 'tank', words: 'Where the tile hangs, or where an event was.', example: 'North' },
  light: { name: 'light', words: 'The tile’s light, in your words.', example: 'blue, 200' },
  flow: { name: 'flow', words: 'The water’s flow, in your words.', example: 'gentle' },
  temperature: { name: 'temperature', words: 'In your words.', example: '25.5' },
  piece_mm: {
    name: 'size of pieces, mm',
    words: 'Size of the pieces as they were set, in mm.',
    example: '20',
  },
  gap_mm: { name: 'gap, mm', words: 'Gap between the pieces, in mm.', example: '2' },
  on: { name: 'read on', words: 'The day of the reading or the event.', example: '2026-04-02' },
  by: { name: 'read by', words: 'Initials of who read it.', example: 'JK' },
  variety: {
    name: 'variety',
    words: 'The variety that the row speaks of; of a pair, one of the two.',
    example: 'Fern',
  },
  with: { name: 'beside which variety', words: 'The other one of the pair.', example: 'Garnet' },
  saw: {
    name: 'what was seen',
    words: 'Of the pair: fused, ridge, lapped, dead, undecided, not met or cant tell.',
    example: 'lapped',
  },
  over: {
    name: 'which lies over',
    words: 'Of a lapped or dead seam: the variety that lies over the other.',
    example: 'Garnet',
  },
  share: {
    name: 'share of the seam',
    words: 'Part of the seam that was so; all of it where empty.',
    example: '40 %',
  },
  ridge_mm: { name: 'ridge height, mm', words: 'Height of the ridge, in mm.', example: '0.8' },
  radius_mm: {
    name: 'rim radius, mm',
    words: 'Size of the variety: its radius, or half its mean width, in mm.',
    example: '14.5',
  },
  area_mm2: { name: 'area, mm²', words: 'Or its area, in mm².', example: '660' },
  outline: { name: 'outline', words: 'Or the corners of its outline, in mm.', example: '0 0; 10 0; 10 8' },
  state: { name: 'alive, died or lost', words: 'Of the variety: alive, died or lost.', example: 'died' },
  photo: {
    name: 'photo',
    words: 'Id of a photo that is in the log; pictures do not travel by CSV.',
    example: 'p3',
  },
  note: { name: 'note', words: 'Anything else.', example: 'pale rim' },
  reading: {
    name: 'which reading of the day',
    words: '2 for a second reading of the same day by the same person.',
    example: '2',
  },
  group: {
    name: 'group of the variety',
    words: 'Of the variety: its species, or what you take for one.',
    example: 'Montipora',
  },
  colour: { name: 'colour of the variety', words: 'Of the variety.', example: '#2f7d4f' },
  worth: {
    name: 'worth of the variety',
    words: 'Of the variety: what a merge with it is worth to you.',
    example: '3',
  },
  event: {
    name: 'event of the tank',
    words: 'Makes the row an event of the tank: dip, pest, move, fault, light or other.',
    example: 'move',
  },
  plan: {
    name: 'plan',
    words: 'In place of piece_mm and gap_mm: a plan file with its seed, on one line.',
    example: '',
  },
  log: {
    name: 'name of the log',
    words: 'The log’s name, on a row of its own; an empty log takes it.',
    example: 'North house',
  },
};

/** In the order of the columns. */
export const COLUMNS_HELP = LOG_COLUMNS.map((column) => ({ column, ...COLUMN_HELP[column] }));
