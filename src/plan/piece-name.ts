/** What a person calls a piece: variety, form, size and place on the tile. Its id is for the file alone. */
import { ownOutline, varietiesOf } from './outline';
import type { Piece, Plan, Xy } from './plan';

/** Nearer to the middle than this is in the middle, mm. */
const MIDDLE_MM = 0.5;

/** 'the Garnet disc of 12 mm, 18 mm right of and 9 mm above the middle'. */
export function pieceName(plan: Plan, piece: Piece): string {
  const nameOf = (variety: string): string => plan.varieties.find(({ id }) => id === variety)?.name ?? '';
  const variety = varietiesOf(piece).map(nameOf).filter(Boolean).join(' and ');
  const kind = 'patches' in piece ? 'graft' : 'piece';
  const form =
    'disc' in piece
      ? `disc of ${short(piece.disc.diameterMm)} mm`
      : `${kind} of ${extent(ownOutline(piece))} mm`;
  return `the ${variety === '' ? '' : `${variety} `}${form}, ${placeName(piece.at)}`;
}

/** '18 mm right of and 9 mm above the middle'. */
export function placeName([x, y]: Xy): string {
  const across = part(x, 'left of', 'right of');
  const along = part(y, 'above', 'below');
  if (across === '' && along === '') return 'in the middle';
  return `${[across, along].filter(Boolean).join(' and ')} the middle`;
}

function part(mm: number, less: string, more: string): string {
  return Math.abs(mm) < MIDDLE_MM ? '' : `${Math.round(Math.abs(mm))} mm ${mm < 0 ? less : more}`;
}

function extent(outline: readonly Xy[]): string {
  return [0, 1]
    .map((axis) => {
      const along = outline.map((corner) => corner[axis]);
      return short(Math.max(...along) - Math.min(...along));
    })
    .join(' by ');
}

/** One decimal, none where it is zero. */
export function short(value: number): string {
  return String(Number(value.toFixed(1)));
}

export function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
