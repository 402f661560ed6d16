// From elements to equations: the families, their currents, and the names under which the answers are found.
//
// Does not know: how the equations are solved, that values change.
import { batteries } from "./devices/batteries.ts";
import { bipolars } from "./devices/bipolars.ts";
import { capacitors } from "./devices/capacitors.ts";
import { fuses, switches } from "./devices/contacts.ts";
import { diodes } from "./devices/diodes.ts";
import { storingCapacitors, storingInductors } from "./devices/energyStores.ts";
import { currentSources, inductors, voltageSources } from "./devices/idealSources.ts";
import { junctionCharges } from "./devices/junctionCharges.ts";
import { limitedSources, type SupplyFamily } from "./devices/limitedSources.ts";
import { mosfets } from "./devices/mosfets.ts";
import { motors } from "./devices/motors.ts";
import { regulators } from "./devices/regulators.ts";
import { pins, resistors } from "./devices/resistors.ts";
import { type DeviceFamily, EquationBuilder, type StoringFamily, type TurningFamily } from "./equations.ts";
import { thermalVoltage } from "./junction.ts";
import type { Element, LimitedSource, NodeName, Regulator } from "./netlist.ts";
import { type Machine, makeMachine } from "./newton.ts";
import type { DcOptions } from "./outcome.ts";
import { currentCount, type PointLayout, SolvedPoint } from "./solvedPoint.ts";
import type { ElementKind } from "./terminals.ts";
import { readTopology, type Topology } from "./topology.ts";

const linearKinds: ReadonlySet<ElementKind> = new Set(["resistor", "voltageSource", "currentSource", "capacitor", "inductor"]);

/** Our own copy of an element, whose numbers may change. */
export type MutableElement = Element & { [field: string]: unknown };

/** A circuit with everything that its wiring decides. */
export interface Assembly {
  readonly machine: Machine;
  readonly topology: Topology;
  readonly floating: readonly NodeName[];
  /** A window on the machine's numbers. */
  readonly now: SolvedPoint;
  /** What remembers, where time passes; none at an operating point. */
  readonly stores: readonly StoringFamily[];
  /** What stands one way or another, or runs down. */
  readonly turning: readonly TurningFamily[];
  /** Where to tell that the values of an element have changed. */
  readonly places: ReadonlyMap<string, { readonly family: DeviceFamily; readonly index: number }>;
  /** Supplies that can be at their limit or blocked. */
  readonly supplies: readonly { readonly element: LimitedSource | Regulator; readonly fixesCurrent: () => boolean }[];
}

/**
 * @param elements read again whenever a family is told to take a value.
 * @param inTime for steps through time: capacitors and inductors remember. Else for an operating point.
 */
