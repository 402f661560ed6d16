// An address that leads to nothing, and what to do about it.
//
// Does not know: the other places.
import { Button, Page } from "../pieces/index.ts";
import { useSay, useSession } from "../session/useSession.ts";
import { linkTo } from "../shell/router.ts";

export function Nowhere() {
  const say = useSay();
  const hasClass = useSession().classFile.value !== null;
  return (
    <Page
      name={say("shell.nowhere")}
      under={
        <>
          <p>{say("shell.nowhereHelp")}</p>
          <div class="acts">
            <Button to={linkTo(hasClass ? "today" : "first")}>{say("shell.goToday")}</Button>
          </div>
        </>
      }
    />
  );
}
