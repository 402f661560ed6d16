// What to prepare for the next lesson, in the order in which to do it, each with a box to tick.
//
// A tick is a change of the class like any other: kept, undone, and gone with the meeting that it belongs to.
// Does not know: what has to be prepared and by when; the plan says it.
import type { PlannedLesson, Preparation } from "../../../school/readiness/index.ts";
import { Row, shortDay, TextLink, Tick } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { linkTo } from "../../shell/router.ts";
import { planWords } from "../course/sayPlan.ts";

export interface PrepareListProps {
  readonly planned: PlannedLesson | null;
  readonly title: string;
}

export function PrepareList({ planned, title }: PrepareListProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const plan = session.plan.value.value;
  if (plan === null || planned === null) return null;
  const things = named(plan.prepare.filter((p) => p.sitting === planned.id));
  const ticked = new Set((session.classFile.value?.prepared ?? []).filter((p) => p.sitting === planned.id).map((p) => p.what));
  const words = planWords(language, session.shipped.value);
  const left = things.filter(({ what }) => !ticked.has(what)).length;
  return (
    <>
      <Row class="sectionhead">
        <h2 id="prepare">{say("today.prepare", { title })}</h2>
      </Row>
      {things.map(({ what, preparation }, n) => (
        <Row
          key={what}
          at={things[n - 1]?.preparation.date === preparation.date ? undefined : shortDay(language, preparation.date)}
        >
          <Tick
            label={words.preparation(preparation)}
            ticked={ticked.has(what)}
            onChange={(on) => session.act({ kind: on ? "tick" : "untick", sitting: planned.id, what })}
          />
          {leads(preparation, planned) && (
            <p class="note more">
              <TextLink to={leads(preparation, planned)!.to}>{say(leads(preparation, planned)!.words)}</TextLink>
            </p>
          )}
        </Row>
      ))}
      <Row>
        <b>{say(left === 0 ? "today.allPrepared" : "today.leftToPrepare", { count: left })}</b>
      </Row>
    </>
  );
}

/** Each thing by its code; where there are several of a code, with its place among them. */
function named(list: readonly Preparation[]): readonly { readonly what: string; readonly preparation: Preparation }[] {
  const seen = new Map<string, number>();
  return list.map((preparation) => {
    const n = (seen.get(preparation.code) ?? 0) + 1;
    seen.set(preparation.code, n);
    return { what: n === 1 ? preparation.code : `${preparation.code} ${n}`, preparation };
  });
}

function leads({ code }: Preparation, { class: group, lesson, date }: PlannedLesson) {
  switch (code) {
    case "print-papers":
      return { to: linkTo("print", "all", group, lesson, date), words: "today.toPapers" } as const;
    case "set-out-trays":
      return { to: linkTo("print", "tray", group, lesson, date), words: "today.toTrayList" } as const;
    case "read-cautions":
    case "try-it-yourself":
      return { to: linkTo("lesson", group, lesson, date), words: "today.toLesson" } as const;
    case "order-by":
      return { to: linkTo("order"), words: "today.toOrder" } as const;
    case "check-devices":
    case "charge":
      return { to: linkTo("cupboard"), words: "today.toCupboard" } as const;
    default:
      return null;
  }
}
