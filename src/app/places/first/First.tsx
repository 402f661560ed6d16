// The first page: what this is, the language, and four ways in: six questions, the invented harbour, a file, a class kept here.
//
// Says early what is kept where, and where nothing can be kept that the class comes and goes as a file.
// Does not know: how a class is kept or read.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { languageFor, languageTags, sayUnchecked } from "../../../language/index.ts";
import { Button, Message, Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { goTo } from "../../shell/router.ts";
import type { StoredClass } from "../../store/store.ts";
import { nextQuestion } from "../questions/answers.ts";
import { questionsOf } from "../questions/questionsOf.ts";
import "../questions/questions.css";
import { OpenFile } from "./OpenFile.tsx";

export function First() {
  const session = useSession();
  const say = useSay();
  const { answers } = questionsOf(session);
  const kept = useSignal<readonly StoredClass[]>([]);
  useEffect(() => {
    void session.store.classes().then((classes) => {
      kept.value = classes;
    });
  }, []);
  const begun = Object.values(answers.value).some((answer) => answer !== null);
  const language = session.language.value;
  return (
    <Page
      class="told"
      name={say("first.name")}
      heading={say("first.heading")}
      over={<Languages />}
      under={
        <>
          <p>{say("first.what")}</p>
          <div class="acts">
            <Button to={begun ? `#/questions/${nextQuestion(answers.value) ?? "answer"}` : "#/questions/1"}>
              {say(begun ? "first.goOn" : "first.sixQuestions")}
            </Button>
            <TextLink onPress={() => void session.openDemo().then(() => goTo("#/today"))}>{say("first.demo")}</TextLink>
            <OpenFile
              as="link"
              label={say("first.openFile")}
              takeLabel={say("opening.openIt")}
              onClass={(classFile) => void session.begin(classFile, "file").then(() => goTo("#/today"))}
            />
          </div>
        </>
      }
    >
      {kept.value.length > 0 && (
        <Row as="section" at={kept.value.length}>
          <h2>{say("first.keptHere")}</h2>
          <ul class="plain">
            {kept.value.map(({ id, title }) => (
              <li key={id}>
                <TextLink onPress={() => void session.reopen(id).then(() => goTo("#/today"))}>
                  <bdi>{title}</bdi>
                </TextLink>
              </li>
            ))}
          </ul>
        </Row>
      )}
      <Row as="section">
        <h2>{say("first.whereKept")}</h2>
        {session.store.trouble === null ? (
          <p>{say("first.keptWhere")}</p>
        ) : (
          <Message says={sayUnchecked(language, `keeping.${session.store.trouble}`)} />
        )}
        <p>{say("first.offline")}</p>
      </Row>
    </Page>
  );
}

/** Language first: before anything has to be read. */
function Languages() {
  const session = useSession();
  const say = useSay();
  const tags = languageTags.filter((tag) => !/^x[a-z]$/.test(tag));
  return (
    <p class="note">
      {say("first.language")}{" "}
      {tags.map((tag) => (
        <span key={tag} lang={tag}>
          <TextLink pressed={tag === session.language.value.tag} onPress={() => session.chooseLanguage(tag)}>
            {languageFor(tag).name}
          </TextLink>{" "}
        </span>
      ))}
    </p>
  );
}
