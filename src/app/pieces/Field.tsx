// A field: a label, a hint under it, a writing line, and what is wrong where something is.
//
// Nothing is judged while a person types: `onChange` is called when the field is left or Enter is pressed, `onInput` at each sign
// for who needs the text only.
// Does not know: what may stand in it.
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

export interface FieldProps {
  readonly label: ComponentChildren;
  /** The label is for listeners only, because a head or a row's name says it already. */
  readonly hideLabel?: boolean;
  readonly hint?: ComponentChildren;
  readonly value: string;
  readonly onChange?: (value: string) => void;
  readonly onInput?: (value: string) => void;
  /** What is wrong, as a sentence. */
  readonly problem?: string | null;
  /** "numeric" brings the number keys of a phone. */
  readonly keys?: "text" | "numeric" | "decimal";
  /** More than one: a field of several lines. */
  readonly lines?: number;
  readonly width?: "short" | "middle" | "full";
  /** Words offered while typing. */
  readonly offers?: readonly string[];
  readonly id?: string;
}

export function Field(props: FieldProps) {
  const made = useId();
  const id = props.id ?? made;
  const described = [props.hint ? `${id}-hint` : "", props.problem ? `${id}-problem` : ""].filter(Boolean).join(" ");
  const shared = {
    id,
    value: props.value,
    dir: "auto" as const,
    autocomplete: "off",
    spellcheck: false,
    inputMode: props.keys ?? ("text" as const),
    // Whether what was typed is done with when the field is left (src/app/shell/keepDrafts.ts).
    "data-draft": props.onChange ? "until-left" : undefined,
    "aria-describedby": described === "" ? undefined : described,
    "aria-invalid": props.problem ? ("true" as const) : undefined,
    onChange: (event: { currentTarget: { value: string } }) => props.onChange?.(event.currentTarget.value),
    onInput: (event: { currentTarget: { value: string } }) => props.onInput?.(event.currentTarget.value),
  };
  return (
    <div class={`field ${props.width ?? "full"}${props.problem ? " wrong" : ""}`}>
      <label for={id} class={props.hideLabel ? "unseen" : undefined}>
        {props.label}
      </label>
      {props.hint && (
        <p class="note" id={`${id}-hint`}>
          {props.hint}
        </p>
      )}
      {props.lines && props.lines > 1 ? (
        <textarea rows={props.lines} {...shared} />
      ) : (
        <input type="text" list={props.offers ? `${id}-offers` : undefined} {...shared} />
      )}
      {props.offers && (
        <datalist id={`${id}-offers`}>
          {props.offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
      {props.problem && (
        <p id={`${id}-problem`} class="problem">
          {props.problem}
        </p>
      )}
    </div>
  );
}
