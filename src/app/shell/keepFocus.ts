// Where the focus goes when an act takes away the very control that did it: to what stands in its place, never to nowhere.
//
// A row that is removed leaves the focus on the same control of the next row, else of the row before, else on the heading above.
// Without this a person at the keyboard begins again at the top of the page, and a listener hears nothing.
// Does not know: acts, places.

const focusable = "a[href], button, input, select, textarea, summary";

interface Lost {
  readonly element: Element;
  /** What it looked like: the same control of another row says the same. */
  readonly says: string;
  /** Parents from the nearest on, with the place in each. */
  readonly path: readonly { readonly parent: Element; readonly at: number }[];
}

/** Begins to watch a page. @returns how to stop. */
export function keepFocus(root: Element): () => void {
  let last: Lost | null = null;
  const remember = (event: Event): void => {
    const element = event.target;
    if (!(element instanceof Element)) return;
    const path: { parent: Element; at: number }[] = [];
    for (let child = element; child !== root && child.parentElement; child = child.parentElement)
      path.push({ parent: child.parentElement, at: [...child.parentElement.children].indexOf(child) });
    last = { element, says: element.textContent ?? "", path };
  };
  const watcher = new MutationObserver(() => {
    if (last === null || last.element.isConnected) return;
    if (document.activeElement !== null && document.activeElement !== document.body) return;
    const lost = last;
    last = null;
    successor(lost, root)?.focus({ preventScroll: true });
  });
  root.addEventListener("focusin", remember);
  watcher.observe(root, { childList: true, subtree: true });
  return () => {
    root.removeEventListener("focusin", remember);
    watcher.disconnect();
  };
}

function successor({ path, says }: Lost, root: Element): HTMLElement | null {
  for (const { parent, at } of path) {
    if (!parent.isConnected) continue;
    // The whole place was exchanged: a new one begins at its heading.
    if (parent === root) return root.querySelector("h1");
    for (const near of [parent.children[at], parent.children[at - 1]]) {
      if (!near) continue;
      const able = [near, ...near.querySelectorAll(focusable)].filter(
        (e): e is HTMLElement => e instanceof HTMLElement && e.matches(focusable) && e.checkVisibility(),
      );
      const next = able.find((e) => e.textContent === says) ?? able[0];
      if (next) return next;
    }
    const above = [...parent.children].slice(0, at).flatMap((e) => [e, ...e.querySelectorAll("h1, h2, h3")]);
    const heading = above.findLast((e) => e.matches("h1, h2, h3"));
    if (heading instanceof HTMLElement) {
      heading.tabIndex = -1;
      return heading;
    }
  }
  return null;
}
