// Our first message beside the compiler's, for slips of every kind that avr-g++ has judged.
//
// The figures are those of the reporting seed (draw.ts); what differs is listed in differences.md with its reason. The slips behind
// the messages and the edits that mend them are held against what was really done to the program.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { type ExplainCode, explainProgram, type FirstMessage, kindOfMessage } from "../../src/bench/program/index.ts";
import { sample } from "../../test/sample.ts";
import { hasTool, sha256 } from "../tools.ts";
import { basePrograms } from "./basePrograms.ts";
import { pupilSlips, withPupilSlip } from "./byHand.ts";
import { reported, reportingSeed, tuningSeeds } from "./draw.ts";
import { judgedText, type Message, openJudge } from "./judge.ts";
import type { Recording } from "./record.ts";
import { drawSlips, kinds, slipsOf, withSlip } from "./slips.ts";

const folder = new URL(".", import.meta.url).pathname;
const root = `${folder}../../`;
const recording = JSON.parse(readFileSync(`${folder}recorded.json`, "utf8")) as Recording;
const programs = new Map(Object.entries(recording.programs));

function sameLine(ours: FirstMessage | null, theirs: Message | null): boolean {
  return ours?.severity === theirs?.severity && (ours?.line ?? 0) === (theirs?.line ?? 0);
}

function sameKind(ours: FirstMessage | null, theirs: Message | null): boolean {
  return sameLine(ours, theirs) && (theirs === null || kindOfMessage(theirs.message) === ours?.kind);
}

const judged = recording.slips.map((r) => {
  const text = withSlip(programs.get(r.program)!, r.slip);
  const { first } = explainProgram(r.program, text);
  const line = programs.get(r.program)!.slice(0, r.slip.from).split("\n").length;
  return { ...r, text, ours: first, where: `${r.slip.kind} | ${r.program}:${line}` };
});
const share = (n: number) => n / judged.length;

describe("the recording", () => {
  test("is of the slips that the seed draws", () => {
    expect(recording.reportingSeed).toBe(reportingSeed);
    expect(tuningSeeds).not.toContain(reportingSeed);
    expect(recording.slips.map(({ program, slip }) => ({ program, slip }))).toEqual(drawSlips(programs, reportingSeed, reported));
    expect(judged.length).toBeGreaterThanOrEqual(400);
    expect(new Set(judged.map((j) => j.slip.kind)).size).toBeGreaterThanOrEqual(20);
  });
  test("is of these texts and these messages", () => {
    for (const j of judged) {
      expect(sha256(judgedText(j.text)), j.where).toBe(j.input);
      expect(sha256(JSON.stringify(j.first)), j.where).toBe(j.output);
    }
  });
});

describe("first messages", () => {
  test("the first line is the compiler's in 95 of 100", () => {
    expect(share(judged.filter((j) => sameLine(j.ours, j.first)).length)).toBeGreaterThanOrEqual(0.95);
  });
  test("the kind of message is the compiler's in 90 of 100", () => {
    expect(share(judged.filter((j) => sameKind(j.ours, j.first)).length)).toBeGreaterThanOrEqual(0.9);
  });
  test("what differs is listed with its reason", () => {
    const list = readFileSync(`${folder}differences.md`, "utf8");
    const rows = [...list.matchAll(/^\| ([^|]+ \| [^|]+:\d+) \|/gm)].map((m) => m[1]);
    expect(
      judged
        .filter((j) => !sameKind(j.ours, j.first))
        .map((j) => j.where)
        .sort(),
    ).toEqual(rows.sort());
  });
  test("programs without a slip have no message", () => {
    for (const [name, text] of programs) expect(explainProgram(name, text).first, name).toBeNull();
  });
});

describe("slips as pupils make them, written by hand", () => {
  const list = pupilSlips.map((slip, i) => {
    const text = withPupilSlip(slip);
    const { input, first } = recording.byHand[i]!;
    return { text, input, theirs: first, ours: explainProgram("pupil.cpp", text).first, wrote: slip[1] };
  });
  test("are those that were judged", () => {
    expect(recording.byHand.length).toBe(pupilSlips.length);
    for (const s of list) expect(sha256(judgedText(s.text)), s.wrote).toBe(s.input);
  });
  test("the first line is the compiler's, for every one", () => {
    for (const s of list) expect(sameLine(s.ours, s.theirs), s.wrote).toBe(true);
  });
  test("the kind is the compiler's, but for one of which differences.md tells", () => {
    expect(list.filter((s) => !sameKind(s.ours, s.theirs)).map((s) => s.wrote)).toEqual(["int value = analogRead sensor;"]);
  });
});

