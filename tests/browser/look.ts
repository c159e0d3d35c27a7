/** Pixels of the tile as a person sees them: a screenshot, read back in the page. */
import type { Page } from 'playwright-core';

export interface Look {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, 0..255. */
  readonly at: (x: number, y: number) => readonly [number, number, number];
  readonly bright: (x: number, y: number) => number;
}

export async function lookAt(page: Page): Promise<Look> {
  const png = await page.getByRole('application', { name: 'Tile' }).screenshot();
  const { width, height, rgba } = await page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = document.createElement('canvas');
    canvas.width = picture.width;
    canvas.height = picture.height;
    const brush = canvas.getContext('2d', { willReadFrequently: true });
    if (!brush) throw new Error('no 2D canvas');
    brush.drawImage(picture, 0, 0);
    const { data } = brush.getImageData(0, 0, picture.width, picture.height);
    let text = '';
    for (let k = 0; k < data.length; k += 8192) text += String.fromCharCode(...data.subarray(k, k + 8192));
    return { width: picture.width, height: picture.height, rgba: btoa(text) };
  }, png.toString('base64'));
  const data = Buffer.from(rgba, 'base64');
  const at = (x: number, y: number): [number, number, number] => {
    const k = (Math.round(y) * width + Math.round(x)) * 4;
    return [data[k], data[k + 1], data[k + 2]];
  };
  return { width, height, at, bright: (x, y) => at(x, y).reduce((sum, channel) => sum + channel, 0) / 3 };
}

/** Pixels a mm takes, read off the scale bar. */
export async function pxPerMm(page: Page): Promise<number> {
  const bar = page.getByRole('application', { name: 'Tile' }).locator('.scale');
  const [path, words] = await Promise.all([
    bar.locator('path').first().getAttribute('d'),
    bar.locator('text').first().textContent(),
  ]);
  return Number(/H([\d.]+)/u.exec(path ?? '')?.[1]) / Number.parseFloat(words ?? '');
}
