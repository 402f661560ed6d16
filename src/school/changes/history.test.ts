// A long day of acts, taken back and done again, beside the plainest model there is: a pile of whole copies.
//
// After each act the file must be the model's to the last byte, must be readable, and no id may ever be given twice.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isLong, sample } from "../../../test/sample.ts";
import { type Random, seededRandom } from "../../base/index.ts";
import { type ClassFile, readClassFile, readKit, writeClassFile } from "../file/index.ts";
import { changeKinds } from "./changeShape.ts";
import { act, begin, type History, historyDepth, redo, undo } from "./history.ts";
import { readHistory, writeHistory } from "./historyText.ts";
import { randomChange } from "./randomChange.fixture.ts";

const read = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
const demo = readClassFile("harbour.json", read("demo/harbour.json")).value as ClassFile;
const kits = new Map(["harbour-basic", "harbour-plain"].map((id) => [id, readKit(id, read(`kits/${id}.yaml`)).value!] as const));
const lessonMinutes = new Map(["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"].map((id) => [id, 90] as const));

/** The model: what each act left behind, whole. */
interface Model {
  readonly past: string[];
  now: string;
  readonly future: string[];
}

/** Acts by chance until so many were taken. */
function actedOn(history: History, random: Random, acts: number): History {
  let next = history;
  for (let tries = 0; next.done.length < Math.min(acts, historyDepth) && tries < 20 * acts; tries += 1) {
    const outcome = act(next, randomChange(next.file, random));
    if ("value" in outcome) next = outcome.value;
  }
  return next;
}

for (const [name, context] of [
  ["with the file alone", {}],
  ["with kits and lessons known", { kits, lessonMinutes }],
] as const)
  test(`acts, undo and redo ${name}: always what the pile of copies says, always readable`, { timeout: 300_000 }, () => {
    const random = seededRandom(20_261_125, name);
    let history = begin(demo);
    const model: Model = { past: [], now: writeClassFile(demo), future: [] };
    const given = new Set<string>();
    const done = new Set<string>();
    const refused = new Set<string>();
    for (let step = 0; step < sample(250, 2_500); step += 1) {
      const dice = random.next();
      if (dice < 0.2) {
        history = undo(history);
        const before = model.past.pop();
        if (before !== undefined) {
          model.future.push(model.now);
          model.now = before;
        }
      } else if (dice < 0.3) {
        history = redo(history);
        const after = model.future.pop();
        if (after !== undefined) {
          model.past.push(model.now);
          model.now = after;
        }
      } else {
        const change = randomChange(history.file, random);
        const outcome = act(history, change, context);
        if ("problem" in outcome) {
          refused.add(outcome.problem.code);
          expect(writeClassFile(history.file), `step ${step}`).toBe(model.now);
          continue;
        }
        const text = writeClassFile(outcome.value.file);
        if (outcome.value === history) {
          expect(text).toBe(model.now);
          continue;
        }
        done.add(change.kind);
        for (const effect of outcome.effects)
          if (effect.code === "idGiven" && "class" in change) {
            const key = `${change.class}/${effect.id}`;
            expect(given.has(key), `step ${step}: ${key} was given before`).toBe(false);
            given.add(key);
          }
        if (change.kind === "count-devices") {
          const old = new Set(history.file[change.what].map((d) => d.id));
          for (const { id } of outcome.value.file[change.what].filter((d) => !old.has(d.id))) {
            expect(given.has(`${change.what}/${id}`), `step ${step}: ${id} was given before`).toBe(false);
            given.add(`${change.what}/${id}`);
          }
        }
        history = outcome.value;
        model.past.push(model.now);
        if (model.past.length > historyDepth) model.past.shift();
        model.now = text;
        model.future.length = 0;
      }
      const text = writeClassFile(history.file);
      expect(text, `step ${step}`).toBe(model.now);
      const { value, problems } = readClassFile("class.json", text, context);
      expect(
        problems.filter((p) => p.severity !== "warning"),
        `step ${step}`,
      ).toEqual([]);
      expect(writeClassFile(value!), `step ${step}`).toBe(text);
      if (step % 10 === 0) expect(value, `step ${step}`).toEqual(history.file);
      expect([history.done.length, history.undone.length]).toEqual([model.past.length, model.future.length]);
    }
    // Chance has tried nearly every kind, and found ways to be refused.
    if (isLong) expect(changeKinds.filter((kind) => !done.has(kind))).toEqual([]);
    expect(done.size).toBeGreaterThan(changeKinds.length / 2);
    expect(refused.size).toBeGreaterThan(10);
    while (history.done.length > 0) history = undo(history);
    expect(writeClassFile(history.file)).toBe(model.past[0] ?? model.now);
  });

test("undo gives the very file back: deep equal and equal when written", () => {
  const random = seededRandom(7, "back");
  const acted = actedOn(begin(demo), random, 100);
  expect(acted.done.length).toBe(100);
  let history = acted;
  while (history.done.length > 0) history = undo(history);
  expect(history.file).toEqual(demo);
  expect(writeClassFile(history.file)).toBe(read("demo/harbour.json"));
  while (history.undone.length > 0) history = redo(history);
  expect(history.file).toEqual(acted.file);
});

