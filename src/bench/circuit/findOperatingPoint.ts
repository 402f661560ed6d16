// From nothing or from the last answer to an operating point: Newton, then two detours.
//
// First from where we stand, then from nothing. Then with a leak from every node to ground that is made smaller step by step
// (gmin stepping), then with all sources grown from zero (source stepping). Each detour halves its stride on a failure and
// gives up at a smallest one, so every solve ends.
// Does not know: netlists, how a pass works.
import { type Machine, runNewton } from "./newton.ts";

/** Passes for an attempt: ngspice allows 100 at an operating point and 50 in a sweep. */
const passes = { direct: 100, warm: 50, stride: 40 };

/** @returns whether x, state and currents are an operating point. `machine.passes` counts all that was spent. */
export function findOperatingPoint(machine: Machine): boolean {
  machine.passes = 0;
  const { eq } = machine;
  if (eq.start !== "nothing" && runNewton(machine, passes.warm)) return true;
  // What is no good pivot any more must not spoil the new start.
  fromNothing(machine);
  return runNewton(machine, passes.direct) || shrinkLeak(machine) || growSources(machine);
}

function fromNothing(machine: Machine): void {
  machine.list = null;
  machine.eq.x.fill(0);
  machine.eq.start = "nothing";
}

/** Gmin stepping: from 1 S at every node to none. */
function shrinkLeak(machine: Machine): boolean {
  const { eq } = machine;
  fromNothing(machine);
  machine.leak = 1;
  let done = runNewton(machine, passes.direct);
  if (done) {
    const good = { x: eq.x.slice(), state: eq.state.slice() };
    let stride = 10;
    let leak = machine.leak;
    while (leak > 1e-13 && stride > 1.01) {
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
    done = leak <= 1e-13 && runNewton(machine, passes.direct);
  }
  machine.leak = 0;
  return done;
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
  while (done && scale < 1) {
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
  return done;
}
