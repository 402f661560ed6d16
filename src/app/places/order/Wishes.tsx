// What an order is made for: how sure it should be that every team works, and what it may cost.
//
// Does not know: how a chance becomes spares.
import { formatChance } from "../../../language/index.ts";
import { Choice, Row } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "../cupboard/act.ts";
import { Entry } from "../cupboard/Entry.tsx";
import { readSum } from "./readSum.ts";
import { writtenSum } from "./writtenSum.ts";

/** Each with what it means in lessons: of so many, one may go wrong. */
const chances = [0.8, 0.9, 0.95, 0.98, 0.99] as const;

export function Wishes() {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const classFile = session.classFile.value;
  if (classFile === null) return null;
  const { chance, budget, currency, decimals } = classFile;
  const offered = [...new Set([...chances, chance])].sort((a, b) => a - b);
  return (
    <Row as="section">
      <h2>{say("orderPage.wishesHeading")}</h2>
      <Choice
        label={say("orderPage.chance")}
        hint={say("orderPage.chanceHint")}
        as="marks"
        value={String(chance)}
        options={offered.map((value) => ({
          value: String(value),
          label: formatChance(language, value),
          note: say("orderPage.chanceMeans", { count: Math.round(1 / (1 - value)) }),
        }))}
        onChange={(value) => act({ kind: "set-chance", chance: Number(value) })}
      />
      <Entry
        label={say("orderPage.budget", { currency })}
        hint={say("orderPage.budgetHint")}
        width="middle"
        keys="decimal"
        value={budget === null ? "" : writtenSum(language, budget, decimals)}
        onEnter={(typed) => {
          if (typed.trim() === "") return act({ kind: "set-budget", budget: null });
          const sum = readSum(typed, decimals);
          return sum === null ? say("orderPage.notASum", { found: typed }) : act({ kind: "set-budget", budget: sum });
        }}
      />
    </Row>
  );
}
