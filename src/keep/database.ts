/**
 * What is stored in this browser. A record that cannot be read is moved aside untouched, never overwritten.
 */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

export interface AsideRecord {
  readonly why: string;
  readonly record: unknown;
}

/** Stores with one record each. */
export type DrawerName = 'benches' | 'log' | 'school';

interface Stores extends DBSchema {
  benches: { key: string; value: unknown };
  log: { key: string; value: unknown };
  school: { key: string; value: unknown };
  photos: { key: string; value: Blob };
  aside: { key: number; value: AsideRecord };
}

const NAME = 'seambench';
const VERSION = 2;
const LAST = 'last';

export interface Drawer {
  /** The stored record as it was found, unchecked; undefined when there is none. */
  read(): Promise<unknown>;
  write(record: unknown): Promise<void>;
  /** Keeps a record that could not be read where it cannot be overwritten. */
  moveAside(aside: AsideRecord): Promise<void>;
}

/** Photos by the id that the log names them by. */
export interface PhotoShelf {
  read(id: string): Promise<Blob | undefined>;
  write(id: string, photo: Blob): Promise<void>;
  /** Takes away what is neither among these nor named by a record that was moved aside. */
  sweep(named: ReadonlySet<string>): Promise<void>;
}

async function openStores(): Promise<IDBPDatabase<Stores>> {
  const database: IDBPDatabase<Stores> = await openDB<Stores>(NAME, VERSION, {
    upgrade(stores, from) {
      if (from < 1) {
        stores.createObjectStore('benches');
        stores.createObjectStore('aside', { autoIncrement: true });
      }
      if (from < 2) for (const name of ['log', 'school', 'photos'] as const) stores.createObjectStore(name);
    },
    // A newer page wants to change the stores: let it, this one goes on in memory.
    blocking: () => database.close(),
  });
  return database;
}

let isAsked = false;

/** Asked once there is something worth keeping through a shortage; a refusal changes nothing. */
function askToKeep(): void {
  // Insecure hosts have no storage manager.
  const manager: StorageManager | undefined = navigator.storage;
  if (!isAsked) void manager?.persist().catch(() => false);
  isAsked = true;
}

export async function openDrawer(name: DrawerName): Promise<Drawer> {
  const database = await openStores();
  return {
    read: () => database.get(name, LAST),
    write: async (record) => {
      await database.put(name, record, LAST);
      askToKeep();
    },
    moveAside: async (aside) => {
      const change = database.transaction(['aside', name], 'readwrite');
      await change.objectStore('aside').add(aside);
      await change.objectStore(name).delete(LAST);
      await change.done;
    },
  };
}

export async function openPhotos(): Promise<PhotoShelf> {
  const database = await openStores();
  return {
    read: (id) => database.get('photos', id),
    write: async (id, photo) => {
      await database.put('photos', photo, id);
    },
    sweep: async (named) => {
      const change = database.transaction(['photos', 'aside'], 'readwrite');
      const photos = change.objectStore('photos');
      // as text, for nothing is known of the form of a record that could not be read
      const aside = JSON.stringify(await change.objectStore('aside').getAll());
      for (const id of await photos.getAllKeys())
        if (!named.has(id) && !aside.includes(id)) await photos.delete(id);
      await change.done;
    },
  };
}
