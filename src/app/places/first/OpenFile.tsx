// Opens a class file: a button, or a file dropped anywhere on the page. Says what the file is where it is no class file.
//
// A file is looked at by its first bytes before it is read, so that a picture or a film costs nothing. The class that is open
// stays as it is until a whole class file was read. A file with doubts is opened by a second press, after they were told.
// Does not know: what is done with the class.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { sayUnchecked } from "../../../language/index.ts";
import type { ClassFile } from "../../../school/file/index.ts";
import { EngineBroken, type EngineProblem, Stopped } from "../../engine/engine.ts";
import { Button, Message, Problem, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { type FileKind, whatKind } from "./whatKind.ts";

export interface OpenFileProps {
  /** "framed" is the one button of its step. */
  readonly as: "framed" | "link";
  readonly label: ComponentChildren;
  /** Called with a class that was read whole. */
  readonly onClass: (classFile: ClassFile, fileName: string) => void;
  /** Takes a file that is dropped anywhere on the page; usual. Only one of a page may. */
  readonly drops?: boolean;
  /** What the person presses to take a file in spite of its doubts. */
  readonly takeLabel: ComponentChildren;
}

type Outcome =
  | { readonly word: "reading"; readonly name: string }
  | { readonly word: "other kind"; readonly name: string; readonly kind: Exclude<FileKind, "class"> }
  | { readonly word: "problems"; readonly name: string; readonly problems: readonly EngineProblem[] }
  | { readonly word: "doubts"; readonly name: string; readonly problems: readonly EngineProblem[]; readonly value: ClassFile }
  | { readonly word: "trouble"; readonly name: string; readonly trouble: string };

/** Enough to tell what kind of file it is. */
const startBytes = 4096;
/** A broken file may have hundreds of problems, and the first few tell. */
const problemsShown = 8;

export function OpenFile({ as, label, onClass, takeLabel, drops = true }: OpenFileProps) {
  const session = useSession();
  const say = useSay();
  const input = useRef<HTMLInputElement>(null);
  const outcome = useSignal<Outcome | null>(null);
  const turn = useRef(0);

  const take = async (file: File | null | undefined): Promise<void> => {
    if (!file) return;
    turn.current += 1;
    const mine = turn.current;
    const tell = (next: Outcome | null): void => {
      if (mine === turn.current) outcome.value = next;
    };
    const { name } = file;
    tell({ word: "reading", name });
    try {
      const kind = whatKind(name, file.size, await bytesOf(file.slice(0, startBytes)));
      if (kind !== "class") return tell({ word: "other kind", name, kind });
      const { value, problems } = await session.engine.readClass(name, await bytesOf(file)).answer;
      if (mine !== turn.current) return;
      if (value === null) return tell({ word: "problems", name, problems });
      if (problems.length > 0) return tell({ word: "doubts", name, problems, value });
      tell(null);
      onClass(value, name);
    } catch (fault) {
      if (!(fault instanceof Stopped))
        tell({
          word: "trouble",
          name,
          trouble: fault instanceof EngineBroken ? `engine.${fault.remedy}` : "opening.notReadable",
        });
    }
  };

  // A file that misses the button by a hand's breadth would else replace the page.
  useEffect(() => {
    if (!drops) return;
    const over = (event: DragEvent) => event.preventDefault();
    const drop = (event: DragEvent) => {
      event.preventDefault();
      void take(event.dataTransfer?.files[0]);
    };
    document.addEventListener("dragover", over);
    document.addEventListener("drop", drop);
    return () => {
      document.removeEventListener("dragover", over);
      document.removeEventListener("drop", drop);
    };
  }, []);

  const choose = () => input.current?.click();
  return (
    <>
      {as === "framed" ? <Button onPress={choose}>{label}</Button> : <TextLink onPress={choose}>{label}</TextLink>}
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={say("opening.file")}
        onChange={(event) => {
          void take(event.currentTarget.files?.[0]);
          event.currentTarget.value = "";
        }}
      />
      {outcome.value && (
        <div class="opened">
          <Told outcome={outcome.value} />
          {outcome.value.word === "doubts" && (
            <div class="acts">
              <Button
                onPress={() => {
                  const told = outcome.value;
                  outcome.value = null;
                  if (told?.word === "doubts") onClass(told.value, told.name);
                }}
              >
                {takeLabel}
              </Button>
            </div>
          )}
        </div>
      )}
    </>
  );
}

function Told({ outcome }: { readonly outcome: Outcome }): ComponentChildren {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const name = <bdi>{outcome.name}</bdi>;
  const stays = session.classFile.value === null ? null : <p>{say("opening.staysAsItIs")}</p>;
  if (outcome.word === "reading") return <p role="status">{say("opening.reading", { name: outcome.name })}</p>;
  if (outcome.word === "other kind")
    return (
      <Message
        live
        says={
          <>
            {name}: {say(`fileKind.${outcome.kind}`)}
          </>
        }
        expected={say("opening.expectedClass")}
        try={say(`fileKindTry.${outcome.kind}`)}
      >
        {stays}
      </Message>
    );
  if (outcome.word === "trouble")
    return (
      <Message
        live
        says={
          <>
            {name}: {sayUnchecked(language, outcome.trouble)}
          </>
        }
      >
        {stays}
      </Message>
    );
  const { problems } = outcome;
  return (
    <div role="alert">
      <p>
        <b>
          {say(outcome.word === "doubts" ? "opening.hasDoubts" : "opening.cannotOpen", {
            name: outcome.name,
            count: problems.length,
          })}
        </b>
      </p>
      {problems.slice(0, problemsShown).map((problem, n) => (
        <Problem key={n} problem={problem} />
      ))}
      {problems.length > problemsShown && <p class="note">{say("opening.more", { count: problems.length - problemsShown })}</p>}
      {outcome.word === "problems" && stays}
    </div>
  );
}

async function bytesOf(blob: Blob): Promise<Uint8Array> {
  return new Uint8Array(await blob.arrayBuffer());
}
