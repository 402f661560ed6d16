// A field for a name and a button that adds something called so: names can be typed one after the other with Enter.
//
// What was refused keeps its words and says why beside the field, until somebody types on.
// Does not know: what is added.
import { useState } from "preact/hooks";
import { Button } from "./Button.tsx";
import { Field } from "./Field.tsx";

export interface AddByNameProps {
  readonly label: string;
  readonly button: string;
  readonly id?: string;
  /** @returns why it was refused, or null where it was added. */
  readonly add: (name: string) => string | null;
}

export function AddByName({ label, button, id, add }: AddByNameProps) {
  const [name, setName] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <form
      class="acts"
      onSubmit={(event) => {
        event.preventDefault();
        const wrong = add(name);
        setProblem(wrong);
        if (wrong === null) setName("");
      }}
    >
      <Field
        {...(id === undefined ? {} : { id })}
        label={label}
        width="middle"
        value={name}
        onInput={(text) => {
          setName(text);
          setProblem(null);
        }}
        problem={problem}
      />
      <Button submit>{button}</Button>
    </form>
  );
}