test("with nothing to take back or do again, the history stays the same object", () => {
  const history = begin(demo);
  expect(undo(history)).toBe(history);
  expect(redo(history)).toBe(history);
});

test("an act after an undo leaves nothing to do again, and its id is new", () => {
  const first = taken(act(begin(demo), { kind: "add-pupil", class: "7b", name: "Awa" }));
  const back = undo(first);
  const second = taken(act(back, { kind: "add-pupil", class: "7b", name: "Bo" }));
  expect(second.undone).toEqual([]);
  expect(second.file.classes[0]!.pupils.at(-1)).toEqual({ id: "p32", name: "Bo", marks: {} });
  expect(redo(back).file.classes[0]!.pupils.at(-1)).toEqual({ id: "p31", name: "Awa", marks: {} });
});

test("an act keeps the names of the moment", () => {
  const history = taken(act(begin(demo), { kind: "remove-pupil", class: "7b", pupil: "p05" }));
  expect(history.done[0]!.says).toEqual({
    code: "change.remove-pupil",
    data: { pupil: "Emre Aydemir", class: "Class 7b" },
  });
});

test("two hundred acts are kept, the oldest goes first", () => {
  let history = begin(demo);
  for (let n = 1; n <= historyDepth + 3; n += 1) history = taken(act(history, { kind: "set-about", about: `${n}` }));
  expect(history.done.length).toBe(historyDepth);
  expect(history.done[0]!.change).toEqual({ kind: "set-about", about: "4" });
});

test("two hundred acts on the demo take less room than eight copies of it", () => {
  const history = actedOn(begin(demo), seededRandom(3, "size"), historyDepth);
  expect(history.done.length).toBe(historyDepth);
  const size = writeHistory(history).length;
  expect(size).toBeLessThan(8 * read("demo/harbour.json").length);
});

test("a history reads as it was written, with its undone acts", () => {
  const random = seededRandom(11, "text");
  let history = actedOn(begin(demo), random, 60);
  for (let n = 0; n < 20; n += 1) history = undo(history);
  const text = writeHistory(history);
  const again = readHistory(text, history.file);
  expect(again).toEqual(history);
  expect(writeHistory(again!)).toBe(text);
  expect(undo(again!).file).toEqual(undo(history).file);
});

test("a history of another state of the class is dropped", () => {
  const history = actedOn(begin(demo), seededRandom(5, "other"), 3);
  expect(readHistory(writeHistory(history), demo)).toBe(null);
  expect(readHistory(writeHistory(begin(demo)), demo)).toEqual(begin(demo));
});

test("a damaged history is dropped whole: bits, cuts, doubled pieces", () => {
  const history = actedOn(begin(demo), seededRandom(13, "damage"), 12);
  const text = writeHistory(history);
  const random = seededRandom(17, "damage");
  for (let n = 0; n < sample(200, 4_000); n += 1) {
    const at = random.int(0, text.length - 1);
    const end = Math.min(text.length, at + random.int(1, 60));
    const damaged = [
      text.slice(0, at),
      text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ (1 << random.int(0, 6))) + text.slice(at + 1),
      text.slice(0, end) + text.slice(at),
      text.slice(0, at) + text.slice(end),
    ][n % 4]!;
    if (damaged !== text && readHistory(damaged, history.file) !== null)
      // A change that leaves the same data, such as one digit of "1.0", cannot be told from none.
      expect(JSON.parse(damaged), `damage ${n}`).toEqual(JSON.parse(text));
  }
});

const noHistories: [name: string, text: string][] = [
  ["nothing", ""],
  ["a number", "7"],
  ["null", "null"],
  ["a list", "[]"],
  ["another format", '{"format":"benchday-class/1"}'],
  ["a list ten thousand deep", "[".repeat(10_000) + "]".repeat(10_000)],
  ["a prototype's name", writeHistory(begin(demo)).replace('"retired":', '"__proto__":{"polluted":1},"retired":')],
];
for (const [name, text] of noHistories)
  test(`${name} is no history`, () => {
    expect(readHistory(text, demo)).toBe(null);
    expect(({} as Record<string, unknown>).polluted).toBe(undefined);
  });

test("patches that do not fit are found although their hash is right", () => {
  const history = taken(act(begin(demo), { kind: "remove-pupil", class: "7b", pupil: "p05" }));
  const [entry] = history.done;
  for (const patch of [
    { do: "fields", of: [["classes", { do: "entries", of: [[9, { do: "set", value: 1 }]] }]] },
    { do: "fields", of: [["classes", { do: "splice", at: 0, take: 9, put: [] }]] },
    { do: "fields", of: [["nothing", { do: "drop" }]] },
    { do: "fields", of: [["classes", { do: "set", value: [] }]] },
    { do: "set", value: 7 },
  ] as const) {
    const forged = { ...history, done: [{ ...entry!, patch }] } as unknown as History;
    expect(readHistory(writeHistory(forged), history.file), JSON.stringify(patch)).toBe(null);
  }
});

function taken(outcome: ReturnType<typeof act>): History {
  if ("problem" in outcome) throw new Error(outcome.problem.code);
  return outcome.value;
}
