// The up-loader's messages of both generations, and what they are taken for. A new message is one line.
//
// Source of the newer ones: avrdude 8.2, the files named beside each; the older ones are from memory.
import { describe, expect, test } from "vitest";
import { explainSetupMessage, setupWords } from "./explainSetupMessage.ts";
import { setupCauses, setupMessages } from "./setupCauses.ts";

const cases: [text: string, message: string | null, port?: string][] = [
  // ser_posix.c, ser_win32.c, main.c
  ["avrdude error: cannot open port /dev/ttyUSB0: No such file or directory", "port-not-found", "/dev/ttyUSB0"],
  ["avrdude error: unable to open port /dev/ttyACM0 for programmer stk500v1", "port-not-found", "/dev/ttyACM0"],
  ["avrdude error: cannot open port /dev/ttyUSB0: Permission denied", "port-denied", "/dev/ttyUSB0"],
  ["avrdude error: cannot open port /dev/ttyUSB0: Device or resource busy", "port-busy", "/dev/ttyUSB0"],
  ["avrdude error: cannot open port \\\\.\\COM3: Access is denied.", "port-busy", "COM3"],
  ["avrdude error: cannot open port \\\\.\\COM12: The system cannot find the file specified.", "port-not-found", "COM12"],
  // stk500.c, stk500v2.c
  ["avrdude warning: attempt 1 of 10: not in sync: resp=0x00", "not-in-sync"],
  ["avrdude error: programmer is not responding", "no-answer"],
  ["avrdude error: cannot communicate with device: resp=0x5a", "noise"],
  ["avrdude error: timeout communicating with programmer", "no-answer"],
  // main.c
  ["avrdude error: expected signature for ATmega328P is 1E 95 0F", "wrong-signature"],
  ["avrdude error: invalid device signature", "no-signature"],
  ["avrdude error: initialization failed  (rc = -1)\n - double check the connections and try again", "start-failed"],
  ["avrdude error: initialization failed (rc = -2)\n programmer ISP clock is too fast for the target", "clock-too-fast"],
  // update.c, fileio.c
  ["avrdude error: flash verification mismatch", "not-verified"],
  ["avrdude error: Intel Hex record [0x8000, 0x800f] out of range [0, 0x7fff]", "too-large"],
  // Version 6, from memory.
  ["avrdude: stk500_recv(): programmer is not responding", "no-answer"],
  ["avrdude: stk500_getsync() attempt 1 of 10: not in sync: resp=0x00", "not-in-sync"],
  ['avrdude: ser_open(): can\'t open device "/dev/ttyUSB0": Permission denied', "port-denied", "/dev/ttyUSB0"],
  ['avrdude: ser_open(): can\'t open device "\\\\.\\COM4": Access is denied.', "port-busy", "COM4"],
  ['avrdude: ser_open(): can\'t open device "/dev/ttyACM0": No such file or directory', "port-not-found", "/dev/ttyACM0"],
  // The linker, of a program that is too large for the chip.
  ["program.elf section `.text' will not fit in region `text'\nregion `text' overflowed by 1204 bytes", "too-large"],
  // Several lines: the first cause counts, not the last line.
  ["avrdude error: cannot open port COM3: Access is denied.\navrdude error: programmer is not responding", "port-busy", "COM3"],
  [
    "avrdude: stk500_recv(): programmer is not responding\navrdude: stk500_getsync() attempt 2 of 10: not in sync: resp=0x00",
    "not-in-sync",
  ],
  ["", null],
  ["Good morning.", null],
];

describe("what a message is taken for", () => {
  for (const [text, message, port] of cases)
    test(text.split("\n")[0]?.slice(0, 70) || "nothing", () => {
      const read = explainSetupMessage(text);
      expect(read.message).toBe(message);
      expect(read.port).toBe(port ?? null);
      expect(read.causes.length > 0).toBe(message !== null);
    });
});

test("every kind of message has causes, none of them twice", () => {
  for (const message of setupMessages) {
    const list = setupCauses(message);
    expect(list.length, message).toBeGreaterThanOrEqual(2);
    expect(new Set(list).size, message).toBe(list.length);
  }
});

test("a cable that only charges comes early where no port appears", () => {
  expect(setupCauses("no-port").indexOf("charge-only-cable")).toBeLessThanOrEqual(1);
});

test("the words by which a message is chosen from a list are that message", () => {
  for (const message of setupMessages) {
    const words = setupWords[message];
    if (words !== null) expect(explainSetupMessage(words).message, words).toBe(message);
  }
});
