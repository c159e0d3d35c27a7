/**
 * The page's first picture is begun before the page is put together, so that the shader compiles meanwhile (0.4 s where
 * graphics are drawn by software).
 */
import type { Plan } from '../../plan/plan';
import { Picture } from './picture';

export interface BegunPicture {
  readonly canvas: HTMLCanvasElement;
  /** Rejects where there is no WebGL. */
  readonly picture: Promise<Picture>;
}

let waiting: BegunPicture | null = null;

function begin(): BegunPicture {
  const canvas = document.createElement('canvas');
  canvas.setAttribute('aria-hidden', 'true');
  return { canvas, picture: Picture.on(canvas) };
}

/** Begins the picture that the next takePicture gets, with one small drawing of the bare tile. */
export function beginPicture(plan: Plan): void {
  waiting = begin();
  waiting.picture.then(
    (picture) => {
      picture.show(null, null, plan);
      picture.draw();
    },
    () => undefined, // whoever takes it is told
  );
}

export function takePicture(): BegunPicture {
  const begun = waiting ?? begin();
  waiting = null;
  return begun;
}
