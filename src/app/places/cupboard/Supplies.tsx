// Supplies that the school owns: power banks, mains adapters, batteries.
//
// Does not know: which supply a lesson takes.
import { itemName } from "../../../language/index.ts";
import { Row, Table, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { AddThing } from "./AddThing.tsx";
import { useAct } from "./act.ts";
import { Entry } from "./Entry.tsx";
import { supplyKinds } from "./itemKinds.ts";
import { readCount } from "./readTyped.ts";
import { isFound } from "./whatIsThere.ts";

export function Supplies({ search }: { readonly search: string }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const lines = session.classFile.value?.supplies ?? [];
  const shown = lines.filter((line) => isFound(search, itemName(language, line.item, 2), line.item, line.box));
  return (
    <>
      {shown.length > 0 && (
        <Row at={lines.length}>
          <Table
            caption={say("cupboard.supplies")}
            phone="paragraphs"
            head={[
              { says: say("cupboard.item") },
              { says: say("cupboard.here"), numeric: true },
              { says: say("cupboard.box") },
              { says: "" },
            ]}
          >
            {shown.map(({ item, count, box }) => {
              const name = itemName(language, item, 2);
              return (
                <tr key={`${box}/${item}`}>
                  <th scope="row">{name}</th>
                  <td class="num" data-l={say("cupboard.here")}>
                    <Entry
                      label={say("cupboard.hereOf", { name, box: box === "" ? say("cupboard.noBox") : box })}
                      hideLabel
                      width="short"
                      keys="numeric"
                      value={String(count)}
                      onEnter={(typed) => {
                        const found = readCount(typed);
                        if (found === null) return say("cupboard.notACount", { found: typed });
                        return act({ kind: "set-supply", line: { item, count: found, box } });
                      }}
                    />
                  </td>
                  <td data-l={say("cupboard.box")}>{box === "" ? say("cupboard.noBox") : <bdi>{box}</bdi>}</td>
                  <td>
                    <TextLink
                      onPress={() => act({ kind: "remove-supply", item, box })}
                      label={say("cupboard.removeOf", { name })}
                    >
                      {say("cupboard.remove")}
                    </TextLink>
                  </td>
                </tr>
              );
            })}
          </Table>
        </Row>
      )}
      {search === "" && (
        <Row>
          <details>
            <summary>{say("cupboard.addSupply")}</summary>
            <AddThing
              kinds={supplyKinds}
              boxes={[...new Set(lines.map((line) => line.box).filter((box) => box !== ""))]}
              onAdd={(line) => {
                const before = lines.find((l) => l.item === line.item && l.box === line.box)?.count ?? 0;
                return act({ kind: "set-supply", line: { ...line, count: before + line.count } });
              }}
            />
          </details>
        </Row>
      )}
    </>
  );
}
