// The screen that is painted before any script has run: the name, the places, the bench line, and that the class is being opened.
//
// Its markup is that of the shell, so that nothing jumps when the script takes over.
// Does not know: classes, places' contents.

/** @param catalogue text of locales/en.json. @returns the element that the page's script fills. */
export function firstScreen(catalogue: string): string {
  const words = (JSON.parse(catalogue) as { app?: { shell?: Record<string, string> } }).app?.shell ?? {};
  return `<div id="page"><h1>Benchday</h1><p>${words.opening ?? "Opening …"}</p></div>`;
}
