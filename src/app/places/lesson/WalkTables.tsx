// What holds where a walk stands: pins, what is seen, values, text to the computer.
//
// Does not know: how the walk came there.
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { WalkPin, WalkStep, WalkValue } from "../../../bench/program/index.ts";
import type { Observation } from "../../../bench/rehearsal/index.ts";
import { formatList, type Language, say as sayIn } from "../../../language/index.ts";
import { Table } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { seenWords } from "./lessonWords.ts";

/** "high", "tone of 440 Hz": what goes out of a pin, or what the program read there. */
export function pinWords(language: Language, pin: WalkPin): string {
  if (pin.hz !== null) return sayIn(language, "walkPage.tone", { hertz: pin.hz });
  if (pin.degrees !== null) return sayIn(language, "walkPage.servo", { degrees: pin.degrees });
  if (pin.duty !== null) return sayIn(language, "walkPage.pulses", { value: pin.duty, duty: pin.duty / 255 });
  if (pin.level !== null) return sayIn(language, `walkPage.${pin.level}`);
  if (pin.read === null) return sayIn(language, "walkPage.notRead");
  if (pin.pin.startsWith("A")) return sayIn(language, "walkPage.readsNumber", { value: pin.read });
  return sayIn(language, pin.read === 0 ? "walkPage.readsLow" : "walkPage.readsHigh");
}

export interface PinTableProps {
  readonly lesson: Lesson;
  readonly step: WalkStep;
  /** On the wall, where only what goes on counts. */
  readonly short?: boolean;
}

export function PinTable({ lesson, step, short = false }: PinTableProps) {
  const say = useSay();
  const language = useSession().language.value;
  if (step.pins.length === 0) return <p>{say("walkPage.noPins")}</p>;
  return (
    <Table caption={say("walkPage.pins")} head={[{ says: say("walkPage.pin") }, { says: say("walkPage.now") }]}>
      {step.pins.map((pin) => (
        <tr key={pin.pin} class={pin.changed ? "changed" : undefined}>
          <th scope="row">
            {pin.pin} <span class="note">{formatList(language, joined(lesson, pin.pin))}</span>
          </th>
          <td>
            {pinWords(language, pin)}
            {pin.changed && !short && <span class="note"> {say("walkPage.changed")}</span>}
            {!short && <span class="note under">{say(`walkPage.${pin.mode === "pull-up" ? "pullUp" : pin.mode}`)}</span>}
          </td>
        </tr>
      ))}
    </Table>
  );
}

/** What each part shows; the board only where it does not run. */
export function SeenTable({ seen }: { readonly seen: readonly Observation[] }) {
  const say = useSay();
  const language = useSession().language.value;
  const shown = seen.filter(({ part, seen: word }) => part !== "board" || word !== "running");
  if (shown.length === 0) return null;
  return (
    <Table caption={say("walkPage.seen")} head={[{ says: say("walkPage.part") }, { says: say("walkPage.isSeen") }]}>
      {shown.map((observation) => (
        <tr key={observation.part}>
          <th scope="row">{observation.part}</th>
          <td>{seenWords(language, observation)}</td>
        </tr>
      ))}
    </Table>
  );
}

/** The parts whose leg is joined to a pin of the board. */
function joined(lesson: Lesson, pin: string): readonly string[] {
  const net = lesson.nets.find(({ legs }) => legs.some(({ part, leg }) => part === "board" && leg === pin));
  return [...new Set(net?.legs.map(({ part }) => part) ?? [])].filter((part) => part !== "board");
}

export function ValueTable({ step, short = false }: { readonly step: WalkStep; readonly short?: boolean }) {
  const say = useSay();
  // What a function of its own holds comes first; constants never change, so they come last.
  const list = [...step.locals, ...step.globals];
  const values = [...list.filter((v) => !v.isConst), ...(short ? [] : list.filter((v) => v.isConst))];
  if (values.length === 0) return <p>{say("walkPage.noValues")}</p>;
  return (
    <Table
      caption={say("walkPage.values")}
      head={[{ says: say("walkPage.name") }, { says: say("walkPage.value") }, ...(short ? [] : [{ says: say("walkPage.type") }])]}
    >
      {values.map((value, n) => (
        <ValueRow key={`${n} ${value.name}`} value={value} short={short} />
      ))}
    </Table>
  );
}

function ValueRow({ value, short }: { readonly value: WalkValue; readonly short: boolean }) {
  const say = useSay();
  return (
    <tr class={value.changed ? "changed" : undefined}>
      <th scope="row">
        <code>{value.name}</code>
      </th>
      <td>
        <code>{value.text.length > 120 ? `${value.text.slice(0, 120)}…` : value.text || "—"}</code>
        {value.changed && !short && <span class="note"> {say("walkPage.changed")}</span>}
      </td>
      {!short && (
        <td>
          <code>{value.type}</code>
          {value.isConst && <span class="note"> {say("walkPage.constant")}</span>}
        </td>
      )}
    </tr>
  );
}

/** Lines of text that are shown; older ones have been read. */
const mostLines = 8;

export function SentText({ step }: { readonly step: WalkStep }) {
  const say = useSay();
  if (step.text === "" && step.onItsWay === "") return null;
  const lines = step.text.replace(/\r/g, "").split("\n");
  return (
    <div class="senttext">
      <p>
        <b>{say("walkPage.text")}</b>
      </p>
      <p class="sent">
        <bdi>{lines.slice(-mostLines).join("\n")}</bdi>
      </p>
      {step.onItsWay !== "" && <p class="note">{say("walkPage.onItsWay", { count: step.onItsWay.length })}</p>}
    </div>
  );
}
