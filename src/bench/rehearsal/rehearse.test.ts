// Whole rehearsals. Expected: what the physics of each circuit says, by hand or by halving; what the data sheets forbid; and what
// a person would see. The lessons of ours are read from lessons/.
import { expect, test } from "vitest";
import { finish } from "../../base/index.ts";
import type { Lesson } from "../lesson/index.ts";
import { catalogue, ledColour } from "../parts/index.ts";
import { ourLesson, smallLesson } from "./lesson.fixture.ts";
import { rehearse } from "./rehearse.ts";
import { rehearseOnce } from "./rehearseOnce.ts";

const lamp = (ohms: string, colour = "red", legs: [string, string] = ["anode", "cathode"], pin = "D9") =>
  smallLesson(
    `R1: { part: resistor, ohms: ${ohms}, watts: 10 }
     LED1: { part: led, colour: ${colour} }`,
    `board.${pin} R1.1
     R1.2 LED1.${legs[0]}
     LED1.${legs[1]} board.GND`,
    "{ at: 500ms, expect: { LED1: lit } }",
    `void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }`,
  );

const hazardsOf = (lesson: Lesson, supply?: string) =>
  rehearseOnce(lesson, supply === undefined ? {} : { supply }).hazards.map((h) => `${h.code} ${h.severity} ${h.part}`);

/** A through a red LED on D9 with cable, fuse and port, by halving; from the figures of the catalogue alone. */
function redLampAmps(ohms: number): number {
  const { saturationAmps, emission, seriesOhms } = ledColour("red");
  const own = 5 / 0.045;
  const path = 0.1 + 0.546 + 0.4;
  const [source, inside] = [(5 * own) / (own + path), (own * path) / (own + path)];
  let [low, high] = [0, 1];
  for (let i = 0; i < 200; i += 1) {
    const amps = (low + high) / 2;
    const volts = amps * (inside + 25 + ohms + seriesOhms) + emission * 0.025864917 * Math.log(amps / saturationAmps + 1);
    if (volts < source) low = amps;
    else high = amps;
  }
  return low;
}

for (const ohms of [10, 22, 33, 47, 56, 68, 82, 100, 120, 150, 220, 1000]) {
  // 20 mA is what the tables of the chip test with, 40 mA its absolute maximum; 20 and 30 mA are the LED's.
  const amps = redLampAmps(ohms);
  const pin = amps > 0.04 ? ["pin-overcurrent unsafe D9"] : amps > 0.02 ? ["pin-overcurrent caution D9"] : [];
  const led = amps > 0.03 ? ["led-overcurrent unsafe LED1"] : amps > 0.02 ? ["led-overcurrent caution LED1"] : [];
  // 300 K/W (5 mm LED) times its volts and amperes above a room of 25 °C; plastic is hot from 60 °C on (ISO 13732-1).
  const { saturationAmps, emission, seriesOhms } = ledColour("red");
  const ledVolts = emission * 0.025864917 * Math.log(amps / saturationAmps + 1) + amps * seriesOhms;
  const hot = 25 + 300 * ledVolts * amps > 60 ? ["hot-surface caution LED1"] : [];
  test(`${ohms} Ω: ${(amps * 1000).toFixed(1)} mA`, () => {
    const once = rehearseOnce(lamp(String(ohms)));
    expect(once.hazards.map((h) => `${h.code} ${h.severity} ${h.part}`).sort()).toEqual([...led, ...pin, ...hot].sort());
    for (const hazard of once.hazards.filter((h) => h.unit === "A")) expect(hazard.value).toBeCloseTo(amps, 6);
    expect(once.observations.find((o) => o.part === "LED1" && o.ms < 1)?.seen).toBe(amps >= 0.02 ? "too bright" : "lit");
    expect(once.verdict).toBe(amps > 0.03 ? "unsafe" : amps >= 0.02 ? "fails its rehearsal" : "ready");
  });
}

test("an LED the wrong way round is dark and nothing is harmed", () => {
  const once = rehearseOnce(lamp("220", "red", ["cathode", "anode"]));
  expect([once.verdict, once.checks[0]?.seen, once.hazards.length]).toEqual(["fails its rehearsal", "dark", 0]);
});
test("an LED on another pin than the program's is dark", () =>
  expect(rehearseOnce(lamp("220", "red", ["anode", "cathode"], "D8")).checks[0]?.seen).toBe("dark"));
