// The last act in one sentence with Undo, between two rules, until the next act.
//
// A place puts it beside what the act changed. The title block tells the same at the foot of every page.
// Does not know: what acts there are; their sentences come with them.
import type { Change } from "../../school/changes/index.ts";
import { sayAct } from "../session/sayAct.ts";
import { useSay, useSession } from "../session/useSession.ts";
import { TextLink } from "./TextLink.tsx";

export interface LastActProps {
  /** Only acts of this kind are told here. */
  readonly about?: (change: Change) => boolean;
}

export function LastAct({ about = () => true }: LastActProps) {
  const session = useSession();
  const say = useSay();
  const act = session.lastAct.value;
  if (act === null || !about(act.change)) return null;
  return (
    <p class="says">
      <span>{sayAct(session.language.value, act, session.shipped.value)}</span>
      {act.undone ? (
        <TextLink onPress={() => session.redo()}>{say("session.redo")}</TextLink>
      ) : (
        <TextLink onPress={() => session.undo()}>{say("session.undo")}</TextLink>
      )}
    </p>
  );
}
