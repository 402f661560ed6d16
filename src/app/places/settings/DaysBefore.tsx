// A day before: the states of the class that this computer kept, with a look into each before it is taken back.
//
// Taking one back is an act like others: it can be undone, and the present state stays among them.
// Does not know: which states are kept, how one is read.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { parseDay } from "../../../base/index.ts";
import { formatClock, formatDay, type Language, sayUnchecked } from "../../../language/index.ts";
import type { ClassFile } from "../../../school/file/index.ts";
import { Button, LastAct, Message, Row, Table, TextLink } from "../../pieces/index.ts";
import { dayOf, minuteOf } from "../../session/time.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import type { Generation } from "../../store/store.ts";
import { FilesSideBySide } from "./FilesSideBySide.tsx";

interface Look {
  readonly generation: Generation;
  /** Null while it is read; "unreadable" where it cannot be. */
  readonly file: ClassFile | "unreadable" | null;
}

/** The newest first; the others are shown when asked for. */
const shownAtFirst = 5;

export function DaysBefore() {
  const session = useSession();
  const say = useSay();
  const list = useSignal<readonly Generation[] | null>(null);
  const showAll = useSignal(false);
  const look = useSignal<Look | null>(null);
  const trouble = useSignal<string | null>(null);
  const open = session.open.value;
  const keptWord = session.kept.value.word;

  const refresh = async (): Promise<void> => {
    list.value = (await open?.generations()) ?? [];
  };
  useEffect(() => {
    void refresh();
  }, [open, keptWord]);

  const lookAt = async (generation: Generation): Promise<void> => {
    look.value = { generation, file: null };
    const snapshot = await open?.read(generation.id);
    const answer = snapshot
      ? await session.engine.readClass("class.json", new TextEncoder().encode(snapshot.text)).answer.catch(() => null)
      : null;
    if (look.value?.generation.id === generation.id) look.value = { generation, file: answer?.value ?? "unreadable" };
  };
  const restore = async (file: ClassFile, at: string): Promise<void> => {
    const moment = new Date(at);
    const problem = session.act({ kind: "restore-day", date: dayOf(moment), clock: minuteOf(moment) || 0, file });
    trouble.value = problem && sayUnchecked(session.language.peek(), problem.code, { ...problem });
    if (problem) return;
    look.value = null;
    await open?.settled();
    await refresh();
  };
  const looked = look.value;
  const there = looked?.file;
  const all = [...(list.value ?? [])].sort((a, b) => b.counter - a.counter);
  const shown = showAll.value ? all : all.slice(0, shownAtFirst);
  return (
    <Row as="section" id="days-before">
      <h2>{say("settings.daysBefore")}</h2>
      <p>{say("settings.daysBeforeWhat")}</p>
      <LastAct about={({ kind }) => kind === "restore-day"} />
      {list.value !== null && all.length === 0 && <p>{say("settings.noDays")}</p>}
      {shown.length > 0 && (
        <Table
          caption={say("settings.daysBefore")}
          phone="paragraphs"
          head={[{ says: say("settings.when") }, { says: say("settings.lastAct") }, { says: say("settings.act") }]}
        >
          {shown.map((generation, n) => (
            <tr key={generation.id}>
              <th scope="row">{momentOf(session.language.value, generation.at)}</th>
              <td>
                <bdi>{generation.note === "" ? say("settings.opened") : generation.note}</bdi>
                {generation.damaged && ` ${say("settings.damaged")}`}
              </td>
              <td>
                {n === 0 ? (
                  say("settings.now")
                ) : generation.damaged ? null : (
                  <TextLink
                    onPress={() => void lookAt(generation)}
                    label={say("settings.lookAtDay", { when: momentOf(session.language.value, generation.at) })}
                  >
                    {say("settings.look1")}
                  </TextLink>
                )}
              </td>
            </tr>
          ))}
        </Table>
      )}
      {all.length > shown.length && (
        <TextLink
          onPress={() => {
            showAll.value = true;
          }}
        >
          {say("settings.showAll", { count: all.length })}
        </TextLink>
      )}
      {looked !== null && (
        <section class="looked" aria-label={say("settings.daysBefore")}>
          <h3>{momentOf(session.language.value, looked.generation.at)}</h3>
          {there === null && <p role="status">{say("settings.looking")}</p>}
          {there === "unreadable" && <Message live says={say("settings.dayUnreadable")} try={say("settings.dayUnreadableTry")} />}
          {there && there !== "unreadable" && (
            <>
              {trouble.value !== null && <Message live says={trouble.value} />}
              <FilesSideBySide there={there} thereSays={say("settings.then")} />
              <div class="acts">
                <Button onPress={() => void restore(there, looked.generation.at)}>{say("settings.restore")}</Button>
                <TextLink
                  onPress={() => {
                    look.value = null;
                  }}
                >
                  {say("settings.close")}
                </TextLink>
              </div>
            </>
          )}
        </section>
      )}
    </Row>
  );
}

/** "25 November 2026, 10:04" in the time of this computer; the text itself where it is no moment. */
export function momentOf(language: Language, at: string): string {
  const moment = new Date(at);
  if (Number.isNaN(moment.getTime())) return at;
  const two = (n: number) => String(n).padStart(2, "0");
  const day = parseDay(`${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`);
  const clock = formatClock(language, moment.getHours() * 60 + moment.getMinutes());
  return day === null ? clock : `${formatDay(language, day)}, ${clock}`;
}