export function assemble(elements: readonly Element[], { celsius = 27, gmin = 1e-12 }: DcOptions, inTime = false): Assembly {
  const topology = readTopology(elements, { inTime });
  const builder = new EquationBuilder();
  const thermal = thermalVoltage(celsius);
  const families: DeviceFamily[] = [];
  const stores: StoringFamily[] = [];
  const places = new Map<string, { family: DeviceFamily; index: number }>();
  const found = new Map<string, { element: Element; firstCurrent: number }>();

  /** Makes the family of all elements of some kinds. */
  function gather<K extends ElementKind, F extends DeviceFamily>(
    kinds: readonly K[],
    make: (members: Extract<Element, { kind: K }>[], firstCurrent: number) => F,
  ) {
    const members = elements.filter((e): e is Extract<Element, { kind: K }> => (kinds as readonly string[]).includes(e.kind));
    const each = members[0] ? currentCount(members[0]) : 0;
    const firstCurrent = builder.currents(each * members.length);
    const family = make(members, firstCurrent);
    if (members.length > 0) families.push(family);
    members.forEach((element, index) => {
      places.set(element.id, { family, index });
      found.set(element.id, { element, firstCurrent: firstCurrent + each * index });
    });
    return { members, family };
  }

  function kept(family: StoringFamily): StoringFamily {
    if (family.count > 0) stores.push(family);
    return family;
  }

  gather(["resistor"], (members, at) => resistors(members, builder, at));
  gather(["voltageSource"], (members, at) => voltageSources(members, builder, at));
  gather(["inductor"], (members, at) =>
    inTime ? kept(storingInductors(members, builder, at)) : inductors(members, builder, at),
  );
  gather(["currentSource"], (members, at) => currentSources(members, builder, at));
  gather(["capacitor"], (members, at) => (inTime ? kept(storingCapacitors(members, builder, at)) : capacitors(members, builder)));
  const { members: allDiodes, family: diodeFamily } = gather(["diode"], (members, at) =>
    diodes(members, builder, at, thermal, gmin),
  );
  gather(["npn", "pnp"], (members, at) => bipolars(members, builder, at, thermal, gmin));
  gather(["nmos", "pmos"], (members, at) => mosfets(members, builder, at, thermal, gmin));
  const limited = gather(["limitedSource"], (members, at) => limitedSources(members, builder, at));
  const regulating = gather(["regulator"], (members, at) => regulators(members, builder, at));
  gather(["motor"], (members, at) => {
    const family = motors(members, builder, at, inTime);
    return inTime ? kept(family) : family;
  });
  const turning = [
    gather(["battery"], (members, at) => batteries(members, builder, at)).family,
    gather(["fuse"], (members, at) => fuses(members, builder, at)).family,
    gather(["switch"], (members, at) => switches(members, builder, at, (id) => found.get(id)?.firstCurrent ?? -1)).family,
  ].filter((family) => families.includes(family));
  if (inTime) {
    const charged = allDiodes.flatMap((diode, k) => {
      const current = found.get(diode.id)?.firstCurrent ?? 0;
      return diode.junctionFarads || diode.transitSeconds ? [{ diode, state: diodeFamily.firstState + k, current }] : [];
    });
    if (charged.length > 0) families.push(kept(junctionCharges(charged, builder, thermal)));
  }
  if (topology.floating.length > 0)
    families.push(
      pins(
        topology.floating.map(([first]) => first as NodeName),
        builder,
      ),
    );
  for (const { family, index } of places.values()) family.take(index);

  const finished = builder.finish();
  const { equations } = finished;
  const layout: PointLayout = { nodes: finished.nodes, innerNodes: finished.innerNodes, elements: found };
  const supplies = [limited, regulating].flatMap(
    ({ members, family }: { members: (LimitedSource | Regulator)[]; family: SupplyFamily }) =>
      members.map((element, index) => ({ element, fixesCurrent: () => family.fixesCurrent(equations, index) })),
  );
  return {
    machine: makeMachine(
      finished,
      families,
      elements.every(({ kind }) => linearKinds.has(kind)),
    ),
    topology,
    floating: topology.floating.flat(),
    stores,
    turning,
    now: new SolvedPoint(layout, equations.x, equations.currents),
    places,
    supplies,
  };
}

/** Takes the node voltages of an earlier answer as the guess; nodes that it does not have start at 0 V. */
export function startFrom({ machine, now }: Assembly, point: SolvedPoint): void {
  const { x } = machine.eq;
  x.fill(0);
  for (const [node, unknown] of now.layout.nodes) if (point.layout.nodes.has(node)) x[unknown] = point.volts(node);
  for (const [name, unknown] of now.layout.innerNodes) {
    const outer = machine.finished.owners[unknown] as NodeName;
    x[unknown] = point.innerVolts(name) ?? (point.layout.nodes.has(outer) ? point.volts(outer) : 0);
  }
  machine.eq.start = "volts";
}

/**
 * A supply at its limit or blocked is a current source: if nothing but it joins its two ends, whatever pulls or pushes there
 * wants more than it can give or take.
 * @returns the node that it alone feeds, or null.
 */
export function findStarvedNode({ supplies, topology }: Assembly, elements: readonly Element[]): NodeName | null {
  const fixed = new Set<Element>();
  for (const { element, fixesCurrent } of supplies) if (fixesCurrent()) fixed.add(element);
  if (fixed.size === 0) return null;
  const { areJoined } = readTopology(elements, { isOpen: (element) => fixed.has(element) });
  for (const { element } of supplies) {
    if (!fixed.has(element)) continue;
    const [out, back] = element.kind === "regulator" ? [element.output, element.ground] : [element.plus, element.minus];
    if (!areJoined(out, back) && topology.areJoined(out, back)) return areJoined(out, "0") ? back : out;
  }
  return null;
}
