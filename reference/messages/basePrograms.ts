// The programs that slips are made in: those of the lessons, and longer ones of test/programs.
//
// Left out are those with the class String, which the reference board has not.
// Does not know: slips.
import { existsSync, readdirSync, readFileSync } from "node:fs";

const longer =
  "arrays-2d bits blink-without-delay button-toggle char-text enum fade hello-loop loops recursion scope state-machine struct switch-falls-through text-arrives two-clocks values-and-references".split(
    " ",
  );

/** @param root the project's folder, with a slash at its end. @returns text by name. */
export function basePrograms(root: string): Map<string, string> {
  const lessons = readdirSync(`${root}lessons`).filter((lesson) => existsSync(`${root}lessons/${lesson}/program.cpp`));
  const files = [...lessons.sort().map((l) => `lessons/${l}/program.cpp`), ...longer.map((n) => `test/programs/${n}.cpp`)];
  const texts = files.map((file) => [file, readFileSync(root + file, "utf8")] as const);
  return new Map(texts.filter(([, text]) => !/\bString\b/.test(text)));
}
