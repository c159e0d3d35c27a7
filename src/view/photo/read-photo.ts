/** A chosen picture, made small enough to be moved about quickly. It lives in the page's memory only. */
import { shrunkPhoto } from '../shrunk-photo';

/** Longest side, px: a tile of 150 mm to 0.06 mm. */
const LONGEST_PX = 2400;
const QUALITY = 0.9;

export interface Photo {
  readonly name: string;
  readonly url: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Null where the file is no picture that this browser reads. */
export async function readPhoto(file: File): Promise<Photo | null> {
  const small = await shrunkPhoto(file, LONGEST_PX, QUALITY);
  if (!small) return null;
  const { blob, widthPx, heightPx } = small;
  return { name: file.name, url: URL.createObjectURL(blob), widthPx, heightPx };
}
