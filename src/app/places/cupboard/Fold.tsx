// A long list that stands open where there is room and is one line on a phone, until it is pressed or searched.
//
// Does not know: what it holds.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

export interface FoldProps {
  readonly says: ComponentChildren;
  /** Stands open whatever the width: something in it was searched for. */
  readonly open?: boolean;
  readonly children: ComponentChildren;
}

export function Fold({ says, open = false, children }: FoldProps) {
  // The width at the beginning decides; turning a phone must not close what is being written in.
  const [isWide] = useState(() => matchMedia("(min-width: 48.01rem)").matches);
  return (
    <details open={open || isWide}>
      <summary>{says}</summary>
      {children}
    </details>
  );
}
