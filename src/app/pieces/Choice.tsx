// One of several: round marks where there are few, a list where there are many.
//
// Does not know: what the choice means.
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

export interface Option {
  readonly value: string;
  readonly label: string;
  /** A second voice under the label; in a list it is left out. */
  readonly note?: ComponentChildren;
}

export interface ChoiceProps {
  readonly label: ComponentChildren;
  readonly hideLabel?: boolean;
  readonly hint?: ComponentChildren;
  readonly value: string | null;
  readonly options: readonly Option[];
  readonly onChange: (value: string) => void;
  /** "list" is a list that opens; usual for more than six. */
  readonly as?: "marks" | "list";
  /** In a list without a value: what stands in place of a choice. */
  readonly none?: string;
  readonly problem?: string | null;
  readonly id?: string;
}

export function Choice(props: ChoiceProps) {
  const made = useId();
  const id = props.id ?? made;
  const problem = props.problem ? (
    <p class="problem" id={`${id}-problem`}>
      {props.problem}
    </p>
  ) : null;
  const hint = props.hint ? (
    <p class="note" id={`${id}-hint`}>
      {props.hint}
    </p>
  ) : null;
  const described = [hint ? `${id}-hint` : "", problem ? `${id}-problem` : ""].filter(Boolean).join(" ") || undefined;
  if ((props.as ?? (props.options.length > 6 ? "list" : "marks")) === "list")
    return (
      <div class="field middle">
        <label for={id} class={props.hideLabel ? "unseen" : undefined}>
          {props.label}
        </label>
        {hint}
        <select
          id={id}
          value={props.value ?? ""}
          aria-describedby={described}
          onChange={(event) => props.onChange(event.currentTarget.value)}
        >
          {props.value === null && <option value="">{props.none ?? "—"}</option>}
          {props.options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
        {problem}
      </div>
    );
  return (
    <fieldset class="choice" aria-describedby={described}>
      <legend class={props.hideLabel ? "unseen" : undefined}>{props.label}</legend>
      {hint}
      {props.options.map((option) => (
        <label class="row" key={option.value}>
          <input
            type="radio"
            name={id}
            id={option.value === props.options[0]?.value ? id : undefined}
            value={option.value}
            checked={option.value === props.value}
            onChange={() => props.onChange(option.value)}
          />
          <span>
            <bdi>{option.label}</bdi>
            {option.note && <span class="note under">{option.note}</span>}
          </span>
        </label>
      ))}
      {problem}
    </fieldset>
  );
}
