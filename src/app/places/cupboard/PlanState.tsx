// How the plan stands, where a place shows something of it: being worked out, stopped, of before the last change.
//
// Does not know: what the plan says.
import { sayUnchecked } from "../../../language/index.ts";
import { ProgressRuler, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";

export function PlanState() {
  const say = useSay();
  const session = useSession();
  const { value, fresh, progress, trouble } = session.plan.value;
  if (progress)
    return (
      <ProgressRuler
        done={progress.done}
        total={progress.total}
        says={sayUnchecked(session.language.value, `engine.${progress.doing}`)}
        onStop={() => session.stopWork()}
      />
    );
  if (trouble)
    return (
      <p>
        {sayUnchecked(session.language.value, `engine.${trouble}`)}{" "}
        <TextLink onPress={() => session.workAgain()}>{say("session.workAgain")}</TextLink>
      </p>
    );
  if (value === null) return <p role="status">{say("session.planWorks")}</p>;
  return fresh ? null : (
    <p class="note" role="status">
      {say("session.stale")}
    </p>
  );
}
