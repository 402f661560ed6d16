// Whether a chip takes a voltage for high or low.
//
// CMOS: below 0.3 and above 0.7 of its supply it is sure (data sheets of the 74HC family); between, what it took before stays.
// Does not know: which chip, what follows from it.

/** @param before what it was taken for last. */
export function logicLevel(volts: number, supply: number, before: boolean): boolean {
  if (volts >= 0.7 * supply && supply > 0) return true;
  return volts <= 0.3 * supply ? false : before;
}
