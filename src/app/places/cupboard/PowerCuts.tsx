// Stretches without mains that are known beforehand.
//
// Does not know: which lessons fall into one.
import { useState } from "preact/hooks";
import type { Day } from "../../../base/index.ts";
import { formatClock, formatDay } from "../../../language/index.ts";
import { Button, DayField, Field, Row, shortDay, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "./act.ts";
import { readClock } from "./readTyped.ts";

export function PowerCuts() {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const cuts = session.classFile.value?.powerCuts ?? [];
  return (
    <>
      {cuts.length === 0 && (
        <Row>
          <p>{say("cupboard.noCuts")}</p>
        </Row>
      )}
      {cuts.map((cut) => {
        const told = {
          day: formatDay(language, cut.date, "weekday"),
          from: formatClock(language, cut.from),
          to: formatClock(language, cut.to),
        };
        return (
          <Row key={`${cut.date} ${cut.from}`} at={shortDay(language, cut.date)}>
            {say("cupboard.cut", told)}{" "}
            <TextLink onPress={() => act({ kind: "remove-power-cut", cut })} label={say("cupboard.removeCut", told)}>
              {say("cupboard.remove")}
            </TextLink>
          </Row>
        );
      })}
      <Row>
        <details>
          <summary>{say("cupboard.addCut")}</summary>
          <AddCut />
        </details>
      </Row>
    </>
  );
}

function AddCut() {
  const say = useSay();
  const act = useAct();
  const [date, setDate] = useState<Day | null>(null);
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const [problem, setProblem] = useState<{ readonly at: "date" | "from" | "to" | "act"; readonly says: string } | null>(null);
  const add = () => {
    const [start, end] = [readClock(from), readClock(to)];
    if (date === null) return setProblem({ at: "date", says: say("cupboard.noSuchDay") });
    if (start === null) return setProblem({ at: "from", says: say("cupboard.notAClock", { found: from }) });
    if (end === null) return setProblem({ at: "to", says: say("cupboard.notAClock", { found: to }) });
    if (end <= start) return setProblem({ at: "to", says: say("cupboard.cutBackwards") });
    const wrong = act({ kind: "add-power-cut", cut: { date, from: start, to: end } });
    setProblem(wrong === null ? null : { at: "act", says: wrong });
    if (wrong === null) {
      setFrom("");
      setTo("");
    }
  };
  const problemAt = (at: string) => (problem?.at === at ? problem.says : null);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <DayField label={say("cupboard.cutDay")} value={date} onChange={setDate} problem={problemAt("date")} />
      <Field
        label={say("cupboard.cutFrom")}
        hint={say("cupboard.clockHint")}
        width="short"
        value={from}
        onInput={setFrom}
        problem={problemAt("from")}
      />
      <Field label={say("cupboard.cutTo")} width="short" value={to} onInput={setTo} problem={problemAt("to")} />
      {problem?.at === "act" && <p class="problem">{problem.says}</p>}
      <div class="acts">
        <Button submit>{say("cupboard.add")}</Button>
      </div>
    </form>
  );
}
