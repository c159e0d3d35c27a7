/** Photos of the log: made small enough that years of them fit, kept by id, shown by address. */
import { openPhotos, type PhotoShelf } from '../../keep/database';

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
    const photo = await shrunk(file);
    const id = crypto.randomUUID();
    return { id, isStored: await this.put(id, photo) };
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

  #opened(): Promise<PhotoShelf> {
    this.#shelf ??= openPhotos();
    return this.#shelf;
  }
}

async function shrunk(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be written'))),
      'image/jpeg',
      QUALITY,
    );
  });
}
