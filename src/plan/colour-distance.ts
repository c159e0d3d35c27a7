/**
 * How far apart two colours look to whoever finds it hardest: the least distance over plain, protan, deutan
 * and tritan sight. Distance in Oklab (Ottosson 2020), about 0 to 1; sight by the matrices of Machado, Oliveira &
 * Fernandes 2009 (IEEE TVCG 15: 1291-1298, severity 1), which act on linear light.
 */
type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

const SIGHTS: readonly Matrix[] = [
  [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
];

const TO_CONES: Matrix = [
  [0.4122214708, 0.5363325363, 0.0514459929],
  [0.2119034982, 0.6806995451, 0.1073969566],
  [0.0883024619, 0.2817188376, 0.6299787005],
];

const TO_OKLAB: Matrix = [
  [0.2104542553, 0.793617785, -0.0040720468],
  [1.9779984951, -2.428592205, 0.4505937099],
  [0.0259040371, 0.7827717662, -0.808675766],
];

function times(matrix: Matrix, [x, y, z]: Triple): Triple {
  const row = ([a, b, c]: Triple) => a * x + b * y + c * z;
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

function mapped([x, y, z]: Triple, change: (value: number) => number): Triple {
  return [change(x), change(y), change(z)];
}

/** '#rrggbb' to linear light, 0 to 1. */
function linearLight(hex: string): Triple {
  const channel = (from: number) => parseInt(hex.slice(from, from + 2), 16) / 255;
  return mapped([channel(1), channel(3), channel(5)], (value) =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  );
}

function oklab(light: Triple): Triple {
  return times(TO_OKLAB, mapped(times(TO_CONES, light), Math.cbrt));
}

export function colourDistance(hexA: string, hexB: string): number {
  const [lightA, lightB] = [linearLight(hexA), linearLight(hexB)];
  const seen = (sight: Matrix, light: Triple) =>
    oklab(mapped(times(sight, light), (value) => Math.min(1, Math.max(0, value))));
  return Math.min(
    ...SIGHTS.map((sight) => {
      const [a, b] = [seen(sight, lightA), seen(sight, lightB)];
      return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    }),
  );
}
