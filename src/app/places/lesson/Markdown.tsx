// A lesson's text on the page, drawn from nodes; there is no markup in between.
//
// Does not know: which section it is, how Markdown is read.
import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { type MarkdownNode, readMarkdown } from "./readMarkdown.ts";

export function Markdown({ text }: { readonly text: string }) {
  const nodes = useMemo(() => readMarkdown(text), [text]);
  return <div class="prose">{nodes.map(drawn)}</div>;
}

function drawn(node: MarkdownNode, key: number): ComponentChildren {
  const { children } = node;
  switch (node.kind) {
    case "text":
      return node.text;
    case "paragraph":
      return <p key={key}>{children.map(drawn)}</p>;
    case "heading":
      return <h3 key={key}>{children.map(drawn)}</h3>;
    case "list":
      return <ul key={key}>{children.map(drawn)}</ul>;
    case "numbers":
      return <ol key={key}>{children.map(drawn)}</ol>;
    case "item":
      // An item of one paragraph needs none around it.
      return (
        <li key={key}>
          {(children.length === 1 && children[0]?.kind === "paragraph" ? children[0].children : children).map(drawn)}
        </li>
      );
    case "table": {
      const [head, ...rows] = children;
      return (
        <table key={key}>
          <thead>
            <tr>
              {head?.children.map((cell, n) => (
                <th key={n} scope="col">
                  {cell.children.map(drawn)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>{rows.map(drawn)}</tbody>
        </table>
      );
    }
    case "row":
      return <tr key={key}>{children.map(drawn)}</tr>;
    case "cell":
      return <td key={key}>{children.map(drawn)}</td>;
    case "strong":
      return <b key={key}>{children.map(drawn)}</b>;
    case "emphasis":
      return <em key={key}>{children.map(drawn)}</em>;
    case "code":
      return <code key={key}>{children.map(drawn)}</code>;
  }
}
