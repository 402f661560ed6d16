// Parts that do something of their own when the circuit lets them: servos turn, relays pull, motors start.
//
// After each change of the table they are asked what they do now; what they do changes the circuit again, and some of it ends by
// itself after a time.
// Does not know: the board, stimuli, who asks.
import { elementId, type PartLogic, type PartState, type RotorStep } from "../parts/index.ts";
import type { Build, BuiltPart } from "./build.ts";
import { drawVolts } from "./draws.ts";
import { driveServo, type Move, restingServo, type ServoState } from "./driveServo.ts";
import { meanOf, type Scene } from "./run.ts";
import { firstState, type Point } from "./table.ts";

/** V of swing at a servo's signal leg from which it hears the pulses: half the supply. From memory. */
const signalSwing = 2.5;
/** Share of its least voltage at which a servo still moves, if slowly. From memory: about 3.6 V. */
const sluggishShare = 0.75;

/** rad/s below which a shaft stands, for all that a person sees: half a turn in ten seconds. */
const creepSpeed = 0.3;

/** The speed of a motor at the end of a scene; null where it is not followed in time. */
export function speedOf(scene: Scene, id: string): number | null {
  return scene.phases.at(-1)?.point.speed(id) ?? null;
}

/** What the table is told after parts were asked. */
export interface Followed {
  /** Something electrical changed: look again. */
  readonly changed: boolean;
  /** Moments at which something ends by itself, s. */
  readonly wakeAt: readonly number[];
  /** Inner states that are new: a relay that pulled, a chip's bits. */
  readonly becomes: readonly (readonly [part: string, state: string, value: number | boolean])[];
}

export interface FollowedParts {
  /** Parts with a current of their own, and what they are doing: SERVO1 → "start". */
  doing(): ReadonlyMap<string, string>;
  /** The states as the circuit has them: a motor that starts is, for a moment, one that is held. */
  electrical(states: ReadonlyMap<string, PartState>): ReadonlyMap<string, PartState>;
  /**
   * @param pulses the angles that pins ask of servos, by index among the pins in use.
   * @param levels the scene in which the pins' levels are looked at; the same one unless the circuit is followed in time.
   */
  follow(scene: Scene, now: number, pulses: ReadonlyMap<number, number>, levels?: Scene): Followed;
  moves(): ReadonlyMap<string, readonly Move[]>;
  steps(): ReadonlyMap<string, readonly RotorStep[]>;
}

