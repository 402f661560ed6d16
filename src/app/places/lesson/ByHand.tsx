// A hand at the table: keys are pressed, knobs turned, light and warmth set, a text sent, at the moment where the walk stands.
//
// Does not know: how a walk goes, what the parts do with it.
import { useState } from "preact/hooks";
import type { Lesson } from "../../../bench/lesson/index.ts";
import { catalogue, type StateSpec } from "../../../bench/parts/index.ts";
import type { HandAct } from "../../../bench/rehearsal/index.ts";
import { formatNumber, sayUnchecked } from "../../../language/index.ts";
import { Button, Choice, Field } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { setWords } from "./lessonWords.ts";
import type { Walking } from "./walking.ts";

interface Knob {
  readonly part: string;
  readonly state: string;
  readonly spec: StateSpec;
}

export function ByHand({ lesson, walking }: { readonly lesson: Lesson; readonly walking: Walking }) {
  const say = useSay();
  const language = useSession().language.value;
  const acts = walking.acts.value;
  const knobs = knobsOf(lesson);
  return (
    <>
      <Choice
        label={say("walkPage.whoActs")}
        value={acts === null ? "rehearsal" : "hand"}
        options={[
          { value: "rehearsal", label: say("walkPage.asRehearsed") },
          { value: "hand", label: say("walkPage.byHand") },
        ]}
        onChange={(who) => walking.setByHand(who === "hand")}
      />
      {acts === null ? (
        lesson.stimuli.length === 0 ? (
          <p class="note">{say("walkPage.nothingHappens")}</p>
        ) : (
          <ul class="dots">
            {lesson.stimuli.map((step) => (
              <li key={step.place.line}>
                {say("walkPage.happensAt", { seconds: step.at, what: step.stimuli.map((s) => setWords(language, s)) })}
              </li>
            ))}
          </ul>
        )
      ) : (
        <div class="knobs">
          {knobs.map((knob) => (
            <KnobField key={`${knob.part} ${knob.state}`} knob={knob} acts={acts} walking={walking} />
          ))}
          {/\bSerial\b/.test(walking.program.value.text) && <SendText walking={walking} />}
        </div>
      )}
    </>
  );
}

function knobsOf(lesson: Lesson): readonly Knob[] {
  return [...lesson.parts.values()].flatMap(({ name, kind }) =>
    Object.entries(catalogue.get(kind)?.states ?? {}).flatMap(([state, spec]) =>
      spec.inner || state === "held" ? [] : [{ part: name, state, spec }],
    ),
  );
}

interface KnobFieldProps {
  readonly knob: Knob;
  readonly acts: readonly HandAct[];
  readonly walking: Walking;
}

function KnobField({ knob: { part, state, spec }, acts, walking }: KnobFieldProps) {
  const say = useSay();
  const language = useSession().language.value;
  const last = acts.findLast(({ stimulus: s }) => s.kind === "state" && s.part === part && s.state === state)?.stimulus;
  const now = last?.kind === "state" ? last.value : spec.atFirst;
  const scale = spec.unit === "%" ? 100 : 1;
  const [problem, setProblem] = useState<string | null>(null);
  if (typeof now === "boolean")
    return (
      <div class="acts">
        <Button onPress={() => walking.doByHand({ kind: "state", part, state, value: !now })}>
          {say("walkPage.setTo", { what: setWords(language, { kind: "state", part, state, value: !now }) })}
        </Button>
      </div>
    );
  const [least, most] = [(spec.least ?? 0) * scale, (spec.most ?? Number.POSITIVE_INFINITY) * scale];
  return (
    <Field
      label={sayUnchecked(language, `walkState.${state}`, { part })}
      width="short"
      keys="decimal"
      value={formatNumber(language, Number((now * scale).toFixed(3)))}
      problem={problem}
      onChange={(text) => {
        const value = Number(text.replace(/[\s%]/g, "").replace(",", "."));
        const fits = text.trim() !== "" && Number.isFinite(value) && value >= least && value <= most;
        setProblem(fits ? null : say("walkPage.between", { least, most: Number.isFinite(most) ? most : null }));
        if (fits) walking.doByHand({ kind: "state", part, state, value: value / scale });
      }}
    />
  );
}

function SendText({ walking }: { readonly walking: Walking }) {
  const say = useSay();
  const [text, setText] = useState("");
  return (
    <form
      class="acts"
      onSubmit={(event) => {
        event.preventDefault();
        if (text !== "") walking.doByHand({ kind: "text", text: text.slice(0, 200) });
        setText("");
      }}
    >
      <Field label={say("walkPage.sendText")} width="middle" value={text} onInput={setText} />
      <Button submit>{say("walkPage.send")}</Button>
    </form>
  );
}
