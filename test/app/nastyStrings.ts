// Strings that somebody could type, paste or open: script, markup, formulas, direction marks, texts that look like our own
// notation, in all mixtures. Each is different, and each leaves a trace if a part of it runs.
//
// The traces: `window.nastyRan` is set, a dialog opens, or a request goes to nasty.invalid (RFC 2606: a name that never exists).
// Does not know: fields, pages.
import { seededRandom } from "../../src/base/index.ts";

const run = "window.nastyRan=1";

/** Each attacks something else; sources: the OWASP cheat sheets on cross-site scripting and CSV injection, UAX 9, from memory. */
const seeds: readonly ((n: number) => string)[] = [
  (n) => `<script>${run}/*${n}*/</script>`,
  (n) => `<img src=x onerror="${run}" alt=${n}>`,
  (n) => `<svg/onload=${run}>${n}`,
  (n) => `"><script>${run}</script>${n}`,
  (n) => `'-${run}-'${n}`,
  (n) => `</textarea><script>${run}</script>${n}`,
  (n) => `</title></style><img src=//nasty.invalid/${n}>`,
  (n) => `<iframe srcdoc="<script>parent.${run}</script>">${n}`,
  (n) => `<a href="javascript:${run}">${n}</a>`,
  (n) => `javascript:${run}//${n}`,
  (n) => `<link rel=stylesheet href=//nasty.invalid/${n}>`,
  (n) => `<style>@import"//nasty.invalid/${n}";</style>`,
  (n) => `background:url(//nasty.invalid/${n})`,
  (n) => `<base href=//nasty.invalid/${n}/>`,
  (n) => `<meta http-equiv=refresh content="0;url=//nasty.invalid/${n}">`,
  (n) => `<form action=//nasty.invalid/${n}><input autofocus onfocus=${run}>`,
  (n) => `<details open ontoggle=${run}>${n}`,
  (n) => `<math><mtext></mtext><script>${run}</script>${n}`,
  (n) => `<!--${n}--><b>bold</b>`,
  (n) => `&lt;script&gt;${run}&lt;/script&gt;${n}`,
  (n) => `&#60;script&#62;${n}`,
  (n) => `\${${run}}${n}`,
  (n) => `{{constructor.constructor('${run}')()}}${n}`,
  (n) => `=HYPERLINK("//nasty.invalid/${n}","x")`,
  (n) => `=1+${n}`,
  (n) => `+${n}+cmd|' /C calc'!A0`,
  (n) => `-${n}+3`,
  (n) => `@SUM(${n})`,
  (n) => `\t=${n}+1`,
  (n) => `;=${n};`,
  (n) => `"${n}";"b`,
  (n) => `'${n}`,
  (n) => `\u202e${n}evil\u202c`,
  (n) => `a\u2066b\u2069${n}`,
  (n) => `\u200f${n}\u200e\u061c`,
  (n) => `\u2067\u2067\u2067${n}`,
  (n) => `zero\u200bwidth\u200d${n}\ufeff`,
  (n) => `e\u0301\u0301\u0301\u0301${n}`,
  (n) => `عائشة ${n} بنت`,
  (n) => `שלום ${n}`,
  (n) => `李小龍${n}`,
  (n) => `👩‍🏫🏽${n}`,
  (n) => `{count, plural, one {x} other {${n}}}`,
  (n) => `{name}${n}`,
  (n) => `{${n}`,
  (n) => `'{${n}}'`,
  (n) => `__proto__${n}`,
  (n) => `constructor${n}`,
  (n) => `#/today${n}`,
  (n) => `../../${n}/etc/passwd`,
  (n) => `\\u003cscript\\u003e${n}`,
  (n) => `%3Cscript%3E${n}`,
  (n) => `<${n}`,
  (n) => `null${n}`,
  (n) => `NaN${n}`,
  (n) => `${n}\u0000\u0007\u001b[31m`,
  (n) => `\ud800${n}`,
  (n) => `a\u2028b\u2029${n}`,
  (n) => `${"A".repeat(300)}${n}`,
  (n) => `'; DROP TABLE pupils; --${n}`,
];

/** @returns that many different strings; the first are the plain seeds, the others mixtures of two or three. */
export function nastyStrings(count: number, seed = 1): string[] {
  const random = seededRandom(seed);
  const pick = (n: number) => seeds[Math.floor(random.next() * seeds.length)]!(n);
  return Array.from({ length: count }, (_, n) => {
    if (n < seeds.length) return seeds[n]!(n);
    const glue = ["", " ", "\u202e", '"', "<", "="][Math.floor(random.next() * 6)]!;
    return [pick(n), pick(n), ...(random.next() < 0.3 ? [pick(n)] : [])].join(glue);
  });
}