test("an LED whose ground is not the board's is dark", () => {
  const lesson = smallLesson(
    `R1: { part: resistor, ohms: 220 }
     LED1: { part: led, colour: red }
     BAT1: { part: battery-9v }`,
    `board.D9 R1.1
     R1.2 LED1.anode
     LED1.cathode BAT1.minus`,
    "{ at: 500ms, expect: { LED1: dark } }",
    "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }",
  );
  const once = rehearseOnce(lesson);
  expect([once.checks[0]?.passed, once.hazards.length]).toEqual([true, 0]);
});
test("an LED on a pin that is left an input gets nothing", () => {
  const lesson = {
    ...lamp("220"),
    program: { file: "program.cpp", text: "void setup() {} void loop() { digitalWrite(9, LOW); delay(10); }" },
  };
  expect(rehearseOnce(lesson).checks[0]?.seen).toBe("dark");
});
test("HIGH on an input is its pull-up: 35 kΩ leave an LED dim", () => {
  const lesson = {
    ...lamp("220"),
    program: { file: "program.cpp", text: "void setup() { digitalWrite(9, HIGH); } void loop() { delay(10); }" },
  };
  const seen = rehearseOnce(lesson).checks[0];
  expect(seen?.seen).toBe("dim");
  // (5 V − about 1.5 V) / 35 kΩ is about 0.1 mA.
  expect(Number(seen?.figures.amps)).toBeGreaterThan(0.00008);
  expect(Number(seen?.figures.amps)).toBeLessThan(0.00011);
});

const key = (mode: string) =>
  smallLesson(
    `B1: { part: button }
     R1: { part: resistor, ohms: 220 }
     LED1: { part: led, colour: red }`,
    `board.D2 B1.1
     B1.2 LED1.cathode board.GND
     board.D9 R1.1
     R1.2 LED1.anode`,
    `{ at: 500ms, expect: { LED1: dark } }
     { at: 1s, set: { B1.pressed: true } }
     { at: 1500ms, expect: { LED1: lit } }`,
    `void setup() { pinMode(2, ${mode}); pinMode(9, OUTPUT); }
     void loop() { if (digitalRead(2) == LOW) { digitalWrite(9, HIGH); } else { digitalWrite(9, LOW); } delay(5); }`,
  );

test("a key with the pull-up is decided, up and down", () => {
  const once = rehearseOnce(key("INPUT_PULLUP"));
  expect(once.checks.map((c) => [c.passed, c.undetermined])).toEqual([
    [true, false],
    [true, false],
  ]);
});
test("a key without the pull-up is undetermined while it is up, names its net, and never passes", () => {
  const once = rehearseOnce(key("INPUT"));
  expect(once.checks.map((c) => [c.passed, c.undetermined, c.hangsOn])).toEqual([
    [false, true, ["board.D2"]],
    [true, false, []],
  ]);
  expect(once.verdict).toBe("fails its rehearsal");
  expect(once.observations.some((o) => o.part === "LED1" && o.seen === "undetermined")).toBe(true);
});
test("a floating analog input is undetermined, a wired one is not", () => {
  const dimmer = (nets: string) =>
    smallLesson(
      `POT1: { part: potentiometer, ohms: 10k }
       R1: { part: resistor, ohms: 220 }
       LED1: { part: led, colour: red }`,
      `board.5V POT1.1
       ${nets}
       POT1.2 LED1.cathode board.GND
       board.D9 R1.1
       R1.2 LED1.anode`,
      `{ at: 0s, set: { POT1.turn: 90% } }
       { at: 500ms, expect: { LED1: lit } }
       { at: 1s, set: { POT1.turn: 10% } }
       { at: 1500ms, expect: { LED1: dark } }`,
      `void setup() { pinMode(9, OUTPUT); }
       void loop() { if (analogRead(A0) > 512) { digitalWrite(9, HIGH); } else { digitalWrite(9, LOW); } delay(5); }`,
    );
  expect(rehearseOnce(dimmer("POT1.wiper board.A0")).checks.map((c) => c.passed)).toEqual([true, true]);
  const open = rehearseOnce(dimmer("POT1.wiper board.A1")).checks;
  expect(open.map((c) => [c.passed, c.undetermined, c.hangsOn])).toEqual([
    [false, true, ["board.A0"]],
    [false, true, ["board.A0"]],
  ]);
});

