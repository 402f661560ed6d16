// Loose stock, box by box: counts that can be changed where they stand, and what happened to a thing in one tap.
//
// Does not know: how a count is kept, what a kit is.
import { Fragment } from "preact";
import { useState } from "preact/hooks";
import { formatDay, formatNumber, itemName } from "../../../language/index.ts";
import type { ItemKey, Movement } from "../../../school/file/index.ts";
import { Button, Field, Row, Table, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "./act.ts";
import { Entry } from "./Entry.tsx";
import { Fold } from "./Fold.tsx";
import { readCount } from "./readTyped.ts";
import { thereNow } from "./thereNow.ts";
import { happened, happenings, isFound, recount, type ThereLine } from "./whatIsThere.ts";

export interface LooseStockProps {
  /** The most that a lesson needs of each item. */
  readonly needed: ReadonlyMap<ItemKey, number>;
  readonly search: string;
}

export function LooseStock({ needed, search }: LooseStockProps) {
  const session = useSession();
  const language = session.language.value;
  const [open, setOpen] = useState<string | null>(null);
  const there = thereNow(session);
  const boxes = [...there.boxes, { box: null, lines: there.inKitsOnly }];
  return (
    <>
      {boxes.map(({ box, lines }, n) => (
        <BoxRow
          key={box ?? "\0kits"}
          box={box}
          lines={lines.filter((line) => isFound(search, itemName(language, line.item), line.item, box ?? ""))}
          needed={needed}
          hasHead={n === 0 || search !== ""}
          isSearched={search !== ""}
          open={open}
          onOpen={setOpen}
        />
      ))}
    </>
  );
}

interface BoxProps {
  /** "" where nobody said, null for what is in kits only. */
  readonly box: string | null;
  readonly lines: readonly ThereLine[];
  readonly needed: ReadonlyMap<ItemKey, number>;
  /** The first box has the heads of all. */
  readonly hasHead: boolean;
  readonly isSearched: boolean;
  /** The line that is open. */
  readonly open: string | null;
  readonly onOpen: (line: string | null) => void;
}

function BoxRow({ box, lines, needed, hasHead, isSearched, open, onOpen }: BoxProps) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const today = session.today.value;
  if (lines.length === 0) return null;
  const name = box === null ? say("cupboard.inKitsOnly") : box === "" ? say("cupboard.noBox") : box;
  const head = [
    { says: say("cupboard.item") },
    { says: say("cupboard.here"), numeric: true },
    { says: say("cupboard.inAll"), numeric: true },
    { says: say("cupboard.needed"), numeric: true },
    { says: "" },
  ];
  const table = (
    <Table
      caption={say("cupboard.linesOf", { name })}
      head={head}
      phone="paragraphs"
      class={hasHead ? "stock" : "stock headless"}
    >
      {lines.map((line) => {
        const key = `${box ?? "\0kits"}/${line.item}`;
        const item = itemName(language, line.item, 2);
        const isOpen = open === key;
        return (
          <Fragment key={key}>
            <tr>
              <th scope="row">{item}</th>
              {box === null ? (
                <td class="num wide">—</td>
              ) : (
                <td class="num" data-l={say("cupboard.here")}>
                  <Entry
                    label={say("cupboard.hereOf", { name: item, box: name })}
                    hideLabel
                    width="short"
                    keys="numeric"
                    value={String(line.here)}
                    onEnter={(typed) => {
                      const count = readCount(typed);
                      if (count === null) return say("cupboard.notACount", { found: typed });
                      const change = recount(line, box, count, today);
                      return change === null ? null : act(change);
                    }}
                  />
                </td>
              )}
              <td class="num" data-l={say("cupboard.inAll")}>
                {formatNumber(language, line.inAll)}
              </td>
              <td class="num" data-l={say("cupboard.needed")}>
                {needed.has(line.item) ? formatNumber(language, needed.get(line.item) ?? 0) : "—"}
              </td>
              <td>
                <TextLink
                  onPress={() => onOpen(isOpen ? null : key)}
                  pressed={isOpen}
                  label={say(isOpen ? "cupboard.closeOf" : "cupboard.happenedTo", { name: item })}
                >
                  {say(isOpen ? "cupboard.close" : "cupboard.happened")}
                </TextLink>
              </td>
            </tr>
            {isOpen && (
              <tr class="open">
                <td colSpan={head.length}>
                  <Happening box={box} line={line} onClose={() => onOpen(null)} />
                </td>
              </tr>
            )}
          </Fragment>
        );
      })}
    </Table>
  );
  return (
    <Row at={<bdi>{name}</bdi>}>
      {box === null ? (
        <Fold says={say("cupboard.inKitsCount", { count: lines.length })} open={isSearched}>
          {table}
        </Fold>
      ) : (
        table
      )}
    </Row>
  );
}

interface HappeningProps {
  readonly box: string | null;
  readonly line: ThereLine;
  readonly onClose: () => void;
}

/** One number, one tap: lost, broken, found, lent, came back, bought. */
function Happening({ box, line, onClose }: HappeningProps) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const [typed, setTyped] = useState("1");
  const [problem, setProblem] = useState<string | null>(null);
  const move = (why: Movement["why"], sign: 1 | -1) => {
    const count = readCount(typed);
    if (count === null || count === 0) return setProblem(say("cupboard.notACount", { found: typed }));
    const movement = { date: session.today.value, item: line.item, change: sign * count, why, note: "" };
    setProblem(act({ kind: "move-stock", movement }));
  };
  const before = happened(session.classFile.value ?? { movements: [] }, line.item);
  return (
    <div class="happening">
      <Field
        label={say("cupboard.number")}
        width="short"
        keys="numeric"
        value={typed}
        onInput={(text) => {
          setTyped(text);
          setProblem(null);
        }}
        problem={problem}
      />
      <div class="acts">
        {happenings.map(([why, sign]) => (
          <Button key={why} onPress={() => move(why, sign)}>
            {say(`cupboard.${why}`)}
          </Button>
        ))}
      </div>
      {before.length > 0 && (
        <>
          <h3>{say("cupboard.history")}</h3>
          <ul>
            {before.map((movement, n) => (
              <li key={n}>
                {formatDay(language, movement.date, "short")}:{" "}
                {say("cupboard.movement", { count: Math.abs(movement.change), what: movement.why })}
                {movement.note !== "" && (
                  <>
                    , <bdi>{movement.note}</bdi>
                  </>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {box !== null && line.counted !== null && (
        <div class="acts">
          <Entry
            label={say("cupboard.boxOfThese")}
            width="middle"
            value={box}
            onEnter={(text) => {
              const other = text.trim();
              if (other === box) return null;
              const there = session.classFile.value?.stock.find((l) => l.item === line.item && l.box === other)?.count ?? 0;
              const wrong = act({ kind: "remove-stock", item: line.item, box });
              return (
                wrong ?? act({ kind: "set-stock", line: { item: line.item, count: there + (line.counted ?? 0), box: other } })
              );
            }}
          />
          <TextLink
            onPress={() => {
              onClose();
              act({ kind: "remove-stock", item: line.item, box });
            }}
          >
            {say("cupboard.takeOff")}
          </TextLink>
        </div>
      )}
    </div>
  );
}
