/** A frame as a PNG file, drawn without a browser. Format: ISO/IEC 15948 (PNG, third edition), 8-bit RGB, filter Up. */
import { crc32, deflateSync } from 'node:zlib';
import type { Frame, PolypSites } from '../model/frame';
import type { Plan } from '../plan/plan';
import { paintTile, type Pixels } from './tile-pixels';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const RGB = 2;
const FILTER_UP = 2;

/** The tile at a month as the bytes of a PNG. */
export function drawTile(frame: Frame, sites: PolypSites, plan: Plan, pxPerMm: number): Uint8Array {
  return encodePng(paintTile(frame, sites, plan, pxPerMm));
}

export function encodePng({ width, height, rgb }: Pixels): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, RGB, 0, 0, 0], 8);
  const stride = width * 3;
  const lines = Buffer.alloc((stride + 1) * height);
  for (let y = 0; y < height; y++) {
    const line = y * (stride + 1);
    lines[line] = FILTER_UP;
    for (let k = 0; k < stride; k++) {
      const above = y === 0 ? 0 : rgb[(y - 1) * stride + k];
      lines[line + 1 + k] = rgb[y * stride + k] - above;
    }
  }
  return Buffer.concat([
    Buffer.from(SIGNATURE),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(lines)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}