test("two outputs that are joined and disagree fight: 5 V through twice 25 Ω", () => {
  const lesson = smallLesson(
    "R1: { part: resistor, ohms: 10k }",
    `board.D4 board.D5 R1.1
     R1.2 board.GND`,
    "{ at: 500ms, expect: { board: running } }",
    "void setup() { pinMode(4, OUTPUT); pinMode(5, OUTPUT); digitalWrite(4, HIGH); } void loop() { delay(10); }",
  );
  const once = rehearseOnce(lesson);
  expect(once.verdict).toBe("unsafe");
  expect(once.hazards.map((h) => `${h.code} ${h.part}`)).toEqual(
    expect.arrayContaining(["pins-fight D4", "pins-fight D5", "pin-overcurrent D4", "pin-overcurrent D5"]),
  );
  // The rail is a little below 5 V.
  expect(once.hazards.find((h) => h.code === "pins-fight" && h.part === "D5")?.value).toBeCloseTo(0.098, 2);
});
test("a key from 5V to GND is a short when it is pressed, and the board resets", () => {
  const lesson = smallLesson(
    "B1: { part: button }",
    `board.5V B1.1
     B1.2 board.GND`,
    `{ from: 0s, to: 1s, expect: { board: running } }
     { at: 1s, set: { B1.pressed: true } }
     { at: 1s, within: 500ms, expect: { board: resets } }`,
    "void setup() {} void loop() { delay(10); }",
  );
  const once = rehearseOnce(lesson);
  expect(once.checks.map((c) => c.passed)).toEqual([true, true]);
  expect(once.hazards.find((h) => h.code === "short")).toMatchObject({ severity: "unsafe", part: "board.5V", ms: 1000 });
  expect(once.verdict).toBe("unsafe");
});
test("a key at RESET stops the board for as long as it is held, and its program begins again", () => {
  const lesson = smallLesson(
    `B1: { part: button }
     R1: { part: resistor, ohms: 220 }
     LED1: { part: led, colour: red }`,
    `board.RESET B1.1
     B1.2 board.GND LED1.cathode
     board.D9 R1.1
     R1.2 LED1.anode`,
    `{ at: 500ms, expect: { LED1: lit } }
     { at: 1s, set: { B1.pressed: true } }
     { from: 1100ms, to: 4s, expect: { LED1: dark } }
     { at: 4s, set: { B1.pressed: false } }
     { at: 5s, expect: { LED1: dark } }
     { at: 4s, within: 2s, expect: { LED1: lit } }
     { at: 1s, within: 1s, expect: { board: resets } }`,
    "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }",
  );
  // The boot loader waits 1.5 s after the key is let go.
  expect(rehearseOnce(lesson).checks.map((c) => c.passed)).toEqual([true, true, true, true, true]);
});
test("a turned key, with both wires on legs that are always joined, is always pressed", () => {
  const lesson = ourLesson("signal-lamp");
  const nets = lesson.nets.map((net) => ({
    ...net,
    legs: net.legs.map((leg) => (leg.part === "B1" && leg.leg === "2" ? { part: "B1", leg: "1b" } : leg)),
  }));
  const once = rehearseOnce({ ...lesson, nets });
  expect(once.checks[0]?.seen).toBe("lit");
  expect(once.verdict).toBe("fails its rehearsal");
});

test("eight LEDs sunk at 21 mA each: no pin is over 40 mA, D0 to D4 together are over 100 mA", () => {
  // Series: 5 V less the LED's 2.02 V at 21 mA; the pin's 25 Ω; what is left is the resistor for 21 mA.
  const pins = [0, 1, 2, 3, 4];
  const lesson = smallLesson(
    pins.map((i) => `R${i}: { part: resistor, ohms: 112 }\n LED${i}: { part: led, colour: red }`).join("\n"),
    `${pins.map((i) => `board.D${i} R${i}.1\n R${i}.2 LED${i}.cathode`).join("\n")}
     board.5V ${pins.map((i) => `LED${i}.anode`).join(" ")}`,
    "{ at: 500ms, expect: { board: running } }",
    `void setup() { for (int i = 0; i < 5; i++) { pinMode(i, OUTPUT); digitalWrite(i, LOW); } } void loop() { delay(10); }`,
  );
  const once = rehearseOnce(lesson, { supply: "adapter 2000mA" });
  const group = once.hazards.filter((h) => h.code === "port-group-overcurrent");
  const sum = once.hazards.filter((h) => h.code === "pin-overcurrent").reduce((a, h) => a + h.value, 0);
  expect(group.map((h) => [h.severity, h.part, h.limit])).toEqual([["caution", "D0…D4", 0.1]]);
  // Each pin's own worst is a moment before, when fewer LEDs pull the supply down; together they are 1 or 2 % less.
  expect(group[0]?.value).toBeGreaterThan(0.97 * sum);
  expect(group[0]?.value).toBeLessThan(sum);
});