describe("the slip behind the message", () => {
  /** What an explanation may call a slip. Kinds that hardly can be told from others are left out. */
  const meant: Readonly<Record<string, readonly ExplainCode[]>> = {
    "semicolon missing": ["semicolonMissing"],
    "closing brace missing": ["braceNotClosed", "functionHidden"],
    "opening bracket missing": ["bracketNotOpened"],
    "closing bracket missing": ["bracketNotClosed"],
    "closing bracket too many": ["bracketTooMany"],
    "quote missing": ["quoteMissing"],
    "typographic quotes": ["typographicQuotes"],
    "en dash for minus": ["longDash"],
    "full-width semicolon": ["fullWidthMark"],
    "no-break space": ["strangeSpace"],
    "wrong capitals in a name": ["wrongCapitals"],
    "wrong capitals in a keyword": ["wrongCapitals"],
    "capital in setup or loop": ["wrongCapitals"],
    "name misspelt": ["nameMisspelt", "memberUnknown"],
    "keyword misspelt": ["wordMisspelt"],
    "return type missing": ["returnTypeMissing"],
    "one = too many": ["compareInDeclaration"],
    "=> for >=": ["swappedOperator"],
    "assigned to a constant": ["constAssigned"],
    "defined twice": ["declaredTwice"],
    "function twice": ["declaredTwice"],
    "semicolon behind a function's head": ["headSemicolon"],
    "comment not closed": ["commentNotClosed"],
    "octal 09": ["leadingZero"],
    "name begins with a digit": ["digitFirst"],
    "word of the language as a name": ["reservedName"],
    "point missing": ["pointMissing"],
    "comma for point": ["pointMissing"],
    "# missing": ["hashMissing"],
    "header misspelt": ["headerUnknown"],
  };
  test("is named in nine of ten", () => {
    const known = judged.filter((j) => meant[j.slip.kind] && j.ours?.severity === "error");
    const named = known.filter((j) => meant[j.slip.kind]!.includes(j.ours!.code));
    expect(known.length).toBeGreaterThan(250);
    expect(named.length / known.length).toBeGreaterThan(0.9);
  });
  test("the line of the slip is among the first three to look at in nine of ten", () => {
    const broken = judged.filter((j) => j.ours?.severity === "error" && meant[j.slip.kind]);
    const near = broken.filter((j) => {
      const lines = j.slip.insert.startsWith("\n") ? 1 : 0;
      const line = j.text.slice(0, j.slip.from).split("\n").length + lines;
      return j.ours!.look.slice(0, 3).includes(line);
    });
    expect(near.length / broken.length).toBeGreaterThan(0.9);
  });
  test("an edit that is offered mends the program in nine of ten", () => {
    const offered = judged.filter((j) => j.ours?.severity === "error" && j.ours.fix !== null);
    const mended = offered.filter((j) => {
      const { line, column, text, found } = j.ours!.fix!;
      const rows = j.text.split("\n");
      const row = rows[line - 1]!;
      expect(row.slice(column - 1, column - 1 + found.length), j.where).toBe(found);
      rows[line - 1] = row.slice(0, column - 1) + text + row.slice(column - 1 + found.length);
      return explainProgram(j.program, rows.join("\n")).first?.severity !== "error";
    });
    expect(offered.length / judged.length).toBeGreaterThan(0.35);
    expect(mended.length / offered.length).toBeGreaterThan(0.9);
  });
});

test("whatever is done to a program, explaining never throws", () => {
  const random = seededRandom(5, "never throws");
  const texts = [...programs.values()];
  for (let i = 0; i < sample(2000, 20_000); i += 1) {
    let text = texts[random.int(0, texts.length - 1)]!;
    for (let k = random.int(1, 5); k > 0; k -= 1) {
      const at = random.int(0, text.length);
      const from = random.int(0, text.length);
      const sign = String.fromCharCode(random.int(9, 126));
      const put = [sign, "", text.slice(from, from + random.int(0, 80)), '"', "{", "(", "\u201c"][random.int(0, 6)]!;
      text = text.slice(0, at) + put + text.slice(at + random.int(0, 40));
    }
    const { first } = explainProgram("program.cpp", text);
    if (first === null) continue;
    expect(first.message).not.toBe("");
    expect(first.look.every((line) => line >= 1 && line <= text.split(/\r\n|\r|\n/).length)).toBe(true);
  }
});

test("every kind of slip can be made somewhere", () => {
  const made = new Set([...programs.values()].flatMap((text) => slipsOf(text, 1).map((slip) => slip.kind)));
  expect(Object.keys(kinds).filter((kind) => !made.has(kind) && kind !== "number runs into a name")).toEqual([]);
});

const canJudge = hasTool("avr-g++");
if (!canJudge && process.env.REQUIRE_TOOLS) test("avr-g++ is here", () => expect(canJudge).toBe(true));
test.skipIf(!canJudge)("avr-g++ says today what was recorded", () => {
  const judge = openJudge(`${root}reference/programs/core`);
  try {
    const step = Math.ceil(judged.length / sample(25, judged.length));
    for (let i = 0; i < judged.length; i += step)
      expect(judge.first(judged[i]!.text), judged[i]!.where).toEqual(judged[i]!.first);
  } finally {
    judge.close();
  }
});
test.skipIf(!canJudge)("today's lessons, every kind of slip: the goals hold", () => {
  const judge = openJudge(`${root}reference/programs/core`);
  try {
    const today = basePrograms(root);
    const list = drawSlips(today, 1, sample(60, 2000)).map(({ program, slip }) => {
      const text = withSlip(today.get(program)!, slip);
      return { ours: explainProgram(program, text).first, theirs: judge.first(text) };
    });
    expect(list.filter((k) => sameLine(k.ours, k.theirs)).length / list.length).toBeGreaterThanOrEqual(0.95);
    expect(list.filter((k) => sameKind(k.ours, k.theirs)).length / list.length).toBeGreaterThanOrEqual(0.9);
  } finally {
    judge.close();
  }
});
