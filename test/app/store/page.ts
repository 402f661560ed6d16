// The small page that the browser tests drive: the store, and acts that a test can call by name.
import { openStore } from "../../../src/app/store/index.ts";
import type { OpenClass, Store } from "../../../src/app/store/store.ts";

/** Text number `n` of so many letters: the same every time, and no sector like another. */
function textOf(n: number, letters: number): string {
  let out = `${n}:`;
  let x = n * 2654435761 + 1;
  while (out.length < letters) {
    x = (Math.imul(x ^ (x >>> 15), 2246822519) + n) | 0;
    out += (x >>> 0).toString(36);
  }
  return out.slice(0, Math.max(letters, 12));
}
const lettersOf = (n: number) => 1000 + ((n * 7919) % 200_000);

let store: Store;
let open: OpenClass;
/** What the tab shows: the list of changes, as a session would hold it. */
let list: number[] = [];
const words: [at: number, word: string][] = [];
const told = (globalThis as unknown as { ack?: (n: number, ms: number) => void }).ack;

const acts = {
  async begin(id: string, name = "benchday") {
    store = await openStore({ name });
    open = await store.open(id, `Class ${id}`);
    open.state.subscribe((state) => words.push([performance.timeOrigin + performance.now(), state.word]));
    return { found: open.found?.text ?? null, trouble: open.trouble, state: open.state.value, storeTrouble: store.trouble };
  },
  /** Which numbered texts stand there, each looked at letter by letter. */
  async look() {
    const generations = await open.generations();
    const out: { note: string; damaged: boolean; isWhole: boolean }[] = [];
    for (const { id, note, damaged } of generations) {
      const n = Number(note);
      out.push({ note, damaged, isWhole: (await open.read(id))?.text === textOf(n, lettersOf(n)) });
    }
    return out;
  },
  /** Keeps text after text for ever and tells each that was called kept. */
  saveOn(from: number) {
    void (async () => {
      for (let n = from; ; n++) {
        const start = performance.now();
        open.keep({ text: textOf(n, lettersOf(n)), beside: "" }, String(n));
        await open.settled();
        if (open.state.value.word === "kept")
          (told ?? (globalThis as never as { ack: typeof told }).ack)?.(n, performance.now() - start);
      }
    })();
  },
  /** Keeps one text. */
  async save(n: number, letters: number) {
    open.keep({ text: textOf(n, letters), beside: "" }, String(n));
    await open.settled();
    return open.state.value;
  },
  async isWhole(n: number, letters: number) {
    const [newest] = await open.generations();
    return newest !== undefined && (await open.read(newest.id))?.text === textOf(n, letters);
  },
  async retry() {
    open.retry();
    await open.settled();
    return open.state.value;
  },
  generations: () => open.generations(),
  /** Begins as a session would: shows what was found and follows. */
  async sit(id: string, name: string) {
    const answer = await acts.begin(id, name);
    list = answer.found === null ? [] : (JSON.parse(answer.found) as number[]);
    open.follow((snapshot) => {
      list = JSON.parse(snapshot.text) as number[];
    });
    return answer.state.word;
  },
  /** One change by a person: takes over if it must. */
  async change(n: number) {
    let ms = 0;
    if (open.state.value.word === "follows") {
      const start = performance.now();
      await open.takeOver();
      ms = performance.now() - start;
    }
    list = [...list, n];
    open.keep({ text: JSON.stringify(list), beside: "" }, String(n));
    await open.settled();
    const { word } = open.state.value;
    const why = open.state.value.word === "not kept" ? open.state.value.why : "";
    return { word, why, ms };
  },
  list: () => list,
  words: () => words,
  state: () => open.state.value,
  /** Fills the origin's room from another database. @returns bytes that went in. */
  async fill(most: number) {
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const asked = indexedDB.open("ballast", 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore("s");
      asked.onsuccess = () => resolve(asked.result);
      asked.onerror = () => reject(asked.error);
    });
    let total = 0;
    for (let size = 1 << 20; size >= 1 << 14; ) {
      const bytes = new Uint8Array(size);
      for (let at = 0; at < size; at += 65536) crypto.getRandomValues(bytes.subarray(at, Math.min(size, at + 65536)));
      const isIn = await new Promise<boolean>((resolve) => {
        const act = db.transaction("s", "readwrite", { durability: "strict" });
        act.objectStore("s").put(bytes, total);
        act.oncomplete = () => resolve(true);
        act.onabort = () => resolve(false);
      });
      if (isIn) total += size;
      if (isIn && total >= most) break;
      if (!isIn) size >>= 1;
    }
    db.close();
    return total;
  },
  unfill: () =>
    new Promise<void>((resolve) => {
      indexedDB.deleteDatabase("ballast").onsuccess = () => resolve();
    }),
};
export type Acts = typeof acts;
Object.assign(globalThis, { acts });
