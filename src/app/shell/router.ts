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

/**
 * Goes to a place. `instead` leaves no step for the back button.
 *
 * By the history and not by the address itself: in a frame without an origin of its own a file may not set its address, yet may
 * write its history.
 */
export function goTo(link: string, instead = false): void {
  if (link === hash.value) return;
  try {
    if (instead) history.replaceState(null, "", link);
    else history.pushState(null, "", link);
  } catch {
    // Then the back button does not know of it; the place is shown all the same.
  }
  arrive(link);
  // What stands instead of another begins where that stood.
  if (!instead) scrollTo(0, 0);
}

/** Shows the place of an address and takes the focus to its heading. */
function arrive(link: string): void {
  hash.value = link;
  // After the new place stands: preact draws in a microtask, a frame is surely later.
  requestAnimationFrame(() => document.querySelector<HTMLElement>("h1")?.focus({ preventScroll: true }));
}

/** Begins to listen; once a page. @returns how to stop. */
export function startRouter(titleOf: (name: string) => string): () => void {
  const onClick = (event: MouseEvent): void => {
    // With a key held down a link opens elsewhere, which is the browser's affair.
    if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    const link = (event.target as Element | null)?.closest?.("a[href^='#']")?.getAttribute("href");
    if (!link) return;
    event.preventDefault();
    goTo(link);
  };
  // The back button and an address that was typed; the scroll is left to the browser, which remembers it.
  const onMoved = (): void => {
    if (location.hash !== hash.value) arrive(location.hash);
  };
  addEventListener("hashchange", onMoved);
  addEventListener("popstate", onMoved);
  document.addEventListener("click", onClick);
  const stopTitle = effect(() => {
    document.title = titleOf(pageName.value);
  });
  return () => {
    removeEventListener("hashchange", onMoved);
    removeEventListener("popstate", onMoved);
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
