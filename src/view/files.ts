/** Files of plans and benches to and from the person's disk. */
import { benchText, isBenchText, openBench, type Bench, type OpenedBench } from '../plan/bench';
import { openPlan, planText, type Opened } from '../plan/file';
import type { Plan } from '../plan/plan';

const LARGEST_BYTES = 20_000_000;

export function download(name: string, text: string, type = 'application/json'): void {
  downloadBlob(name, new Blob([text], { type }));
}

export function downloadBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the blob after the click: give it a minute.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** 'Two that take': the name without what a file name cannot hold. */
export function fileName(name: string, otherwise: string): string {
  const plain = name.replaceAll(/[^\p{L}\p{N} .-]+/gu, ' ').trim();
  return plain.slice(0, 80) || otherwise;
}

export function savePlan(plan: Plan, seed: string): void {
  download(`${fileName(plan.name, 'plan')}.json`, planText(plan, seed));
}

export function saveBench(bench: Bench): void {
  download(`${fileName(bench.name, 'bench')}.bench.json`, benchText(bench));
}

/** A plan or a bench, as the file itself says. They have some kilobytes: what is far larger is not read into memory. */
export async function openFile(file: File): Promise<Opened | OpenedBench> {
  if (file.size <= LARGEST_BYTES) {
    const text = await file.text();
    return isBenchText(text) ? openBench(text) : openPlan(text);
  }
  const found = `${Math.round(file.size / 1_000_000)} MB`;
  const cure = `The file has ${found}, far more than any plan: choose a file that Seambench has saved`;
  return { refusals: [{ where: file.name, found, allowed: 'at most 20 MB', cure }] };
}