test("PWM: the mean current is the duty's share of the full one", () => {
  const lesson = (value: number) => ({
    ...lamp("220"),
    program: {
      file: "program.cpp",
      text: `void setup() { pinMode(9, OUTPUT); analogWrite(9, ${value}); } void loop() { delay(10); }`,
    },
  });
  for (const value of [16, 64, 120, 200]) {
    const seen = rehearseOnce(lesson(value)).checks[0];
    expect(seen?.seen).toBe(redLampAmps(220) * (value / 255) >= 0.001 ? "lit" : "dim");
    expect(Number(seen?.figures.amps)).toBeCloseTo(redLampAmps(220) * (value / 255), 6);
  }
});
test("PWM does not hide what a pin has to bear while it is on", () => {
  const lesson = {
    ...lamp("22"),
    program: { file: "program.cpp", text: "void setup() { pinMode(9, OUTPUT); analogWrite(9, 25); } void loop() { delay(10); }" },
  };
  expect(hazardsOf(lesson)).toEqual(["pin-overcurrent unsafe D9"]);
});

test("a resistor at more than its rating: 5 V² / 68 Ω = 0.37 W in a quarter-watt part", () => {
  const load = (ohms: number) =>
    smallLesson(
      `R1: { part: resistor, ohms: ${ohms} }`,
      `board.5V R1.1
       R1.2 board.GND`,
      "{ at: 500ms, expect: { board: running } }",
      "void setup() {} void loop() { delay(10); }",
    );
  for (const ohms of [68, 82, 100, 150, 220, 330]) {
    // The rail sags: 5 V less what load and board take through 1.046 Ω.
    const own = 5 / 0.045;
    const all = (ohms * own) / (ohms + own);
    const watts = ((5 * all) / (all + 1.046)) ** 2 / ohms;
    const overload = watts > 0.25 ? ["resistor-overload unsafe R1"] : [];
    // A quarter-watt body rises 85 K at its rating; lacquer is hot from 60 °C and burns at a touch from 85 °C on (ISO 13732-1).
    const celsius = 25 + (85 / 0.25) * watts;
    const hot = celsius > 85 ? ["hot-surface unsafe R1"] : celsius > 60 ? ["hot-surface caution R1"] : [];
    const expected = [...overload, ...hot];
    expect(hazardsOf(load(ohms)), `${ohms} Ω`).toEqual(expected);
  }
});

test("an electrolytic the wrong way round on 5 V can burst", () => {
  const lesson = smallLesson(
    "C1: { part: electrolytic, farads: 100u }",
    `board.5V C1.minus
     C1.plus board.GND`,
    "{ at: 500ms, expect: { board: running } }",
    "void setup() {} void loop() { delay(10); }",
  );
  expect(hazardsOf(lesson)).toContain("reversed-electrolytic unsafe C1");
});

test("a motor behind a transistor needs a diode", () => {
  const fan = (more: string, net: string) =>
    smallLesson(
      `M1: { part: dc-motor }
       Q1: { part: npn, type: PN2222A }
       R1: { part: resistor, ohms: 1k }
       ${more}`,
      `board.D9 R1.1
       R1.2 Q1.base
       Q1.emitter board.GND
       ${net}`,
      "{ at: 500ms, expect: { M1: turning } }",
      "void setup() { pinMode(9, OUTPUT); digitalWrite(9, HIGH); } void loop() { delay(10); }",
    );
  const bare = fan("", "board.5V M1.1\n M1.2 Q1.collector");
  const caught = fan("D1: { part: diode, type: 1N4007 }", "board.5V M1.1 D1.cathode\n M1.2 Q1.collector D1.anode");
  const options = { supply: "adapter 2000mA" };
  expect(rehearseOnce(bare, options).hazards.map((h) => h.code)).toContain("coil-without-diode");
  const once = rehearseOnce(caught, options);
  expect(once.hazards.map((h) => h.code)).not.toContain("coil-without-diode");
  expect(once.checks[0]?.seen).toBe("turning");
});

