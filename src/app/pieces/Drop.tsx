// Takes a list in: paste it, drop a file, or open one.
//
// What comes is handed on as bytes, because only the reader knows encodings and separators.
// Does not know: what the list is of.
import type { ComponentChildren } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import { useSay } from "../session/useSession.ts";
import { Button } from "./Button.tsx";
import { Message } from "./Message.tsx";

export interface DropProps {
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
  /** Endings that the file window offers: ".csv,.txt". */
  readonly accept: string;
  readonly onData: (fileName: string, bytes: Uint8Array) => void;
  /** A box to paste into; usual. */
  readonly paste?: boolean;
}

/** Larger than any list of a school, smaller than what makes an old laptop stand still. */
const mostBytes = 8_000_000;

export function Drop({ label, hint, accept, onData, paste = true }: DropProps) {
  const say = useSay();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  const [trouble, setTrouble] = useState<"shell.fileTooLarge" | "shell.fileUnreadable" | null>(null);
  const take = async (file: File | null | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > mostBytes) return setTrouble("shell.fileTooLarge");
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      setTrouble(null);
      onData(file.name, bytes);
    } catch {
      setTrouble("shell.fileUnreadable");
    }
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping a file is a second way; the button is the first
    <div
      class="drop field"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void take(event.dataTransfer?.files[0]);
      }}
    >
      {paste ? (
        <>
          <label for={id}>{label}</label>
          {hint && (
            <p class="note" id={`${id}-hint`}>
              {hint}
            </p>
          )}
          <textarea
            id={id}
            rows={5}
            dir="auto"
            spellcheck={false}
            aria-describedby={hint ? `${id}-hint` : undefined}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </>
      ) : (
        <>
          <p>
            <b>{label}</b>
          </p>
          {hint && <p class="note">{hint}</p>}
        </>
      )}
      <div class="acts">
        {paste && text.trim() !== "" && (
          <Button onPress={() => onData("", new TextEncoder().encode(text))}>{say("pieces.readThis")}</Button>
        )}
        <Button onPress={() => input.current?.click()}>{say("pieces.openFile")}</Button>
        <input
          ref={input}
          type="file"
          accept={accept}
          hidden
          aria-label={say("pieces.openFile")}
          onChange={(event) => {
            void take(event.currentTarget.files?.[0]);
            event.currentTarget.value = "";
          }}
        />
      </div>
      {trouble && <Message live says={say(trouble)} />}
    </div>
  );
}
