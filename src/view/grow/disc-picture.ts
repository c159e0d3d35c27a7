/** A small disc of a variety's own tissue: polyps, a paler rim, light from the upper left. For the eye, not the model. */

const LEAST_APART = 0.19;

/** Repeatable scatter in 0..1, so that a disc looks the same each time. */
function scatter(index: number, salt: number): number {
  const wave = Math.sin(index * 12.9898 + salt * 78.233) * 43758.5453;
  return wave - Math.floor(wave);
}

interface Polyp {
  readonly x: number;
  readonly y: number;
}

const POLYPS: readonly Polyp[] = scattered();

/** Places in the unit disc, none nearer to another than a polyp's width. */
function scattered(): Polyp[] {
  const found: Polyp[] = [];
  for (let index = 0; index < 900; index++) {
    const at = { x: scatter(index, 1) * 2 - 1, y: scatter(index, 2) * 2 - 1 };
    const free = found.every((other) => (at.x - other.x) ** 2 + (at.y - other.y) ** 2 > LEAST_APART ** 2);
    if (free && at.x ** 2 + at.y ** 2 < 0.8) found.push(at);
  }
  return found;
}

function mixed(colour: string, towards: number, share: number): string {
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return `rgb(${channels.map((channel) => Math.round(channel + (towards - channel) * share)).join(' ')})`;
}

export function paintDisc(canvas: HTMLCanvasElement, colour: string): void {
  // kept by the processor: see SwirlScale
  const brush = canvas.getContext('2d', { willReadFrequently: true });
  if (!brush) return;
  const middle = canvas.width / 2;
  const circle = (x: number, y: number, radius: number, fill: string | CanvasGradient): void => {
    brush.beginPath();
    brush.arc(middle * (1 + x), middle * (1 + y), middle * radius, 0, Math.PI * 2);
    brush.fillStyle = fill;
    brush.fill();
  };
  brush.clearRect(0, 0, canvas.width, canvas.height);
  circle(0, 0, 0.99, mixed(colour, 255, 0.55));
  const body = brush.createRadialGradient(middle * 0.7, middle * 0.7, 0, middle, middle, middle * 0.95);
  body.addColorStop(0, mixed(colour, 255, 0.16));
  body.addColorStop(0.75, colour);
  body.addColorStop(1, mixed(colour, 255, 0.35));
  circle(0, 0, 0.93, body);
  for (const { x, y } of POLYPS) {
    circle(x + 0.02, y + 0.02, 0.082, mixed(colour, 0, 0.4));
    circle(x, y, 0.074, mixed(colour, 255, 0.26));
    circle(x, y, 0.034, mixed(colour, 0, 0.5));
  }
}
