// A program that does not get onto the board: what the up-loader wrote, and what may be behind it, the likeliest first.
//
// The message is pasted or opened as a text, or chosen from the list of those that are met in class.
// Does not know: how likely a cause is.
import { useLayoutEffect, useRef } from "preact/hooks";
import { type SetupCause, type SetupMessage, setupCauses, setupMessages, setupWords } from "../../../bench/setup/index.ts";
import { sayUnchecked } from "../../../language/index.ts";
import { decodeText } from "../../../school/file/index.ts";
import { Button, Choice, Drop, Field, Message } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { explainingOf, mostSigns } from "./explaining.ts";

export function MessageHelp() {
  const session = useSession();
  const say = useSay();
  const explaining = explainingOf(session);
  const text = explaining.message.value;
  const ask = (message: string): void => {
    explaining.choose(null);
    if (message.length <= mostSigns) explaining.messages.ask({ ask: "explainMessage", text: message });
  };
  return (
    <>
      <Choice
        label={say("explainPage.whichMessage")}
        as="list"
        value={explaining.chosen.value}
        none={say("explainPage.chooseMessage")}
        options={setupMessages.map((message) => ({ value: message, label: inTheList(say(`setupMessage.${message}`), message) }))}
        onChange={(message) => explaining.choose(message as SetupMessage)}
      />
      <Field
        label={say("explainPage.orPaste")}
        hint={say("explainPage.messageHint")}
        lines={5}
        value={text}
        onInput={explaining.setMessage}
        problem={text.length > mostSigns ? say("explainPage.tooLong") : null}
      />
      <div class="acts">
        <Button notYet={text.trim() === "" ? say("explainPage.messageFirst") : null} onPress={() => ask(text)}>
          {say("explainPage.findCauses")}
        </Button>
      </div>
      <Drop
        label={say("explainPage.orOpenMessage")}
        accept=".txt,.log"
        paste={false}
        onData={(_, bytes) => {
          const message = decodeText(bytes).text;
          explaining.setMessage(message);
          ask(message);
        }}
      />
      <Answer />
    </>
  );
}

/** Its meaning, and how it begins on the screen of a class. */
function inTheList(means: string, message: SetupMessage): string {
  const words = setupWords[message];
  return words === null ? means : `${means} ${words}`;
}

function Answer() {
  const session = useSession();
  const say = useSay();
  const { chosen, messages } = explainingOf(session);
  const { value, fresh, trouble } = messages.answer.value;
  if (chosen.value !== null)
    return <Causes message={chosen.value} found={setupWords[chosen.value]} causes={setupCauses(chosen.value)} port={null} />;
  if (trouble !== null) return <Message live says={sayUnchecked(session.language.value, `engine.${trouble}`)} />;
  if (!value || !fresh) return null;
  if (value.message === null)
    return <Message live says={say("explainPage.unknownMessage")} try={say("explainPage.unknownTry")} />;
  return <Causes message={value.message} found={value.found} causes={value.causes} port={value.port} />;
}

interface CausesProps {
  readonly message: SetupMessage;
  readonly found: string | null;
  readonly causes: readonly SetupCause[];
  readonly port: string | null;
}

function Causes({ message, found, causes, port }: CausesProps) {
  const say = useSay();
  const heading = useRef<HTMLHeadingElement>(null);
  const chosen = explainingOf(useSession()).chosen.value;
  // A list that is walked through by keys keeps the focus; an answer to a button takes it.
  useLayoutEffect(() => {
    if (chosen === null) heading.current?.focus();
  }, [message, found]);
  return (
    <section class="answer" aria-labelledby="causes">
      <h3 id="causes" tabIndex={-1} ref={heading} aria-live="polite">
        {say(`setupMessage.${message}`)}
      </h3>
      {found !== null && (
        <p class="said" dir="ltr">
          <code>{found.slice(0, 400)}</code>
        </p>
      )}
      {port !== null && (
        <p>
          {say("explainPage.port")} <code>{port}</code>
        </p>
      )}
      <p class="note">{say("explainPage.causesNote")}</p>
      <ol class="causes">
        {causes.map((cause, n) => (
          <li key={cause}>
            <p>
              <b>
                {n + 1}. {say(`setupCause.${cause}`)}
              </b>
            </p>
            <p>{say(`setupCheck.${cause}`)}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}
