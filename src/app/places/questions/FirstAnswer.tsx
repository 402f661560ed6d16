// After the sixth question: the whole answer, what was assumed with the place where it is refined, and *Keep this class*.
//
// Does not know: how a class is kept.
import { useSignal } from "@preact/signals";
import type { Assumed, AssumedCode } from "../../../school/changes/index.ts";
import { Button, Page, Row, TextLink } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { goTo } from "../../shell/router.ts";
import { AnswerSoFar } from "./AnswerSoFar.tsx";
import { noAnswers } from "./answers.ts";
import { questionsOf } from "./questionsOf.ts";
import { SoFar } from "./SoFar.tsx";

/** The question that says it, or the place where it is refined once the class is kept. */
const refinedAt: Readonly<Record<AssumedCode, number | "pupils" | "course" | "cupboard" | "order" | "settings">> = {
  pupils: 1,
  names: "pupils",
  teamSize: 1,
  when: 2,
  weekly: 2,
  noHolidays: "course",
  lessons: 3,
  earlierLessons: 3,
  longLessons: "course",
  noBoxes: 4,
  computers: 5,
  batteryUnknown: "cupboard",
  usbPorts: "cupboard",
  sockets: "settings",
  currency: 6,
  delivery: "order",
  noLimit: 6,
  chance: "settings",
};

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
    goTo(then);
    questions.set(noAnswers);
  };
  const language = session.language.value;
  const words = ({ code, data }: Assumed): string => {
    const { lessons, milliamps, ...rest } = data as { lessons?: readonly string[]; milliamps?: number };
    return say(`assumed.${code}`, {
      ...rest,
      ...(lessons ? { lessons: lessons.map((id) => lessonTitle(session.shipped.value, id, language.tag)) } : {}),
      ...(milliamps ? { amps: milliamps / 1000 } : {}),
    });
  };
  return (
    <Page
      class="told"
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
      <AnswerSoFar whole />
      <Row as="section">
        <h2>{say("questions.assumedHeading")}</h2>
        <ul class="plain">
          {questions.assumed.value.map((fact) => {
            const at = refinedAt[fact.code];
            return (
              <li key={fact.code}>
                {words(fact)}{" "}
                {typeof at === "number" ? (
                  <TextLink to={`#/questions/${at}`} label={say("questions.changeWhat", { question: words(fact) })}>
                    {say("questions.change")}
                  </TextLink>
                ) : (
                  // The place opens with the class, so the class is kept on the way there.
                  <TextLink onPress={() => void keep(`#/${at}`)}>{say(`refined.${at}`)}</TextLink>
                )}
              </li>
            );
          })}
        </ul>
      </Row>
      <SoFar />
    </Page>
  );
}
