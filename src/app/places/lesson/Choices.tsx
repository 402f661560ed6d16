// Other values and other supplies, each with its verdict, and one tap to take it.
//
// A taken value or supply is a decision of the class: the plan follows it, and it can be taken back.
// Does not know: how they were rehearsed.
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { RehearsalResult } from "../../../bench/rehearsal/index.ts";
import { formatAmount, formatList, formatNumber, itemName } from "../../../language/index.ts";
import type { Decision } from "../../../school/file/index.ts";
import { LastAct, Table, TextLink, Verdict } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";

export interface ChoicesProps {
  readonly lesson: Lesson;
  readonly result: RehearsalResult;
}

/** What the class decided about a lesson, by what it is about. */
function useDecisions(lesson: string): {
  readonly of: (kind: "substitute" | "supply", item: string, part?: string) => Decision | undefined;
  readonly isOpen: boolean;
} {
  const classFile = useSession().classFile.value;
  return {
    isOpen: classFile !== null,
    of: (kind, item, part) =>
      classFile?.decisions.find(
        (d) => d.kind === kind && d.lesson === lesson && d.item === item && (d.kind !== "substitute" || d.part === part),
      ),
  };
}

interface TakeProps {
  readonly decision: Decision;
  readonly taken: Decision | undefined;
  readonly name: string;
}

function Take({ decision, taken, name }: TakeProps) {
  const session = useSession();
  const say = useSay();
  return taken ? (
    <>
      <b>{say("lessonPage.taken")}</b>{" "}
      <TextLink label={say("lessonPage.takeBackOf", { name })} onPress={() => session.act({ kind: "undecide", decision: taken })}>
        {say("lessonPage.takeBack")}
      </TextLink>
    </>
  ) : (
    <TextLink label={say("lessonPage.takeOf", { name })} onPress={() => session.act({ kind: "decide", decision })}>
      {say("lessonPage.take")}
    </TextLink>
  );
}

export function Values({ lesson, result }: ChoicesProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const decisions = useDecisions(lesson.id);
  const values = result.variants.flatMap(({ what, verdict }) =>
    what.kind === "value" && what.item !== lesson.parts.get(what.part)?.item ? [{ what, verdict }] : [],
  );
  const corners = result.variants.filter((v) => v.what.kind === "corner");
  const failing = corners.filter((v) => v.verdict !== "ready");
  return (
    <>
      {values.length === 0 ? (
        <p>{say("lessonPage.noValues")}</p>
      ) : (
        <Table
          caption={say("lessonPage.values")}
          phone="paragraphs"
          class="values"
          head={[
            { says: say("lessonPage.part") },
            { says: say("lessonPage.inPlace") },
            { says: say("lessonPage.verdict") },
            { says: "" },
          ]}
        >
          {values.map(({ what, verdict }) => (
            <tr key={`${what.part} ${what.item}`}>
              <th scope="row">{what.part}</th>
              <td>{itemName(language, what.item)}</td>
              <td>
                <Verdict word={verdict} calm />
              </td>
              <td>
                {decisions.isOpen && (verdict === "ready" || decisions.of("substitute", what.item, what.part)) && (
                  <Take
                    name={`${what.part}: ${itemName(language, what.item)}`}
                    taken={decisions.of("substitute", what.item, what.part)}
                    decision={{
                      kind: "substitute",
                      lesson: lesson.id,
                      part: what.part,
                      item: what.item,
                      date: session.today.value,
                    }}
                  />
                )}
              </td>
            </tr>
          ))}
        </Table>
      )}
      <LastAct about={(c) => (c.kind === "decide" || c.kind === "undecide") && c.decision.kind === "substitute"} />
      {corners.length > 0 && <p>{say("lessonPage.corners", { count: corners.length, failing: failing.length })}</p>}
      {result.margins.length > 0 && (
        <ul class="margins">
          {result.margins.map(({ part, parameter, down, up }) => (
            <li key={`${part} ${parameter}`}>
              {say("lessonPage.margin", {
                part,
                down: down === null ? "none" : formatNumber(language, Number(down.toPrecision(2))),
                up: up === null ? "none" : formatNumber(language, Number(up.toPrecision(2))),
              })}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

export function Supplies({ lesson, result }: ChoicesProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const decisions = useDecisions(lesson.id);
  return (
    <>
      <Table
        caption={say("lessonPage.supplies")}
        phone="paragraphs"
        class="supplies"
        head={[
          { says: say("lessonPage.supply") },
          { says: say("lessonPage.verdict") },
          { says: say("lessonPage.most"), numeric: true },
          { says: say("lessonPage.runsFor") },
          { says: "" },
        ]}
      >
        {result.supplies.map(({ supply, fits, why, peakAmps, hours }) => (
          <tr key={supply}>
            <th scope="row">{itemName(language, supply)}</th>
            <td>
              <Verdict
                word={fits === "fits" ? "ready" : fits === "undetermined" ? "not rehearsed yet" : "needs another supply"}
                calm
              >
                {say(`lessonPage.${fits}`)}
              </Verdict>
              {why.length > 0 && (
                <span class="note under">
                  {formatList(
                    language,
                    why.map((reason) => say(`supplyWhy.${reason}`)),
                  )}
                </span>
              )}
            </td>
            <td class="num" data-l={say("lessonPage.most")}>
              {formatAmount(language, peakAmps, "A")}
            </td>
            <td data-l={say("lessonPage.runsFor")}>
              {hours === null ? say("lessonPage.asLongAsMains") : say("lessonPage.hours", { hours })}
            </td>
            <td>
              {decisions.isOpen && (fits === "fits" || decisions.of("supply", supply)) && (
                <Take
                  name={itemName(language, supply)}
                  taken={decisions.of("supply", supply)}
                  decision={{ kind: "supply", lesson: lesson.id, item: supply, date: session.today.value }}
                />
              )}
            </td>
          </tr>
        ))}
      </Table>
      <LastAct about={(c) => (c.kind === "decide" || c.kind === "undecide") && c.decision.kind === "supply"} />
    </>
  );
}
