// From nothing or from the last answer to an operating point: Newton, then two detours.
//
// First from where we stand, then from nothing. Then with a leak from every node to ground that is made smaller step by step
// (gmin stepping), then with all sources grown from zero (source stepping). Each detour halves its stride on a failure and
// gives up at a smallest one, so every solve ends.
// Does not know: netlists, how a pass works.
import { addsUp, type Machine, runNewton } from "./newton.ts";

/** Passes for an attempt: ngspice allows 100 at an operating point and 50 in a sweep. */
const passes = { direct: 100, warm: 50, stride: 40 };
/** Passes after which the detours are given up. */
const mostPasses = 5000;
/** S. A smaller leak than this is none: 1e-14 A at 1 V is far below what may not add up at a node. */
const leastLeak = 1e-14;

/**
 * @returns whether x, state and currents are an operating point; if not, they are the last guess that meant anything.
 * `machine.passes` counts all that was spent.
 */
export function findOperatingPoint(machine: Machine): boolean {
  machine.passes = 0;
  const { eq } = machine;
  if (eq.start !== "nothing") {
    if (runNewton(machine, passes.warm)) return true;
    fromNothing(machine);
  } else eq.x.fill(0);
  if (runNewton(machine, passes.direct)) return true;
  // A supply whose ends something ideal joins cannot hold its voltage; seen from blocked it does not try.
  eq.suppliesBlocked = true;
  fromNothing(machine);
  const solved = runNewton(machine, passes.direct);
  eq.suppliesBlocked = false;
  if (solved) return true;
  const shrunk = shrinkLeak(machine);
  return shrunk === "failed" ? growSources(machine) : shrunk === "solved";
}

/** Back to the start after an attempt that failed; what was no good pivot must not spoil the next one. */
function fromNothing(machine: Machine): void {
  machine.list = null;
  machine.eq.x.fill(0);
  machine.eq.start = "nothing";
}

/** Gmin stepping: from 1 S at every node to none. @returns "leaking" if only the last step to none failed. */
function shrinkLeak(machine: Machine): "solved" | "leaking" | "failed" {
  const { eq } = machine;
  fromNothing(machine);
  machine.leak = 1;
  const done = runNewton(machine, passes.direct);
  const good = { x: eq.x.slice(), state: eq.state.slice() };
  let stride = 10;
  let leak = machine.leak;
  while (done && leak > leastLeak && stride > 1.01 && machine.passes < mostPasses) {
    machine.leak = leak / stride;
    if (runNewton(machine, passes.stride)) {
      leak = machine.leak;
      good.x.set(eq.x);
      good.state.set(eq.state);
      stride = Math.min(stride * stride, 10);
    } else {
      eq.x.set(good.x);
      eq.state.set(good.state);
      stride = Math.sqrt(stride);
    }
  }
  machine.leak = 0;
  if (!done || leak > leastLeak) return "failed";
  if (runNewton(machine, passes.direct)) return "solved";
  // Only the leak holds some node, as when a supply at its limit feeds a larger current source.
  eq.x.set(good.x);
  eq.state.set(good.state);
  return addsUp(machine) ? "solved" : "leaking";
}

/** Source stepping: from dead sources to full ones. */
function growSources(machine: Machine): boolean {
  const { eq } = machine;
  fromNothing(machine);
  eq.start = "volts";
  eq.sourceScale = 0;
  let done = runNewton(machine, passes.direct);
  const good = { x: eq.x.slice(), state: eq.state.slice() };
  let scale = 0;
  let stride = 0.1;
  while (done && scale < 1 && machine.passes < mostPasses) {
    eq.sourceScale = Math.min(1, scale + stride);
    if (runNewton(machine, passes.stride)) {
      scale = eq.sourceScale;
      good.x.set(eq.x);
      good.state.set(eq.state);
      stride *= 2;
    } else {
      eq.x.set(good.x);
      eq.state.set(good.state);
      stride /= 2;
      if (stride < 1e-4) done = false;
    }
  }
  eq.sourceScale = 1;
  return done && scale === 1;
}
