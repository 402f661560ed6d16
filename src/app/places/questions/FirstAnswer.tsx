// After the sixth question: the whole answer, what was assumed with the place where it is refined, and *Keep this class*.
//
// Does not know: how a class is kept.
import { useSignal } from "@preact/signals";
import { Button, Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { goTo } from "../../shell/router.ts";
import { AnswerSoFar } from "./AnswerSoFar.tsx";
import { noAnswers, questionNames } from "./answers.ts";
import { assumed, assumedQuestions } from "./classOf.ts";
import { questionsOf } from "./questionsOf.ts";
import { SoFar } from "./SoFar.tsx";

export function FirstAnswer() {
  const session = useSession();
  const say = useSay();
  const questions = questionsOf(session);
  const isKeeping = useSignal(false);
  const keep = async (then: string): Promise<void> => {
    const school = questions.school.value;
    if (school === null || isKeeping.value) return;
    isKeeping.value = true;
    await session.begin(school.classFile, "new");
    questions.set(noAnswers);
    goTo(then);
  };
  /** The place opens with the class, so the class is kept on the way there. */
  const later = (place: "pupils" | "cupboard" | "settings", link: string) => (
    <TextLink onPress={() => void keep(link)}>{say(`refined.${place}`)}</TextLink>
  );
  const open = assumedQuestions(questions.answers.value);
  return (
    <Page
      name={say("questions.firstAnswer")}
      under={
        <>
          <p>{say("questions.keepHint")}</p>
          <div class="acts">
            <Button onPress={() => void keep("#/today")}>{say("questions.keep")}</Button>
            <TextLink to="#/first">{say("questions.notNow")}</TextLink>
          </div>
        </>
      }
    >
      <AnswerSoFar />
      <Row as="section">
        <h2>{say("questions.assumedHeading")}</h2>
        <ul class="plain">
          {open.map((name) => (
            <li key={name}>
              {say(`assumed.${name}`, { ...assumed, ...assumed.pupils })}{" "}
              <TextLink to={`#/questions/${questionNames.indexOf(name) + 1}`}>{say("questions.answerIt")}</TextLink>
            </li>
          ))}
          <li>
            {say("questions.assumedNames")} {later("pupils", "#/pupils")}
          </li>
          <li>
            {say("questions.assumedBoxes")} {later("cupboard", "#/cupboard")}
          </li>
          <li>
            {say("questions.assumedChance", { chance: assumed.chance })} {later("settings", "#/settings")}
          </li>
        </ul>
      </Row>
      <SoFar />
    </Page>
  );
}
