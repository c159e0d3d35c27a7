/**
 * What is stored in this browser. A record that cannot be read is moved aside untouched, never overwritten.
 */
import type { Place } from '../plan/bench';
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

/** The plan as the text of a plan file, so that storage and files are read through one door. */
export interface BenchRecord {
  readonly shape: 1;
  readonly planText: string;
  readonly seed: string;
  readonly month: number;
  /** Left out where nothing is on the bench but the plan shown. */
  readonly rest?: {
    readonly benchText: string;
    readonly at: Place | null;
  };
}

export interface AsideRecord {
  readonly why: string;
  readonly record: unknown;
}

interface Stores extends DBSchema {
  benches: { key: string; value: unknown };
  aside: { key: number; value: AsideRecord };
}

const NAME = 'seambench';
const VERSION = 1;
const BENCH = 'last';

export interface Shelf {
  /** The stored bench as it was found, unchecked; undefined when there is none. */
  readBench(): Promise<unknown>;
  writeBench(record: BenchRecord): Promise<void>;
  /** Keeps a record that could not be read where it cannot be overwritten. */
  moveAside(aside: AsideRecord): Promise<void>;
}

export async function openShelf(): Promise<Shelf> {
  const database: IDBPDatabase<Stores> = await openDB<Stores>(NAME, VERSION, {
    upgrade(fresh) {
      fresh.createObjectStore('benches');
      fresh.createObjectStore('aside', { autoIncrement: true });
    },
    // A newer page wants to change the stores: let it, this one goes on in memory.
    blocking: () => database.close(),
  });
  let isAsked = false;
  return {
    readBench: () => database.get('benches', BENCH),
    writeBench: async (record) => {
      await database.put('benches', record, BENCH);
      // Only now is there something worth keeping through a shortage; a refusal changes nothing.
      // Insecure hosts have no storage manager.
      const manager: StorageManager | undefined = navigator.storage;
      if (!isAsked) void manager?.persist().catch(() => false);
      isAsked = true;
    },
    moveAside: async (aside) => {
      const change = database.transaction(['aside', 'benches'], 'readwrite');
      await change.objectStore('aside').add(aside);
      await change.objectStore('benches').delete(BENCH);
      await change.done;
    },
  };
}
