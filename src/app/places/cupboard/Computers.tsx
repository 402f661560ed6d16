// Computers, one by one: does it work, how long it lasts on its battery, what its ports give.
//
// Does not know: lessons, power cuts.
import type { Computer } from "../../../school/file/index.ts";
import { Row, Table, TextLink, Tick } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "./act.ts";
import { mostListed } from "./Devices.tsx";
import { Entry } from "./Entry.tsx";
import { Fold } from "./Fold.tsx";
import { readCount } from "./readTyped.ts";
import { isFound } from "./whatIsThere.ts";

export function Computers({ search }: { readonly search: string }) {
  const say = useSay();
  const act = useAct();
  const computers = useSession().classFile.value?.computers ?? [];
  const shown = computers.filter((c) => isFound(search, c.id, c.note));
  const set = (computer: Computer) => act({ kind: "set-computer", computer });
  /** A field of a computer that holds a number; "" is null where nobody may know it. */
  const number = (computer: Computer, field: "batteryMinutes" | "usbMilliamps" | "usbPorts", most: number) => (
    <td class="num" data-l={say(`cupboard.${field}`)}>
      <Entry
        label={say(`cupboard.${field}Of`, { name: computer.id })}
        hideLabel
        width="short"
        keys="numeric"
        value={computer[field] === null ? "" : String(computer[field])}
        onEnter={(typed) => {
          if (typed.trim() === "" && field === "batteryMinutes") return set({ ...computer, batteryMinutes: null });
          const value = readCount(typed, most);
          return value === null ? say("cupboard.notANumberTo", { found: typed, most }) : set({ ...computer, [field]: value });
        }}
      />
    </td>
  );
  return (
    <>
      {shown.length > 0 && (
        <Row at={say("cupboard.ofMany", { count: computers.filter((d) => d.works).length, total: computers.length })}>
          <Fold says={say("cupboard.lookAndChange")} open={search !== ""}>
            <Table
              caption={say("cupboard.computers")}
              phone="paragraphs"
              head={[
                { says: say("cupboard.device") },
                { says: say("cupboard.works") },
                { says: say("cupboard.batteryMinutes"), numeric: true },
                { says: say("cupboard.usbMilliamps"), numeric: true },
                { says: say("cupboard.usbPorts"), numeric: true },
                { says: say("cupboard.note") },
                { says: "" },
              ]}
            >
              {shown.map((computer) => (
                <tr key={computer.id}>
                  <th scope="row">
                    <bdi>{computer.id}</bdi>
                  </th>
                  <td>
                    <Tick
                      label={<span class="phone-word">{say("cupboard.worksOf", { name: computer.id })}</span>}
                      ticked={computer.works}
                      onChange={(works) => set({ ...computer, works })}
                    />
                  </td>
                  {number(computer, "batteryMinutes", 5000)}
                  {number(computer, "usbMilliamps", 5000)}
                  {number(computer, "usbPorts", 20)}
                  <td data-l={say("cupboard.note")}>
                    <Entry
                      label={say("cupboard.noteOf", { name: computer.id })}
                      hideLabel
                      value={computer.note}
                      onEnter={(note) => set({ ...computer, note })}
                    />
                  </td>
                  <td>
                    <TextLink
                      onPress={() => act({ kind: "remove-computer", id: computer.id })}
                      label={say("cupboard.removeOf", { name: computer.id })}
                    >
                      {say("cupboard.remove")}
                    </TextLink>
                  </td>
                </tr>
              ))}
            </Table>
            <p class="note">{say("cupboard.batteryHint")}</p>
          </Fold>
        </Row>
      )}
      {search === "" && (
        <Row>
          <Entry
            label={say("cupboard.howManyComputers")}
            hint={say("cupboard.newOnesHint")}
            width="short"
            keys="numeric"
            value={String(computers.length)}
            onEnter={(typed) => {
              const count = readCount(typed, mostListed);
              return count === null
                ? say("cupboard.notANumberTo", { found: typed, most: mostListed })
                : act({ kind: "count-devices", what: "computers", count });
            }}
          />
        </Row>
      )}
    </>
  );
}
