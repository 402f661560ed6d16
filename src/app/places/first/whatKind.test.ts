// Files that a teacher may take for a class file, and what each is told to be.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type FileKind, mostBytes, whatKind } from "./whatKind.ts";

const bytes = (...list: number[]) => Uint8Array.from(list);
const text = (words: string) => new TextEncoder().encode(words);
const own = (path: string) => readFileSync(path).subarray(0, 4096);

const cases: [name: string, file: string, start: Uint8Array, kind: FileKind][] = [
  ["nothing in it", "class.json", bytes(), "empty"],
  ["blanks only", "class.json", text(" \n \n"), "blank"],
  ["our demo", "harbour.json", own("demo/harbour.json"), "class"],
  ["our demo under another name", "harbour.txt", own("demo/harbour.json"), "class"],
  ["a class file that was cut after a few signs", "harbour.json", text('{ "form'), "class"],
  ["a class file with a byte order mark", "harbour.json", text('\ufeff{ "format": "benchday-class/1"'), "class"],
  ["some other JSON", "settings.json", text('{"a": 1}'), "class"],
  ["a kit of ours", "harbour-basic.yaml", own("kits/harbour-basic.yaml"), "kit"],
  ["a lesson of ours", "lesson.yaml", own("lessons/barrier/lesson.yaml"), "lesson"],
  ["a program of ours", "program.cpp", own("lessons/barrier/program.cpp"), "program"],
  ["a list of pupils", "names.csv", text("name,reads\nA,1\nB,2\n"), "table"],
  ["a list with semicolons and no ending", "names", text("name;reads\r\nA;1\r\nB;2\r\n"), "table"],
  ["a list in UTF-16", "names.csv", bytes(0xff, 0xfe, 0x61, 0, 0x3b, 0, 0x62, 0, 0x0a, 0), "table"],
  ["a page of the web", "start.html", text("<!DOCTYPE html><html>"), "page"],
  ["a PNG picture", "class.json", bytes(0x89, 0x50, 0x4e, 0x47, 0x0d), "picture"],
  ["a JPEG picture", "photo.jpg", bytes(0xff, 0xd8, 0xff, 0xe0), "picture"],
  ["a WebP picture", "photo.webp", text("RIFF0000WEBPVP8 "), "picture"],
  ["a PDF", "tray.pdf", text("%PDF-1.4"), "document"],
  ["a table of an office program", "names.xlsx", bytes(0x50, 0x4b, 0x03, 0x04), "office"],
  ["an old table of an office program", "names.xls", bytes(0xd0, 0xcf, 0x11, 0xe0), "office"],
  ["a packed folder", "copy.zip", bytes(0x50, 0x4b, 0x03, 0x04), "packed"],
  ["noise", "class.bin", bytes(0x07, 0xff, 0x00, 0x13, 0xc3), "unreadable"],
  ["a disk error that left noughts", "class.json", bytes(0, 0, 0, 0), "unreadable"],
  ["a letter", "letter.txt", text("Dear colleagues"), "unreadable"],
];
for (const [name, file, start, kind] of cases) test(name, () => expect(whatKind(file, start.length, start)).toBe(kind));

test("fifty million bytes are not read", () => expect(whatKind("class.json", 50_000_000, text("{"))).toBe("tooLarge"));
test("the longest class file is", () => expect(whatKind("class.json", mostBytes, text("{"))).toBe("class"));
test("a sign cut in two at the end of the start is no damage", () =>
  expect(whatKind("class.json", 5000, text('{ "about": "é').subarray(0, -1))).toBe("class"));
