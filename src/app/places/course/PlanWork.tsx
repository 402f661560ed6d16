// What the plan is doing: nothing to see while it is quick, a ruler and a stop after a second, words where it broke off.
//
// Does not know: what the plan says.
import { sayUnchecked } from "../../../language/index.ts";
import { Button, Message, ProgressRuler } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";

export function PlanWork() {
  const session = useSession();
  const say = useSay();
  const { progress, trouble, value } = session.plan.value;
  if (trouble !== null)
    return (
      <Message
        live
        says={say(trouble === "stopped" && value !== null ? "session.planStopped" : "session.planTrouble")}
        try={trouble === "stopped" ? "" : sayUnchecked(session.language.value, `engine.${trouble}`)}
      >
        <p class="acts">
          <Button onPress={() => session.workAgain()}>{say("session.workAgain")}</Button>
        </p>
      </Message>
    );
  if (progress !== null)
    return (
      <ProgressRuler
        done={progress.done}
        total={progress.total}
        says={sayUnchecked(session.language.value, `engine.${progress.doing}`)}
        onStop={() => session.stopWork()}
      />
    );
  return value === null ? <p>{say("session.planWorks")}</p> : null;
}
