/** Bytes as letters and back (RFC 4648, section 4), without the page's btoa, which takes strings only. */

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const PAD = 61;
const CODES = new TextEncoder().encode(LETTERS);
const NO_LETTER = 255;
const VALUES = new Uint8Array(128).fill(NO_LETTER);
CODES.forEach((code, value) => {
  VALUES[code] = value;
});

export function base64Of(bytes: Uint8Array): string {
  const out = new Uint8Array(Math.ceil(bytes.length / 3) * 4);
  for (let from = 0, to = 0; from < bytes.length; from += 3, to += 4) {
    const left = bytes.length - from;
    const three = (bytes[from] << 16) | ((bytes[from + 1] ?? 0) << 8) | (bytes[from + 2] ?? 0);
    out[to] = CODES[three >> 18];
    out[to + 1] = CODES[(three >> 12) & 63];
    out[to + 2] = left > 1 ? CODES[(three >> 6) & 63] : PAD;
    out[to + 3] = left > 2 ? CODES[three & 63] : PAD;
  }
  return new TextDecoder().decode(out);
}

/** Null where the letters are no such bytes. */
export function bytesOfBase64(letters: string): Uint8Array<ArrayBuffer> | null {
  if (letters.length % 4 !== 0) return null;
  const pads = letters.endsWith('==') ? 2 : letters.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((letters.length / 4) * 3 - pads);
  const end = letters.length - pads;
  let bits = 0;
  for (let from = 0, to = 0; from < letters.length; from++) {
    const code = letters.charCodeAt(from);
    const value = from >= end ? 0 : code < 128 ? VALUES[code] : NO_LETTER;
    if (value === NO_LETTER) return null;
    bits = (bits << 6) | value;
    if (from % 4 < 3) continue;
    // a typed array passes over what lies beyond its end
    bytes[to] = (bits >> 16) & 255;
    bytes[to + 1] = (bits >> 8) & 255;
    bytes[to + 2] = bits & 255;
    bits = 0;
    to += 3;
  }
  return bytes;
}
