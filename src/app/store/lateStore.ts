// A store that is still being opened: whoever asks it waits for the opening, so that the page need not.
//
// Does not know: how a store is opened (openStore.ts), what is asked.
import type { Store } from "./store.ts";

/** @param opening which never rejects. */
export function lateStore(opening: Promise<Store>): Store {
  let store: Store | null = null;
  void opening.then((opened) => {
    store = opened;
  });
  const asked =
    <Arguments extends unknown[], Answer>(ask: (store: Store, ...args: Arguments) => Promise<Answer>) =>
    async (...args: Arguments): Promise<Answer> =>
      ask(await opening, ...args);
  return {
    classes: asked((s) => s.classes()),
    open: asked((s, id: string, title: string) => s.open(id, title)),
    forget: asked((s, id: string) => s.forget(id)),
    bringBack: asked((s, id: string) => s.bringBack(id)),
    clearForgotten: asked((s) => s.clearForgotten()),
    forgetAll: asked((s) => s.forgetAll()),
    note: asked((s, key: string) => s.note(key)),
    setNote: asked((s, key: string, value: string) => s.setNote(key, value)),
    recall: asked((s, hash: string) => s.recall(hash)),
    remember: asked((s, hash: string, value: unknown) => s.remember(hash, value)),
    settled: asked((s) => s.settled()),
    get trouble() {
      return store?.trouble ?? null;
    },
    get persistent() {
      return store?.persistent ?? false;
    },
  };
}
