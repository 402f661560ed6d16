// An empty place: what will stand here, the first act as the one button, other ways as links.
//
// Does not know: the place.
import type { ComponentChildren } from "preact";
import { Button } from "./Button.tsx";

export interface NothingProps {
  /** "The cupboard is empty." */
  readonly says: string;
  /** What will stand here, in one sentence. */
  readonly will: string;
  readonly first: { readonly label: string; readonly to?: string; readonly onPress?: () => void };
  /** TextLinks. */
  readonly others?: ComponentChildren;
}

export function Nothing({ says, will, first, others }: NothingProps) {
  return (
    <div class="nothing">
      <p>
        <b>{says}</b> {will}
      </p>
      <div class="acts">
        <Button
          {...(first.to === undefined ? {} : { to: first.to })}
          {...(first.onPress === undefined ? {} : { onPress: first.onPress })}
        >
          {first.label}
        </Button>
        {others}
      </div>
    </div>
  );
}
