// A copy of the class as a file, in one tap, and opening one: a class, or the copy that a colleague changed on another laptop.
//
// Does not know: how a file is read or joined.
import { useSignal } from "@preact/signals";
import type { ClassFile } from "../../../school/file/index.ts";
import { Button, Message } from "../../pieces/index.ts";
import { saveClassCopy } from "../../session/saveClassCopy.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { goTo } from "../../shell/router.ts";
import { OpenFile } from "../first/OpenFile.tsx";

export function CopyAndOpen() {
  const session = useSession();
  const say = useSay();
  const saved = useSignal(false);
  const hasClass = session.classFile.value !== null;
  const age = session.copyAge.value;
  const open = (classFile: ClassFile): void => void session.begin(classFile, "file").then(() => goTo("#/today"));
  return (
    <>
      {session.store.trouble !== null && <Message says={say(`keeping.${session.store.trouble}`)} />}
      {hasClass && (
        <p>{age === null ? null : age.never ? say("settings.copyNever") : say("settings.copyAge", { days: age.days })}</p>
      )}
      <div
        class="acts"
        // A file that was chosen has its own answer; that of the copy would stand under it as if it were about that file.
        onChange={() => {
          saved.value = false;
        }}
      >
        {hasClass && (
          <Button
            id="save-copy"
            onPress={() =>
              void saveClassCopy(session).then(() => {
                saved.value = true;
              })
            }
          >
            {say("settings.saveCopy")}
          </Button>
        )}
        <OpenFile
          as={hasClass ? "link" : "framed"}
          label={say("settings.openFile")}
          takeLabel={say("opening.openIt")}
          onClass={open}
        />
      </div>
      {saved.value && <p role="status">{say("settings.copySaved")}</p>}
      {hasClass && <p class="note">{say("settings.copyHint")}</p>}
    </>
  );
}
