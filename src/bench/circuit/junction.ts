// One pn junction: current and slope by voltage, the voltage from which it runs away, and how far a guess may move at once.
//
// Diodes, both junctions of a bipolar transistor and the body diode of a MOSFET share it.
// Does not know: nodes, matrices.

/** K per °C step, and 0 °C. */
const zeroCelsius = 273.15;
/** Boltzmann constant over elementary charge, V/K. CODATA 2014, because ngspice 39 computes with it; 2019's differ by 3e-10. */
const boltzmannOverCharge = 1.38064852e-23 / 1.6021766208e-19;

/** kT/q in V; 0.025 864 917 V at 27 °C. */
export function thermalVoltage(celsius: number): number {
  return boltzmannOverCharge * (celsius + zeroCelsius);
}

/**
 * The voltage at which the curve bends most sharply: below it a Newton step cannot overflow, above it steps are limited.
 * Source: Nagel, SPICE2, memo UCB/ERL-M520 (1975), section on junction limiting.
 */
export function criticalVolts(saturationAmps: number, volts: number): number {
  return volts * Math.log(volts / (Math.SQRT2 * saturationAmps));
}

/** V. A junction that has moved less since it was computed is read off its tangent: 1e-7² · 20 is 2e-13 of its slope. */
export const sameVolts = 1e-7;

/** A. No part survives it; from here the curves go on straight, so that an ideal source across a junction cannot overflow. */
const straightFromAmps = 1e6;

/** The voltage above which `junction` is a straight line. */
export function straightVolts(saturationAmps: number, volts: number): number {
  return volts * Math.log(straightFromAmps / saturationAmps);
}

/**
 * Current and slope of IS·(exp(v/vt) − 1). Below −3·vt SPICE's power law takes over, which never quite reaches −IS, so that
 * the slope does not vanish.
 *
 * @param volts emission coefficient times kT/q. @param straight from `straightVolts`.
 * @param out receives A and S.
 */
export function junction(v: number, saturationAmps: number, volts: number, straight: number, out: Float64Array): void {
  if (v > straight) {
    out[1] = straightFromAmps / volts;
    out[0] = straightFromAmps - saturationAmps + (straightFromAmps / volts) * (v - straight);
  } else if (v >= -3 * volts) {
    const e = Math.exp(v / volts);
    out[0] = saturationAmps * (e - 1);
    out[1] = (saturationAmps * e) / volts;
  } else {
    const ratio = (3 * volts) / (v * Math.E);
    const cube = ratio * ratio * ratio;
    out[0] = -saturationAmps * (1 + cube);
    out[1] = (saturationAmps * 3 * cube) / v;
  }
}

/**
 * The junction voltage to compute with next, where the one that was asked for is a bad guess.
 *
 * Up from below the critical voltage a step ends there, since a few steps more and exp() runs away. On the steep part the
 * straight line of the last pass told a current; the voltage that carries this current on the true curve is the better guess,
 * for a step up (which would overflow) as for a step down (which would creep by kT/q a pass).
 *
 * @param previous the voltage of the pass before. @param straight no step is held back on the straight end of the curve.
 */
export function limitJunction(v: number, previous: number, volts: number, critical: number, straight: number): number {
  if (previous >= straight) return v;
  const step = (v - previous) / volts;
  if (step > -1 && step < -0.5 && previous > 3 * volts) return previous + volts * Math.log1p(step);
  if (previous < critical) return v > critical + 2 * volts ? critical : v;
  return step > 2 ? previous + volts * Math.log1p(step) : v;
}

/**
 * Where SPICE's breakdown branch −IS·exp(−(v + knee)/(n·kT/q)) begins, so that the junction carries `breakdownAmps` at
 * −breakdownVolts and the two branches meet. Too small a breakdown current leaves the knee at the breakdown voltage itself.
 * SPICE lets a wide exponential push the knee past zero, where the two branches tear; ours stops where the forward curve begins.
 *
 * @param volts emission coefficient times kT/q. @param thermal kT/q alone.
 */
export function breakdownKnee(
  breakdownVolts: number,
  breakdownAmps: number,
  saturationAmps: number,
  volts: number,
  thermal: number,
): number {
  if (breakdownAmps < (saturationAmps * breakdownVolts) / thermal) return breakdownVolts;
  let knee = breakdownVolts - volts * Math.log(1 + breakdownAmps / saturationAmps);
  for (let pass = 0; pass < 25; pass += 1) {
    const inside = breakdownAmps / saturationAmps + 1 - knee / thermal;
    if (!(inside > 0)) return breakdownVolts;
    const next = breakdownVolts - volts * Math.log(inside);
    const moved = Math.abs(next - knee);
    knee = next;
    if (moved <= 1e-15 * breakdownVolts) break;
  }
  return Math.max(knee, 3 * volts);
}
