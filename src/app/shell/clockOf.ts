// The clock time of a moment that was written down.
//
// Does not know: what happened then.
import { formatClock, type Language } from "../../language/index.ts";
import { minuteOf } from "../session/time.ts";

/** @param at ISO 8601. @returns "10:42"; what is no moment is shown as it stands. */
export function clockOf(language: Language, at: string): string {
  const moment = new Date(at);
  return Number.isNaN(moment.getTime()) ? at : formatClock(language, minuteOf(moment));
}
