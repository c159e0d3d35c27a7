/** Draws the page's pictures beside the page, so that a slow drawing never holds up a hand. */
import type { Remote } from 'comlink';
import { Easel } from '../src/picture/easel';
import { Picture } from '../src/picture/picture';
import { traceSeams } from '../src/skin/seam-trace';
import { breathe } from './pace';
import type { EaselWorker, GraphicsNews } from './protocol';

/** A hidden page draws no frames. */
const NO_FRAME_MS = 250;

/** A drawing leaves for the screen with the next frame, and holds this thread while it does. */
function onScreen(): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, NO_FRAME_MS);
    requestAnimationFrame(() => {
      clearTimeout(timer);
      void breathe().then(resolve);
    });
  });
}

export function makeEasels(): EaselWorker {
  const easels = new Map<number, Promise<Easel>>();
  return {
    async open(id, canvas, news) {
      // On this side of the channel a proxied argument is comlink's remote; its types say so only to the caller.
      const tell = news as unknown as Remote<GraphicsNews>;
      const easel = Picture.on(canvas).then((picture) => new Easel(picture, onScreen));
      easels.set(id, easel);
      canvas.addEventListener('webglcontextlost', () => void tell('lost'));
      canvas.addEventListener('webglcontextrestored', () => {
        void tell('restored');
        // after Pixi's own ear, which sets the graphics up again
        setTimeout(() => void easel.then((ready) => ready.redraw()));
      });
      await easel;
    },
    async show(id, scene, grown) {
      await (await easels.get(id))?.show(scene, grown);
    },
    async seams(id) {
      const frame = (await easels.get(id))?.frame;
      return frame ? traceSeams(frame) : [];
    },
    async close(id) {
      const easel = easels.get(id);
      easels.delete(id);
      (await easel)?.close();
    },
  };
}
