/** Photos of the log: made small enough that years of them fit, kept by id, shown by address. */
import { openPhotos, type PhotoShelf } from '../../keep/database';
import type { LogWork } from '../../keep/log-record';
import { shrunkPhoto } from '../shrunk-photo';

/** Longest side, px: polyps of 1 mm are still seen on a tile of 150 mm. */
const LONGEST_PX = 1600;
const QUALITY = 0.85;

export class Photos {
  /** What the store refused, and what was shown before. */
  readonly #held = new Map<string, Blob>();
  readonly #urls = new Map<string, Promise<string | null>>();
  #shelf: Promise<PhotoShelf> | null = null;

  /** The photo's id; `isStored` is false where it is in this page only. Throws where the file is no picture. */
  async add(file: Blob): Promise<{ id: string; isStored: boolean }> {
    const small = await shrunkPhoto(file, LONGEST_PX, QUALITY);
    if (!small) throw new Error('this is no picture');
    const id = crypto.randomUUID();
    return { id, isStored: await this.put(id, small.blob) };
  }

  async put(id: string, photo: Blob): Promise<boolean> {
    this.#held.set(id, photo);
    this.#urls.delete(id);
    try {
      await (await this.#opened()).write(id, photo);
      return true;
    } catch {
      return false;
    }
  }

  async read(id: string): Promise<Blob | null> {
    const held = this.#held.get(id);
    if (held) return held;
    try {
      return (await (await this.#opened()).read(id)) ?? null;
    } catch {
      return null;
    }
  }

  /** An address for the page's own pictures; null where the photo is not in this browser. */
  url(id: string): Promise<string | null> {
    let url = this.#urls.get(id);
    if (!url) {
      url = this.read(id).then((photo) => photo && URL.createObjectURL(photo));
      this.#urls.set(id, url);
    }
    return url;
  }

  /**
   * Takes away the photos that the stored log and what is being typed for it do not name. Only as a log is opened by the
   * one tab that stores it: later, Undo may still bring a photo back.
   */
  async sweep({ log, draft }: LogWork): Promise<void> {
    const readings = [
      ...log.trials.flatMap((trial) => trial.readings),
      ...draft.readings.map(({ reading }) => reading),
    ];
    const named = new Set(readings.flatMap(({ photo }) => photo ?? []));
    // what cannot be swept now is at the next visit
    await this.#opened()
      .then((shelf) => shelf.sweep(named))
      .catch(() => undefined);
  }

  #opened(): Promise<PhotoShelf> {
    this.#shelf ??= openPhotos();
    return this.#shelf;
  }
}
