// What a test program says about itself in its comments; programs.test.ts shows the forms.
//
// Does not know: how programs run.

export interface Expectations {
  readonly ms: number;
  readonly inputs: string;
  readonly lines: string[];
  readonly problems: { readonly line: number; readonly code: string; readonly data: readonly (readonly [string, string])[] }[];
  readonly broken: { readonly line: number; readonly code: string; readonly values: string } | null;
  readonly logs: ReadonlyMap<string, readonly { readonly what: string; readonly ms: number }[]>;
}

export function readExpectations(text: string): Expectations {
  const lines: string[] = [];
  const problems: { line: number; code: string; data: [string, string][] }[] = [];
  const logs = new Map<string, { what: string; ms: number }[]>();
  let ms = 1000;
  let inputs = "[]";
  let broken: Expectations["broken"] = null;
  text.split("\n").forEach((row, i) => {
    const run = /\/\/ run (\d+) ms/.exec(row);
    if (run) ms = Number(run[1]);
    const given = /\/\/ inputs (\[.*\])/.exec(row);
    if (given) inputs = given[1]!;
    const wanted = /\/\/ expect( problem| broken| pins| modes| pwm| tones| servos)?(?: at (\d+))?:(.*)$/.exec(row);
    if (!wanted) return;
    const [, kind = "", at, rest = ""] = wanted;
    const line = at === undefined ? i + 1 : Number(at);
    const words = rest.trim();
    if (kind === "") lines.push(rest.replace(/^ /, "").trimEnd());
    else if (kind === " problem") {
      const [code = "", ...pairs] = words.split(" ");
      // A value may have blanks in it: it goes on to the next name=.
      const data = [...pairs.join(" ").matchAll(/(\w+)=(.*?)(?= \w+=|$)/g)].map((m) => [m[1]!, m[2]!] as [string, string]);
      problems.push({ line, code, data });
    } else if (kind === " broken") {
      const [code = "", ...values] = words.split(" ");
      broken = { line, code, values: values.join(" ") };
    } else logs.set(kind.trim(), words === "none" ? [] : words.split(",").flatMap((one) => readEntry(kind.trim(), one.trim())));
  });
  return { ms, inputs, lines, problems, broken, logs };
}

/** "D9 high 500"; a tone "D8 440 0-100" is two: its beginning and its end. */
function readEntry(kind: string, text: string): { what: string; ms: number }[] {
  const cut = text.lastIndexOf(" ");
  const what = text.slice(0, cut);
  const when = text.slice(cut + 1);
  if (kind !== "tones") return [{ what, ms: Number(when) }];
  const [from, to] = when.split("-");
  return [
    { what, ms: Number(from) },
    { what: `${what} end`, ms: Number(to) },
  ];
}
