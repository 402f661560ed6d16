// What a finger bears: from which surface temperature on a part is warm, hot, or burns at a touch.
//
// Figures of ISO 13732-1:2006 (burn thresholds for hot surfaces), all from memory: for contact of eight hours 43 °C; of one
// minute 51 °C on bare metal and 60 °C on plastic; of one second 65 °C on bare metal and 85 °C on plastic, each the lower end.
// A minute is what a child that feels for the warm part takes; a second is a touch by mistake.
// Does not know: parts, how they got warm.
import type { Sourced } from "../parts/index.ts";
import type { TouchClass } from "./result.ts";

const of = (value: number, contact: string): Sourced<number> => ({
  value,
  source: `ISO 13732-1, burn threshold for ${contact}, from memory`,
});

/** °C */
export const touchLimits = {
  plastic: { warm: of(43, "8 h"), hot: of(60, "1 min on plastic"), burns: of(85, "1 s on plastic") },
  metal: { warm: of(43, "8 h"), hot: of(51, "1 min on bare metal"), burns: of(65, "1 s on bare metal") },
} as const;

/** @returns "hot" where it must not be touched. */
export function touchClass(celsius: number, surface: keyof typeof touchLimits): TouchClass {
  const { warm, hot } = touchLimits[surface];
  return celsius > hot.value ? "hot" : celsius > warm.value ? "warm" : "cold";
}
