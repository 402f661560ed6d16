// benchday explain as a person and as another program meet it.
//
// What the compiler says first is from avr-g++ 5.4.0 and g++ 12.2 on these programs (the project's reference list of messages).
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { answerOf, benchday, freshFolder } from "./benchday.ts";

// biome-ignore lint/suspicious/noExplicitAny: the answers are looked at as another program would, without our types.
type Any = any;
const folder = freshFolder();
const slip = "void setup() {\n  pinMode(13, OUTPUT);\n}\nvoid loop() {\n  delay(500)\n  digitalWrite(13, HIGH);\n}\n";
writeFileSync(join(folder, "slip.cpp"), slip);
writeFileSync(join(folder, "well.cpp"), slip.replace("(500)", "(500);"));
writeFileSync(join(folder, "silent.cpp"), slip.replace("  delay(500)\n", "  int n = 0;\n  if (n = 10) delay(500);\n"));
writeFileSync(
  join(folder, "loaded.txt"),
  "avrdude error: cannot open port /dev/ttyUSB0: Permission denied\navrdude error: programmer is not responding\n",
);

describe("a program", () => {
  const answer: Any = answerOf(["explain", "slip.cpp"], { cwd: folder });
  test("the first message, the slip, the lines to look at and the edit", () => {
    expect(answer.first).toMatchObject({
      line: 6,
      column: 3,
      severity: "error",
      message: "expected ';' before 'digitalWrite'",
      code: "semicolonMissing",
      look: [5, 6],
      fix: { edit: "insert", line: 5, column: 13, text: ";" },
    });
    expect(answer.problems).toContainEqual(expect.objectContaining({ code: "program.expected", file: "slip.cpp", line: 5 }));
  });
  test("in words, with status 1", () => {
    const ran = benchday(["explain", "slip.cpp"], { cwd: folder });
    expect(ran.status).toBe(1);
    expect(ran.out).toContain("slip.cpp:6:3: error: expected ';' before 'digitalWrite'");
    expect(ran.out).toContain("semicolon");
  });
  test("a program that compiles has no first message", () => {
    expect(answerOf<Any>(["explain", "well.cpp"], { cwd: folder })).toEqual({ first: null, problems: [], silent: [] });
    expect(benchday(["explain", "well.cpp"], { cwd: folder }).status).toBe(0);
  });
  test("a silent mistake is told, and is no error", () => {
    const silent: Any = answerOf(["explain", "silent.cpp"], { cwd: folder });
    expect(silent.first).toBeNull();
    expect(silent.silent).toContainEqual(expect.objectContaining({ code: "program.assignmentAsTest", line: 6 }));
    expect(benchday(["explain", "silent.cpp"], { cwd: folder }).status).toBe(0);
  });
  test("a file that is not there", () => {
    const ran = benchday(["explain", "none.cpp", "--json"], { cwd: folder });
    expect(ran.status).toBe(1);
    expect(JSON.parse(ran.out)).toMatchObject({ first: null, problems: [{ code: "cli.noSuchFile" }] });
  });
});

describe("a message of the up-loader", () => {
  test("its causes, the likeliest first", () => {
    const answer: Any = answerOf(["explain", "--message", "loaded.txt"], { cwd: folder });
    expect(answer).toMatchObject({ message: "port-denied", port: "/dev/ttyUSB0", problems: [] });
    expect(answer.causes[0]).toBe("not-allowed");
  });
  test("in words, each cause with its check", () => {
    const ran = benchday(["explain", "--message", "loaded.txt"], { cwd: folder });
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/^1\. /m);
    expect(ran.out).toMatch(/^2\. /m);
  });
  test("neither a program nor a message is wrong use", () => expect(benchday(["explain"], { cwd: folder }).status).toBe(2));
});
