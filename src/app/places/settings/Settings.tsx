// Settings: how the page looks, what holds for the whole class file, copies and days before, and what runs where.
//
// One column along the bench line, the most used first: a copy as a file is one tap. Nothing asks "are you sure"; what takes
// something away offers to bring it back.
// Does not know: how a class is kept, how the settings act on plans and papers.
import { Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { About } from "./About.tsx";
import { ClassesHere } from "./ClassesHere.tsx";
import { CopyAndOpen } from "./CopyAndOpen.tsx";
import { DaysBefore } from "./DaysBefore.tsx";
import { JoinCopy } from "./JoinCopy.tsx";
import { LookSettings } from "./LookSettings.tsx";
import { OfTheClass } from "./OfTheClass.tsx";
import "./settings.css";

export function Settings() {
  const session = useSession();
  const say = useSay();
  const hasClass = session.classFile.value !== null;
  return (
    <Page class="told" name={say("settings.name")} under={<CopyAndOpen />}>
      <LookSettings />
      {hasClass && <OfTheClass />}
      {hasClass && <DaysBefore />}
      {hasClass && <JoinCopy />}
      <ClassesHere />
      <About />
      {!hasClass && (
        <Row>
          <TextLink to="#/first">{say("settings.toFirst")}</TextLink>
        </Row>
      )}
    </Page>
  );
}
