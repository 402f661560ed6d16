// The L293D: two H bridges, so that a motor can turn both ways. It takes 2.6 V for itself: a motor on 5 V gets 2.4 V.
// Does not know: its logic, so that what hangs on it is not rehearsed.
import { definePart, practice } from "../definePart.ts";
import { overDitch } from "../footprints.ts";

const left = ["EN1", "1A", "1Y", "GND", "GND2", "2Y", "2A", "VCC2"];
const right = ["VCC1", "4A", "4Y", "GND3", "GND4", "3Y", "3A", "EN2"];
const sheet = "data sheet L293D, SLRS008C";

export const l293d = definePart({
  id: "L293D",
  legs: [...left, ...right],
  alsoCalled: { "12EN": "EN1", "34EN": "EN2", VS: "VCC2", VSS: "VCC1" },
  joined: [["GND", "GND2", "GND3", "GND4"]],
  markedLeg: "EN1",
  footprint: overDitch(left, right, 1, `DIP-16, notch at leg 1 (${sheet})`),
  figures: {
    highDropVolts: { value: 1.4, source: `${sheet}: 1.4 V typical, 1.8 V at most, at 0.6 A` },
    lowDropVolts: { value: 1.2, source: `${sheet}: 1.2 V typical, 1.8 V at most, at 0.6 A` },
    unsafeAmps: { value: 0.6, source: `${sheet}: 0.6 A a channel, 1.2 A peak` },
    ownAmps: { value: 0.035, source: `${sheet}: logic 13–60 mA` },
  },
  notModelled: true,
  standIns: [{ part: "relay", when: "two of them, slowly", source: practice }],
  price: "d",
  loss: "L1",
  cautions: ["hot-case", "small-parts"],
  meterTest: "output-voltage",
  source: sheet,
});
