// Every text of every language: asks only for what its code carries, is short, kind and in our words, and is used somewhere.
//
// That no text is missing and none is left over is the compiler's work (catalogue.ts); here it is counted for the words that are
// not codes. Rules: at most 30 words before the hint, no sentence over 25 (usability notes of the project; ISO 24495-1 asks for
// readers who find, understand and use); numbers of a hint, blame and drama are out.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { catalogue as kinds, tellingParameters } from "../bench/parts/index.ts";
import { hasOutline } from "../documents/outlines.ts";
import { english } from "./catalogue.ts";
import { flatTexts, languageFor, languageTags } from "./language.ts";
import * as samples from "./samples.fixture.ts";
import { placeholders, say, sayProblem, sayUnchecked } from "./say.ts";

const en = languageFor("en");
const texts = flatTexts(english);
type Data = Readonly<Record<string, unknown>>;

const problems: readonly (readonly [code: string, data: Data])[] = [
  samples.baseSamples,
  samples.lessonSamples,
  samples.programSamples,
  samples.fileSamples,
  samples.changesSamples,
  samples.rehearsalSamples,
].flatMap((room) => Object.entries(room as Record<string, Data>));

const families: readonly (readonly [key: string, data: Data])[] = [
  ...Object.keys(english.rehearsal.hazard).map((code) => [`hazard.${code}`, samples.hazardSample] as const),
  ...Object.keys(english.rehearsal.hazardTry).map((code) => [`hazardTry.${code}`, samples.hazardSample] as const),
  ...(["doubt", "doubtTry"] as const).flatMap((family) =>
    Object.keys(english.rehearsal[family]).map((code) => [`${family}.${code}`, { ...samples.doubtSample }] as const),
  ),
  ...(["mistakeSays", "mistakeLook", "mistakeTry"] as const).flatMap((family) =>
    Object.keys(english.program[family]).map((code) => [`${family}.${code}`, { ...samples.mistakeSample }] as const),
  ),
  ...(["setupMessage", "setupCause", "setupCheck"] as const).flatMap((family) =>
    Object.keys(english.setup[family]).map((code) => [`${family}.${code}`, {}] as const),
  ),
  ...Object.entries(samples.reasonSamples).map(([code, data]) => [`reason.${code}`, data] as const),
  ...Object.entries(samples.remedySamples).map(([code, data]) => [`remedy.${code}`, data] as const),
  ...Object.entries(samples.equipmentSamples),
  ...Object.entries(samples.preparationSamples).map(([code, data]) => [`preparation.${code}`, data] as const),
];

/** What a text may ask for: the fields of its data, and places in its lists ("values0"). */
function unknownNames(text: string, data: Data): string[] {
  return placeholders(text).filter((name) => !(name in data) && !Array.isArray(data[name.replace(/\d$/, "")]));
}

const words = (text: string) => text.split(/\s+/).filter((w) => /[\p{L}\p{N}]/u.test(w)).length;
const sentences = (text: string) => text.split(/(?<=[.?:])\s+/).filter((s) => s !== "");

