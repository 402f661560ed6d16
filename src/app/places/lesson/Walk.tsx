// A program with its lines running: where it stands, the ways to go on and back, and all that holds there.
//
// On the lesson page and, larger, on the wall. After each move one short sentence is told to a listener.
// Does not know: how a walk is made.
import { useEffect, useState } from "preact/hooks";
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { WalkStep } from "../../../bench/program/index.ts";
import { formatList, formatNumber, type Language, sayProblem, sayUnchecked } from "../../../language/index.ts";
import { decodeText } from "../../../school/file/index.ts";
import { Button, Drop, Field, Message, ProgressRuler, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { goTo, linkTo } from "../../shell/router.ts";
import { explainingOf, mostSigns } from "../explain/explaining.ts";
import { ByHand } from "./ByHand.tsx";
import { WalkLines } from "./WalkLines.tsx";
import { PinTable, pinWords, SeenTable, SentText, ValueTable } from "./WalkTables.tsx";
import type { Walking } from "./walking.ts";

export interface WalkProps {
  readonly lesson: Lesson;
  readonly walking: Walking;
}

export function Walk({ lesson, walking }: WalkProps) {
  const say = useSay();
  useEffect(() => walking.setOpen(true), [walking]);
  return (
    <div class="walk">
      <Told walking={walking} />
      <Ways walking={walking} />
      <div class="stands">
        <div>
          <Listing walking={walking} around={6} />
        </div>
        <Holds lesson={lesson} walking={walking} />
      </div>
      <h3>{say("walkPage.atTheTable")}</h3>
      <p class="note">{say("walkPage.strongSupply")}</p>
      <ByHand lesson={lesson} walking={walking} />
      <OtherProgram walking={walking} />
    </div>
  );
}

/** What stands here now, in one sentence. */
export function Told({ walking }: { readonly walking: Walking }) {
  const language = useSession().language.value;
  const say = useSay();
  const answer = walking.answer.value;
  const missed = walking.missed.value;
  const trouble = walking.trouble.value;
  const progress = walking.progress.value;
  const step = answer?.step ?? null;
  return (
    <>
      <p role="status" class="told">
        {trouble !== null
          ? sayUnchecked(language, `engine.${trouble}`)
          : missed !== null
            ? say("walkPage.doesNotCome", { line: missed })
            : step === null
              ? say(answer === null ? "walkPage.begins" : "walkPage.doesNotRun")
              : standing(language, step, answer?.seconds ?? 0)}
      </p>
      {progress && (
        <ProgressRuler
          done={progress.done}
          total={progress.total}
          says={sayUnchecked(language, `engine.${progress.doing}`)}
          onStop={walking.stop}
        />
      )}
      <Problems walking={walking} />
    </>
  );
}

function standing(language: Language, step: WalkStep, seconds: number): string {
  const say = (key: string, data: Readonly<Record<string, unknown>> = {}) => sayUnchecked(language, `walkPage.${key}`, data);
  if (step.ended !== null) {
    const isOver = step.ended.why === "stopped" && step.micros < seconds * 1e6 - 1000;
    return say(isOver ? "endedReset" : endings[step.ended.why], { line: step.line, seconds: step.micros / 1e6 });
  }
  const changed = step.pins
    .filter((pin) => pin.changed)
    .map((pin) => say("pinIs", { pin: pin.pin, state: pinWords(language, pin) }));
  const next = say("nextIs", { line: step.line, seconds: step.micros / 1e6 });
  return changed.length === 0 ? next : say("pinsAndNext", { pins: formatList(language, changed), next });
}

const endings = {
  until: "endedOver",
  stopped: "endedOver",
  hangs: "endedHangs",
  broken: "endedBroken",
  resets: "endedResets",
  long: "endedLong",
} as const;

/** Why the program does not compile, or where it broke. */
function Problems({ walking }: { readonly walking: Walking }) {
  const session = useSession();
  const say = useSay();
  const answer = walking.answer.value;
  const language = session.language.value;
  const broke = answer?.step?.ended?.problem ?? null;
  if (broke !== null) {
    const { says, try: tries } = sayProblem(language, broke);
    return <Message says={says} try={tries} number={broke.code} />;
  }
  if (!answer || answer.problems.length === 0) return null;
  return (
    <div class="message">
      {answer.problems.slice(0, 3).map((problem, n) => {
        const { says, try: tries } = sayProblem(language, problem);
        const line = problem.place?.line;
        return (
          <p key={n}>
            <b>{line === undefined ? says : say("explainPage.atLine", { line, says })}</b> {tries}
          </p>
        );
      })}
      <TextLink
        onPress={() => {
          explainingOf(session).setProgram(walking.program.peek().text);
          goTo(linkTo("explain"));
        }}
      >
        {say("explainPage.name")}
      </TextLink>
    </div>
  );
}

export function Ways({ walking, short = false }: { readonly walking: Walking; readonly short?: boolean }) {
  const say = useSay();
  const isByHand = walking.acts.value !== null;
  return (
    <div class="acts ways">
      <Button onPress={() => walking.move({ to: "step" })}>{say("walkPage.step")}</Button>
      <Button onPress={() => walking.move({ to: "pinChange" })}>{say("walkPage.pinChange")}</Button>
      {isByHand && <Button onPress={() => walking.move({ to: "later", seconds: 1 })}>{say("walkPage.oneSecond")}</Button>}
      <Button onPress={() => walking.move({ to: "back" })}>{say("walkPage.back")}</Button>
      {!short && <Button onPress={() => walking.move({ to: "backToPinChange" })}>{say("walkPage.backToPinChange")}</Button>}
      <Button onPress={() => walking.move({ to: "start" })}>{say("walkPage.again")}</Button>
    </div>
  );
}

export function Listing({
  walking,
  around,
  folds = true,
}: {
  readonly walking: Walking;
  readonly around: number;
  readonly folds?: boolean;
}) {
  const written = walking.program.value.text.replace(/\r?\n$/, "").split(/\r?\n/);
  // On the wall a comment stands right behind its line, so that fewer lines are broken.
  const rows = folds ? written : written.map((row) => row.replace(/(\S) {2,}\/\//, "$1 //"));
  const step = walking.answer.value?.step ?? null;
  return (
    <WalkLines
      rows={rows}
      next={step === null || step.line === 0 ? null : step.line}
      onLine={(line) => walking.move({ to: "line", line })}
      around={around}
      folds={folds}
    />
  );
}

/** Pins, what is seen, values, text. */
function Holds({ lesson, walking }: WalkProps) {
  const say = useSay();
  const language = useSession().language.value;
  const answer = walking.answer.value;
  if (!answer?.step) return null;
  const { step, seen } = answer;
  return (
    <div class="holds">
      <p>
        {say("walkPage.time")} <b>{formatNumber(language, Number((step.micros / 1000).toFixed(3)))}</b>{" "}
        <span class="unit">ms</span> · {say("walkPage.inFunction")} <code>{step.inside || "—"}</code>
      </p>
      <h3>{say("walkPage.pins")}</h3>
      <PinTable lesson={lesson} step={step} />
      <h3>{say("walkPage.seen")}</h3>
      <SeenTable seen={seen} />
      <h3>{say("walkPage.values")}</h3>
      <ValueTable step={step} />
      <SentText step={step} />
    </div>
  );
}

function OtherProgram({ walking }: { readonly walking: Walking }) {
  const say = useSay();
  const [text, setText] = useState("");
  const take = (file: string, program: string): void => {
    if (program.length <= mostSigns) walking.setProgram({ file, text: program });
  };
  return (
    <details class="other">
      <summary>{say("walkPage.other")}</summary>
      {!walking.isOwn.value && (
        <p>
          {say("walkPage.isOther")} <TextLink onPress={() => walking.setProgram(null)}>{say("walkPage.ownAgain")}</TextLink>
        </p>
      )}
      <Field
        label={say("walkPage.otherProgram")}
        hint={say("walkPage.otherHint")}
        lines={7}
        value={text}
        onInput={setText}
        problem={text.length > mostSigns ? say("explainPage.tooLong") : null}
      />
      <div class="acts">
        <Button
          notYet={text.trim() === "" ? say("explainPage.programFirst") : null}
          onPress={() => take(say("explainPage.pastedName"), text)}
        >
          {say("walkPage.runIt")}
        </Button>
      </div>
      <Drop
        label={say("explainPage.orOpen")}
        accept=".cpp,.h,.txt"
        paste={false}
        onData={(file, bytes) => {
          const program = decodeText(bytes).text;
          setText(program);
          take(file, program);
        }}
      />
    </details>
  );
}
