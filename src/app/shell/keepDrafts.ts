// Text that was typed and not taken yet is there again when a person comes back to its place, by Back, by a link or after a reload.
//
// A field that acts when it is left is done with then; one that waits for a button is done with when an act emptied it or took it
// away. A draft belongs to a class, an address and a field's label; it goes in at the field as if it were typed, so places need
// not know. It lives as long as the tab: what is worth keeping longer is an act.
// Does not know: places, acts, what is typed.
import { effect } from "@preact/signals";
import type { Session } from "../session/session.ts";
import { address } from "./router.ts";

type Box = HTMLInputElement | HTMLTextAreaElement;

interface Draft {
  readonly key: string;
  readonly where: string;
  text: string;
  /** The field that it was typed into last, while that stands. */
  box: Box | null;
}

/** More than anybody leaves half-typed; a long list that was pasted is longer than all of them. */
const mostDrafts = 40;
const mostSigns = 500_000;
const shelf = "benchday-drafts";

/** Begins to watch a page. @returns how to stop. */
export function keepDrafts(root: HTMLElement, session: Session): () => void {
  let drafts = readShelf();
  /** Fields that a draft was put into and that nobody has touched since. */
  const untouched = new WeakSet<Box>();

  const whereNow = () => `${session.open.peek()?.id ?? ""} ${address.peek().whole}`;
  const here = () => drafts.filter((d) => d.where === whereNow());
  const drop = (gone: readonly Draft[]) => {
    if (gone.length > 0) drafts = drafts.filter((d) => !gone.includes(d));
  };

  const onInput = ({ target }: Event): void => {
    if (!isBox(target)) return;
    untouched.delete(target);
    const [key, where] = [keyOf(root, target), whereNow()];
    const before = drafts.find((d) => d.key === key && d.where === where);
    if (before) drop([before]);
    if (target.value !== "") drafts = [...drafts, { key, where, text: target.value, box: target }].slice(-mostDrafts);
  };
  const onChange = ({ target }: Event): void => {
    if (!isBox(target) || target.dataset.draft !== "until-left") return;
    const key = keyOf(root, target);
    drop(here().filter((d) => d.key === key));
  };
  /** What a draft was put into counts as typed: leaving it acts, as it would have. */
  const onLeft = (event: FocusEvent | KeyboardEvent): void => {
    const { target } = event;
    if (!isBox(target) || !untouched.has(target) || (event instanceof KeyboardEvent && event.key !== "Enter")) return;
    untouched.delete(target);
    if (target.dataset.draft === "until-left") target.dispatchEvent(new Event("change", { bubbles: true }));
  };
  const putIn = (): void => {
    const waiting = here().filter((d) => d.box === null || !d.box.isConnected);
    if (waiting.length === 0) return;
    for (const box of boxesOf(root)) {
      const draft = waiting.find((d) => d.key === keyOf(root, box));
      if (!draft) continue;
      draft.box = box;
      if (box.value === draft.text) continue;
      box.value = draft.text;
      box.dispatchEvent(new Event("input", { bubbles: true }));
      untouched.add(box);
    }
  };
  const isEmptied = ({ box, text }: Draft): boolean => box?.isConnected === true && box.value !== text;

  const drawn = new MutationObserver(putIn);
  drawn.observe(root, { childList: true, subtree: true });
  root.addEventListener("input", onInput);
  root.addEventListener("change", onChange);
  root.addEventListener("focusout", onLeft);
  root.addEventListener("keydown", onLeft);
  // The place that is left still stands when its address goes.
  const stopAddress = effect(() => {
    address.value;
    drop(drafts.filter(isEmptied));
  });
  const stopActs = effect(() => {
    if (session.lastAct.value === null) return;
    const where = whereNow();
    // After the drawing: what an act took is gone from the screen, or empty.
    setTimeout(() => drop(drafts.filter((d) => d.where === where && (isEmptied(d) || d.box?.isConnected === false))), 50);
  });
  const onHide = () => writeShelf(drafts);
  addEventListener("pagehide", onHide);
  putIn();
  return () => {
    drawn.disconnect();
    root.removeEventListener("input", onInput);
    root.removeEventListener("change", onChange);
    root.removeEventListener("focusout", onLeft);
    root.removeEventListener("keydown", onLeft);
    stopAddress();
    stopActs();
    removeEventListener("pagehide", onHide);
  };
}

const isBox = (target: EventTarget | null): target is Box => target instanceof HTMLElement && target.matches(boxes);
const boxes = "main input[type=text], main textarea";
const boxesOf = (root: HTMLElement): readonly Box[] => [...root.querySelectorAll<Box>(boxes)];

/** A field by what it is called, and which of those called so. */
function keyOf(root: HTMLElement, box: Box): string {
  const name = box.labels?.[0]?.textContent ?? box.getAttribute("aria-label") ?? "";
  const alike = boxesOf(root).filter(
    (other) => (other.labels?.[0]?.textContent ?? other.getAttribute("aria-label") ?? "") === name,
  );
  return `${alike.indexOf(box)} ${name}`;
}

function readShelf(): Draft[] {
  try {
    const read: unknown = JSON.parse(sessionStorage.getItem(shelf) ?? "[]");
    sessionStorage.removeItem(shelf);
    if (!Array.isArray(read)) return [];
    return read.flatMap((one) => {
      const { key, where, text } = (one ?? {}) as Record<string, unknown>;
      return typeof key === "string" && typeof where === "string" && typeof text === "string"
        ? [{ key, where, text, box: null }]
        : [];
    });
  } catch {
    // A frame without storage: drafts live as long as the page.
    return [];
  }
}

function writeShelf(drafts: readonly Draft[]): void {
  try {
    const text = JSON.stringify(drafts.map(({ key, where, text }) => ({ key, where, text })));
    if (drafts.length > 0 && text.length <= mostSigns) sessionStorage.setItem(shelf, text);
  } catch {
    // Then they end with the page.
  }
}