// It breaks loose where the mean current in its winding is what 2 V drive through it (data page: starts at 2 V): 12 Ω take
// 5 V · duty, less what wires and transistor lose, so from a duty of 0.4 to 0.45 on.
for (const [value, seen] of [
  [200, "turning"],
  [140, "turning"],
  [80, "stalled"],
] as const)
  test(`a motor behind a transistor with PWM of ${value} of 255: ${seen}`, () => {
    const lesson = smallLesson(
      `M1: { part: dc-motor }
       Q1: { part: npn, type: PN2222A }
       R1: { part: resistor, ohms: 470 }
       D1: { part: diode, type: 1N4007 }`,
      `board.D9 R1.1
       R1.2 Q1.base
       Q1.emitter board.GND
       board.5V M1.1 D1.cathode
       M1.2 D1.anode Q1.collector`,
      "{ at: 900ms, expect: { M1: turning } }",
      `void setup() { pinMode(9, OUTPUT); analogWrite(9, ${value}); } void loop() { delay(10); }`,
    );
    expect(rehearseOnce(lesson, { supply: "adapter 2000mA" }).checks[0]?.seen).toBe(seen);
  });

test("the 3.3 V outlet: 50 mA are too much for older boards, 5 V on it too much for what hangs there", () => {
  const outlet = (net: string) =>
    hazardsOf(
      smallLesson(
        "R1: { part: resistor, ohms: 47, watts: 1 }",
        net,
        "{ at: 500ms, expect: { board: running } }",
        "void setup() {} void loop() { delay(10); }",
      ),
    );
  // 3.3 V / 47 Ω = 70 mA.
  expect(outlet("board.3V3 R1.1\n R1.2 board.GND")).toEqual(["part-overcurrent caution 3V3"]);
  expect(outlet("board.3V3 board.5V R1.1")).toEqual(["over-3.3-volts unsafe 3V3"]);
});

// Volts of a supply straight on the 5 V net: 9 V block; four fresh alkaline cells 4 × 1.60 V = 6.4 V (LR6 specification),
// over the chip's absolute maximum of 6.0 V although a usual set has 6 V; four NiMH cells at most 5.6 V,
// over the 5.5 V that the chip works with, under what harms it.
const straight: [battery: string, severity: string | undefined, fits: string][] = [
  ["battery-9v", "unsafe", "does not fit"],
  ["battery-4aa, type: alkaline", "unsafe", "does not fit"],
  ["battery-4aa, type: nimh", "caution", "fits"],
];
for (const [battery, severity, fits] of straight)
  test(`${battery} straight on the 5 V net: ${severity ?? "nothing to say"}`, () => {
    const once = rehearseOnce(
      smallLesson(
        `BAT1: { part: ${battery} }
         R1: { part: resistor, ohms: 10k }`,
        `BAT1.plus board.5V R1.1
         R1.2 BAT1.minus board.GND`,
        "{ at: 500ms, expect: { board: running } }",
        "void setup() {} void loop() { delay(10); }",
      ),
    );
    expect(once.hazards.find((h) => h.code === "board-overvoltage")?.severity).toBe(severity);
    expect(once.supply?.fits).toBe(fits);
    expect(once.supply?.why.includes("too-high")).toBe(fits !== "fits");
  });

test("a program that does not compile fails, and says where", () => {
  const once = rehearseOnce({
    ...lamp("220"),
    program: { file: "program.cpp", text: "void setup() {\n  pinMode(9, OUTPUT)\n}\nvoid loop() {}\n" },
  });
  expect(once.verdict).toBe("fails its rehearsal");
  expect(once.problems).toMatchObject([{ code: "rehearsal.programHasErrors", line: 2 }]);
});

// ── our lessons ────────────────────────────────────────────────────────────────────────────────────────────────────

const lessons = ["lighthouse", "signal-lamp", "quay-lamp-at-dusk", "barrier"];

for (const id of lessons) {
  test(`${id}: ready with a strong supply, with 180 to 470 Ω and with 1 kΩ`, () => {
    const lesson = ourLesson(id);
    const lamps = [...lesson.parts.values()].filter((p) => p.mayBe.length > 0).map((p) => p.name);
    for (const item of ["resistor 180", "resistor 220", "resistor 470", "resistor 1k"]) {
      const once = rehearseOnce(lesson, { supply: "adapter 2000mA", items: new Map(lamps.map((name) => [name, item])) });
      expect([item, once.verdict, once.hazards]).toEqual([item, "ready", []]);
    }
  });
  test(`${id}: fails with its first LED the wrong way round`, () => {
    const lesson = ourLesson(id);
    const turned = (leg: string) => (leg === "anode" ? "cathode" : "anode");
    const nets = lesson.nets.map((net) => ({
      ...net,
      legs: net.legs.map((leg) => (leg.part === "LED1" ? { part: "LED1", leg: turned(leg.leg) } : leg)),
    }));
    expect(rehearseOnce({ ...lesson, nets }, { supply: "adapter 2000mA" }).verdict).toBe("fails its rehearsal");
  });
}