export function followParts(build: Build): FollowedParts {
  const noticed = [...build.parts.values()].flatMap((part) => part.kind.noticed(part.values).map((n) => ({ part, noticed: n })));
  const servos = new Map<string, ServoState>(
    noticed.flatMap(({ part, noticed: n }) => (n.sense === "angle" ? [[part.name, restingServo(part)] as const] : [])),
  );
  const logics = [...build.parts.values()].flatMap((part) =>
    part.kind.logic ? [{ part, logic: part.kind.logic(part.values) }] : [],
  );
  /** When a chip wakes by itself, so that it is told once. */
  const wakes = new Map<string, number>();
  /** Motors that turn, and until when they are only starting. */
  const turning = new Map<string, number>();
  let starting: ReadonlySet<string> = new Set();
  /** Motors followed in time whose shaft rests. */
  const stuck = new Set<string>();

  const followServo = (
    part: BuiltPart,
    scene: Scene,
    now: number,
    pulses: ReadonlyMap<number, number>,
    levels: Scene,
  ): Followed => {
    const servo = servos.get(part.name) ?? restingServo(part);
    const volts = Math.min(...scene.phases.map((p) => between(build, part, "plus", "minus", p.point)));
    // Only its start is refused: what it then takes from the voltage is its own doing.
    const powered = scene.on && (servo.doing !== "idle" || volts >= sluggishShare * drawVolts(part));
    const held = scene.states.get(part.name)?.held === true;
    const next = driveServo(part, servo, now, heardBy(build, part, levels, pulses), powered, held);
    servos.set(part.name, next);
    const wakes = next.until !== servo.until && next.until < Number.POSITIVE_INFINITY;
    return { changed: next.doing !== servo.doing, wakeAt: wakes ? [next.until] : [], becomes: [] };
  };

  const followMotor = (part: BuiltPart, amps: number, startAmps: number, now: number): Followed => {
    const until = turning.get(part.name);
    const turns = Math.abs(amps) >= startAmps;
    if (!turns) turning.delete(part.name);
    else if (until === undefined) turning.set(part.name, now + (part.kind.figures.startSeconds?.value ?? 0));
    const before = starting;
    starting = new Set([...turning].filter(([, end]) => end > now).map(([name]) => name));
    const changed = before.size !== starting.size || [...before].some((name) => !starting.has(name));
    return { changed, wakeAt: turns && until === undefined ? [turning.get(part.name) ?? now] : [], becomes: [] };
  };

  /** A chip sees the levels as they are at the end of the scene, one change after the other. */
  const followLogic = (part: BuiltPart, logic: PartLogic, scene: Scene, now: number): Followed => {
    const point = scene.phases.at(-1)?.point;
    if (!point) return still;
    const ground = part.kind.legs.find((leg) => leg === "GND" || leg === "minus");
    const zero = ground === undefined ? 0 : point.volts(build.wiring.node(part.name, ground));
    const before = scene.states.get(part.name) ?? firstState(build, part.name);
    const { state = {}, wakeAt } = logic.look({
      volts: (leg) => point.volts(build.wiring.node(part.name, leg)) - zero,
      now,
      state: before,
    });
    const news = Object.entries(state).filter(([name, value]) => before[name] !== value);
    const isNewWake = wakeAt !== undefined && wakeAt < Number.POSITIVE_INFINITY && wakes.get(part.name) !== wakeAt;
    if (isNewWake) wakes.set(part.name, wakeAt);
    return {
      changed: news.length > 0,
      wakeAt: isNewWake ? [wakeAt] : [],
      becomes: news.map(([name, value]) => [part.name, name, value] as const),
    };
  };

  /** A shaft at rest sticks until the current could turn it at the voltage at which the part starts. */
  const followShaft = (part: BuiltPart, id: string, scene: Scene): Followed => {
    // With switching pins an instant says nothing: its current comes and goes with every turn, and only the turn's mean pulls.
    if (scene.switching.length > 0 && scene.phases.length === 1) return still;
    const element = scene.phases[0]?.point.elements.get(id);
    const ohms = element?.kind === "motor" ? element.ohms : 0;
    const pull = Math.abs(meanOf(scene, (p) => p.amps(id))) * ohms;
    const breaksLoose = pull >= (part.kind.figures.startVolts?.value ?? 0);
    const loose = breaksLoose || Math.abs(speedOf(scene, id) ?? 0) > creepSpeed;
    const was = !stuck.has(part.name);
    if (loose) stuck.delete(part.name);
    else stuck.add(part.name);
    return loose === was ? still : { changed: true, wakeAt: [], becomes: [] };
  };

  return {
    doing: () => new Map([...servos].filter(([, s]) => s.doing !== "idle").map(([name, s]) => [name, s.doing])),
    electrical(states) {
      if (starting.size + stuck.size === 0) return new Map(states);
      const held = [...starting, ...stuck].map(
        (name) => [name, { ...(states.get(name) ?? firstState(build, name)), held: true }] as const,
      );
      return new Map([...states, ...held]);
    },
    follow(scene, now, pulses, levels = scene) {
      const all = noticed.map(({ part, noticed: n }): Followed => {
        if (n.sense === "angle") return followServo(part, scene, now, pulses, levels);
        if (n.sense === "turning" && speedOf(scene, elementId(part.name, n.element)) !== null)
          return followShaft(part, elementId(part.name, n.element), scene);
        if (n.sense === "turning")
          return followMotor(
            part,
            meanOf(scene, (p) => p.amps(elementId(part.name, n.element))),
            n.startAmps,
            now,
          );
        if (n.sense !== "contact") return still;
        const volts = meanOf(scene, (p) => Math.abs(p.across(elementId(part.name, n.element))));
        const before = (scene.states.get(part.name) ?? firstState(build, part.name)).pulled === true;
        const pulls = volts >= (before ? n.dropOutVolts : n.pullInVolts);
        return pulls === before ? still : { changed: true, wakeAt: [], becomes: [[part.name, "pulled", pulls]] };
      });
      for (const { part, logic } of logics) all.push(followLogic(part, logic, scene, now));
      return {
        changed: all.some((f) => f.changed),
        wakeAt: all.flatMap((f) => f.wakeAt),
        becomes: all.flatMap((f) => f.becomes),
      };
    },
    steps: () => new Map(logics.flatMap(({ part, logic }) => (logic.steps ? [[part.name, logic.steps()] as const] : []))),
    moves: () => new Map([...servos].map(([name, servo]) => [name, servo.moves])),
  };
}

const still: Followed = { changed: false, wakeAt: [], becomes: [] };

function between(build: Build, part: BuiltPart, leg: string, other: string, point: Point): number {
  return point.volts(build.wiring.node(part.name, leg)) - point.volts(build.wiring.node(part.name, other));
}

/** The angle of the pulses that reach a servo's signal leg: those of a pin with whose level the leg rises and falls. */
function heardBy(build: Build, part: BuiltPart, scene: Scene, pulses: ReadonlyMap<number, number>): number | null {
  for (const [index, degrees] of pulses) {
    const at = (level: string) =>
      scene.phases.filter((p) => p.state.drives[index] === level).map((p) => between(build, part, "signal", "minus", p.point));
    const [high, low] = [at("1"), at("0")];
    if (high.length > 0 && low.length > 0 && Math.min(...high) - Math.max(...low) >= signalSwing) return degrees;
  }
  return null;
}
