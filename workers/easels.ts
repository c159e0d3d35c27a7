/** Draws the page's pictures beside the page, so that a slow drawing never holds up a hand. */
import type { Remote } from 'comlink';
import { Easel } from '../src/picture/easel';
import { Picture } from '../src/picture/picture';
import type { EaselWorker, GraphicsNews } from './protocol';

export function makeEasels(): EaselWorker {
  const easels = new Map<number, Promise<Easel>>();
  return {
    async open(id, canvas, news) {
      // On this side of the channel a proxied argument is comlink's remote; its types say so only to the caller.
      const tell = news as unknown as Remote<GraphicsNews>;
      const easel = Picture.on(canvas).then((picture) => new Easel(picture));
      easels.set(id, easel);
      canvas.addEventListener('webglcontextlost', () => void tell('lost'));
      canvas.addEventListener('webglcontextrestored', () => {
        void tell('restored');
        void easel.then((ready) => ready.redraw());
      });
      await easel;
    },
    async show(id, scene, grown) {
      (await easels.get(id))?.show(scene, grown);
    },
    async close(id) {
      const easel = easels.get(id);
      easels.delete(id);
      (await easel)?.close();
    },
  };
}
