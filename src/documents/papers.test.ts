// What stands on each paper: order, names, sums, clock times, seats. Laws over invented classes; no picture is looked at here.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  everyPaper,
  inventedClassFile,
  inventedGroup,
  inventedKits,
  inventedLesson,
  inventedPlan,
  inventedPurchase,
  inventedRota,
  inventedTray,
  withTexts,
} from "../../test/pictures/invented.ts";
import { readLesson } from "../bench/lesson/index.ts";
import { catalogue as kinds } from "../bench/parts/index.ts";
import { languageFor } from "../language/index.ts";
import { expectedReadings, shownVolts } from "./expectedReadings.ts";
import { htmlText } from "./html.ts";
import { labels } from "./labelPaper.ts";
import { makePaper, makePapers, paperKinds } from "./makePaper.ts";
import { markdownBlocks } from "./markdownBlocks.ts";
import { lineCount, textWidth } from "./measure.ts";
import { outline } from "./outlines.ts";
import { qrCode, quietModules } from "./qrCode.ts";
import { splitByHeight } from "./splitByHeight.ts";
import { trayRows } from "./trayPaper.ts";
import { shortNames, sittingParts } from "./who.ts";

const en = languageFor("en");
const options = { language: en, paperSize: "A4", source: "harbour.json" } as const;
const group = inventedGroup();
const text = (html: string) =>
  html
    .replace(/<style>[^<]*<\/style>|<svg[\s\S]*?<\/svg>/g, "")
    .replace(/<[^>]*>/g, "\n")
    .replace(/\u00a0/g, " ")
    .split("\n")
    .map((l) => l.trim())
    .filter((l) => l !== "");

describe("any paper", () => {
  const orders = everyPaper(group);
  test("every kind is made, counts its sheets and fetches nothing", () => {
    expect(orders.map((o) => o.kind)).toEqual([...paperKinds]);
    for (const order of orders) {
      const paper = makePapers([order], options);
      expect(paper.html.match(/<article class="sheet">/g)?.length).toBe(paper.sheets);
      expect(paper.html).not.toMatch(/https?:|<script|<link|<img|@import/);
      expect(paper.html).toMatch(/^<!doctype html>\n<html lang="en" dir="ltr">/);
    }
  });
  test("the waveform says its scales, where it begins, and that nobody measured it", () => {
    const order = orders.find((o) => o.kind === "waveform");
    const { html, sheets } = makePapers(order ? [order] : [], options);
    expect(sheets).toBe(1);
    expect(html.replace(/\u00a0/g, " ")).toContain("D6: 1 V and 10 ms a division");
    expect(text(html).join(" ")).toContain("nobody measured it");
    // Five pulses: each goes up once.
    const path = /class="curve" d="([^"]*)"/.exec(html)?.[1] ?? "";
    const heights = [...path.matchAll(/[ML][\d.]+ ([\d.]+)/g)].map((m) => Number(m[1]));
    expect(heights.filter((y, i) => i > 0 && y < (heights[i - 1] ?? 0))).toHaveLength(5);
  });
  test("the same on A4 and Letter but for the size of the page", () => {
    const both = (["A4", "Letter"] as const).map((paperSize) => makePapers(orders, { ...options, paperSize }).html);
    expect(both[0]!.replace(/@page\{[^}]*\}/, "")).toBe(both[1]!.replace(/@page\{[^}]*\}/, ""));
  });
  test("the title block says what, for whom, from which data, which sheet", () => {
    const lines = text(makePapers(orders.slice(0, 1), options).html);
    for (const words of ["tray list", "team 7", "The barrier", "4 March 2027", "2 of 2"])
      expect(lines.join("|")).toContain(words);
    expect(lines.find((l) => l.startsWith("harbour.json"))).toMatch(/^harbour\.json, [0-9a-f]{4}$/);
  });
  test("other data, other hash; the same data, the same page", () => {
    const hash = (html: string) => /harbour\.json, ([0-9a-f]{4})/.exec(html)?.[1];
    const one = makePapers(everyPaper(group), options).html;
    expect(makePapers(everyPaper(inventedGroup()), options).html).toBe(one);
    expect(hash(makePapers(everyPaper(inventedGroup(29)), options).html)).not.toBe(hash(one));
  });
  test("months stand in words, no date in figures", () => {
    const page = makePapers(
      everyPaper(group).filter((o) => o.kind !== "tray"),
      options,
    ).html;
    expect(text(page).filter((l) => /\b\d{4}-\d\d-\d\d\b|\b\d{1,2}\/\d{1,2}\b/.test(l))).toEqual([]);
  });
  test("no text was forgotten: in the language of keys every word is a key, a name or a figure", () => {
    const nameless = everyPaper(
      group,
      withTexts(inventedLesson(), () => "7"),
    );
    const html = makePapers(nameless, { ...options, language: languageFor("xx") }).html;
    const own = html
      .replace(/<bdi>[\s\S]*?<\/bdi>|<([a-z]+) class="[^"]*\bltr\b[^"]*"[^>]*>[^<]*<\/\1>/g, "")
      .replace(/<title>.*?<\/title>/, "");
    // Names of parts, pins and joints ("R1–LED1"), figures and signs are the same in every language.
    // Days and sums come from Intl, and a name cut out of a key leaves its end behind.
    const plain =
      /^(?:[A-Z]{1,5}\d*(?:[–, ]+[A-Z]{1,5}\d*)*|\d?V\d?|[\d.,:%–—·;\s()]*|\d{1,2} \p{L}+(?: \d{4})?|€[\d.]+|[,;\s\d)]*\]\])$/u;
    expect(text(own).filter((l) => !l.includes("[[") && !plain.test(l))).toEqual([]);
  });
});

