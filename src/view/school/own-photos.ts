/** The photos of the log in this browser that can be called; only read. */
import { openDrawer, openPhotos } from '../../keep/database';
import { LOG_KIND } from '../../keep/log-record';
import { type PhotoItem, photoItems } from '../../lessons/photo-items';

export interface OwnPhoto extends PhotoItem {
  /** Address of the picture, good while the page is open. */
  readonly url: string;
}

/** How many there are; 0 where the browser keeps nothing or the log cannot be read, which Trials tells of. */
export async function countPhotos(word: string): Promise<number> {
  return (await itemsOf(word)).length;
}

export async function openOwnPhotos(word: string): Promise<OwnPhoto[]> {
  const shelf = await openPhotos();
  const found = await Promise.all(
    (await itemsOf(word)).map(async (item) => {
      const picture = await shelf.read(item.photo);
      return picture ? [{ ...item, url: URL.createObjectURL(picture) }] : [];
    }),
  );
  return found.flat();
}

async function itemsOf(word: string): Promise<PhotoItem[]> {
  try {
    const found = await (await openDrawer('log')).read();
    if (found === undefined) return [];
    const work = LOG_KIND.workOf(found);
    return typeof work === 'string' ? [] : photoItems(work.log, word);
  } catch {
    return [];
  }
}
