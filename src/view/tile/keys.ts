/** What keys do while the tile has the focus; the list of keys in Help is printed from here. */
import { placePart } from '../../plan/edit-steps';
import { duplicatePieces, movePieces, turnPieces } from '../../plan/edit';
import type { Edit } from '../../plan/edit';
import { MAX_PIECES, type Xy } from '../../plan/plan';
import { cutOut, keepLine, proposePatch, proposeRound } from '../cut/cut-tool';
import { turnPart, type Part } from '../cut/parts';
import type { Desk } from '../desk.svelte';
import { pieceWords } from './describe';
import type { Hold } from './hold.svelte';
import { closeSketch, setStamp, TILE_IS_FULL } from './set-down';

export const TILE_KEYS: readonly { readonly keys: string; readonly words: string }[] = [
  { keys: 'N, Shift+N', words: 'Chooses the next piece, or the one before.' },
  {
    keys: 'Arrow keys',
    words: 'Nudge the chosen pieces by 0.5 mm, with Shift by 5 mm; else move the crosshair or the view.',
  },
  { keys: '[ and ]', words: 'Turn the chosen pieces by 5 degrees, with Shift by 1 degree.' },
  { keys: 'Ctrl+D', words: 'Duplicates the chosen pieces.' },
  {
    keys: 'Enter',
    words: 'Sets a piece or an outline’s corner at the crosshair; on the first corner it closes the outline.',
  },
  {
    keys: 'Enter, arrow keys',
    words:
      'With the section tool: Enter lays the line, then takes its other end; arrow keys move that end by 0.5 mm, with Shift by 5 mm.',
  },
  {
    keys: 'Enter',
    words:
      'With the cut line tool: sets a corner at the crosshair, and on the last corner ends the line; takes the patch there, and then cuts it out.',
  },
  {
    keys: 'N, arrow keys, [ and ]',
    words: 'While a recut is chosen: choose, nudge and turn its parts as pieces are.',
  },
  { keys: 'Backspace', words: 'Takes back the last corner of what is being drawn.' },
  { keys: '+, - and 0', words: 'Zoom in, zoom out, show the whole tile.' },
];