describe("tray list", () => {
  test("large things first, parts by name, wires, then what is missing", () => {
    const rows = trayRows(inventedTray(7), inventedClassFile(group), en);
    expect(rows.map((r) => `${r.count} ${r.parts} ${r.name}`)).toEqual([
      "1  breadboard",
      "1  board",
      "1  USB cable",
      "1 B1 button",
      "1 LED1 LED, red",
      "1 LED2 LED, green",
      "1 R1 resistor, 220 Ω",
      "1 R2 resistor, 330 Ω",
      "9  wires",
      "1 SERVO1 servo",
    ]);
    expect(rows.map((r) => r.missing)).toEqual([...Array(9).fill(false), true]);
    expect(rows[7]!.note).toBe("orange orange brown, gold · in place of resistor, 220 Ω");
  });
  test("what has no place comes from the kit, unless it was counted in the cupboard", () => {
    const at = (item: string) => ({ item, count: 1, parts: [], insteadOf: null, box: "" });
    const rows = trayRows({ team: 1, items: [at("servo"), at("relay")], missing: [] }, inventedClassFile(group), en);
    expect(rows.map((r) => [r.item, r.from])).toEqual(
      [
        ["relay", "kit"],
        ["servo", "—"],
      ].reverse(),
    );
  });
  test("computers and their ports are not handed out", () => {
    const tray = {
      team: 1,
      items: [{ item: "computer", count: 1, parts: [], insteadOf: null, box: "" }],
      missing: [{ item: "usb-port 500mA", count: 1, parts: [] }],
    };
    expect(trayRows(tray, inventedClassFile(group), en)).toEqual([]);
  });
  test("twelve things stand on one sheet, thirty on more, and none is lost", () => {
    for (const [things, sheets] of [
      [11, 1],
      [14, 1],
      [30, 2],
    ] as const) {
      const planned = inventedPlan(group, [inventedTray(1, things)]);
      const paper = makePaper("tray", { classFile: inventedClassFile(group), lesson: inventedLesson(), planned }, options);
      expect(paper.sheets, String(things)).toBe(sheets);
      expect(paper.html.match(/<tr style="--row/g)?.length).toBe(things + 1);
    }
  });
  test("the code holds the sitting and the team, and its text stands beside it", () => {
    const planned = inventedPlan(group, [inventedTray(7)]);
    const { html } = makePaper("tray", { classFile: inventedClassFile(group), lesson: inventedLesson(), planned }, options);
    expect(html).toContain('aria-label="7b/barrier/2027-03-04/7"');
    expect(text(html).join("")).toContain("7b/barrier/2027-03-04/7");
  });
});

describe("labels", () => {
  const classFile = inventedClassFile(group);
  test("one for each item and place, by place, those without a place last", () => {
    const all = labels({ classFile }, en);
    expect(all.length).toBe(classFile.stock.length);
    expect(all[0]).toEqual({ item: "breadboard", name: "breadboards", note: "", box: "box 1" });
    expect(all.at(-1)!.box).toBe("");
    expect(all.filter((l) => l.item === "resistor 220")[0]!.note).toBe("red red brown, gold");
  });
  test("an item in two places has two, a line twice has one", () => {
    const line = (box: string) => ({ item: "servo", count: 1, box });
    expect(labels({ classFile: { ...classFile, stock: [line("b"), line("a"), line("b")] } }, en).map((l) => l.box)).toEqual([
      "a",
      "b",
    ]);
  });
  test("only the items that are asked for", () => {
    expect(labels({ classFile, items: ["servo"] }, en).map((l) => l.item)).toEqual(["servo"]);
  });
});

describe("order", () => {
  const lessons = new Map([["barrier", inventedLesson()]]);
  const input = { classFile: inventedClassFile(group), purchase: inventedPurchase, kits: inventedKits, lessons };
  const lines = text(makePaper("order", input, options).html);
  test("sums of the lines and the shipping are the total", () => {
    const goods = inventedPurchase.lines.reduce((s, l) => s + l.cost, 0);
    const shipping = inventedPurchase.shipping.reduce((s, l) => s + l.cost, 0);
    expect(goods + shipping).toBe(8955);
    expect(lines).toContain("77.70");
    expect(lines).toContain("11.85");
  });
  test("each line names article, packet, number and reason", () => {
    for (const words of [
      "L-3310",
      "1 servo",
      "The barrier, 4 March: 1 missing and 1 to spare.",
      "50 resistors, 220 Ω",
      "kit “Quay B”",
    ])
      expect(lines).toContain(words);
  });
  test("the last day to order is the first lesson that needs it less the days of delivery", () => {
    expect(lines).toContain("Order by 4 February 2027. Delivery takes 7 days.");
    expect(lines).toContain("Order by 18 February 2027. Delivery takes 14 days.");
  });
  test("what cannot be held stands with its reason", () => {
    expect(lines).toContain("no: it would go over the budget (geared stepper)");
  });
  test("nothing to order, and nothing that helps", () => {
    const none = { ...inventedPurchase, lines: [], shipping: [], held: [], notHeld: [], chances: [], cost: 0, bound: 0 };
    expect(text(makePaper("order", { ...input, purchase: none }, options).html)).toContain("Nothing has to be ordered.");
    const cannot = text(makePaper("order", { ...input, purchase: { ...none, status: "infeasible" } }, options).html);
    expect(cannot.join(" ")).toContain("No purchase can help");
  });
});

describe("run sheet", () => {
  const source = (id: string) => {
    const folder = new URL(`../../lessons/${id}/`, import.meta.url).pathname;
    return {
      folder: id,
      read: (path: string) => {
        try {
          return readFileSync(folder + path, "utf8");
        } catch {
          return null;
        }
      },
      list: (path: string) => {
        try {
          return readdirSync(folder + path);
        } catch {
          return [];
        }
      },
    };
  };
  for (const id of ["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"])
    test(`${id} fits one side, with every caution`, () => {
      const lesson = readLesson(source(id)).value!;
      const paper = makePaper(
        "run-sheet",
        { classFile: inventedClassFile(group), lesson, planned: inventedPlan(group, [], id) },
        options,
      );
      expect(paper.sheets).toBe(1);
      const lines = text(paper.html).join(" ").replace(/\s+/g, " ");
      for (const block of markdownBlocks(lesson.texts.get("en")!.sections.get("cautions")!))
        expect(lines).toContain(block.plain.slice(0, 30));
    });
  test("the clock adds up", () => {
    const lines = text(
      makePaper(
        "run-sheet",
        { classFile: inventedClassFile(group), lesson: inventedLesson(), planned: inventedPlan(group, []) },
        options,
      ).html,
    );
    // Begins at 10:30; 5, 5, 15, 20, 10, 10 and 5 minutes.
    expect(lines.filter((l) => /^\d\d:\d\d$/.test(l))).toEqual([
      "10:30",
      "10:30",
      "10:35",
      "10:40",
      "10:55",
      "11:15",
      "11:25",
      "11:35",
      "11:40",
    ]);
    expect(lines).toContain("Thursday 4 March, 10:30 to 11:50,");
  });
  test("a room without a name, and fewer computers than teams", () => {
    const plain = inventedClassFile(group);
    const planned = inventedPlan(group, []);
    const computer = { id: "c", works: true, batteryMinutes: null, usbMilliamps: 500, usbPorts: 2, note: "" };
    const computers = [
      ...Array.from({ length: 3 }, (_, i) => ({ ...computer, id: `c${i}` })),
      { ...computer, id: "broken", works: false },
      { ...computer, id: "without a port", usbPorts: 0 },
    ];
    const classFile = { ...plain, computers, room: { ...plain.room, name: " " } };
    const lines = text(makePaper("run-sheet", { classFile, lesson: inventedLesson(), planned }, options).html);
    expect(planned.teams.length).toBeGreaterThan(3);
    expect(lines).toContain("3 computers");
    const when = lines.indexOf("Thursday 4 March, 10:30 to 11:50,");
    expect(lines.slice(when, when + 3)).not.toContain(",");
    expect(lines[when + 1]).toBe(classFile.classes[0]!.name);
  });
  test("a lesson with far too many cautions takes a second side and loses none", () => {
    const many = Array.from(
      { length: 40 },
      (_, i) => `- Caution number ${i} says that something here can hurt somebody who is not looking.`,
    ).join("\n");
    const lesson = withTexts(inventedLesson(), () => many);
    const paper = makePaper(
      "run-sheet",
      {
        classFile: inventedClassFile(group),
        lesson: { ...lesson, plan: lesson.plan.slice(0, 2) },
        planned: inventedPlan(group, []),
      },
      options,
    );
    expect(paper.sheets).toBeGreaterThan(1);
    const cautions = text(paper.html.slice(paper.html.lastIndexOf("<h3>"))).join(" ");
    for (let i = 0; i < 40; i += 1) expect(cautions).toContain(`Caution number ${i} says`);
  });
});

describe("expected readings", () => {
  const planned = inventedPlan(group, []);
  test("moments that differ, points by pin or by the parts that meet, nothing of GND", () => {
    const table = expectedReadings(inventedLesson(), planned.rehearsal!.readings, en);
    expect(table.moments).toEqual(["1 s", "4 s, B1 released"]);
    expect(table.points).toEqual([
      { name: "D2", volts: [4.9, 4.8] },
      { name: "5V", volts: [4.9, 4.8] },
      { name: "D9", volts: [4.6, 0] },
      { name: "R1–LED1", volts: [2, 0] },
      { name: "D10", volts: [0, 4.5] },
      { name: "R2–LED2", volts: [0, 2.1] },
    ]);
  });
  test("nothing was read", () => expect(expectedReadings(inventedLesson(), [], en)).toEqual({ moments: [], points: [] }));
  test("volts as a meter shows them", () => {
    expect([4.71, 0, -0.04, 2.05, null].map((v) => shownVolts(en, v))).toEqual(["4.7", "0.0", "0.0", "2.1", "—"]);
  });
});

describe("rota", () => {
  const lessons = new Map();
  for (const pupils of [1, 2, 5, 23, 30, 31, 60]) {
    test(`${pupils} pupils: everyone stands in every lesson, on both tables`, () => {
      const some = inventedGroup(
        pupils,
        Array.from({ length: pupils }, (_, i) => `Pupil${i} Name`),
      );
      const rota = inventedRota(some);
      const { html, sheets } = makePaper("rota", { classFile: inventedClassFile(some), class: "7b", rota, lessons }, options);
      const [where = "", whom = ""] = [
        html.slice(0, html.indexOf('class="rota whom"')),
        html.slice(html.indexOf('class="rota whom"')),
      ];
      for (let i = 0; i < pupils; i += 1) {
        const row = new RegExp(`<bdi>Pupil${i} Name</bdi></th>([\\s\\S]*?)</tr>`).exec(where)?.[1] ?? "";
        expect(row.match(/<td>(<b>\d+<\/b> [bpc])/g)?.length, `pupil ${i}`).toBe(12);
        expect(whom.match(new RegExp(`<bdi>Pupil${i}</bdi>`, "g"))?.length, `pupil ${i}`).toBe(12);
      }
      if (pupils <= 31) expect(sheets).toBe(2);
    });
  }
  test("what the rota keeps and what it does not", () => {
    const lines = text(
      makePaper("rota", { classFile: inventedClassFile(group), class: "7b", rota: inventedRota(group), lessons }, options).html,
    ).join("|");
    expect(lines).toContain("In lessons 1 to 10 no two pupils sit together twice, save those who stay together on purpose.");
    expect(lines).toContain("more than 14 lessons");
    expect(lines).toContain("4 pairs sit together more than once.");
    expect(lines).toContain("Mara Visser and Idris Okafor sit together, though they should be apart.");
  });
});

describe("pieces", () => {
  const short: [names: string[], expected: string[]][] = [
    [
      ["Mara Visser", "Idris Okafor"],
      ["Mara", "Idris"],
    ],
    [
      ["Sami Karim", "Sami Lindqvist"],
      ["Sami K.", "Sami L."],
    ],
    [
      ["Sami Karim", "Sami Kaya"],
      ["Sami Karim", "Sami Kaya"],
    ],
    [
      ["Anna-Wilhelmina Berg", "Mira Novak"],
      ["Anna", "Mira"],
    ],
    [
      ["Anna-Wilhelmina Berg", "Anna Novak"],
      ["Anna-Wilhelmina", "Anna"],
    ],
    [["Awa"], ["Awa"]],
    [
      ["Awa", "Awa"],
      ["Awa", "Awa"],
    ],
  ];
  for (const [names, expected] of short)
    test(`short names of ${names.join(", ")}`, () => expect(names.map((n) => shortNames(names).get(n))).toEqual(expected));
  test("parts of a sitting's id", () => {
    expect(sittingParts("7b/barrier/2027-03-04")).toEqual({ class: "7b", lesson: "barrier", date: "2027-03-04" });
    expect(sittingParts("odd")).toEqual({ class: "odd", lesson: "", date: null });
  });
  test("a list is cut by height, in order, with nothing lost", () => {
    expect(splitByHeight([3, 3, 3, 9, 1], (n) => n, 6)).toEqual([[3, 3], [3], [9], [1]]);
    expect(splitByHeight([], () => 1, 6)).toEqual([[]]);
    expect(splitByHeight([3, 3, 3], (n) => n, 3, 6)).toEqual([[3], [3, 3]]);
  });
  test("lines are counted at blanks, hyphens and inside long words", () => {
    const w = textWidth("x".repeat(10), 4);
    expect(lineCount("", w, 4)).toBe(1);
    expect(lineCount("x".repeat(10), w, 4)).toBe(1);
    expect(lineCount("x".repeat(11), w, 4)).toBe(2);
    expect(lineCount(`${"x".repeat(6)} ${"x".repeat(6)}`, w, 4)).toBe(2);
    expect(lineCount(`${"x".repeat(6)}-${"x".repeat(6)}`, w, 4)).toBe(2);
    expect(lineCount("x x x x x", w, 4)).toBe(1);
    expect(textWidth("8888888888", 4)).toBe(textWidth("0123456789", 4));
    expect(textWidth("text", 4, "bold")).toBeGreaterThan(textWidth("text", 4));
  });
  test("a QR code is a square of 17 + 4·version modules with a quiet zone of 4 (ISO/IEC 18004)", () => {
    for (const words of ["a", "resistor 220", "7b/quay-lamp-at-dusk/2027-02-11/10", "x".repeat(500)]) {
      const svg = htmlText(qrCode(words));
      const whole = Number(/viewBox="0 0 (\d+)/.exec(svg)?.[1]);
      expect((whole - 2 * quietModules - 17) % 4).toBe(0);
      const xs = [...svg.matchAll(/M(\d+) (\d+)h(\d+)v1H/g)].map((m) => [
        Number(m[1]),
        Number(m[2]),
        Number(m[1]) + Number(m[3]),
      ]);
      expect(Math.min(...xs.map(([x]) => x!))).toBe(quietModules);
      expect(Math.max(...xs.map(([, , end]) => end!))).toBe(whole - quietModules);
      expect(Math.min(...xs.map(([, y]) => y!))).toBe(quietModules);
    }
  });
  test("every kind has an outline that stays in its picture's scale", () => {
    for (const id of [...kinds.keys(), "unheard-of"]) {
      const svg = htmlText(outline(id));
      const [, scale, k] = /scale\(([\d.]+)\).*?--k:([\d.]+)/.exec(svg)!;
      expect(Number(scale)).toBeLessThanOrEqual(1);
      expect(Number(scale) * Number(k)).toBeCloseTo(1, 1);
    }
  });
  test("blocks of Markdown", () => {
    const blocks = markdownBlocks("One\ntwo.\n\n- **a** b\n  c\n- `d`\n\n| h | i |\n| --- | --- |\n| 1 | *2* |\n\n3. last");
    expect(blocks.map((b) => [b.kind, b.plain])).toEqual([
      ["paragraph", "One two."],
      ["item", "a b c"],
      ["item", "d"],
      ["table", "h i 1 2"],
      ["item", "last"],
    ]);
    expect(htmlText(blocks[1]!.html)).toBe("<strong>a</strong> b c");
    expect(blocks[3]!.plainRows).toEqual([
      ["h", "i"],
      ["1", "2"],
    ]);
  });
});
