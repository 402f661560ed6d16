// What is stressed: every state that a run went through, held against the limits of the data sheets.
//
// Pins, ports and chip are judged at the peak, for a millisecond too much already harms them; heat in parts and light in LEDs at
// the mean of fast switching. A hazard is told once for each part, at its worst, with the moment at which it first reached that
// severity.
// Does not know: sentences, what the figures of the limits are (bench/parts).
import { boardFacts, elementId, type Limit, type PortGroup, type SupplyFacts } from "../parts/index.ts";
import { pinName } from "./boardElements.ts";
import type { Build, BuiltPart } from "./build.ts";
import { findBareCoils } from "./findBareCoils.ts";
import { toMs } from "./observe.ts";
import type { Hazard, HazardCode } from "./result.ts";
import { meanOf, type Run, type Scene, type Segment, sceneKeyOf } from "./run.ts";
import type { Point } from "./table.ts";

/** Ω between supply and ground below which it is a short, whatever the supply makes of it. Our choice. */
const shortOhms = 1;

type Found = Omit<Hazard, "ms">;

export function findHazards(build: Build, pins: readonly string[], runs: readonly Run[]): readonly Hazard[] {
  const worst = new Map<string, Hazard>();
  const note = (found: Found, ms: number) => {
    const key = `${found.code} ${found.part}`;
    const known = worst.get(key);
    const isWorse = known?.severity === "caution" && found.severity === "unsafe";
    if (!known || isWorse) worst.set(key, { ...found, ms });
    else if (known.severity === found.severity)
      worst.set(key, { ...(Math.abs(found.value) > Math.abs(known.value) ? found : known), ms: Math.min(known.ms, ms) });
  };
  for (const run of runs)
    for (const segment of distinctScenes(run))
      for (const found of hazardsOf(build, pins, segment.scene)) note(found, toMs(segment.from));
  for (const found of findBareCoils(build, runs)) note(found, 0);
  return [...worst.values()].sort((a, b) => a.ms - b.ms || a.code.localeCompare(b.code) || a.part.localeCompare(b.part));
}

