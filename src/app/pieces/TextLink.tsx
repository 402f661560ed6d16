// Words that can be pressed: a link to a place, or an act in the middle of a sentence.
//
// Does not know: what it does.
import type { ComponentChildren } from "preact";

export interface TextLinkProps {
  /** An address after `#`. */
  readonly to?: string;
  readonly onPress?: () => void;
  /** Where the words alone do not tell a listener what is meant ("change"). */
  readonly label?: string;
  /** For a switch among others: whether it is on. */
  readonly pressed?: boolean;
  readonly id?: string;
  readonly children: ComponentChildren;
}

export function TextLink({ to, onPress, label: told, pressed, id, children }: TextLinkProps) {
  // Who speaks to the computer says the words that are seen, so the name holds them (WCAG 2.5.3).
  const label =
    told !== undefined && typeof children === "string" && !told.toLowerCase().includes(children.toLowerCase())
      ? `${children}: ${told}`
      : told;
  if (to !== undefined)
    return (
      <a class="link" href={to} id={id} aria-label={label} onClick={onPress}>
        {children}
      </a>
    );
  return (
    <button type="button" class="link" id={id} onClick={onPress} aria-label={label} aria-pressed={pressed}>
      {children}
    </button>
  );
}
