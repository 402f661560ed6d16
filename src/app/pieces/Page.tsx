// A place: its name as the heading, and under it rows along one bench line.
//
// The heading takes the focus when a person comes here (shell/router.ts), and the name goes to the window and to the title block.
// Does not know: which places there are.
import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { pageName } from "../shell/router.ts";
import { Row } from "./Row.tsx";

export interface PageProps {
  /** What the title block and the window call this page. */
  readonly name: string;
  /** The heading; the name where left out. */
  readonly heading?: ComponentChildren;
  /** Larger, for the name of a lesson. */
  readonly large?: boolean;
  /** Before the bench line, beside the heading. */
  readonly at?: ComponentChildren;
  /** Above the heading, small: when and where. */
  readonly over?: ComponentChildren;
  /** Under the heading, in the same row. */
  readonly under?: ComponentChildren;
  readonly class?: string;
  /** Rows. */
  readonly children?: ComponentChildren;
}

export function Page({ name, heading, large = false, at, over, under, class: own, children }: PageProps) {
  useEffect(() => {
    pageName.value = name;
  }, [name]);
  return (
    <main id="main" class={own}>
      <Row at={at} tick={at !== undefined} class="first">
        {over}
        <h1 tabIndex={-1} class={large ? "title" : undefined}>
          {heading ?? name}
        </h1>
        {under}
      </Row>
      {children}
    </main>
  );
}
