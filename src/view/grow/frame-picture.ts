/** A frame as a small plain picture, one pixel a cell: colour, a slope lit from the upper left, bare skeleton pale. */
import type { Frame } from '../../model/frame';

const TILE_GREY = 58;
const BARE_GREY = 205;
const BARE = 255;
/** Change of brightness per 0.01 mm of rise between neighbouring cells. */
const SHADE = 1.2;

export function paintFrame(canvas: HTMLCanvasElement, frame: Frame, colours: readonly string[]): void {
  const brush = canvas.getContext('2d');
  if (!brush) return;
  const { columns, rows, label, height } = frame;
  const channels = colours.map((colour) =>
    [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)),
  );
  const picture = brush.createImageData(columns, rows);
  for (let cell = 0; cell < label.length; cell++) {
    const variety = label[cell];
    const above = cell > columns ? height[cell - columns - 1] : height[cell];
    const light = Math.max(-70, Math.min(70, (height[cell] - above) * SHADE));
    for (let channel = 0; channel < 3; channel++) {
      const base = variety === 0 ? TILE_GREY : variety === BARE ? BARE_GREY : channels[variety - 1][channel];
      picture.data[cell * 4 + channel] = base + light;
    }
    picture.data[cell * 4 + 3] = 255;
  }
  brush.putImageData(picture, 0, 0);
}
