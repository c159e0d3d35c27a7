import type { Camera } from '../../picture/scene';
import { boxOf } from '../../units/polygon';
import { toPx, type Size } from '../tile/camera';
import type { Handle } from '../tile/handles';
import type { Part } from './parts';

const ABOVE_PX = 24;

/** Over the part as it lies, whatever its turn. */
export function turnHandle({ rings, at }: Part, camera: Camera, size: Size): Handle {
  const [x] = toPx(camera, size, at);
  const [, y] = toPx(camera, size, [0, boxOf(rings[0]).minY]);
  return { kind: 'turn', px: [x, y - ABOVE_PX], along: [0, -1] };
}
