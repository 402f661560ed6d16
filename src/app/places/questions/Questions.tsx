// One of the six first questions: one a page, its number at the bench line, earlier answers and the answer so far below.
//
// Nothing is judged while a person types. What is wrong stands beside the field and, the same words, in a list at the top that
// takes the focus. *I do not know yet* is always allowed.
// Does not know: how answers are read, what is computed from them.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { formatNumber } from "../../../language/index.ts";
import { Button, Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { address, goTo } from "../../shell/router.ts";
import { AnswerSoFar } from "./AnswerSoFar.tsx";
import { type Answers, nextQuestion, type QuestionName, questionNames } from "./answers.ts";
import { FirstAnswer } from "./FirstAnswer.tsx";
import {
  BoxesFields,
  ComputersFields,
  type FieldsProps,
  LessonsFields,
  MeetingFields,
  MoneyFields,
  PupilsFields,
  troubleText,
} from "./fields.tsx";
import { questionsOf } from "./questionsOf.ts";
import "./questions.css";
import type { FieldProblem, ReadFields } from "./readFields.ts";
import { SoFar } from "./SoFar.tsx";

/** Where the last question leads. */
const answerPlace = "answer";

export function Questions() {
  const session = useSession();
  const questions = questionsOf(session);
  const part = address.value.rest[0] ?? "";
  const number = /^[1-6]$/.test(part) ? Number(part) : null;
  // The fields of a page begin with what was answered before, so they wait for the note.
  if (!questions.isLoaded.value || session.shipped.value === null) return <Waiting />;
  if (part === answerPlace && nextQuestion(questions.answers.value) === null) return <FirstAnswer />;
  const shown = number ?? nextQuestion(questions.answers.value) ?? 1;
  return <Question key={shown} number={shown} />;
}

function Waiting() {
  const say = useSay();
  return <Page class="told" name={say("questions.title")} under={<p>{say("questions.loading")}</p>} />;
}

function Question({ number }: { readonly number: number }) {
  const session = useSession();
  const say = useSay();
  const questions = questionsOf(session);
  const name = questionNames[number - 1]!;
  const problems = useSignal<readonly FieldProblem[]>([]);
  const summary = useRef<HTMLDivElement>(null);
  const answers = questions.answers.value;
  const take = <Name extends QuestionName>(answer: Answers[Name]): void => {
    const next = { ...answers, [name]: answer };
    questions.set(next);
    const open = nextQuestion(next);
    goTo(open === null ? `#/questions/${answerPlace}` : `#/questions/${open}`);
  };
  const done = (read: ReadFields<Answers[QuestionName]>): void => {
    if ("value" in read) take(read.value);
    else problems.value = [...read.problems];
  };
  useEffect(() => {
    if (problems.value.length > 0) summary.current?.focus();
  }, [problems.value]);
  /** What the line is called, as it stands above it. */
  const fieldName = ({ field }: FieldProblem): string => {
    const label = document.querySelector(`label[for="q-${CSS.escape(field)}"], #q-${CSS.escape(field)} legend`);
    return label?.textContent ?? say(`question.${name}`);
  };
  const Fields = fieldsOf[name];
  return (
    <Page
      class="told"
      name={say(`question.${name}`)}
      at={
        <>
          <b>{formatNumber(session.language.value, number)}</b>{" "}
          <span class="unit">{say("questions.of", { total: questionNames.length })}</span>
        </>
      }
      over={<p class="note">{say("questions.label")}</p>}
      under={
        <>
          <p class="note">{say(`questionHint.${name}`)}</p>
          {problems.value.length > 0 && (
            <div class="message" ref={summary} tabIndex={-1} role="alert">
              <p>
                <b>{say("questions.lookAgain", { count: problems.value.length })}</b>
              </p>
              <ul>
                {problems.value.map((problem) => (
                  <li key={problem.field}>
                    <TextLink onPress={() => document.getElementById(`q-${problem.field}`)?.focus()}>
                      {say("questions.fieldTrouble", { name: fieldName(problem), trouble: troubleText(problem, say) })}
                    </TextLink>
                  </li>
                ))}
              </ul>
            </div>
          )}
          <Fields answers={answers} problems={problems.value} onDone={done}>
            <div class="acts">
              <Button submit>{say("questions.goOn")}</Button>
              <TextLink onPress={() => take("unknown")}>{say("questions.unknown")}</TextLink>
            </div>
          </Fields>
        </>
      }
    >
      <SoFar except={name} />
      <AnswerSoFar />
      <Row>
        <p class="note">{say("questions.keptAsYouGo")}</p>
      </Row>
    </Page>
  );
}

const fieldsOf: Readonly<Record<QuestionName, (props: FieldsProps) => ComponentChildren>> = {
  pupils: PupilsFields,
  meeting: MeetingFields,
  lessons: LessonsFields,
  boxes: BoxesFields,
  computers: ComputersFields,
  money: MoneyFields,
};
