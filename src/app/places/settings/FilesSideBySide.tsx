// What another state of the class holds beside the one that is open: in numbers, what differs first, and then what only one of
// them holds, so that a lesson on another day is seen too.
//
// Does not know: where the other one came from.
import { formatClock, formatDay, itemName } from "../../../language/index.ts";
import type { ClassFile } from "../../../school/file/index.ts";
import { Table } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { compareFiles, type OnlyOne, onlyIn } from "./lookInto.ts";

/** A class may have been moved as a whole; the first few lines tell. */
const linesShown = 12;

export function FilesSideBySide({ there, thereSays }: { readonly there: ClassFile; readonly thereSays: string }) {
  const session = useSession();
  const say = useSay();
  const here = session.classFile.value;
  if (here === null) return null;
  return (
    <>
      <Table
        caption={say("settings.sideBySide")}
        head={[
          { says: say("settings.what") },
          { says: thereSays, numeric: true },
          { says: say("settings.nowHead"), numeric: true },
        ]}
      >
        {compareFiles(there, here, session.today.value).map((row) => (
          <tr key={row.what}>
            <th scope="row" class={row.there === row.here ? "calm" : undefined}>
              {say(`fileHolds.${row.what}`)}
            </th>
            <td class="num">{row.there}</td>
            <td class="num">{row.here}</td>
          </tr>
        ))}
      </Table>
      <Only says={say("settings.onlyThere", { column: thereSays })} things={onlyIn(there, here)} file={there} />
      <Only says={say("settings.onlyHere")} things={onlyIn(here, there)} file={here} />
    </>
  );
}

/** Lessons with their dates, power cuts and decisions of one of the two; nothing where there are none. */
function Only({ says, things, file }: { readonly says: string; readonly things: OnlyOne; readonly file: ClassFile }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const day = (date: OnlyOne["lessons"][number]["date"]) => formatDay(language, date, "short");
  const title = (id: string) => lessonTitle(session.shipped.value, id, language.tag);
  const group = (id: string) => file.classes.find((g) => g.id === id)?.name ?? id;
  const lines = [
    ...things.lessons.map(({ class: id, lesson, date, start }) =>
      say("settings.oneLesson", { class: group(id), lesson: title(lesson), day: day(date), clock: formatClock(language, start) }),
    ),
    ...things.powerCuts.map(({ date, from, to }) =>
      say("settings.oneCut", { day: day(date), from: formatClock(language, from), to: formatClock(language, to) }),
    ),
    ...things.decisions.map((decision) =>
      decision.kind === "skip"
        ? say("settings.oneSkip", { class: group(decision.class), lesson: title(decision.lesson) })
        : say("settings.oneDecision", { lesson: title(decision.lesson), thing: itemName(language, decision.item) }),
    ),
  ];
  if (lines.length === 0) return null;
  return (
    <>
      <p>
        <b>{says}</b>
      </p>
      <ul class="plain">
        {lines.slice(0, linesShown).map((line, n) => (
          <li key={n}>{line}</li>
        ))}
      </ul>
      {lines.length > linesShown && <p class="note">{say("settings.onlyMore", { count: lines.length - linesShown })}</p>}
    </>
  );
}
