// What was answered so far, each with *change*, and what is assumed where the answer is not known yet.
//
// Does not know: how answers are read.
import { formatList } from "../../../language/index.ts";
import { Row, TextLink } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { type Answers, type QuestionName, questionNames } from "./answers.ts";
import { questionsOf } from "./questionsOf.ts";

/** @param except the question that is asked on this page. */
export function SoFar({ except }: { readonly except?: QuestionName }) {
  const say = useSay();
  const words = useAnswerWords();
  const { answers } = questionsOf(useSession());
  const shown = questionNames.filter((name) => answers.value[name] !== null && name !== except);
  if (shown.length === 0) return null;
  return (
    <Row as="section">
      <h2>{say("questions.soFar")}</h2>
      <dl class="so-far">
        {shown.map((name) => (
          <div key={name}>
            <dt>
              {questionNames.indexOf(name) + 1} {say(`question.${name}`)}
            </dt>
            <dd>{words(name)}</dd>
            <dd>
              <TextLink
                to={`#/questions/${questionNames.indexOf(name) + 1}`}
                label={say("questions.changeWhat", { question: say(`question.${name}`) })}
              >
                {say("questions.change")}
              </TextLink>
            </dd>
          </div>
        ))}
      </dl>
    </Row>
  );
}

/** @returns how an answer is told in one line. */
function useAnswerWords(): (name: QuestionName) => string {
  const say = useSay();
  const session = useSession();
  const { answers } = questionsOf(session);
  const shipped = session.shipped.value;
  const language = session.language.value;
  const all = answers.value;
  const kitName = (id: string) => shipped?.kits.get(id)?.name ?? id;
  const words: { readonly [Name in QuestionName]: (said: Exclude<Answers[Name], null | "unknown">) => string } = {
    pupils: ({ count, teamSize }) => say("said.pupils", { count, teamSize }),
    meeting: ({ first, start, minutes, weeks }) => say("said.meeting", { first, start, minutes, weeks }),
    lessons: (ids) =>
      formatList(
        language,
        ids.map((id) => lessonTitle(shipped, id, language.tag)),
      ),
    boxes: (boxes) =>
      boxes.length === 0
        ? say("said.noBoxes")
        : formatList(
            language,
            boxes.map(({ kit, count }) => say("said.boxes", { count, kit: kitName(kit) })),
          ),
    computers: ({ count }) => say("said.computers", { count }),
    money: ({ currency, budget, kit, price }) =>
      [
        budget === null ? say("said.noBudget") : say("said.budget", { money: `${budget} ${currency}` }),
        kit === null || price === null
          ? say("said.noPrice")
          : say("said.price", { kit: kitName(kit), money: `${price} ${currency}` }),
      ].join(" "),
  };
  return (name) => {
    const answer = all[name];
    if (answer === "unknown" || answer === null) return say("questions.notKnown");
    return (words[name] as (said: unknown) => string)(answer);
  };
}
