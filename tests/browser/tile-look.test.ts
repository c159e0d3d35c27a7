/** What the drawn tile must show, by loose measures; how it looks beyond them is for the eye. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openMenu, stripOf, tileOf, untilGrown } from './grow-page';
import { lookAt, pxPerMm, type Look } from './look';
import { openPage, type Opening } from './open-page';

/** The page opens on halves that fuse and a disc that walls up; with reduced motion it stands at month 8. */
async function grown(opening: Opening = {}): Promise<Page> {
  const page = await openPage({ reducedMotion: true, ...opening });
  await tileOf(page).getByText('ridge', { exact: true }).first().waitFor({ timeout: 30_000 });
  return page;
}

const isGarnet = ([r, g, b]: readonly number[]): boolean => r > g + 45 && r > b + 30;
const isAmber = ([r, g, b]: readonly number[]): boolean => r > b + 50 && g > b + 35;
const isFern = ([r, g, b]: readonly number[]): boolean => g > r + 25 && g > b;

function share(look: Look, is: (rgb: readonly number[]) => boolean): number {
  let count = 0;
  for (let y = 0; y < look.height; y += 3)
    for (let x = 0; x < look.width; x += 3) if (is(look.at(x, y))) count++;
  return count / ((look.width / 3) * (look.height / 3));
}

/** Mean brightness of a row's stretches just left and just right of the wall between Garnet and Amber. */
function besideWall(look: Look, scale: number): { left: number; right: number } {
  let [left, right, rows] = [0, 0, 0];
  for (let y = look.height * 0.42; y < look.height * 0.6; y += 2) {
    let wall = -1;
    for (let x = look.width * 0.5; x < look.width * 0.8; x++) {
      const sure = [2, 4, 6].every((k) => isAmber(look.at(x + k, y))) && isGarnet(look.at(x - 4, y));
      if (sure) wall = x;
      if (sure) break;
    }
    if (wall < 0) continue;
    rows++;
    // Each side against its own tissue further off, since amber is brighter than garnet anyway.
    const mean = (from: number, to: number): number => {
      let sum = 0;
      for (let x = from; x < to; x++) sum += look.bright(wall + x, y);
      return sum / (to - from);
    };
    const near = Math.max(3, Math.round(scale));
    left += mean(-near, -1) / mean(-6 * near, -4 * near);
    right += mean(2, near + 1) / mean(4 * near, 6 * near);
  }
  expect(rows, 'rows in which the wall was found').toBeGreaterThan(8);
  return { left: left / rows, right: right / rows };
}

test('the tile is drawn: three colours of tissue, dark tile beside them', async () => {
  const page = await grown();
  await page.keyboard.press('s');
  await expect.poll(async () => share(await lookAt(page), isFern)).toBeGreaterThan(0.08);
  const look = await lookAt(page);
  expect(share(look, isGarnet)).toBeGreaterThan(0.08);
  expect(share(look, isAmber)).toBeGreaterThan(0.05);
  expect(share(look, (rgb) => Math.max(...rgb) < 90)).toBeGreaterThan(0.01);
});

test('a wall is bright towards the light and dark away from it, also when the light is turned', async () => {
  const page = await grown();
  await page.keyboard.press('s');
  const scale = await pxPerMm(page);
  let lit = 0;
  const leftOver = async (): Promise<number> => {
    const { left, right } = besideWall(await lookAt(page), scale);
    return (lit = left - right);
  };
  await expect.poll(leftOver).toBeGreaterThan(0.1);
  const before = lit;
  await page.getByRole('slider', { name: /light/iu }).fill('0');
  await expect.poll(leftOver).toBeLessThan(before - 0.1);
});

test('zoomed in, no edges of cells show', async () => {
  const page = await grown();
  await page.keyboard.press('s');
  const tile = page.getByRole('application', { name: 'Tile' });
  await tile.focus();
  for (let k = 0; k < 6; k++) await page.keyboard.press('+');
  await page.waitForTimeout(500);
  const cellPx = (await pxPerMm(page)) * 0.25;
  expect(cellPx).toBeGreaterThan(4);
  const look = await lookAt(page);
  // Were cells drawn as facets, brightness would go in steps: second differences would outweigh first ones.
  // Measured here: 0.82 as it is, 1.43 with textures that are not interpolated.
  for (const [dx, dy] of [
    [1, 0],
    [0, 1],
  ]) {
    let [first, second] = [0, 0];
    for (let y = 40; y < look.height - 60; y += 2) {
      for (let x = 40; x < look.width - 40; x++) {
        const [before, here, after] = [-1, 0, 1].map((k) => look.bright(x + k * dx, y + k * dy));
        // Capped, so that the few pixels of a border between colours do not decide.
        first += Math.min(3, Math.abs(here - before));
        second += Math.min(4, Math.abs(after - 2 * here + before));
      }
    }
    expect(second / first).toBeLessThan(1.1);
  }
});

test('in a mosaic that has run together the seams leave the picture to be seen', async () => {
  const page = await grown();
  await openMenu(page);
  await page.getByRole('button', { name: /^A mosaic/u }).click();
  await stripOf(page).focus();
  await page.keyboard.press('End');
  await untilGrown(page);
  await tileOf(page).getByText('fused', { exact: true }).first().waitFor();
  await page.waitForTimeout(1500);
  const drawn = await lookAt(page);
  await page.keyboard.press('s');
  let covered = 0;
  const coveredShare = async (): Promise<number> => {
    const bare = await lookAt(page);
    let [unlike, count] = [0, 0];
    for (let y = 0; y < bare.height; y += 2) {
      for (let x = 0; x < bare.width; x += 2) {
        count++;
        if (Math.abs(drawn.bright(x, y) - bare.bright(x, y)) > 40) unlike++;
      }
    }
    return (covered = unlike / count);
  };
  await expect.poll(coveredShare).toBeGreaterThan(0);
  // Measured: 0.037 as it is, 0.102 with lines as strong as those of walls.
  expect(covered).toBeLessThan(0.04);
});

test('a lost graphics context comes back with the picture', async () => {
  const page = await grown({
    beforeDrawing: `const get = OffscreenCanvas.prototype.getContext;
      OffscreenCanvas.prototype.getContext = function (kind, ...rest) {
        const context = get.call(this, kind, ...rest);
        (self.contexts ??= []).push(context);
        return context;
      };`,
  });
  await page.keyboard.press('s');
  const drawing = page.workers().find((worker) => worker.url().includes('easel'));
  const lost = await drawing?.evaluate(() => {
    const { contexts = [] } = globalThis as unknown as { contexts?: WebGL2RenderingContext[] };
    const own = contexts.filter((context) => !context.isContextLost());
    for (const context of own) {
      const extension = context.getExtension('WEBGL_lose_context');
      extension?.loseContext();
      setTimeout(() => extension?.restoreContext(), 200);
    }
    return own.length;
  });
  expect(lost).toBeGreaterThan(0);
  await page.waitForTimeout(1500);
  await expect.poll(async () => share(await lookAt(page), isFern)).toBeGreaterThan(0.08);
});
