// A program that does not compile: what the compiler says first, where, what is behind it, and how to mend it.
//
// What compiles and is seldom meant follows; a class would not be told of it.
// Does not know: how it is found out.
import { useLayoutEffect, useRef } from "preact/hooks";
import type { FirstMessage, Wording } from "../../../bench/program/index.ts";
import { sayProblem, sayUnchecked } from "../../../language/index.ts";
import { decodeText } from "../../../school/file/index.ts";
import { Button, Choice, Drop, Field, Message, ProgressRuler } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { excerptOf, mendedLine } from "./excerpt.ts";
import { type ExplainedProgram, explainingOf, mostSigns } from "./explaining.ts";
import { ProgramLines } from "./ProgramLines.tsx";

export function ProgramHelp() {
  const session = useSession();
  const say = useSay();
  const explaining = explainingOf(session);
  const text = explaining.program.value;
  const wording = explaining.wording.value;
  const isLong = text.length > mostSigns;
  const notYet = isLong ? say("explainPage.tooLong") : text.trim() === "" ? say("explainPage.programFirst") : null;
  const ask = (file: string, program: string): void => {
    if (program.length <= mostSigns) explaining.programs.ask({ ask: "explain", file, text: program, wording });
  };
  return (
    <>
      <Choice
        label={say("explainPage.words")}
        value={wording}
        options={[
          { value: "old", label: say("explainPage.oldWords"), note: <code>{say("explainPage.oldSample")}</code> },
          { value: "new", label: say("explainPage.newWords"), note: <code>{say("explainPage.newSample")}</code> },
        ]}
        onChange={(words) => explaining.setWording(words as Wording)}
      />
      <Field
        label={say("explainPage.program")}
        hint={say("explainPage.programHint")}
        lines={9}
        value={text}
        onInput={explaining.setProgram}
        problem={isLong ? say("explainPage.tooLong") : null}
      />
      <div class="acts">
        <Button notYet={notYet} onPress={() => ask(say("explainPage.pastedName"), text)}>
          {say("explainPage.explain")}
        </Button>
      </div>
      <Drop
        label={say("explainPage.orOpen")}
        accept=".cpp,.h,.txt"
        paste={false}
        onData={(file, bytes) => {
          const program = decodeText(bytes).text;
          explaining.setProgram(program);
          ask(file, program);
        }}
      />
      <Answer />
    </>
  );
}

function Answer() {
  const session = useSession();
  const { programs } = explainingOf(session);
  const { value, progress, trouble, fresh } = programs.answer.value;
  const language = session.language.value;
  if (trouble !== null) return <Message live says={sayUnchecked(language, `engine.${trouble}`)} />;
  if (progress)
    return (
      <ProgressRuler
        done={progress.done}
        total={progress.total}
        says={sayUnchecked(language, `engine.${progress.doing}`)}
        onStop={programs.stop}
      />
    );
  return value && fresh ? <Explained answer={value} /> : null;
}

function Explained({ answer }: { readonly answer: ExplainedProgram }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current?.focus(), [answer]);
  const { first, silent } = answer.said;
  return (
    <section class="answer" aria-labelledby="explained">
      <h3 id="explained" tabIndex={-1} ref={heading}>
        {first === null ? say("explainPage.compiles") : say("explainPage.saysFirst")}
      </h3>
      {first !== null && <First file={answer.file} rows={answer.rows} first={first} />}
      {silent.length > 0 && (
        <>
          <h3>{say("explainPage.silent")}</h3>
          <p class="note">{say("explainPage.silentNote")}</p>
          <ul>
            {silent.map((problem, n) => {
              const { says, try: tries } = sayProblem(language, problem);
              const line = problem.place?.line;
              return (
                <li key={n} class="message">
                  <p>
                    <b>{line === undefined ? says : say("explainPage.atLine", { line, says })}</b>
                  </p>
                  {line !== undefined && (
                    <ProgramLines lines={[{ line, before: answer.rows[line - 1] ?? "", token: "", after: "" }]} marked={null} />
                  )}
                  <p>{tries}</p>
                </li>
              );
            })}
          </ul>
        </>
      )}
      {first === null && silent.length === 0 && <p>{say("explainPage.nothingSilent")}</p>}
    </section>
  );
}

function First({ file, rows, first }: { readonly file: string; readonly rows: readonly string[]; readonly first: FirstMessage }) {
  const say = useSay();
  const language = useSession().language.value;
  const words = (family: "mistakeSays" | "mistakeLook" | "mistakeTry") =>
    sayUnchecked(language, `${family}.${first.code}`, { ...first });
  const where = first.line === null ? file : `${file}:${first.line}:${first.column}`;
  return (
    <>
      <p class="said" dir="ltr">
        <code>
          {where}: {first.severity}: <b>{first.message}</b>
        </code>
      </p>
      {first.macro !== null && <p class="note">{say("explainPage.inHeader", { name: first.macro })}</p>}
      {first.line === null && <p class="note">{say("explainPage.linker")}</p>}
      <ProgramLines lines={excerptOf(rows, first)} marked={first.line} />
      <dl class="meaning">
        <dt>{say("explainPage.whatIsWrong")}</dt>
        <dd>{words("mistakeSays")}</dd>
        <dt>{say("explainPage.where")}</dt>
        <dd>{words("mistakeLook")}</dd>
        <dt>{say("explainPage.how")}</dt>
        <dd>
          {words("mistakeTry")}
          {first.fix !== null && (
            <>
              <p class="note">{say("explainPage.mended")}</p>
              <ProgramLines lines={[mendedLine(rows, first.fix)]} marked={null} />
            </>
          )}
        </dd>
      </dl>
      <p class="note">{say(first.severity === "error" ? "explainPage.oneAtATime" : "explainPage.isWarning")}</p>
    </>
  );
}
