// Lessons for tests: those that lie in lessons/, and small ones written in a few lines inside a test.
//
// Only tests use it. A small lesson names parts, nets and rehearsal as lesson.yaml does.
import { readdirSync, readFileSync } from "node:fs";
import { type Lesson, readLesson } from "../lesson/index.ts";

const root = new URL("../../..", import.meta.url).pathname;

/** A lesson of ours by its name. */
export function ourLesson(id: string): Lesson {
  const folder = `${root}lessons/${id}`;
  return mustRead(
    id,
    (path) => readFileOrNull(`${folder}/${path}`),
    (path) => readdirSync(`${folder}/${path}`),
  );
}

/**
 * A lesson from its three lists and its program.
 *
 * @param parts "R1: { part: resistor, ohms: 220 }", one a line.
 * @param nets "board.D9 R1.1", one net a line.
 * @param rehearsal "{ at: 1s, expect: { LED1: lit } }", one step a line.
 */
export function smallLesson(parts: string, nets: string, rehearsal: string, program: string): Lesson {
  const lines = (text: string) =>
    text
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line !== "");
  const yaml = [
    "format: benchday-lesson/1",
    "id: small",
    "minutes: 45",
    "parts:",
    ...lines(parts).map((line) => `  ${line}`),
    "nets:",
    ...lines(nets).map((line) => `  - [${line.split(/\s+/).join(", ")}]`),
    "rehearsal:",
    ...lines(rehearsal).map((line) => `  - ${line}`),
    "plan:",
    "  - { what: build, minutes: 45 }",
  ].join("\n");
  const texts = new Map([
    ["lesson.yaml", yaml],
    ["program.cpp", program],
    ["text/en.md", "# Small\n\n## teaches\n\nNothing.\n"],
  ]);
  return mustRead(
    "small",
    (path) => texts.get(path) ?? null,
    (folder) => (folder === "text" ? ["en.md"] : ["lesson.yaml", "program.cpp"]),
  );
}

function mustRead(folder: string, read: (path: string) => string | null, list: (path: string) => readonly string[]): Lesson {
  const listed = (path: string) => {
    try {
      return list(path);
    } catch {
      return [];
    }
  };
  const { value, problems } = readLesson({ folder, read, list: listed });
  if (!value) throw new Error(`${folder}: ${JSON.stringify(problems)}`);
  return value;
}

function readFileOrNull(path: string): string | null {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return null;
  }
}
