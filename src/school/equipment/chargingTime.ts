// How long charging takes.
//
// A lithium-ion battery takes its charge at a steady pace up to about four fifths and ever more slowly after that: 70 to 80 %
// in 1 to 1.5 hours, then half an hour to an hour to full; laptops 2 to 4 hours in all (a maker's application note, SLUA796,
// as cited at rftools.io; laptops: general guides). Model: 80 % in 90 minutes, the last fifth in 60.
// Does not know: sockets, days.

/** Share of the charge at which the slow part begins. */
const knee = 0.8;
/** Minutes from empty to the knee, and from there to full. */
const steadyMinutes = 90;
const slowMinutes = 60;

/** @param from, @param to share of the full charge, 0 to 1. @returns minutes, 0 where nothing is missing. */
export function minutesToCharge(from: number, to: number): number {
  const at = (share: number) => {
    const s = Math.min(1, Math.max(0, share));
    return s <= knee ? (s / knee) * steadyMinutes : steadyMinutes + ((s - knee) / (1 - knee)) * slowMinutes;
  };
  return Math.max(0, at(to) - at(from));
}

/**
 * Minutes for a power bank from empty to full: 37 Wh (10 000 mAh at 3.7 V) from a charger of 5 V and 2 A at 85 %.
 * Capacity and losses as sellers state them; the charger: common practice, no source.
 */
export const powerBankMinutes = Math.round((37 / (5 * 2 * 0.85)) * 60);
