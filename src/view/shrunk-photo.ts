/** A photo made small: a picture of a phone has more dots than are looked at, and years of them would not fit. */
export interface SmallPhoto {
  readonly blob: Blob;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** As JPEG, of at most so many px at its longer side; null where the file is no picture that the browser can read. */
export async function shrunkPhoto(
  file: Blob,
  longestPx: number,
  quality: number,
): Promise<SmallPhoto | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null;
  }
  const scale = Math.min(1, longestPx / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
  return blob && { blob, widthPx: canvas.width, heightPx: canvas.height };
}
