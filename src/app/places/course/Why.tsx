// Why a lesson is what it is, and what helps, each help as something to press where the page can do it.
//
// Does not know: how a verdict is found.
import type { PlannedLesson, Remedy } from "../../../school/readiness/index.ts";
import { TextLink } from "../../pieces/index.ts";
import { useSession } from "../../session/useSession.ts";
import { linkTo } from "../../shell/router.ts";
import { planWords } from "./sayPlan.ts";

export function Why({ planned }: { readonly planned: PlannedLesson }) {
  const session = useSession();
  const words = planWords(session.language.value, session.shipped.value);
  if (planned.reasons.length === 0) return null;
  return (
    <ul class="why">
      {unique(planned.reasons.map(words.reason)).map((says) => (
        <li key={says}>{says}</li>
      ))}
    </ul>
  );
}

export interface HelpsProps {
  readonly planned: PlannedLesson;
  /** Opens the fields to move the lesson; left out where there are none. */
  readonly onMove?: () => void;
}

export function Helps({ planned, onMove }: HelpsProps) {
  const session = useSession();
  const words = planWords(session.language.value, session.shipped.value);
  if (planned.remedies.length === 0) return null;
  return (
    <ul class="helps">
      {planned.remedies.map((remedy) => {
        const says = words.remedy(remedy);
        const to = leadsTo(remedy, planned);
        return (
          <li key={says}>
            {remedy.code === "move-away-from-cut" && onMove ? (
              <TextLink onPress={onMove}>{says}</TextLink>
            ) : to === null ? (
              says
            ) : (
              <TextLink to={to}>{says}</TextLink>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** Where the page can do what helps; null where it is done in the room. */
function leadsTo({ code }: Remedy, { class: group, lesson, date }: PlannedLesson): string | null {
  switch (code) {
    case "order":
    case "order-spares":
    case "get-supply":
      return linkTo("order");
    case "find-other-value":
    case "mend-lesson":
      return linkTo("lesson", group, lesson, date);
    case "hold-earlier-lesson":
    case "move-away-from-cut":
      return linkTo("course");
    case "mend-or-borrow":
      return linkTo("cupboard");
    default:
      return null;
  }
}

function unique(texts: readonly string[]): readonly string[] {
  return [...new Set(texts)];
}
