// The cable from computer to board. Some only charge: the board's lamp is lit and no port appears.
// Does not know: plugs.
import { definePart } from "../definePart.ts";
import { beside } from "../footprints.ts";

/**
 * Ω of the power wires of a cable, there and back, with its contacts.
 *
 * @param metres length. @param awg gauge of the power wires, 20–28.
 * Source: ASTM B258 (d = 0.127 mm · 92^((36 − n)/39)), annealed copper of 0.017241 Ω·mm²/m (IEC 60028).
 */
export function cableOhms(metres: number, awg: number): number {
  const millimetres = 0.127 * 92 ** ((36 - awg) / 39);
  const square = (Math.PI / 4) * millimetres ** 2;
  return (2 * 0.017241 * metres) / square + contactOhms;
}

/** Two plugs, plus and minus: four contacts of 30 mΩ, their limit in USB specifications, from memory. */
const contactOhms = 4 * 0.03;

export const usbCable = definePart({
  id: "usb-cable",
  role: "building",
  legs: [],
  footprint: beside([], "no legs"),
  figures: {
    ohms: { value: 0.546, source: "1 m, power wires AWG 28 there and back 0.426 Ω (ASTM B258), 4 contacts of 30 mΩ" },
    leastOhms: { value: cableOhms(0.3, 20), source: "0.3 m of AWG 20, the thickest that USB 2.0 allows" },
    mostOhms: { value: cableOhms(1.8, 28), source: "1.8 m of AWG 28, the thinnest that USB 2.0 allows" },
  },
  price: "d",
  loss: "L2",
  meterTest: "bends-and-holds",
  source: "ASTM B258; USB 2.0 allows AWG 20–28 for power",
});