/** The first segment of each scene: a blinking lamp is judged twice, not a thousand times. */
function distinctScenes(run: Run): readonly Segment[] {
  const seen = new Set<string>();
  return run.segments.filter(({ scene }) => {
    const key = sceneKeyOf(scene);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function hazardsOf(build: Build, pins: readonly string[], scene: Scene): readonly Found[] {
  if (!scene.on) return [];
  return [
    ...scene.phases.flatMap((phase) => [
      ...pinHazards(build, pins, phase.point),
      ...fightingPins(build, pins, phase.state.drives, phase.point),
      ...supplyHazards(build, phase.point),
    ]),
    ...[...build.parts.values()].flatMap((part) => partHazards(part, scene)),
  ];
}

function pinHazards(build: Build, pins: readonly string[], point: Point): readonly Found[] {
  const { pin, portGroups, chip } = boardFacts;
  const found: Found[] = [];
  const amps = new Map(pins.map((name) => [name, point.pinAmps(name)]));
  for (const [name, value] of amps) {
    const limit = { caution: pin.cautionAmps, unsafe: pin.unsafeAmps };
    found.push(...over("pin-overcurrent", name, Math.abs(value), "A", limit));
    const node = build.wiring.node("board", name);
    if (point.floating.has(node)) continue;
    const volts = point.volts(node);
    const beyond = pin.beyondRailVolts;
    if (volts > point.rail + beyond.value)
      found.push({
        code: "pin-overvoltage",
        severity: "unsafe",
        part: name,
        value: volts,
        limit: point.rail + beyond.value,
        unit: "V",
        source: beyond.source,
      });
    if (volts < -beyond.value)
      found.push({
        code: "pin-negative",
        severity: "unsafe",
        part: name,
        value: volts,
        limit: -beyond.value,
        unit: "V",
        source: beyond.source,
      });
  }
  const sumOf = (members: readonly string[], sign: 1 | -1) =>
    members.reduce((sum, name) => sum + Math.max(0, sign * (amps.get(name) ?? 0)), 0);
  // Beyond it the sheet no longer promises its levels; what it forbids is the 200 mA of the whole chip.
  for (const [groups, sign] of namedGroups)
    for (const group of groups)
      found.push(
        ...over("port-group-overcurrent", group.name, sumOf(group.pins, sign), "A", {
          caution: { value: group.amps, source: portGroups.from },
        }),
      );
  for (const sign of [1, -1] as const)
    found.push(...over("chip-overcurrent", "board", sumOf(pins, sign), "A", { unsafe: chip.unsafeAmps }));
  return found;
}

/** A group by its runs of pins in the order of the board: "D0…D4 A0…A5". */
function groupName(pins: readonly string[]): string {
  const order = Array.from({ length: 20 }, (_, i) => pinName(i));
  const runs: string[][] = [];
  for (const [i, pin] of order.entries()) {
    if (!pins.includes(pin)) continue;
    const last = runs.at(-1);
    if (last && last.at(-1) === order[i - 1]) last.push(pin);
    else runs.push([pin]);
  }
  return runs.map((run) => (run.length > 1 ? `${run[0]}…${run.at(-1)}` : run[0])).join(" ");
}

const named = (groups: readonly PortGroup[]) => groups.map((group) => ({ ...group, name: groupName(group.pins) }));
/** The data sheet's groups, with the sign of the currents that they add up. */
const namedGroups = [
  [named(boardFacts.portGroups.source), 1],
  [named(boardFacts.portGroups.sink), -1],
] as const;

function fightingPins(build: Build, pins: readonly string[], drives: string, point: Point): readonly Found[] {
  const fights = pins.filter((name, i) => {
    const opposite = drives[i] === "1" ? "0" : drives[i] === "0" ? "1" : null;
    const node = build.wiring.node("board", name);
    return opposite !== null && pins.some((other, k) => drives[k] === opposite && build.wiring.node("board", other) === node);
  });
  const { unsafeAmps } = boardFacts.pin;
  return fights.map((name) => ({
    code: "pins-fight" as const,
    severity: "unsafe" as const,
    part: name,
    value: Math.abs(point.pinAmps(name)),
    limit: unsafeAmps.value,
    unit: "A" as const,
    source: unsafeAmps.source,
  }));
}

function supplyHazards(build: Build, point: Point): readonly Found[] {
  const { chip, regulator, fuse } = boardFacts;
  const { supply, wiring } = build;
  const found: Found[] = [];
  // Cells are weighed as they come from the packet: the rail then stands higher by what a fresh set has more than a usual one.
  const fresh = point.rail + freshVolts(supply.facts);
  found.push(...over("board-overvoltage", "board", fresh, "V", { caution: chip.mostVolts, unsafe: chip.unsafeVolts }));
  if (supply.facts.into === "VIN")
    found.push(
      ...over("board-overvoltage", "VIN", point.volts(wiring.node("board", "VIN")), "V", {
        caution: regulator.recommendedMostVolts,
        unsafe: regulator.mostVolts,
      }),
    );
  const limit = supply.facts.limitAmps;
  if (limit && point.supplyAmps > limit.value * (1 + 1e-6))
    found.push(...over("usb-overcurrent", supply.item, point.supplyAmps, "A", { caution: limit }));
  // What the board itself takes is no short.
  const outside = point.supplyAmps - point.amps("board.own");
  if (outside > 0.1 && point.rail / outside < shortOhms)
    found.push({
      code: isCell(supply.facts) ? "battery-short" : "short",
      severity: "unsafe",
      part: "board.5V",
      value: point.supplyAmps,
      limit: limit?.value ?? fuse.tripAmps.value,
      unit: "A",
      source: "our own: less than 1 Ω between 5V and GND",
    });
  return [...found, ...lowOutletHazards(build, point), ...shortedBatteries(build, point)];
}

/** Cells that nothing limits; a power bank guards itself. */
function isCell(facts: SupplyFacts): boolean {
  return facts.ampHours !== null && facts.limitAmps === null;
}

/** V that a fresh set of cells straight on the 5 V pin has more than a usual one; 0 for what holds its voltage. */
export function freshVolts(facts: SupplyFacts): number {
  if (facts.into !== "5V" || facts.ampHours === null) return 0;
  const [, usual, most] = facts.volts.value;
  return most - usual;
}

/** The board's 3.3 V: what is taken from it, and 5 V that come to it from outside. */
function lowOutletHazards(build: Build, point: Point): readonly Found[] {
  if (!build.wiring.joined("board", "3V3")) return [];
  const { cautionAmps, unsafeAmps } = boardFacts.output3V3;
  return [
    ...over("part-overcurrent", "3V3", -point.amps("board.3V3"), "A", { caution: cautionAmps, unsafe: unsafeAmps }),
    ...over("over-3.3-volts", "3V3", point.volts(build.wiring.node("board", "3V3")), "V", {
      unsafe: { value: 3.6, source: "from memory: parts for 3.3 V bear at most 3.6 V" },
    }),
  ];
}

/** Supplies of the lesson that feed something else than the board. */
function shortedBatteries(build: Build, point: Point): readonly Found[] {
  return [...build.parts.values()].flatMap((part): readonly Found[] => {
    const facts = part.kind.supply?.(part.values);
    if (!facts) return [];
    const amps = -point.amps(part.name);
    const volts = point.volts(build.wiring.node(part.name, "plus")) - point.volts(build.wiring.node(part.name, "minus"));
    if (amps < 0.1 || volts / amps >= shortOhms) return [];
    const limit = facts.limitAmps?.value ?? 1;
    return [
      {
        code: isCell(facts) ? "battery-short" : "short",
        severity: "unsafe",
        part: part.name,
        value: amps,
        limit,
        unit: "A",
        source: "our own: less than 1 Ω across a supply",
      },
    ];
  });
}

const codes: Readonly<Record<Limit["what"], HazardCode>> = {
  amps: "part-overcurrent",
  watts: "part-overload",
  volts: "part-overvoltage",
  reverseVolts: "reverse-overvoltage",
};

/** Kinds that switch: transistors, and chips made of them. */
const transistors: ReadonlySet<string> = new Set(["npn", "pnp", "nmos", "ULN2003A"]);

function codeOf(part: BuiltPart, what: Limit["what"]): HazardCode {
  const { id } = part.kind;
  if (what === "amps" && part.kind.noticed(part.values).some((n) => n.sense === "light")) return "led-overcurrent";
  if (what === "watts" && id === "resistor") return "resistor-overload";
  if (what === "amps" && transistors.has(id)) return "transistor-overcurrent";
  if (what === "watts" && transistors.has(id)) return "transistor-overload";
  if (what === "reverseVolts" && part.kind.cautions.includes("bursts-when-reversed")) return "reversed-electrolytic";
  return codes[what];
}

function partHazards(part: BuiltPart, scene: Scene): readonly Found[] {
  return part.kind.limits(part.values).flatMap((limit) => {
    const id = elementId(part.name, limit.element);
    const across = scene.phases.map((p) => p.point.across(id));
    const figures = {
      amps: meanOf(scene, (p) => Math.abs(p.amps(id))),
      watts: meanOf(scene, (p) => p.watts(id)),
      volts: Math.max(...across.map(Math.abs)),
      reverseVolts: Math.max(...across.map((v) => -v)),
    };
    const unit = limit.what === "amps" ? "A" : limit.what === "watts" ? "W" : "V";
    return over(codeOf(part, limit.what), id, figures[limit.what], unit, limit);
  });
}

function over(
  code: HazardCode,
  part: string,
  value: number,
  unit: Hazard["unit"],
  limit: Pick<Limit, "caution" | "unsafe">,
): readonly Found[] {
  for (const severity of ["unsafe", "caution"] as const) {
    const most = limit[severity];
    if (most && value > most.value) return [{ code, severity, part, value, limit: most.value, unit, source: most.source }];
  }
  return [];
}
