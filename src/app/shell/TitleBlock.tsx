// The title block at the foot of every page: what it is, for whom, computed from which data, kept when, the last act, the language.
//
// Does not know: how any of it came about.

import { languageFor, languageTags } from "../../language/index.ts";
import type { Described } from "../../school/changes/index.ts";
import { TextLink } from "../pieces/TextLink.tsx";
import { saveClassCopy } from "../session/saveClassCopy.ts";
import { sayAct } from "../session/sayAct.ts";
import { useSay, useSession } from "../session/useSession.ts";
import { clockOf } from "./clockOf.ts";
import { pageName } from "./router.ts";

/** Days after which a file copy is called old. */
const oldAfter = 7;

export function TitleBlock() {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const classFile = session.classFile.value;
  const group = session.group.value;
  const act = session.lastAct.value;
  const undoes = session.undoes.value;
  const { back, again } = session.undoDepth.value;
  const undone = (says: Described) => sayAct(language, { says, undone: false }, session.shipped.value);
  const kept = session.kept.value;
  // A class may ask for a language that this page has no words in.
  const isUnspoken =
    classFile !== null && classFile.language.split("-")[0] !== language.tag.split("-")[0] && !/^x[a-z]$/.test(language.tag);
  const copy = session.copyAge.value;
  return (
    <footer class="block">
      <div>
        <span class="what">{say("shell.page")}</span>
        {pageName.value}
      </div>
      {classFile !== null && (
        <>
          <div>
            <span class="what">{say("shell.class")}</span>
            {group === null ? "—" : <bdi>{group.name}</bdi>}
            {session.isDemo.value && ` (${say("shell.invented")})`}
          </div>
          <div>
            <span class="what">{say("shell.computedFrom")}</span>
            {say("shell.fingerprint", { file: say("shell.classFile"), hash: session.fingerprint.value })}
          </div>
          <div>
            <span class="what">{say("shell.kept")}</span>
            {kept.word === "kept"
              ? say("session.keptAt", { clock: clockOf(language, kept.at) })
              : kept.word === "keeping"
                ? say("session.keeping")
                : kept.word === "not kept"
                  ? say("session.notKeptShort", { clock: clockOf(language, kept.since) })
                  : kept.word === "follows"
                    ? say("session.followsShort")
                    : say("session.nothingYet")}
            {copy !== null && copy.days > oldAfter && (
              <>
                {", "}
                {say(copy.never ? "session.copyNever" : "session.copyAge", { days: copy.days })}{" "}
                <TextLink onPress={() => void saveClassCopy(session)}>{say("session.saveCopy")}</TextLink>
              </>
            )}
          </div>
          <div>
            <span class="what">{say("shell.lastAct")}</span>
            {act !== null ? (
              <span>{sayAct(language, act, session.shipped.value)}</span>
            ) : undoes !== null ? (
              <span>{say("shell.actBefore", { act: undone(undoes) })}</span>
            ) : (
              say("shell.noAct")
            )}{" "}
            {back > 0 && (
              <TextLink
                onPress={() => session.undo()}
                label={undoes === null ? say("session.undo") : say("session.undoOf", { act: undone(undoes) })}
              >
                {say("session.undo")}
              </TextLink>
            )}{" "}
            {again > 0 && <TextLink onPress={() => session.redo()}>{say("session.redo")}</TextLink>}
          </div>
        </>
      )}
      <div>
        <span class="what">{say("shell.language")}</span>
        <select
          aria-label={say("shell.language")}
          value={language.tag}
          onChange={(event) => session.chooseLanguage(event.currentTarget.value)}
        >
          {languageTags
            .filter((tag) => !/^x[a-z]$/.test(tag) || tag === language.tag)
            .map((tag) => (
              <option key={tag} value={tag}>
                {languageFor(tag).name}
              </option>
            ))}
        </select>
        {isUnspoken && <p class="note">{say("shell.unspoken", { tag: classFile?.language ?? "" })}</p>}
      </div>
    </footer>
  );
}
