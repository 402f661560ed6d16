// What is short by when: the day at the bench line, the thing and the first lesson that needs it after it.
//
// Does not know: prices, who sells it.
import { countedItem, formatDay, itemName } from "../../../language/index.ts";
import { Row, shortDay } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { lessonName } from "./lessonName.ts";
import type { ShortThing } from "./shortByWhen.ts";
import { isFound } from "./whatIsThere.ts";

export interface ShortProps {
  /** Null before the plan is made. */
  readonly things: readonly ShortThing[] | null;
  readonly search: string;
}

export function Short({ things, search }: ShortProps) {
  const say = useSay();
  const session = useSession();
  const language = session.language.value;
  if (things === null) return null;
  const shown = things.filter((thing) => isFound(search, itemName(language, thing.item), thing.item));
  if (things.length === 0)
    return (
      <Row>
        <p>{say("cupboard.nothingShort")}</p>
      </Row>
    );
  return (
    <>
      {shown.map((thing) => (
        <Row key={thing.item} at={thing.by === null ? "—" : <DayBy day={thing.by} />}>
          <h3>
            {thing.count === null
              ? say("cupboard.sparesOf", { item: thing.item })
              : countedItem(language, thing.item, thing.count)}
          </h3>
          <p>
            {say(thing.count === null ? "cupboard.surerFor" : "cupboard.forLesson", {
              ...lessonName(session, thing.sitting),
              day: formatDay(language, thing.sitting.date, "short"),
              chance: thing.sitting.chance,
            })}{" "}
            {thing.others > 0 && say("cupboard.andOthers", { count: thing.others })}{" "}
            {thing.by === null && say("cupboard.noDayHelps")}
          </p>
        </Row>
      ))}
    </>
  );
}

function DayBy({ day }: { readonly day: NonNullable<ShortThing["by"]> }) {
  const say = useSay();
  const session = useSession();
  const isLate = day < session.today.value;
  return (
    <>
      <b>{shortDay(session.language.value, day)}</b>
      {isLate && <span class="note under">{say("cupboard.dayIsOver")}</span>}
    </>
  );
}
