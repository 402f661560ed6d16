// What runs where, which version this is, its licence, and a problem report as a file without names.
//
// Does not know: how the engine or the store came to run as they do.
import { version } from "../../../../package.json" with { type: "json" };
import { Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { lookInto } from "./lookInto.ts";
import { problemReport } from "./report.ts";

export function About() {
  const session = useSession();
  const say = useSay();
  const { engine, store } = session;
  // The answer of the plan changes when the engine has begun, and with it what it says of itself.
  void session.plan.value;
  const saveReport = (): void => {
    const file = session.classFile.peek();
    const text = problemReport(session.language.peek(), {
      version,
      browser: navigator.userAgent,
      window: { width: innerWidth, height: innerHeight },
      openedFrom: location.protocol,
      runs: engine.runs,
      storageTrouble: store.trouble,
      persistent: store.persistent,
      keptWord: session.kept.peek().word,
      troubles: [session.plan.peek().trouble, session.order.peek().trouble].filter((trouble) => trouble !== null),
      lastKinds: [session.lastAct.peek()?.change.kind].filter((kind) => kind !== undefined),
      holds: file === null ? null : lookInto(file, session.today.peek()),
    });
    void session.saveFile(`benchday-report-${session.today.peek()}.txt`, text, "text/plain");
  };
  return (
    <Row as="section">
      <h2>{say("settings.whatRuns")}</h2>
      <ul class="plain">
        <li>{say("settings.engineRuns", { runs: engine.runs })}</li>
        <li>
          {store.trouble === null
            ? say("settings.storageThere", { persistent: store.persistent ? "yes" : "no" })
            : say(`keeping.${store.trouble}`)}
        </li>
        <li>{say("settings.nothingSent")}</li>
        <li>{say("settings.version", { version })}</li>
      </ul>
      <p>
        <TextLink onPress={saveReport}>{say("settings.report")}</TextLink>
      </p>
      <p class="note">{say("settings.reportWhat")}</p>
    </Row>
  );
}
