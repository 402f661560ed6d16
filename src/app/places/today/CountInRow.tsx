// The count of the lesson that was held last: all back in one tap, or how many of what are missing or broken.
//
// What is not named came back whole, so three missing parts are three numbers.
// Does not know: what a count teaches about losses.
import { useState } from "preact/hooks";
import { itemName } from "../../../language/index.ts";
import type { ClassGroup, LessonDate } from "../../../school/file/index.ts";
import { Button, Field, Message, Row, shortDay, Table, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { planWords } from "../course/sayPlan.ts";
import { countsOf, handedOut, type Missed } from "./handedOut.ts";

export interface CountInRowProps {
  readonly group: ClassGroup;
  readonly meeting: LessonDate;
}

export function CountInRow({ group, meeting }: CountInRowProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const [isOpen, setOpen] = useState(false);
  const [typed, setTyped] = useState<ReadonlyMap<string, { readonly missing: string; readonly broken: string }>>(new Map());
  const [wrong, setWrong] = useState<string | null>(null);
  const planned = session.plan.value.value?.lessons.find(
    (l) => l.class === group.id && l.lesson === meeting.lesson && l.date === meeting.date,
  );
  if (!planned) return null;
  const out = handedOut(planned);
  const title = planWords(language, session.shipped.value).title(meeting.lesson);
  const count = (missed: ReadonlyMap<string, Missed>): void => {
    const problem = session.act({
      kind: "count-in",
      counts: countsOf({ class: group.id, lesson: meeting.lesson, date: meeting.date }, out, missed),
    });
    setWrong(problem === null ? null : problem.code);
  };
  const read = (): ReadonlyMap<string, Missed> | string => {
    const missed = new Map<string, Missed>();
    for (const { item, count: handed } of out) {
      const at = typed.get(item);
      const [missing, broken] = [wholeNumber(at?.missing ?? ""), wholeNumber(at?.broken ?? "")];
      if (missing === null || broken === null || missing + broken > handed) return item;
      if (missing + broken > 0) missed.set(item, { missing, broken });
    }
    return missed;
  };
  const take = (): void => {
    const answer = read();
    if (typeof answer === "string") setWrong(answer);
    else count(answer);
  };
  return (
    <Row at={shortDay(language, meeting.date)} as="section" class="countin">
      <h2>{say("today.countIn", { title })}</h2>
      <p>{say("today.countInHelp", { trays: planned.trays.length })}</p>
      <div class="acts">
        <Button onPress={() => count(new Map())}>{say("today.allBack")}</Button>
        <TextLink onPress={() => setOpen(!isOpen)}>{say("today.somethingMissing")}</TextLink>
      </div>
      {isOpen && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            take();
          }}
        >
          <Table
            caption={say("today.countIn", { title })}
            head={[
              { says: say("today.what") },
              { says: say("today.handedOut"), numeric: true },
              { says: say("today.missing") },
              { says: say("today.broken") },
            ]}
          >
            {out.map(({ item, count: handed }) => {
              const at = typed.get(item) ?? { missing: "", broken: "" };
              const set = (change: Partial<typeof at>): void => {
                setWrong(null);
                setTyped(new Map(typed).set(item, { ...at, ...change }));
              };
              const name = itemName(language, item);
              return (
                <tr key={item}>
                  <th scope="row">{name}</th>
                  <td class="num">{handed}</td>
                  <td>
                    <Field
                      label={say("today.missingOf", { item })}
                      hideLabel
                      keys="numeric"
                      value={at.missing}
                      onInput={(missing) => set({ missing })}
                      problem={wrong === item ? say("today.notSoMany", { count: handed }) : null}
                    />
                  </td>
                  <td>
                    <Field
                      label={say("today.brokenOf", { item })}
                      hideLabel
                      keys="numeric"
                      value={at.broken}
                      onInput={(broken) => set({ broken })}
                    />
                  </td>
                </tr>
              );
            })}
          </Table>
          <div class="acts">
            <Button submit>{say("today.takeCount")}</Button>
          </div>
        </form>
      )}
      {wrong !== null && !out.some((o) => o.item === wrong) && <Message live says={say("today.countRefused")} number={wrong} />}
    </Row>
  );
}

/** Nothing typed is nought. */
function wholeNumber(text: string): number | null {
  const trimmed = text.trim();
  return trimmed === "" ? 0 : /^\d{1,5}$/.test(trimmed) ? Number(trimmed) : null;
}