/** What is needed of a keyboard event. */
export interface Key {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

const NUDGE_MM = 0.5;
const NUDGE_FAR_MM = 5;
const TURN_DEG = 5;
const TURN_FINE_DEG = 1;
const DUPLICATE_GAP_MM = 3;
const ZOOM = 1.25;
const CLOSE_MM = 1;

const ARROWS: Readonly<Record<string, Xy>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** True if the key meant something here. */
export function pressKey(key: Key, desk: Desk, hold: Hold): boolean {
  if (key.altKey) return false;
  if (key.ctrlKey || key.metaKey) return key.key.toLowerCase() === 'd' && duplicate(desk, hold);
  const arrow = ARROWS[key.key];
  if (arrow) return goBy(arrow, key.shiftKey ? NUDGE_FAR_MM : NUDGE_MM, desk, hold);
  switch (key.key) {
    case 'n':
    case 'N':
      return chooseNext(desk, hold, key.shiftKey ? -1 : 1);
    case '[':
    case '{':
      return turn(desk, hold, key.key === '{' || key.shiftKey ? -TURN_FINE_DEG : -TURN_DEG);
    case ']':
    case '}':
      return turn(desk, hold, key.key === '}' || key.shiftKey ? TURN_FINE_DEG : TURN_DEG);
    case '+':
    case '=':
      hold.zoom(ZOOM);
      return true;
    case '-':
      hold.zoom(1 / ZOOM);
      return true;
    case '0':
      hold.fit();
      return true;
    case 'Enter':
      return enter(desk, hold);
    case 'Backspace':
      return hold.takeBackCorner();
    case 'Escape':
      return hold.leave();
    default:
      return false;
  }
}

/** An edit in one go, its refusal said and shown at the piece. */
function act(desk: Desk, hold: Hold, edit: Edit): boolean {
  const refusals = desk.do(edit);
  const piece = desk.plan.pieces.find(({ id }) => id === desk.selection[0]);
  hold.refused = null;
  if (piece && refusals.length > 0) hold.refuse(`${refusals[0].cure}.`, piece.at);
  return true;
}

/** An edit of the chosen step. */
function actOnStep(desk: Desk, hold: Hold, edit: Edit, at: Xy): boolean {
  hold.refused = null;
  const [refusal] = desk.do(edit);
  if (refusal) hold.refuse(`${refusal.cure}.`, at);
  return true;
}

function chosenPart(desk: Desk, hold: Hold): Part | undefined {
  return desk.tool === 'choose' ? hold.parts.find(({ piece }) => piece === desk.part) : undefined;
}

function goBy([x, y]: Xy, stepMm: number, desk: Desk, hold: Hold): boolean {
  const part = chosenPart(desk, hold);
  if (part && desk.step !== null) {
    const to: Xy = [part.at[0] + x * stepMm, part.at[1] + y * stepMm];
    return actOnStep(desk, hold, placePart(desk.plan, desk.step, part.piece, { ...part, at: to }), to);
  }
  if (desk.tool === 'choose' && desk.selection.length > 0) {
    return act(desk, hold, movePieces(desk.plan, desk.selection, x * stepMm, y * stepMm));
  }
  if (desk.tool === 'section' && hold.sectionLine) {
    const { sectionEnd, sectionLine } = hold;
    const [atX, atY] = sectionLine[sectionEnd];
    hold.laySection({ ...sectionLine, [sectionEnd]: [atX + x * stepMm, atY + y * stepMm] });
    hold.reveal(hold.sectionLine[sectionEnd]);
    hold.saySection();
    return true;
  }
  if (desk.tool !== 'set' && desk.tool !== 'outline' && desk.tool !== 'cut') {
    hold.pan(-x * 40, -y * 40);
    return true;
  }
  const half = desk.shown.tile.sizeMm / 2;
  const from = hold.crossAt;
  const within = (mm: number): number => Math.min(half, Math.max(-half, mm));
  hold.cross = [within(from[0] + x * stepMm), within(from[1] + y * stepMm)];
  hold.ghostAt = hold.cross;
  hold.reveal(hold.cross);
  hold.said = `${hold.cross[0].toFixed(1)}, ${hold.cross[1].toFixed(1)} mm`;
  return true;
}

function chooseNext(desk: Desk, hold: Hold, by: 1 | -1): boolean {
  if (desk.tool === 'choose' && hold.parts.length > 0) return chooseNextPart(desk, hold, by);
  const { pieces } = desk.plan;
  if (pieces.length === 0) return true;
  const now = pieces.findIndex(({ id }) => id === desk.selection[0]);
  const next = now < 0 ? (by > 0 ? 0 : pieces.length - 1) : (now + by + pieces.length) % pieces.length;
  desk.select([pieces[next].id]);
  hold.refused = null;
  hold.said = pieceWords(desk.plan, pieces[next]);
  return true;
}

function chooseNextPart(desk: Desk, hold: Hold, by: 1 | -1): boolean {
  const { parts } = hold;
  const now = parts.findIndex(({ piece }) => piece === desk.part);
  const next = now < 0 ? (by > 0 ? 0 : parts.length - 1) : (now + by + parts.length) % parts.length;
  const { piece, at } = parts[next];
  desk.select([]);
  desk.part = piece;
  hold.reveal(at);
  hold.said = `Part ${piece}, ${at[0].toFixed(1)}, ${at[1].toFixed(1)} mm.`;
  return true;
}

function turn(desk: Desk, hold: Hold, deg: number): boolean {
  const part = chosenPart(desk, hold);
  if (part && desk.step !== null)
    return actOnStep(desk, hold, turnPart(desk.plan, desk.step, part, part.turnDeg + deg), part.at);
  if (desk.selection.length === 0) return false;
  return act(desk, hold, turnPieces(desk.plan, desk.selection, deg));
}

function duplicate(desk: Desk, hold: Hold): boolean {
  const models = desk.plan.pieces.filter(({ id }) => desk.selection.includes(id));
  if (models.length === 0) return true;
  if (desk.plan.pieces.length >= MAX_PIECES) {
    hold.refuse(`${TILE_IS_FULL}.`, models[0].at);
    return true;
  }
  const before = new Set(desk.plan.pieces.map(({ id }) => id));
  for (const [dx, dy] of places(desk, models.length)) {
    const edit = duplicatePieces(desk.plan, desk.selection, dx, dy);
    if (desk.do(edit).length > 0) continue;
    desk.select(desk.plan.pieces.filter(({ id }) => !before.has(id)).map(({ id }) => id));
    return true;
  }
  hold.refuse('There is no free place for a copy: move pieces or choose a larger tile.', models[0].at);
  return true;
}

/** Shifts to try for a copy, near ones first: right, below, left, above, then the slants. */
function places(desk: Desk, many: number): Xy[] {
  const size = desk.plan.tile.sizeMm;
  const step = DUPLICATE_GAP_MM;
  const shifts: Xy[] = [];
  for (let far = step; far < size; far += step) {
    shifts.push([far, 0], [0, far], [-far, 0], [0, -far]);
    if (many < 20) shifts.push([far, far], [-far, far], [-far, -far], [far, -far]);
  }
  return shifts;
}

function enter(desk: Desk, hold: Hold): boolean {
  if (desk.tool === 'set') {
    setStamp(desk, hold, hold.crossAt);
    return true;
  }
  if (desk.tool === 'section') {
    if (hold.sectionLine === null) hold.layAcross();
    else {
      hold.sectionEnd = hold.sectionEnd === 'to' ? 'from' : 'to';
      hold.said = hold.sectionEnd === 'to' ? 'End B of the line.' : 'End A of the line.';
    }
    return true;
  }
  if (desk.tool === 'cut') return enterCut(desk, hold);
  if (desk.tool !== 'outline') return false;
  const at = hold.cross;
  const [first] = hold.sketch;
  const last = hold.sketch[hold.sketch.length - 1];
  if (hold.sketch.length > 2 && (at === null || near(first, at) || near(last, at))) closeSketch(desk, hold);
  else hold.sketch = [...hold.sketch, (hold.cross = hold.crossAt)];
  return true;
}

/** Enter with the cut line tool. */
function enterCut(desk: Desk, hold: Hold): boolean {
  const { cut, sketch, proposal, crossAt } = hold;
  if (proposal && (cut.way === 'round' || near(proposal.at ?? undefined, crossAt))) cutOut(desk, hold);
  else if (cut.way === 'patch') proposePatch(desk, hold, (hold.cross = crossAt));
  else if (
    cut.way === 'round' &&
    sketch.length > 2 &&
    (near(sketch[0], crossAt) || near(sketch.at(-1), crossAt))
  )
    proposeRound(desk, hold);
  else if (cut.way !== 'round' && sketch.length > 1 && near(sketch.at(-1), crossAt)) keepLine(desk, hold);
  else hold.sketch = [...sketch, (hold.cross = crossAt)];
  return true;
}

function near(one: Xy | undefined, other: Xy): boolean {
  return one !== undefined && Math.hypot(one[0] - other[0], one[1] - other[1]) < CLOSE_MM;
}
