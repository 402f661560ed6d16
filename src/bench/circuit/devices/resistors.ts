// Resistors, and the leaks to ground that give a floating group of nodes a voltage at all.
//
// Does not know: other devices.
import type { DeviceFamily, EquationBuilder } from "../equations.ts";
import type { NodeName, Resistor } from "../netlist.ts";
import { addConductance, addEach, conductancePlaces } from "./stamp.ts";

/** i(a → b) = (V(a) − V(b)) / ohms. @param firstCurrent where its currents begin. */
export function resistors(elements: readonly Resistor[], builder: EquationBuilder, firstCurrent: number): DeviceFamily {
  const count = elements.length;
  const a = Int32Array.from(elements, (e) => builder.node(e.a));
  const b = Int32Array.from(elements, (e) => builder.node(e.b));
  const siemens = new Float64Array(count);
  const at = conductancePlaces(builder, a, b);
  return {
    take(k) {
      siemens[k] = 1 / (elements[k] as Resistor).ohms;
    },
    stampFixed({ fixed }) {
      for (let k = 0; k < count; k += 1) addConductance(fixed, at, k, siemens[k] as number);
    },
    load({ x, residual, currents }) {
      for (let k = 0; k < count; k += 1) {
        const from = a[k] as number;
        const to = b[k] as number;
        const amps = (siemens[k] as number) * ((x[from] as number) - (x[to] as number));
        residual[from] = (residual[from] as number) + amps;
        residual[to] = (residual[to] as number) - amps;
        currents[firstCurrent + k] = amps;
      }
    },
  };
}

/**
 * 1 S from one node of each floating group to ground: no current can flow there, so it changes nothing but the voltage that
 * nothing else decides.
 */
export function pins(nodes: readonly NodeName[], builder: EquationBuilder): DeviceFamily {
  const unknowns = nodes.map((node) => builder.node(node));
  const at = Int32Array.from(unknowns, (unknown) => builder.place(unknown, unknown));
  return {
    take() {},
    stampFixed({ fixed }) {
      addEach(fixed, at, 1);
    },
    load({ x, residual }) {
      for (const unknown of unknowns) residual[unknown] = (residual[unknown] as number) + (x[unknown] as number);
    },
  };
}
