// Values in sentences: their unit by their name, items by their key, days in words, choices, lists and gaps.
import { describe, expect, test } from "vitest";
import { bandWords, countedItem, itemName } from "./itemName.ts";
import { languageFor } from "./language.ts";
import { sayProblem, sayUnchecked } from "./say.ts";
import { shownValue } from "./shownValue.ts";

const en = languageFor("en");

describe("a value is written as its name says", () => {
  const cases: [name: string, value: unknown, expected: string, data?: Record<string, unknown>][] = [
    ["amps", 0.04, "40 mA"],
    ["limitAmps", 0.0139, "13.9 mA"],
    ["leastVolts", 4.5, "4.5 V"],
    ["ohms", 4700, "4.7 kΩ"],
    ["ms", 1500, "1.5 s"],
    ["endMs", 20, "20 ms"],
    ["hertz", 440, "440 Hz"],
    ["celsius", -5, "\u22125 °C"],
    ["turn", 0.5, "50 %"],
    ["chance", 0.95, "95 %"],
    ["wanted", 10, "10"],
    ["wanted", 0.95, "95 %", { chance: 0.9 }],
    ["value", 0.047, "47 mA", { unit: "A" }],
    ["value", 0.6, "600 mW", { unit: "W" }],
    ["value", 3, "3"],
    ["line", 1234, "1234"],
    ["start", 630, "10:30"],
    ["hours", 3.537, "3.5"],
    ["hours", 78.93, "79"],
    ["field", "minuts", "“minuts”"],
    ["date", "2027-03-04", "4 March 2027"],
    ["by", "2027-02-18", "18 February 2027"],
    ["item", "resistor 220", "resistor, 220 Ω"],
    ["items", ["servo", "led red"], "servo and LED, red"],
    ["item", "1 servo", "1 servo"],
    ["supply", "adapter 1000mA", "mains adapter, 1 A"],
    ["verdict", "short of parts", "short of parts"],
    ["teams", [7, 8, 9, 10], "7 to 10"],
    ["teams", [1, 2, 4, 6, 7, 8], "1, 2, 4 and 6 to 8"],
    ["sitting", "7b/barrier/2027-03-04", "7b, barrier, 4 March"],
    ["sitting", "The barrier, 4 March", "The barrier, 4 March"],
    ["from", 660, "11:00", { minutes: 30 }],
    ["from", 660, "660"],
    ["why", ["sags", "over-current"], "its voltage drops too far and it gives too little current"],
    ["why", "sags, over-current", "its voltage drops too far and it gives too little current"],
    ["seen", "90 degrees", "90 degrees"],
    ["expected", "number", "a number"],
    ["expected", ">=1", "1 or more"],
    ["expected", "R1, R2", "R1, R2"],
    ["found", "resitor", "“resitor”"],
    ["found", 3, "3"],
    ["name", "שרה", "\u2068שרה\u2069"],
    ["name", null, "—"],
    ["name", "", "—"],
    ["pupils", [], ""],
  ];
  for (const [name, value, expected, data = {}] of cases)
    test(`${name} ${JSON.stringify(value)}`, () => expect(shownValue(en, name, value, data)).toBe(expected));
});

describe("names of items", () => {
  const cases: [key: string, count: number, name: string][] = [
    ["resistor 220", 1, "resistor, 220 Ω"],
    ["resistor 4k7", 3, "resistors, 4.7 kΩ"],
    ["led red", 1, "LED, red"],
    ["led green emerald", 2, "LEDs, green, blue-green kind"],
    ["capacitor 100n", 1, "capacitor, 100 nF"],
    ["electrolytic 10u", 1, "electrolytic capacitor, 10 µF"],
    ["potentiometer 10k", 1, "potentiometer, 10 kΩ"],
    ["usb-port 500mA", 1, "USB port, 500 mA"],
    ["adapter 1000mA", 1, "mains adapter, 1 A"],
    ["zener 5.1V", 1, "Zener diode, 5.1 V"],
    ["npn BC547", 1, "NPN transistor, BC547"],
    ["rgb-led anode", 1, "RGB LED, common anode"],
    ["breadboard full", 1, "breadboard, full size"],
    ["wire", 7, "wires"],
    ["something-new 7", 1, "something-new, 7"],
    ["", 1, ""],
  ];
  for (const [key, count, name] of cases) test(`${key}, ${count}`, () => expect(itemName(en, key, count)).toBe(name));
  test("with a number", () => expect(countedItem(en, "wire", 7)).toBe("7 wires"));
  test("bands in words (IEC 60062)", () => {
    expect(bandWords(en, "resistor 220")).toBe("red red brown, gold");
    expect(bandWords(en, "resistor 10k")).toBe("brown black orange, gold");
    expect(bandWords(en, "resistor 4k7")).toBe("yellow violet red, gold");
    expect(bandWords(en, "led red")).toBe("");
    expect(bandWords(en, "resistor")).toBe("");
  });
});

describe("sentences", () => {
  test("a choice by null and by a word with signs", () => {
    expect(sayProblem(en, { code: "lesson.unknownPart", found: "resitor", near: "resistor" } as { code: string }).try).toBe(
      "Did you mean “resistor”?",
    );
    expect(sayProblem(en, { code: "lesson.unknownPart", found: "gizmo", near: null } as { code: string }).try).toBe(
      "Look at the list of parts.",
    );
    expect(sayUnchecked(en, "reason.device-short", { device: "usb-cable", count: 2, wanted: 10 })).toBe(
      "2 of 10 USB cables missing.",
    );
    expect(sayUnchecked(en, "reason.device-short", { device: "drone", count: 2, wanted: 10 })).toBe("2 of 10 drone missing.");
  });

  const off = "Mains are off from 11:00 to 11:30.";
  const batteries: [computers: number, untried: number, count: number, expected: string][] = [
    [8, 8, 0, `${off} Nobody has tried how long 8 computers run on battery.`],
    [1, 1, 0, `${off} Nobody has tried how long 1 computer runs on battery.`],
    [8, 3, 4, `${off} 4 of 8 computers last so long. Nobody has tried how long 3 computers run on battery.`],
    [8, 0, 1, `${off} 1 of 8 computers lasts so long.`],
    [0, 0, 0, `${off} No computer works.`],
  ];
  for (const [computers, untried, count, expected] of batteries)
    test(`a cut with ${computers} computers, ${untried} of them untried`, () => {
      const data = { minutes: 30, fromClock: 660, toClock: 690, count, computers, tried: computers - untried, untried };
      expect(sayUnchecked(en, "reason.battery-short", data)).toBe(expected);
    });
  test("bare numbers in a list are found by their place", () => {
    expect(sayProblem(en, { code: "program.indexOutside", values: [10, 8], ms: 3 } as { code: string }).says).toBe(
      "Place 10 was used. The array has 8 places, counted from 0.",
    );
  });
  test("a hazard inside a reason is a sentence", () => {
    expect(
      sayUnchecked(en, "reason.hazard", { hazard: "led-overcurrent", part: "LED1", value: 0.047, limit: 0.03, unit: "A" }),
    ).toBe("LED1 carries 47 mA. Limit: 30 mA.");
  });
  test("values are never read as messages", () => {
    expect(sayUnchecked(en, "reason.not-modelled", { part: "{evil, plural, one {#}} '{x}'" })).toBe(
      "How {evil, plural, one {#}} '{x}' behaves in time is not rehearsed.",
    );
  });
});
