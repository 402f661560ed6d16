// Boards and cables, one by one, because single ones go bad: does it work, which pins are dead.
//
// Does not know: which lessons need a pin.
import type { Device } from "../../../school/file/index.ts";
import { Row, Table, TextLink, Tick } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "./act.ts";
import { Entry } from "./Entry.tsx";
import { Fold } from "./Fold.tsx";
import { readPins } from "./readPins.ts";
import { readCount } from "./readTyped.ts";
import { besidesList, isFound } from "./whatIsThere.ts";

export function Devices({ what, search }: { readonly what: "boards" | "cables"; readonly search: string }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const classFile = session.classFile.value;
  const devices = classFile?.[what] ?? [];
  const kits = session.shipped.value?.kits ?? new Map();
  const item = what === "boards" ? "board" : "usb-cable";
  const besides = classFile === null ? { count: 0, instead: true } : besidesList(classFile, kits, item);
  const shown = devices.filter((d) => isFound(search, d.id, d.note, ...d.deadPins));
  const set = (device: Device) => act({ kind: "set-device", what, device });
  const head = [
    { says: say("cupboard.device") },
    { says: say("cupboard.works") },
    ...(what === "boards" ? [{ says: say("cupboard.deadPins") }] : []),
    { says: say("cupboard.note") },
    { says: "" },
  ];
  return (
    <>
      {shown.length > 0 && (
        <Row at={say("cupboard.ofMany", { count: devices.filter((d) => d.works).length, total: devices.length })}>
          <Fold says={say("cupboard.lookAndChange")} open={search !== ""}>
            <Table caption={say(`cupboard.${what}`)} head={head} phone="paragraphs">
              {shown.map((device) => (
                <tr key={device.id}>
                  <th scope="row">
                    <bdi>{device.id}</bdi>
                  </th>
                  <td>
                    <Tick
                      label={<span class="phone-word">{say("cupboard.worksOf", { name: device.id })}</span>}
                      ticked={device.works}
                      onChange={(works) => set({ ...device, works })}
                    />
                  </td>
                  {what === "boards" && (
                    <td data-l={say("cupboard.deadPins")}>
                      <Entry
                        label={say("cupboard.deadPinsOf", { name: device.id })}
                        hideLabel
                        width="short"
                        value={device.deadPins.join(" ")}
                        onEnter={(typed) => {
                          const pins = readPins(typed);
                          return pins === null ? say("cupboard.notPins", { found: typed }) : set({ ...device, deadPins: pins });
                        }}
                      />
                    </td>
                  )}
                  <td data-l={say("cupboard.note")}>
                    <Entry
                      label={say("cupboard.noteOf", { name: device.id })}
                      hideLabel
                      value={device.note}
                      onEnter={(note) => set({ ...device, note })}
                    />
                  </td>
                  <td>
                    <TextLink
                      onPress={() => act({ kind: "remove-device", what, id: device.id })}
                      label={say("cupboard.removeOf", { name: device.id })}
                    >
                      {say("cupboard.remove")}
                    </TextLink>
                  </td>
                </tr>
              ))}
            </Table>
          </Fold>
        </Row>
      )}
      {search === "" && (
        <Row>
          <Entry
            label={say(what === "boards" ? "cupboard.howManyBoards" : "cupboard.howManyCables")}
            hint={
              besides.count === 0
                ? say(besides.instead ? "cupboard.notListedHint" : "cupboard.newOnesHint")
                : say(besides.instead ? "cupboard.inKitsHint" : "cupboard.listCountsHint", { count: besides.count })
            }
            width="short"
            keys="numeric"
            value={devices.length === 0 && besides.count > 0 ? "" : String(devices.length)}
            onEnter={(typed) => {
              const count = readCount(typed, mostListed);
              return count === null
                ? say("cupboard.notANumberTo", { found: typed, most: mostListed })
                : act({ kind: "count-devices", what, count });
            }}
          />
        </Row>
      )}
    </>
  );
}

/** More than that nobody numbers. */
export const mostListed = 500;
