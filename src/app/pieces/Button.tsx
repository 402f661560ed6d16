// A button: thin frame, heavy foot. One framed button a step; the other ways are links (TextLink).
//
// A button that cannot act yet stays pressable by nobody and says why beside it.
// Does not know: what it does.
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

export interface ButtonProps {
  readonly onPress?: () => void;
  /** An address after `#`: the button is a link that looks like one. */
  readonly to?: string;
  /** Why it cannot act yet, as a sentence; it then stands beside the button. */
  readonly notYet?: string | null;
  /** Sends the form that it stands in. */
  readonly submit?: boolean;
  readonly id?: string;
  readonly children: ComponentChildren;
}

export function Button({ onPress, to, notYet = null, submit = false, id, children }: ButtonProps) {
  const whyId = useId();
  if (to !== undefined && notYet === null)
    return (
      <a class="button" href={to} id={id}>
        {children}
      </a>
    );
  // The same elements either way: a button that becomes ready while it has the focus keeps it.
  return (
    <span class={notYet === null ? "act-now" : "not-yet"}>
      <button
        type={submit ? "submit" : "button"}
        id={id}
        onClick={notYet === null ? onPress : undefined}
        aria-disabled={notYet === null ? undefined : "true"}
        aria-describedby={notYet === null ? undefined : whyId}
      >
        {children}
      </button>
      {notYet !== null && <span id={whyId}>{notYet}</span>}
    </span>
  );
}
