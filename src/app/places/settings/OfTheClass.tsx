// What holds for the whole class file: names of classes, room, currency, the chance that every team works.
//
// Each field is a named change of the class file when it is left; what cannot be stands beside the field and changes nothing.
// Does not know: how a change is done or taken back.
import { useSignal } from "@preact/signals";
import { near } from "../../../base/index.ts";
import { formatChance, sayUnchecked } from "../../../language/index.ts";
import type { Change, ChangeKind } from "../../../school/changes/index.ts";
import { Choice, Field, type FieldProps, LastAct, Row } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { readCount } from "../cupboard/readTyped.ts";
import { readCurrency } from "../order/readCurrency.ts";

/** Chances to choose from; a class file may hold any other, which then stands among them. */
const chances = [0.8, 0.9, 0.95, 0.98, 0.99];
/** Most sockets and lux that a room has; more is a slip. Direct sun is 100 000 lx (common practice, no source). */
const most = { sockets: 200, lux: 120_000 } as const;
/** Offered while a currency is typed; any other of ISO 4217 that the browser knows is taken too. */
const offered = [
  "EUR",
  "USD",
  "GBP",
  "INR",
  "KES",
  "NGN",
  "TZS",
  "UGX",
  "GHS",
  "ETB",
  "ZAR",
  "XOF",
  "XAF",
  "BRL",
  "MXN",
  "PHP",
  "IDR",
  "BDT",
];
/** Acts that are told here. */
const ownActs: readonly ChangeKind[] = ["set-room", "set-currency", "set-chance", "rename-class"];

export function OfTheClass() {
  const session = useSession();
  const say = useSay();
  const file = session.classFile.value;
  if (file === null) return null;
  const { room } = file;
  /** @returns why the change cannot be done, or null when it is done. */
  const act = (change: Change): string | null => {
    const problem = session.act(change);
    return problem === null ? null : sayUnchecked(session.language.value, problem.code, { ...problem });
  };
  const setRoom = (field: "sockets" | "lux", text: string): string | null => {
    const isEmpty = text.trim() === "";
    const count = isEmpty && field === "lux" ? null : readCount(text, most[field]);
    if (count === null && !(isEmpty && field === "lux"))
      return say("fieldTrouble.notACount", { found: text, isEmpty: isEmpty ? "yes" : "no", least: 0, most: most[field] });
    return act({ kind: "set-room", room: { ...room, [field]: count } });
  };
  const setCurrency = (text: string): string | null => {
    const read = readCurrency(text);
    if (read !== null) return act({ kind: "set-currency", ...read });
    const close = near(text.trim().toUpperCase(), offered);
    return close === null
      ? say("fieldTrouble.noCurrency", { found: text, isEmpty: text.trim() === "" ? "yes" : "no" })
      : say("settings.currencyNear", { found: text, near: close });
  };
  const all = [...new Set([...chances, file.chance])].sort((a, b) => a - b);
  return (
    <Row as="section">
      <h2>{say("settings.class")}</h2>
      <LastAct about={(change) => ownActs.includes(change.kind)} />
      {file.classes.map((group) => (
        <Line
          key={group.id}
          id={`class-${group.id}`}
          label={file.classes.length === 1 ? say("settings.className") : say("settings.nameOf", { id: group.id })}
          value={group.name}
          onSet={(name) =>
            name.trim() === "" ? say("settings.nameEmpty") : act({ kind: "rename-class", class: group.id, name: name.trim() })
          }
        />
      ))}
      <Line
        id="room"
        label={say("settings.room")}
        value={room.name}
        onSet={(name) => act({ kind: "set-room", room: { ...room, name: name.trim() } })}
      />
      <Line
        id="sockets"
        label={say("settings.sockets")}
        hint={say("settings.socketsHint")}
        keys="numeric"
        value={String(room.sockets)}
        onSet={(text) => setRoom("sockets", text)}
      />
      <Line
        id="lux"
        label={say("settings.lux")}
        hint={say("settings.luxHint")}
        keys="numeric"
        value={room.lux === null ? "" : String(room.lux)}
        onSet={(text) => setRoom("lux", text)}
      />
      <Line
        id="currency"
        label={say("settings.currency")}
        hint={say("settings.currencyHint")}
        offers={offered}
        value={file.currency}
        onSet={setCurrency}
      />
      <Choice
        id="chance"
        as="list"
        label={say("settings.chance")}
        hint={say("settings.chanceHint")}
        value={String(file.chance)}
        options={all.map((chance) => ({ value: String(chance), label: formatChance(session.language.value, chance) }))}
        onChange={(chance) => act({ kind: "set-chance", chance: Number(chance) })}
      />
    </Row>
  );
}

type LineProps = Pick<FieldProps, "label" | "hint" | "keys" | "offers"> & {
  readonly id: string;
  readonly value: string;
  /** @returns what is wrong with the text, or null when it was taken. */
  readonly onSet: (text: string) => string | null;
};

/** A field that keeps what was typed beside what is wrong with it, until it is put right. */
function Line({ value, onSet, ...field }: LineProps) {
  const draft = useSignal<{ readonly text: string; readonly trouble: string | null } | null>(null);
  return (
    <Field
      {...field}
      width="middle"
      value={draft.value?.text ?? value}
      problem={draft.value?.trouble ?? null}
      onInput={(text) => {
        draft.value = { text, trouble: null };
      }}
      onChange={(text) => {
        const trouble = text === value ? null : onSet(text);
        draft.value = trouble === null ? null : { text, trouble };
      }}
    />
  );
}
