/** What the bench prints: rows of ours beside a peer, and bars with what was found. */
export interface Row {
  readonly name: string;
  readonly ms: number;
  readonly peer: string;
  readonly peerMs: number;
  /** How many times faster ours is. */
  readonly ratio: number;
}

export interface Bar {
  readonly words: string;
  readonly found: number;
  readonly bar: number;
  /** Whether the bar is the most or the least that passes. */
  readonly bound: 'most' | 'least';
  readonly unit: string;
}

export interface Section {
  readonly title: string;
  readonly rows: readonly Row[];
  readonly bars: readonly Bar[];
  /** Lines that say what was done and what was found beside the rows. */
  readonly notes: readonly string[];
}

export function rowOf(name: string, ms: number, peer: string, peerMs: number): Row {
  return { name, ms, peer, peerMs, ratio: peerMs / ms };
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

export function msOf(job: () => void): number {
  const start = performance.now();
  job();
  return performance.now() - start;
}

function figure(value: number): string {
  return value.toFixed(value < 100 ? 1 : 0);
}

function barLine({ words, found, bar, bound, unit }: Bar): string {
  const isMet = bound === 'most' ? found <= bar : found >= bar;
  const off = bound === 'most' ? found / bar : bar / found;
  const end = isMet ? 'met' : `NOT MET, off by a factor of ${off.toFixed(2)}`;
  return `  ${words}: ${figure(found)} ${unit}, bar at ${bound} ${figure(bar)} ${unit}: ${end}`;
}

export function sectionText({ title, rows, bars, notes }: Section): string {
  const lines = rows.map(
    ({ name, ms, peer, peerMs, ratio }) =>
      `  ${name.padEnd(16)} ${figure(ms).padStart(6)} ms   ${peer.padEnd(24)} ${figure(peerMs).padStart(7)} ms   ${ratio.toFixed(1).padStart(6)} x`,
  );
  return [title, ...lines, ...bars.map(barLine), ...notes.map((note) => `  ${note}`)].join('\n');
}
