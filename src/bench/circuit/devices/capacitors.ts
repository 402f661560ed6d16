// Capacitors at an operating point: charged, so no current flows.
//
// Does not know: time.
import type { DeviceFamily, EquationBuilder } from "../equations.ts";
import type { Capacitor } from "../netlist.ts";

/** Only makes their nodes known; their currents stay 0. */
export function capacitors(elements: readonly Capacitor[], builder: EquationBuilder): DeviceFamily {
  for (const { a, b } of elements) {
    builder.node(a);
    builder.node(b);
  }
  return { take() {}, stampFixed() {}, load() {} };
}
