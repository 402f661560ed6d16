// Dead pins of a board as people write them: "D5, A0", "5 13".
//
// Does not know: what the pins are used for.
import { latinDigits } from "./readTyped.ts";

/** @returns names of pins, each once in the order of the board, or null where a word is none. A bare number is a D pin. */
export function readPins(text: string): string[] | null {
  const words = latinDigits(text)
    .toUpperCase()
    .split(/[\s,;]+/)
    .filter((word) => word !== "");
  const pins = words.map((word) => (/^\d+$/.test(word) ? `D${Number(word)}` : word));
  // 0 to 13 and A0 to A5 (ATmega328P as the board wires it; bench/parts/boardFacts.ts).
  if (!pins.every((pin) => /^(?:D(?:\d|1[0-3])|A[0-5])$/.test(pin))) return null;
  const rank = (pin: string) => (pin.startsWith("A") ? 100 : 0) + Number(pin.slice(1));
  return [...new Set(pins)].sort((a, b) => rank(a) - rank(b));
}
