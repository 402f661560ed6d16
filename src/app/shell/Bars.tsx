// What a person must know before anything else, under the head: not kept, following another tab, a clock that went back.
//
// Each stands until its cause is gone; none covers anything.
// Does not know: how a class is kept.
import { useState } from "preact/hooks";
import { sayUnchecked } from "../../language/index.ts";
import { TextLink } from "../pieces/TextLink.tsx";
import { copyName, saveClassCopy } from "../session/saveClassCopy.ts";
import { useSay, useSession } from "../session/useSession.ts";
import { clockOf } from "./clockOf.ts";

export function Bars() {
  const session = useSession();
  const say = useSay();
  const [tookNot, setTookNot] = useState(false);
  const kept = session.kept.value;
  const open = session.open.value;
  const notice = session.notice.value;
  const takeOver = (
    <TextLink onPress={() => void open?.takeOver().then((took) => setTookNot(!took))}>{say("session.takeOver")}</TextLink>
  );
  return (
    <div aria-live="polite">
      {kept.word === "not kept" && (
        <div class="bar">
          <b>{say("session.notKeptSince", { clock: clockOf(session.language.value, kept.since) })}</b>
          <span>{say(`keeping.${kept.why}`)}</span>
          <TextLink onPress={() => void saveClassCopy(session)}>{say("session.saveCopy")}</TextLink>
          {kept.why === "not-writer" ? takeOver : <TextLink onPress={() => open?.retry()}>{say("session.tryAgain")}</TextLink>}
        </div>
      )}
      {session.left.value.map((held) => (
        <div class="bar" key={held.id}>
          <b>{say("session.leftUnkept", { title: held.title })}</b>
          <TextLink onPress={() => void session.fetchLeft(held)}>{say("session.fetchLeft")}</TextLink>
          <TextLink
            onPress={() => {
              const name = copyName(session, held);
              void session.saveFile(name, held.snapshot.text, "application/json").then(() => session.letGo(held));
            }}
          >
            {say("session.saveCopy")}
          </TextLink>
        </div>
      ))}
      {kept.word === "follows" && (
        <div class="bar">
          <b>{say(tookNot ? "session.tookNot" : "session.follows")}</b>
          {takeOver}
        </div>
      )}
      {notice !== null && (
        <div class="bar">
          <b>{sayUnchecked(session.language.value, notice.code, notice.data)}</b>
          <TextLink onPress={() => session.dismissNotice()}>{say("session.clockSeen")}</TextLink>
        </div>
      )}
    </div>
  );
}
