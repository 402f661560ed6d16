// The small lessons whose waveforms are held against ngspice, and where they are looked at.
//
// Each has its deck of the same name: board, cable, fuse and parts as a person would draw them, with the pin's edges as the program
// makes them. So what is compared is the circuit between the edges; the edges themselves are tested against the data sheet.
import type { Lesson } from "../../src/bench/lesson/index.ts";
import type { Probe } from "../../src/bench/rehearsal/index.ts";
import { smallLesson } from "../../src/bench/rehearsal/lesson.fixture.ts";

export interface TracedLesson {
  readonly deck: string;
  readonly lesson: Lesson;
  readonly probe: Probe;
  /** What ngspice's measurements are called: NAME and the number of the moment. */
  readonly name: string;
  /** ms; not closer than 1 µs to an edge. */
  readonly moments: readonly number[];
  /** V or A that they may differ by. */
  readonly tolerance: number;
}

const board = "{ at: 1s, expect: { board: running } }";
const pwm = (value: number) => `void setup() { pinMode(9, OUTPUT); analogWrite(9, ${value}); } void loop() { delay(10); }`;
const rc = (ohms: string, farads: string, program: string) =>
  smallLesson(
    `R1: { part: resistor, ohms: ${ohms} }\n C1: { part: capacitor, farads: ${farads} }`,
    "board.D9 R1.1\n R1.2 C1.1 board.A0\n C1.2 board.GND",
    board,
    program,
  );

export const tracedLessons: readonly TracedLesson[] = [
  {
    deck: "low-pass-slow",
    lesson: rc("10k", "10u", pwm(64)),
    probe: { at: { part: "C1", leg: "1" }, unit: "V" },
    name: "x",
    moments: [1, 2.5, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 99.5],
    tolerance: 0.001,
  },
  {
    deck: "low-pass-fast",
    lesson: rc("1k", "4.7u", pwm(100)),
    probe: { at: { part: "C1", leg: "1" }, unit: "V" },
    name: "x",
    moments: [0.3, 1, 1.7, 2.5, 5, 10, 20, 50, 75, 99.5],
    tolerance: 0.001,
  },
  {
    deck: "lamp-with-capacitor",
    lesson: smallLesson(
      `R1: { part: resistor, ohms: 100 }
       C1: { part: capacitor, farads: 22u }
       R2: { part: resistor, ohms: 220 }
       LED1: { part: led, colour: red }`,
      `board.D9 R1.1
       R1.2 C1.1 R2.1
       R2.2 LED1.anode
       LED1.cathode C1.2 board.GND`,
      board,
      pwm(128),
    ),
    probe: { at: { part: "LED1", leg: "anode" }, unit: "A" },
    name: "led",
    moments: [0.3, 0.9, 1.5, 2.5, 4.5, 10, 20, 50, 75, 99.5],
    tolerance: 5e-6,
  },
  {
    deck: "coil-with-diode",
    lesson: smallLesson(
      `R1: { part: resistor, ohms: 220 }
       L1: { part: inductor, henries: 100m, ohms: 10 }
       D1: { part: diode }`,
      `board.D9 R1.1
       R1.2 L1.1 D1.cathode
       L1.2 D1.anode board.GND`,
      board,
      pwm(90),
    ),
    probe: { at: { part: "L1", leg: "1" }, unit: "A" },
    name: "coil",
    moments: [0.1, 0.3, 0.6, 1, 1.9, 2.3, 5, 10.5, 20.3, 50.1, 99.5],
    // A third of a hundredth of its range: between two steps the trace is a straight line.
    tolerance: 5e-5,
  },
];
