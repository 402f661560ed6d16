// Catches a fault of ours in a place: says what happened and offers the class as a file. There is never an empty page.
//
// The file is written here from what is in memory, because the fault may sit in anything else.
// Does not know: what went wrong.
import { Component, type ComponentChildren } from "preact";
import { say } from "../../language/index.ts";
import { saveClassCopy } from "../session/saveClassCopy.ts";
import type { Session } from "../session/session.ts";

interface GuardProps {
  readonly session: Session;
  readonly children?: ComponentChildren;
}

export class Guard extends Component<GuardProps, { readonly fault: string | null }> {
  override state = { fault: null as string | null };

  static override getDerivedStateFromError(error: unknown): { fault: string } {
    return { fault: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
  }

  render(): ComponentChildren {
    const { session, children } = this.props;
    const { fault } = this.state;
    if (fault === null) return children;
    const language = session.language.value;
    return (
      <main id="main" class="bare">
        <h1 tabIndex={-1}>{say(language, "shell.broke")}</h1>
        <p>{say(language, "shell.brokeHelp")}</p>
        <p class="acts">
          {session.classFile.value !== null && (
            <button type="button" onClick={() => void saveClassCopy(session)}>
              {say(language, "shell.saveCopy")}
            </button>
          )}
          <button type="button" onClick={() => location.reload()}>
            {say(language, "shell.openAnew")}
          </button>
        </p>
        <p class="note">{say(language, "shell.whatBrowserSaid", { detail: fault })}</p>
      </main>
    );
  }
}
