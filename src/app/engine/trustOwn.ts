// What the page's policy asks before anything becomes a script or a document: only what this file itself made passes.
//
// The policy "require-trusted-types-for 'script'" refuses every text that would be run or parsed as a page. This is its one
// door. Addresses must be of blobs, which only running code can make; pages must be whole papers of ours, which carry a policy
// of their own that allows no script. A browser without Trusted Types runs the same code without this door.
// Does not know: who runs a script, who shows a paper.

interface Rules {
  createScriptURL(address: string): string;
  createHTML(page: string): string;
}
const scope = globalThis as unknown as { trustedTypes?: { createPolicy(name: string, rules: Rules): unknown } };

/** How every paper begins, up to its own policy (src/documents/makePage.ts). */
const paperStart =
  /^<!doctype html>\n<html lang="[\w-]+" dir="(?:ltr|rtl)">\n<head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src (?:'|&#39;)none(?:'|&#39;);/;

let isDone = false;

/** Once a page or worker; later calls do nothing. */
export function trustOwn(): void {
  if (isDone) return;
  isDone = true;
  scope.trustedTypes?.createPolicy("default", {
    createScriptURL(address) {
      if (!address.startsWith("blob:")) throw new TypeError("only what this file carries is run");
      return address;
    },
    createHTML(page) {
      // The reader of lesson texts lets the browser say which sign "&eacute;" is.
      if (/^&[A-Za-z0-9]{1,40};$/.test(page)) return page;
      if (!paperStart.test(page) || /<(?:script|iframe|object|embed|base|link)\b/i.test(page))
        throw new TypeError("only papers are shown as pages");
      return page;
    },
  });
}
