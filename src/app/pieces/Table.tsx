// A table: head in pencil over a thick rule, rows parted by faint lines, no cage, no stripes.
//
// The head's own words are pressed to sort. On a phone a table marked "paragraphs" shows each row as a paragraph; its cells then say
// their head by `data-l`.
// Does not know: what stands in it.
import type { ComponentChildren } from "preact";

export interface Head {
  readonly says: ComponentChildren;
  /** Numbers stand at the end of their column. */
  readonly numeric?: boolean;
  readonly sorted?: "up" | "down" | null;
  readonly onSort?: () => void;
}

export interface TableProps {
  /** For listeners, and where needed to be seen as well. */
  readonly caption: string;
  readonly showCaption?: boolean;
  readonly head: readonly Head[];
  /** `tr` elements; the name of a row is a `th scope="row"`. */
  readonly children: ComponentChildren;
  /** `tr` elements of sums. */
  readonly foot?: ComponentChildren;
  readonly phone?: "rows" | "paragraphs";
  readonly class?: string;
}

export function Table({ caption, showCaption = false, head, children, foot, phone = "rows", class: own }: TableProps) {
  return (
    <table class={`${own ?? ""}${phone === "paragraphs" ? " stacks" : ""}`.trim() || undefined}>
      <caption class={showCaption ? undefined : "unseen"}>{caption}</caption>
      <thead>
        <tr>
          {head.map((column, n) =>
            column.says === "" ? (
              // A column of acts has no name; an empty head cell would promise one.
              <td key={n} />
            ) : (
              <th
                key={n}
                scope="col"
                class={column.numeric ? "num" : undefined}
                aria-sort={column.sorted ? (column.sorted === "up" ? "ascending" : "descending") : undefined}
              >
                {column.onSort ? (
                  <button type="button" class="link" onClick={column.onSort}>
                    {column.says}
                    {column.sorted && <span aria-hidden="true">{column.sorted === "up" ? " ↑" : " ↓"}</span>}
                  </button>
                ) : (
                  column.says
                )}
              </th>
            ),
          )}
        </tr>
      </thead>
      <tbody>{children}</tbody>
      {foot && <tfoot>{foot}</tfoot>}
    </table>
  );
}
