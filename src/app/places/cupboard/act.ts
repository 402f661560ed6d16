// Does an act and tells what stood in its way: the door between a field and the session.
//
// Does not know: fields, what an act changes.
import { sayUnchecked } from "../../../language/index.ts";
import type { Change } from "../../../school/changes/index.ts";
import type { Session } from "../../session/session.ts";
import { useSession } from "../../session/useSession.ts";

/** @returns why it could not be done, in words, or null. */
export type Act = (change: Change) => string | null;

/** @returns how this page acts. */
export function useAct(): Act {
  const session = useSession();
  return (change) => actIn(session, change);
}

function actIn(session: Session, change: Change): string | null {
  const problem = session.act(change);
  return problem === null ? null : sayUnchecked(session.language.value, problem.code, { ...problem });
}
