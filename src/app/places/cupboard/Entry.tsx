// A value that can be changed where it stands: a field that is judged when a person leaves it or presses Enter.
//
// What cannot be taken stays as typed, with a sentence below it that says what helps; Escape brings the old value back. What is
// typed is held here, so that a page that is drawn again meanwhile (the clock moves) does not wipe it.
// Does not know: what the value is for.
import { useLayoutEffect, useState } from "preact/hooks";
import { Field, type FieldProps } from "../../pieces/index.ts";

export interface EntryProps
  extends Pick<FieldProps, "label" | "hideLabel" | "hint" | "keys" | "width" | "lines" | "offers" | "id"> {
  /** The value as it is kept. */
  readonly value: string;
  /** Takes what was typed. @returns what is wrong and what helps, or null. */
  readonly onEnter: (typed: string) => string | null;
}

export function Entry({ value, onEnter, ...field }: EntryProps) {
  const [typed, setTyped] = useState(value);
  const [problem, setProblem] = useState<string | null>(null);
  const [taken, setTaken] = useState(0);
  const reset = () => {
    setTyped(value);
    setProblem(null);
  };
  // What is written otherwise but means the same ("012") goes back to how it is kept, and so does what changed elsewhere.
  // Before anything is drawn: a slow computer must not wipe what is typed after it.
  useLayoutEffect(reset, [value, taken]);
  const take = (text: string) => {
    if (text === value) return reset();
    const wrong = onEnter(text);
    setProblem(wrong);
    if (wrong === null) setTaken(taken + 1);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the key is the field's; it only passes here
    <div
      class="entry"
      onKeyDown={(event) => {
        if (event.key === "Escape") reset();
      }}
    >
      <Field {...field} value={typed} onInput={setTyped} onChange={take} problem={problem} />
    </div>
  );
}
