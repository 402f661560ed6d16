// How the page looks on this computer: paper, type size, stronger lines. Kept as notes of the computer, not of the class.
//
// They are read once and put on the page at once; a changed one is kept and put on in the same breath.
// Does not know: where the choices are made.
import { effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Session } from "../../session/session.ts";

export const typeSizes = ["usual", "large", "larger"] as const;
export type TypeSize = (typeof typeSizes)[number];
export type PaperSize = "A4" | "Letter";

export interface Looks {
  readonly paper: ReadonlySignal<PaperSize>;
  setPaper(paper: PaperSize): void;
  readonly type: ReadonlySignal<TypeSize>;
  setType(type: TypeSize): void;
  readonly strongLines: ReadonlySignal<boolean>;
  setStrongLines(strong: boolean): void;
}

/** Of the browser's own size, which a person may have chosen already. */
const shares: Readonly<Record<TypeSize, string>> = { usual: "", large: "118%", larger: "140%" };
const all = new WeakMap<Session, Looks>();

/** Called by the shell when the page starts, so that the choices hold everywhere. */
export function looksOf(session: Session): Looks {
  const known = all.get(session);
  if (known) return known;
  const { store } = session;
  const paper = signal<PaperSize>("A4");
  const type = signal<TypeSize>("usual");
  const strongLines = signal(false);
  const kept =
    <Value>(own: { value: Value }, key: string) =>
    (value: Value) => {
      own.value = value;
      void store.setNote(key, String(value));
    };
  const read = async () => {
    if ((await store.note("paper-size")) === "Letter") paper.value = "Letter";
    const size = await store.note("type-size");
    type.value = typeSizes.find((known) => known === size) ?? "usual";
    strongLines.value = (await store.note("strong-lines")) === "true";
  };
  void read();
  effect(() => {
    document.documentElement.style.fontSize = shares[type.value];
    document.documentElement.classList.toggle("strong-lines", strongLines.value);
  });
  const made: Looks = {
    paper,
    setPaper: kept(paper, "paper-size"),
    type,
    setType: kept(type, "type-size"),
    strongLines,
    setStrongLines: kept(strongLines, "strong-lines"),
  };
  all.set(session, made);
  return made;
}
