// Which place is shown: the part of the address after `#`.
//
// The browser keeps the history, so its back button goes back one place and nothing is lost. A new place begins at its top
// with the focus on its heading; going back leaves the scroll to the browser, which remembers it.
// Does not know: the places.
import { computed, effect, signal } from "@preact/signals";

export interface Address {
  /** "today" for `#/today`. */
  readonly place: string;
  /** What follows, each part decoded: ["7b", "barrier", "2027-03-04"]. */
  readonly rest: readonly string[];
  /** The whole as it stands after `#`. */
  readonly whole: string;
}

const hash = signal(typeof location === "undefined" ? "" : location.hash);

/** The address now. */
export const address = computed<Address>(() => readAddress(hash.value));

/** What the present page is called; set by `Page`. */
export const pageName = signal("");

/** @returns the address of a hash; a part that is no encoded text is taken as it stands. */
export function readAddress(text: string): Address {
  const parts = text
    .replace(/^#?\/?/, "")
    .split("/")
    .map(decoded);
  return { place: parts[0] ?? "", rest: parts.slice(1), whole: text };
}

/** @returns the link to a place. */
export function linkTo(place: string, ...rest: readonly string[]): string {
  return `#/${[place, ...rest].map(encodeURIComponent).join("/")}`;
}

/** Goes to a place. `instead` leaves no step for the back button. */
export function goTo(link: string, instead = false): void {
  if (link === location.hash) return;
  moves = true;
  if (!instead) location.hash = link;
  else location.replace(link);
  // At once: what is drawn next must not see the address that was left.
  hash.value = location.hash;
}

/** True while a person goes on by a link or an act, false while the back button does. */
let moves = false;

/** Begins to listen; once a page. @returns how to stop. */
export function startRouter(titleOf: (name: string) => string): () => void {
  const onClick = (event: MouseEvent): void => {
    const link = (event.target as Element | null)?.closest?.("a[href^='#']");
    if (link && link.getAttribute("href") !== location.hash) moves = true;
  };
  const onHash = (): void => {
    hash.value = location.hash;
    const fresh = moves;
    moves = false;
    // After the new place stands: preact draws in a microtask, a frame is surely later.
    requestAnimationFrame(() => {
      if (fresh) scrollTo(0, 0);
      document.querySelector<HTMLElement>("h1")?.focus({ preventScroll: true });
    });
  };
  addEventListener("hashchange", onHash);
  document.addEventListener("click", onClick);
  const stopTitle = effect(() => {
    document.title = titleOf(pageName.value);
  });
  return () => {
    removeEventListener("hashchange", onHash);
    document.removeEventListener("click", onClick);
    stopTitle();
  };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
