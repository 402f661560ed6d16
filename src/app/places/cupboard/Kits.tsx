// The kits that the school owns: how many of each, what is in one, and choosing another.
//
// Does not know: prices.
import { useState } from "preact/hooks";
import { countedItem } from "../../../language/index.ts";
import { Button, Choice, Field, Row } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "./act.ts";
import { Entry } from "./Entry.tsx";
import { readCount } from "./readTyped.ts";
import { isFound } from "./whatIsThere.ts";

export function Kits({ search }: { readonly search: string }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const kits = session.shipped.value?.kits ?? new Map();
  const owned = session.classFile.value?.kits ?? [];
  const shown = owned.filter(({ kit }) =>
    isFound(
      search,
      kits.get(kit)?.name ?? kit,
      ...[...(kits.get(kit)?.contents ?? [])].map(([item, n]) => countedItem(language, item, n)),
    ),
  );
  return (
    <>
      {shown.map(({ kit, count }) => {
        const known = kits.get(kit);
        const name = known?.name ?? kit;
        return (
          <Row key={kit} at={count}>
            <h3>
              <bdi>{name}</bdi>
            </h3>
            <Entry
              label={say("cupboard.kitCount", { name })}
              width="short"
              keys="numeric"
              value={String(count)}
              onEnter={(typed) => {
                const found = readCount(typed);
                if (found === null) return say("cupboard.notACount", { found: typed });
                return act({ kind: "set-kit", kit, count: found });
              }}
            />
            {known && (
              <details>
                <summary>{say("cupboard.kitHolds")}</summary>
                <ul class="columns">
                  {[...known.contents].map(([item, each]) => (
                    <li key={item}>{countedItem(language, item, each)}</li>
                  ))}
                </ul>
              </details>
            )}
          </Row>
        );
      })}
      {search === "" && <AddKit />}
    </>
  );
}

/** Choosing a kit is one choice, a number and one tap; it is also the first act in an empty cupboard. */
export function AddKit({ first = false }: { readonly first?: boolean }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const owned = session.classFile.value?.kits ?? [];
  const others = [...(session.shipped.value?.kits.values() ?? [])].filter(
    (kit) => !owned.some((line) => line.kit === kit.id && line.count > 0),
  );
  const [chosen, setChosen] = useState<string | null>(null);
  const [typed, setTyped] = useState("1");
  const [problem, setProblem] = useState<string | null>(null);
  if (others.length === 0) return null;
  const add = () => {
    const count = readCount(typed);
    if (count === null || count === 0) return setProblem(say("cupboard.notACount", { found: typed }));
    const kit = chosen ?? others[0]?.id ?? "";
    const wrong = act({ kind: "set-kit", kit, count });
    setProblem(wrong);
    if (wrong === null) setChosen(null);
  };
  return (
    <Row at={first ? undefined : "+"}>
      <Choice
        label={say("cupboard.whichKit")}
        value={chosen ?? others[0]?.id ?? null}
        options={others.map((kit) => ({ value: kit.id, label: kit.name, note: <bdi>{kit.note}</bdi> }))}
        onChange={setChosen}
      />
      <Field
        label={say("cupboard.howMany")}
        width="short"
        keys="numeric"
        value={typed}
        onInput={(text) => {
          setTyped(text);
          setProblem(null);
        }}
        problem={problem}
      />
      <div class="acts">
        <Button onPress={add}>{say("cupboard.takeKit")}</Button>
      </div>
    </Row>
  );
}