test("the first three lessons are ready on a laptop's port", () => {
  for (const id of lessons.slice(0, 3)) expect([id, rehearseOnce(ourLesson(id)).verdict]).toEqual([id, "ready"]);
});

test("the barrier on a port of 500 mA: nobody can say, because a start takes more", () => {
  const once = rehearseOnce(ourLesson("barrier"));
  expect(once.supply).toMatchObject({ fits: "undetermined", why: ["over-current"] });
  expect(once.verdict).toBe("needs another supply");
  expect(once.checks.filter((c) => c.undetermined).every((c) => c.hangsOn.includes("usb-port 500mA"))).toBe(true);
  // The start as a resistance: 4.8 V / 0.7 A beside the board's 111 Ω, behind 1.046 Ω; two LEDs add less than 30 mA.
  const start = 4.8 / 0.7;
  const own = 5 / 0.045;
  const load = (start * own) / (start + own);
  expect(once.supply?.peakAmps).toBeGreaterThan(5 / (load + 1.046));
  expect(once.supply?.peakAmps).toBeLessThan(5 / (load + 1.046) + 0.03);
});

test("the quay lamp switches at the light that R10 and gamma give for its two numbers", () => {
  // code/1024 = R1/(R1 + R), R = R10·(E/10 lx)^−gamma, so E = 10 lx·(R10/R)^(1/gamma).
  const { values } = ourLesson("quay-lamp-at-dusk").parts.get("LDR1")!;
  const luxAt = (code: number) => {
    const ohms = 10_000 * (1024 / code - 1);
    return 10 * (Number(values.ohms) / ohms) ** (1 / Number(values.gamma));
  };
  const night = luxAt(250);
  const day = luxAt(601);
  expect(night).toBeLessThan(8);
  expect(day).toBeGreaterThan(8);
  const lesson = ourLesson("quay-lamp-at-dusk");
  const at = (from: number, to: number): Lesson => ({
    ...lesson,
    stimuli: [
      { at: 0, stimuli: [{ kind: "state", part: "LDR1", state: "lux", value: from }], place: lesson.nets[0]!.place },
      { at: 1, stimuli: [{ kind: "state", part: "LDR1", state: "lux", value: to }], place: lesson.nets[0]!.place },
    ],
    checks: [
      {
        when: { kind: "at", at: 2 },
        expectation: { kind: "part", part: "LED1", seen: "lit", tolerance: 0.1 },
        place: lesson.nets[0]!.place,
      },
    ],
  });
  const table: [from: number, to: number, seen: string][] = [
    [400, night * 1.02, "dark"],
    [400, night * 0.98, "lit"],
    [0.5, day * 0.98, "lit"],
    [0.5, day * 1.02, "dark"],
  ];
  for (const [from, to, seen] of table) expect(rehearseOnce(at(from, to)).checks[0]?.seen, `${from} to ${to} lx`).toBe(seen);
});

test("another number in the program gives another, known answer", () => {
  const lesson = ourLesson("lighthouse");
  const faster = { ...lesson, program: { ...lesson.program, text: lesson.program.text.replaceAll("= 500;", "= 250;") } };
  const blinking = rehearseOnce(faster).observations.find((o) => o.seen === "blinking");
  expect(Number(blinking?.figures.hertz)).toBeCloseTo(2, 3);
  expect(Number(blinking?.figures.duty)).toBeCloseTo(0.5, 3);
});

// ── supplies ───────────────────────────────────────────────────────────────────────────────────────────────────────

