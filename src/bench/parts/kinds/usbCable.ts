// The cable from computer to board. Some only charge: the board's lamp is lit and no port appears.
// Does not know: plugs.
import { definePart } from "../definePart.ts";
import { beside } from "../footprints.ts";

export const usbCable = definePart({
  id: "usb-cable",
  role: "building",
  legs: [],
  footprint: beside([], "no legs"),
  figures: {
    ohms: { value: 0.546, source: "1 m, power wires AWG 28 there and back 0.426 Ω (ASTM B258), 4 contacts of 30 mΩ" },
  },
  price: "d",
  loss: "L2",
  meterTest: "bends-and-holds",
  source: "ASTM B258; USB 2.0 allows AWG 20–28 for power",
});
