// The page starts here: store, engine and session are made, then the shell takes the place of the first screen.
//
// Whatever fails on the way is told in words; there is never an empty page.
// Does not know: what is shown.
import "./look/page.css";
import { render } from "preact";
import { languageFor, say } from "../language/index.ts";
import { startEngine } from "./engine/startEngine.ts";
import { fetchLater, readyLater } from "./laterCode.ts";
import { looksOf } from "./places/settings/looksOf.ts";
import { makeSession } from "./session/makeSession.ts";
import { saveFile } from "./session/saveFile.ts";
import { startUndoKeys } from "./session/undoKeys.ts";
import { keepDrafts } from "./shell/keepDrafts.ts";
import { keepFocus } from "./shell/keepFocus.ts";
import { goTo, linkTo, startRouter } from "./shell/router.ts";
import { Shell } from "./shell/Shell.tsx";
import { lateStore, openStore } from "./store/index.ts";

async function start(root: HTMLElement): Promise<void> {
  readyLater();
  const opening = openStore();
  const engine = startEngine(opening);
  const isDemo = location.hash === "#/demo";
  // A class that is kept is read by the engine; its worker is unpacked while the store opens.
  if (!isDemo) engine.start();
  const session = await makeSession({
    engine,
    store: lateStore(opening),
    opened: opening,
    now: () => new Date(),
    freshId: () => crypto.randomUUID(),
    saveFile,
    forcedLanguage: new URLSearchParams(location.search).get("language"),
    browserLanguage: navigator.language,
    opensFirst: isDemo ? "demo" : "last",
  });
  startRouter((page) => (page === "" ? "Benchday" : say(session.language.value, "shell.windowTitle", { page })));
  startUndoKeys(session);
  keepFocus(root);
  // Size of type and strength of lines hold from the first moment.
  looksOf(session);
  if (isDemo) goTo(linkTo("today"), true);
  root.replaceChildren();
  render(<Shell session={session} />, root);
  // From here a tap is heard and does what it says.
  performance.mark("usable");
  keepDrafts(root, session);
  // The rest of the code, once what is there has been painted.
  requestAnimationFrame(() =>
    setTimeout(() => {
      void fetchLater().catch(() => {});
      engine.start();
    }, 0),
  );
}

const root = document.getElementById("page") ?? document.body;
start(root).catch((error: unknown) => {
  const language = languageFor(navigator.language);
  const line = (tag: string, text: string): HTMLElement => {
    const element = document.createElement(tag);
    element.textContent = text;
    return element;
  };
  root.replaceChildren(
    line("h1", say(language, "shell.broke")),
    line("p", say(language, "shell.startHelp")),
    line("p", say(language, "shell.whatBrowserSaid", { detail: String(error) })),
  );
});