test("a power bank sleeps when never asked for its 60 mA", () => {
  // The board's 45 mA and 12.6 mA of one LED are less; two LEDs together are more, but not on average.
  expect(rehearseOnce(ourLesson("lighthouse"), { supply: "power-bank" }).supply).toMatchObject({
    fits: "does not fit",
    why: ["switches-itself-off"],
  });
  expect(rehearseOnce(ourLesson("signal-lamp"), { supply: "power-bank" }).supply?.fits).toBe("undetermined");
});
test("a 9 V block: hours are 550 mAh over the mean current, heat is 160 K/W · (9 V − drops − 5 V) · I", () => {
  const supply = rehearseOnce(ourLesson("lighthouse"), { supply: "battery-9v" }).supply!;
  expect(supply.hours).toBeCloseTo(0.55 / supply.amps, 6);
  // Its worst second is half light, half dark; in the dark the board takes 45 mA and the regulator 6 mA.
  const watts = (amps: number) => (9 - 1.7 * amps - 0.7 - 5) * amps;
  const worst = (watts(supply.peakAmps) + watts(0.051)) / 2;
  expect(supply.regulatorCelsius).toBeCloseTo(25 + 160 * worst, 1);
  // A finger meets the case, 15 K/W before the junction; 43 °C may be held for hours (ISO 13732-1).
  expect(supply.hottest?.celsius).toBeCloseTo(25 + (160 - 15) * worst, 1);
  expect(supply.hottest).toMatchObject({ part: "board", touch: "warm" });
  // The lighthouse takes 80 minutes.
  expect(supply.lessons).toBe(Math.floor((0.55 / supply.amps) * (60 / ourLesson("lighthouse").minutes)));
  expect(supply.fits).toBe("fits");
});
test("four alkaline cells: hours end when less than 3.78 V are left for the chip, not when they are empty", () => {
  const supply = rehearseOnce(ourLesson("lighthouse"), { supply: "battery-4aa" }).supply!;
  // V(s) − R(s)·I − 1.9 V = 3.78 V with V from 6 V to 4 V and R from 1 Ω to 3 Ω, s the share used, I the lamp lit.
  // Rail and current at that moment: 3.78 V / 111 Ω + 6 mA · (V − R·I)/(6.9 V) + the LED at 3.78 V, about 7.9 mA.
  const amps = 3.78 / (5 / 0.045) + 0.006 * (5.68 / 6.9) + 0.0079;
  const share = (6 - 1.9 - 3.78 - amps) / (2 + 2 * amps);
  expect(supply.hours! / (2.2 / supply.amps)).toBeGreaterThan(share * 0.95);
  expect(supply.hours! / (2.2 / supply.amps)).toBeLessThan(share * 1.05);
});
test("200 mA from a 9 V block heat the regulator beyond what it may: 25 °C + 160 K/W · 3 V · 0.25 A", () => {
  const lesson = smallLesson(
    "R1: { part: resistor, ohms: 25, watts: 5 }",
    `board.5V R1.1
     R1.2 board.GND`,
    "{ at: 500ms, expect: { board: running } }",
    "void setup() {} void loop() { delay(10); }",
  );
  const once = rehearseOnce(lesson, { supply: "battery-9v" });
  const amps = 5 / 25 + 0.045 + 0.006;
  const celsius = 25 + 160 * (9 - 1.7 * amps - 0.7 - 5) * amps;
  expect(once.supply?.regulatorCelsius).toBeGreaterThan(celsius - 1);
  expect(once.supply?.regulatorCelsius).toBeLessThan(celsius + 1);
  expect(celsius).toBeLessThan(150);
  // The junction might bear it; a finger does not bear the case.
  expect(once.supply).toMatchObject({ fits: "does not fit", why: ["regulator-hot"] });
  expect(once.hazards.map((h) => `${h.code} ${h.severity}`)).toEqual([
    "regulator-hot caution",
    // 145 K/W to the case of plastic: over 85 °C it burns at a touch.
    "hot-surface unsafe",
  ]);
});
test("half an ampere that lasts: between hold and trip of the fuse nobody knows, beyond what the port promises it is out", () => {
  const load = (ohms: number) =>
    smallLesson(
      `R1: { part: resistor, ohms: ${ohms}, watts: 10 }`,
      `board.5V R1.1
       R1.2 board.GND`,
      "{ at: 3s, expect: { board: running } }",
      "void setup() {} void loop() { delay(10); }",
    );
  // 5 V / (ohms ∥ 111 Ω + 1.046 Ω)
  const amps = (ohms: number) => 5 / ((ohms * (5 / 0.045)) / (ohms + 5 / 0.045) + 1.046);
  expect(amps(12)).toBeLessThan(0.5);
  expect(amps(8)).toBeGreaterThan(0.5);
  expect(amps(3.3)).toBeGreaterThan(1);
  const fits = (ohms: number, supply: string) => rehearseOnce(load(ohms), { supply }).supply?.fits;
  expect(fits(12, "usb-port 500mA")).toBe("fits");
  expect(fits(8, "usb-port 500mA")).toBe("does not fit");
  expect(fits(8, "adapter 2000mA")).toBe("undetermined");
  expect(fits(3.3, "adapter 2000mA")).toBe("does not fit");
});

// ── the whole rehearsal ────────────────────────────────────────────────────────────────────────────────────────────

