// Lines that can be gone to, by hand: a mark before each that may run.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { walkLesson } from "../../../bench/rehearsal/index.ts";
import { ourLesson } from "../../../bench/rehearsal/lesson.fixture.ts";
import { mayRun } from "./mayRun.ts";

const marked = `
  #include <Servo.h>
  const int led = 9;   // never a statement of its own
  /* a comment
  over two lines */
  void setup() {
>   pinMode(led, OUTPUT);   /* and
  so on */
  }

  void loop() {
>   if (led == 9) {
>     Serial.println("} // {");
    } else {
>     delay(1);
    }
    // nothing
  }
`;

test("statements can be gone to; blanks, comments, braces and what stands above all functions cannot", () => {
  const rows = marked.slice(1).split("\n");
  const expected = rows.map((row) => row.startsWith(">"));
  expect(mayRun(rows.map((row) => row.slice(2)))).toEqual(expected);
});

test("every line that a walk stands at in the lessons can be gone to", () => {
  for (const id of ["lighthouse", "signal-lamp", "dimmer", "foghorn", "barrier", "quay-lights"]) {
    const rows = readFileSync(new URL(`../../../../lessons/${id}/program.cpp`, import.meta.url), "utf8").split("\n");
    const can = mayRun(rows);
    const walk = walkLesson(ourLesson(id)).value!.walk;
    for (let n = 0; n < 120 && walk.now.ended === null; n += 1) {
      expect(can[walk.now.line - 1], `${id} line ${walk.now.line}`).toBe(true);
      walk.step();
    }
  }
});
