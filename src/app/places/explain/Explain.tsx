// What does this message mean? One page for the two machines that refuse a class's program: the compiler and the up-loader.
//
// It needs no class and no lesson, because a team asks in the midst of a lesson.
// Does not know: what the messages mean.
import "./explain.css";
import { Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay } from "../../session/useSession.ts";
import { MessageHelp } from "./MessageHelp.tsx";
import { ProgramHelp } from "./ProgramHelp.tsx";

export function Explain() {
  const say = useSay();
  return (
    <Page
      class="explain"
      name={say("explainPage.name")}
      under={
        <nav class="index" aria-label={say("explainPage.which")}>
          <TextLink onPress={() => showPart("of-compiler")}>{say("explainPage.ofCompiler")}</TextLink>
          <TextLink onPress={() => showPart("of-uploader")}>{say("explainPage.ofUploader")}</TextLink>
        </nav>
      }
    >
      <Row as="section" at={<b>1</b>}>
        <h2 id="of-compiler" tabIndex={-1}>
          {say("explainPage.ofCompiler")}
        </h2>
        <ProgramHelp />
      </Row>
      <Row as="section" at={<b>2</b>}>
        <h2 id="of-uploader" tabIndex={-1}>
          {say("explainPage.ofUploader")}
        </h2>
        <MessageHelp />
      </Row>
    </Page>
  );
}

function showPart(id: string): void {
  const heading = document.getElementById(id);
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}
