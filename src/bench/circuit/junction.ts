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

/**
 * Current and slope of IS·(exp(v/vt) − 1). Below −3·vt SPICE's power law takes over, which never quite reaches −IS, so that
 * the slope does not vanish.
 *
 * @param volts emission coefficient times kT/q.
 * @param out receives A and S.
 */
export function junction(v: number, saturationAmps: number, volts: number, out: Float64Array): void {
  if (v >= -3 * volts) {
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
 * A new junction voltage, held back where exp() would run away: from the critical voltage (or the last guess above it) a step
 * counts only with its logarithm. Steps down are never held back: there the exponential only gets gentler.
 *
 * @param previous the voltage of the pass before.
 */
export function limitJunction(v: number, previous: number, volts: number, critical: number): number {
  const from = Math.max(previous, critical);
  return v > from + 2 * volts ? from + volts * (2 + Math.log((v - from) / volts - 1)) : v;
}

/**
 * Where SPICE's breakdown branch −IS·exp(−(v + knee)/(n·kT/q)) begins, so that the junction carries `breakdownAmps` at
 * −breakdownVolts and the two branches meet. Too small a breakdown current leaves the knee at the breakdown voltage itself.
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
    if (Math.abs(next - knee) <= 1e-15 * breakdownVolts) return next;
    knee = next;
  }
  return knee;
}
