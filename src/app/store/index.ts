// The door of the store: where classes are kept on this computer.
export { lateStore } from "./lateStore.ts";
export { makeStore, type StoreOptions } from "./makeStore.ts";
export { memoryBucket } from "./memoryBucket.ts";
export { type OpenStoreOptions, openStore } from "./openStore.ts";
export type { Generation, KeepingTrouble, KeptState, OpenClass, Snapshot, Store, StoredClass } from "./store.ts";