test("the barrier needs another supply, and is told which carries it", () => {
  const result = finish(rehearse(ourLesson("barrier"), { corners: false }));
  expect(result.verdict).toBe("needs another supply");
  expect(result.supplies.map((s) => [s.supply, s.fits])).toEqual([
    ["usb-port 500mA", "undetermined"],
    ["adapter 2000mA", "fits"],
  ]);
});
test("with an adapter among the class's supplies the barrier is ready", () => {
  const result = finish(rehearse(ourLesson("barrier"), { supplies: ["usb-port 500mA", "adapter 2000mA"], corners: false }));
  expect(result.verdict).toBe("ready");
});
test("the lighthouse with what a class has: values that pass, and one that burns", () => {
  const items = ["resistor 330", "resistor 1k", "resistor 22", "led green", "led yellow", "button", "resistor 220"];
  const result = finish(rehearse(ourLesson("lighthouse"), { items, corners: false }));
  const told = result.variants.flatMap((v) => (v.what.kind === "value" ? [[v.what.part, v.what.item, v.verdict]] : []));
  expect(told.sort()).toEqual(
    [
      ["R1", "resistor 180", "ready"],
      ["R1", "resistor 270", "ready"],
      ["R1", "resistor 330", "ready"],
      ["R1", "resistor 470", "ready"],
      ["R1", "resistor 1k", "ready"],
      ["R1", "resistor 22", "unsafe"],
      ["LED1", "led green", "ready"],
      ["LED1", "led yellow", "ready"],
      // Stand-ins of the catalogue: about 9 mA through 220 Ω and 25 Ω with 3 V across them.
      ["LED1", "led blue", "ready"],
      ["LED1", "led white", "ready"],
    ].sort(),
  );
});
test("corners keep within the tolerances, and drive the LED's current both ways", () => {
  const result = finish(rehearse(ourLesson("lighthouse")));
  const corners = result.variants.flatMap((v) => (v.what.kind === "corner" ? [v.what.values] : []));
  expect(corners.length).toBeGreaterThan(1);
  for (const values of corners) {
    expect(values["R1.ohms"] ?? 220).toBeGreaterThanOrEqual(209 - 1e-9);
    expect(values["R1.ohms"] ?? 220).toBeLessThanOrEqual(231 + 1e-9);
    expect(values["board.supplyVolts"] ?? 5).toBeGreaterThanOrEqual(4.75);
  }
  const brightest = corners.find((v) => v["R1.ohms"] === 209 && v["board.supplyVolts"] === 5.25 && v["board.fuseOhms"] === 0.15);
  expect(brightest).toBeDefined();
});
test("the margin of the lighthouse's resistor downwards is where the LED gets 20 mA", () => {
  const result = finish(rehearse(ourLesson("lighthouse"), { corners: false, margins: true }));
  const margin = result.margins.find((m) => m.part === "R1")!;
  expect(redLampAmps(220 * margin.down!)).toBeGreaterThan(0.02);
  expect(redLampAmps(220 * margin.down! * 1.02)).toBeLessThan(0.02);
  expect(margin.up).toBeNull();
});
test("readings are those of a meter: the pin's 25 Ω are lost, the LED has its forward voltage", () => {
  const result = finish(rehearse(ourLesson("lighthouse"), { corners: false }));
  const lit = (part: string, leg: string) =>
    result.readings.find((r) => r.ms === 250 && r.at.part === part && r.at.leg === leg)?.volts ?? 0;
  const amps = redLampAmps(220);
  expect(lit("R1", "1") - lit("R1", "2")).toBeCloseTo(220 * amps, 3);
  expect(result.readings.find((r) => r.ms === 750)?.volts).toBe(0);
});
test("progress is told, and stopping half-way is possible", () => {
  const work = rehearse(ourLesson("lighthouse"));
  expect(work.next().done).toBe(false);
  expect(work.next().done).toBe(false);
  work.return(undefined as never);
  expect(work.next().done).toBe(true);
});
test("the same seed gives the same answer, down to the last digit", () => {
  const once = () => JSON.stringify(finish(rehearse(ourLesson("signal-lamp"), { seed: 7 })));
  expect(once()).toBe(once());
});
test("a part whose behaviour is not modelled is not rehearsed", () => {
  const unknown = [...catalogue.values()].find((k) => k.notModelled && k.legs.includes("GND"));
  if (!unknown) return;
  const lesson = smallLesson(
    `X1: { part: ${unknown.id} }`,
    "X1.GND board.GND",
    "{ at: 500ms, expect: { board: running } }",
    "void setup() {} void loop() { delay(10); }",
  );
  const once = rehearseOnce(lesson);
  expect([once.verdict, once.problems[0]?.code]).toEqual(["not rehearsed yet", "rehearsal.partNotModelled"]);
});
