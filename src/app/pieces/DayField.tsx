// A date as day, month in words, and year: 3/4 is never in doubt.
//
// Does not know: which days make sense.
import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { type Day, parseDay } from "../../base/index.ts";

import { useSay, useSession } from "../session/useSession.ts";
import { Choice } from "./Choice.tsx";
import { monthName } from "./days.ts";
import { Field } from "./Field.tsx";

export interface DayFieldProps {
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
  readonly value: Day | null;
  /** The day, or null as long as the three do not make one. */
  readonly onChange: (day: Day | null) => void;
  readonly problem?: string | null;
}

export function DayField({ label, hint, value, onChange, problem }: DayFieldProps) {
  const say = useSay();
  const language = useSession().language.value;
  const [parts, setParts] = useState(() => partsOf(value));
  // A day that came from outside is taken; one that we reported ourselves changes nothing.
  useEffect(() => {
    if (value !== null && value !== dayOf(parts)) setParts(partsOf(value));
  }, [value]);
  const set = (change: Partial<Parts>): void => {
    const next = { ...parts, ...change };
    setParts(next);
    onChange(dayOf(next));
  };
  return (
    <fieldset class="choice">
      <legend>{label}</legend>
      {hint && <p class="note">{hint}</p>}
      <div class="dates">
        <Field label={say("pieces.day")} keys="numeric" value={parts.day} onInput={(day) => set({ day })} />
        <Choice
          label={say("pieces.month")}
          as="list"
          value={parts.month === "" ? null : parts.month}
          onChange={(month) => set({ month })}
          options={Array.from({ length: 12 }, (_, n) => ({ value: String(n + 1), label: monthName(language, n + 1) }))}
        />
        <Field label={say("pieces.year")} keys="numeric" value={parts.year} onInput={(year) => set({ year })} />
      </div>
      {problem && <p class="problem">{problem}</p>}
    </fieldset>
  );
}

interface Parts {
  readonly day: string;
  readonly month: string;
  readonly year: string;
}

function partsOf(day: Day | null): Parts {
  const [year = "", month = "", date = ""] = day === null ? [] : day.split("-");
  return { day: date.replace(/^0/, ""), month: month.replace(/^0/, ""), year };
}

function dayOf({ day, month, year }: Parts): Day | null {
  return parseDay(`${year.trim().padStart(4, "0")}-${month.padStart(2, "0")}-${day.trim().padStart(2, "0")}`);
}
