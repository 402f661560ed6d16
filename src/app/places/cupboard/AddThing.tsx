// A thing is added by its kind in words and what tells it apart: "resistor", "220 Ω".
//
// Does not know: legs, ratings, what the class owns.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { compareNames, itemName, sayUnchecked } from "../../../language/index.ts";
import { readItem, type StockLine } from "../../../school/file/index.ts";
import { Button, Choice, Field } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { itemText, type Telling } from "./itemKinds.ts";
import { readCount } from "./readTyped.ts";

export interface AddThingProps {
  readonly kinds: ReadonlyMap<string, readonly Telling[]>;
  /** @returns why not, or null. */
  readonly onAdd: (line: StockLine) => string | null;
  /** Words offered for the box; left out where nothing lies in one. */
  readonly boxes?: readonly string[];
  /** In place of "how many". */
  readonly countLabel?: string;
  /** Further fields of whoever adds. */
  readonly children?: ComponentChildren;
}

export function AddThing({ kinds, onAdd, boxes, countLabel, children }: AddThingProps) {
  const say = useSay();
  const language = useSession().language.value;
  const [kind, setKind] = useState<string | null>(null);
  const [answers, setAnswers] = useState<readonly string[]>([]);
  const [typed, setTyped] = useState("1");
  const [box, setBox] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const [countProblem, setCountProblem] = useState<string | null>(null);
  const sort = compareNames(language);
  const options = [...kinds.keys()]
    .map((value) => ({ value, label: sayUnchecked(language, `item.${value}`, { n: 1 }) }))
    .sort((a, b) => sort(a.label, b.label));
  const asked = kind === null ? [] : (kinds.get(kind) ?? []);
  const setAnswer = (n: number, text: string) => {
    setAnswers(asked.map((_, i) => (i === n ? text : (answers[i] ?? ""))));
    setProblem(null);
  };
  const add = () => {
    const count = readCount(typed);
    setCountProblem(count === null ? say("cupboard.notACount", { found: typed }) : null);
    if (kind === null || count === null) return;
    const isMissing = asked.some((telling, n) => telling.needed && (answers[n] ?? "").trim() === "");
    if (isMissing) return setProblem(say("cupboard.tellApart", { name: itemName(language, kind) }));
    const text = itemText(kind, answers);
    // What is no item goes on as it is: the change is refused with the nearest one that there is.
    const wrong = onAdd({ item: readItem(text) ?? text, count, box: box.trim() });
    setProblem(wrong);
    if (wrong === null) setAnswers([]);
  };
  return (
    <form
      class="add-thing"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <Choice
        label={say("cupboard.kind")}
        as="list"
        value={kind}
        none={say("cupboard.chooseKind")}
        options={options}
        onChange={(value) => {
          setKind(value === "" ? null : value);
          setAnswers([]);
          setProblem(null);
        }}
      />
      {asked.map((telling, n) => {
        const key = `${kind} ${n}`;
        if (telling.ask === "word")
          return (
            <Choice
              key={key}
              label={say(telling.words.includes("red") ? "cupboard.colour" : "cupboard.type")}
              as="list"
              value={answers[n] || null}
              none={say(telling.needed ? "cupboard.choose" : "cupboard.usual")}
              options={telling.words.map((word) => ({
                value: word,
                label: wordName(language.text, word, (k) => sayUnchecked(language, k)),
              }))}
              onChange={(word) => setAnswer(n, word)}
            />
          );
        return (
          <Field
            key={key}
            label={say(telling.needed ? "cupboard.value" : "cupboard.valueOrUsual", { unitName: telling.unit })}
            hint={say(`cupboard.example${exampleOf[telling.unit]}`)}
            width="middle"
            value={answers[n] ?? ""}
            onInput={(text) => setAnswer(n, text)}
          />
        );
      })}
      <Field
        label={countLabel ?? say("cupboard.howMany")}
        width="short"
        keys="numeric"
        value={typed}
        onInput={(text) => {
          setTyped(text);
          setCountProblem(null);
        }}
        problem={countProblem}
      />
      {boxes && <Field label={say("cupboard.boxIfAny")} width="middle" value={box} onInput={setBox} offers={boxes} />}
      {children}
      {problem && (
        <p class="problem" role="alert">
          <bdi>{problem}</bdi>
        </p>
      )}
      <div class="acts">
        <Button submit notYet={kind === null ? say("cupboard.chooseKindFirst") : null}>
          {say("cupboard.add")}
        </Button>
      </div>
    </form>
  );
}

const exampleOf = { Ω: "Ohms", F: "Farads", H: "Henries", V: "Volts", A: "Milliamps" } as const;

/** A colour, a detail, or a name of the trade that stays as it is. */
function wordName(text: (key: string) => unknown, word: string, said: (key: string) => string): string {
  const key = [`colour.${word}`, `itemDetail.${word}`].find((k) => text(k) !== null);
  return key === undefined ? word : said(key);
}
