/** A chosen picture, made small enough to be moved about quickly. It lives in the page's memory only. */

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
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null;
  }
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (blob === null) return null;
  return {
    name: file.name,
    url: URL.createObjectURL(blob),
    widthPx: canvas.width,
    heightPx: canvas.height,
  };
}