describe("problems", () => {
  for (const [code, data] of problems) {
    test(code, () => {
      const text = texts.get(code);
      if (text === undefined || typeof text === "string") throw new Error(`${code} has no text with says and try`);
      expect(unknownNames(text.says, data)).toEqual([]);
      expect(unknownNames(text.try, data)).toEqual([]);
      const spoken = sayProblem(en, { code, ...data });
      expect(words(spoken.says)).toBeLessThanOrEqual(30);
      expect(spoken.says).toMatch(/[.?]$|: .+$/);
      expect(spoken.try).toMatch(/[.?]$/);
      expect(`${spoken.says} ${spoken.try}`).not.toMatch(/[{}]|—|undefined|NaN|\[object/);
    });
  }
  test("every problem has a sample", () => {
    const coded = [...texts].filter(([key, text]) => typeof text !== "string" && !key.startsWith("cli.")).map(([key]) => key);
    expect(problems.map(([code]) => code).sort()).toEqual(coded.sort());
  });
});

describe("reasons, remedies, preparations, hazards", () => {
  for (const [key, data] of families) {
    test(key, () => {
      expect(unknownNames(String(texts.get(key)), data)).toEqual([]);
      const spoken = sayUnchecked(en, key, data);
      expect(spoken).toMatch(/[.?]$/);
      expect(spoken).not.toMatch(/[{}]|—|undefined|NaN/);
    });
  }
});

describe("the hand", () => {
  const all = [...texts].flatMap(
    ([key, text]) =>
      (typeof text === "string"
        ? [[key, text]]
        : [
            [key, text.says],
            [key, text.try],
          ]) as [string, string][],
  );
  /** Words that blame or frighten, other people's words for our things, and signs of haste. */
  const banned =
    /\b(illegal|invalid|fatal|abort|crash|failed to|unable|oops|sorry|please|whatever|simply|just|obviously|don't|can't|won't|isn't|student|learner|sketch|component|protoboard|worksheet|whiteboard)\b|!/i;
  test("no word that blames, frightens or belongs to others", () => {
    expect(
      all.filter(([, text]) => banned.test(text.replace(/\{[^{}]*\}/g, ""))).map(([key, text]) => `${key}: ${text}`),
    ).toEqual([]);
  });
  test("no sentence of more than 25 words, half of them 12 or fewer", () => {
    const lengths = problems.flatMap(([code, data]) => {
      const { says, try: hint } = sayProblem(en, { code, ...data });
      return [...sentences(says), ...sentences(hint)].map((s) => ({ s, n: words(s) }));
    });
    expect(lengths.filter(({ n }) => n > 25)).toEqual([]);
    const sorted = lengths.map(({ n }) => n).sort((a, b) => a - b);
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(12);
  });
  test("every text can be read as a message, and in every language that is made", () => {
    for (const tag of languageTags)
      for (const [key, text] of all) {
        expect(() => placeholders(text), key).not.toThrow();
        expect(sayUnchecked(languageFor(tag), key, {}), key).not.toBe("");
      }
  });
});

describe("words of the catalogue of parts", () => {
  test("every kind has a name and an outline, except a port, which is no thing", () => {
    const ids = [...kinds.keys()];
    expect(ids.filter((id) => !texts.has(`item.${id}`))).toEqual([]);
    expect(ids.filter((id) => !hasOutline(id))).toEqual(["usb-port"]);
  });
  test("every name belongs to a kind", () => {
    expect(Object.keys(english.parts.item).filter((id) => !kinds.has(id))).toEqual([]);
  });
  test("every state, caution, meter test and telling word has its text, and the other way round", () => {
    const all = [...kinds.values()];
    const pairs: [string, Set<string>, readonly string[]][] = [
      ["state", new Set(all.flatMap((k) => Object.keys(k.states))), Object.keys(english.parts.state)],
      ["caution", new Set(all.flatMap((k) => k.cautions)), Object.keys(english.parts.caution)],
      ["meterTest", new Set(all.flatMap((k) => k.meterTest ?? [])), Object.keys(english.parts.meterTest)],
    ];
    for (const [family, wanted, have] of pairs) expect([...wanted].sort(), family).toEqual([...have].sort());
    // Types of semiconductors and batteries are names of the trade and stay as they are.
    const telling = all
      .flatMap((k) => tellingParameters(k).flatMap(([, spec]) => spec.words ?? []))
      .filter((word) => !/\d/.test(word));
    expect(telling.filter((word) => !texts.has(`colour.${word}`) && !texts.has(`itemDetail.${word}`))).toEqual([]);
  });
});

describe("own words of papers, commands and page", () => {
  const source = (folder: string): string =>
    readdirSync(folder, { withFileTypes: true })
      .map((entry) => {
        const path = join(folder, entry.name);
        return entry.isDirectory()
          ? source(path)
          : /\.tsx?$/.test(path) && !/\.test\.ts$/.test(path)
            ? readFileSync(path, "utf8")
            : "";
      })
      .join("\n");
  const root = new URL("../..", import.meta.url).pathname;
  for (const [room, folder] of [
    ["papers", "src/documents"],
    ["cli", "src/cli"],
    ["app", "src/app"],
  ] as const)
    test(`every text of ${room} stands in ${folder}`, () => {
      const code = source(join(root, folder));
      const keys = Object.entries(english[room]).flatMap(([family, own]) =>
        Object.keys(own).map((key) => ({ whole: family === "problems" ? key : `${family}.${key}`, key, family })),
      );
      // Either the whole key, or the family with a code behind it, or the key alone where a helper adds the family. A sentence of
      // an act is asked for by what school/changes describes, and the compiler counts those.
      const unused = keys.filter(
        ({ whole, key, family }) =>
          family !== "change" && !code.includes(`"${whole}"`) && !code.includes(`\`${family}.\${`) && !code.includes(`"${key}"`),
      );
      expect(unused.map((k) => k.whole)).toEqual([]);
    });
});

test("a code without a text is shown with its data and never stops the work", () => {
  expect(sayUnchecked(en, "hazard.unheard-of", { part: "D9", value: 3 })).toBe("hazard.unheard-of (part D9, value 3)");
  expect(sayProblem(en, { code: "nobody.knows" })).toEqual({ says: "nobody.knows", try: "" });
  expect(say(en, "hazard.short", {})).toBe("A short at —: — flow. Limit: —.");
});
