// Names of pins as people write them: D0..D13 and A0..A5.
//
// Does not know: what hangs on them.
import type { PinNumber } from "./port.ts";

export const pinNames: readonly string[] = Array.from({ length: 20 }, (_, pin) => (pin < 14 ? `D${pin}` : `A${pin - 14}`));

export function pinName(pin: PinNumber): string {
  return pinNames[pin] ?? `D${pin}`;
}

/** @returns the pin of the name, or null if no pin has it. */
export function pinNumber(name: string): PinNumber | null {
  const pin = pinNames.indexOf(name);
  return pin < 0 ? null : pin;
}
