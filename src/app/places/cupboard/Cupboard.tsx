// Cupboard: what is short by when, what is there, and every act on it where it stands.
//
// One page along one line, because a teacher who counts goes from box to box; the search keeps only what is asked for.
// Does not know: how anything is computed or kept.
import { useState } from "preact/hooks";
import { stockCsv } from "../../../school/file/index.ts";
import { Button, Field, LastAct, Nothing, Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { PlanWork } from "../course/PlanWork.tsx";
import { AddThing } from "./AddThing.tsx";
import { useAct } from "./act.ts";
import { Computers } from "./Computers.tsx";
import { Devices } from "./Devices.tsx";
import { itemKinds } from "./itemKinds.ts";
import { AddKit, Kits } from "./Kits.tsx";
import { LooseStock } from "./LooseStock.tsx";
import { PowerCuts } from "./PowerCuts.tsx";
import { Short } from "./Short.tsx";
import { StockList } from "./StockList.tsx";
import { Supplies } from "./Supplies.tsx";
import { mostNeeded, shortByWhen } from "./shortByWhen.ts";
import { thereNow } from "./thereNow.ts";
import { asList } from "./whatIsThere.ts";
import "./lists.css";

export function Cupboard() {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const [search, setSearch] = useState("");
  const [listOpen, setListOpen] = useState(false);
  const [kitOpen, setKitOpen] = useState(false);
  const classFile = session.classFile.value;
  const plan = session.plan.value;
  if (classFile === null) return null;
  const language = session.language.value;
  const today = session.today.value;
  const short = plan.value === null ? null : shortByWhen(plan.value, today);
  const missing = (short ?? []).filter((thing) => thing.count !== null);
  const firstBy = missing.find((thing) => thing.by !== null)?.by ?? null;
  const { kits, stock, boards, cables, computers, supplies } = classFile;
  const isEmpty =
    kits.every((kit) => kit.count === 0) && [stock, boards, cables, computers, supplies].every((list) => list.length === 0);

  if (isEmpty)
    return (
      <Page class="lists" name={say("cupboard.heading")}>
        <Row at="—">
          <Nothing
            says={say("cupboard.isEmpty")}
            will={say("cupboard.willStand")}
            first={{ label: say("cupboard.chooseYourKit"), onPress: () => setKitOpen(true) }}
            others={
              <>
                <TextLink onPress={() => setListOpen(true)}>{say("cupboard.pasteList")}</TextLink>
                <TextLink to="#/first">{say("cupboard.lookAtDemo")}</TextLink>
              </>
            }
          />
          <LastAct about={isAboutCupboard} />
        </Row>
        {kitOpen && <AddKit first />}
        {listOpen && (
          <Row>
            <StockList onClose={() => setListOpen(false)} />
          </Row>
        )}
        <Row>
          <h2>{say("cupboard.addHeading")}</h2>
          <AddThing kinds={itemKinds} boxes={[]} onAdd={(line) => act({ kind: "set-stock", line })} />
        </Row>
      </Page>
    );

  return (
    <Page
      class="lists"
      name={say("cupboard.heading")}
      under={
        <>
          <p>
            {short !== null && say("cupboard.shortCount", { count: missing.length })}{" "}
            {firstBy !== null && say("cupboard.firstBy", { date: firstBy })}
          </p>
          <div class="acts">
            <Button to="#/order">{say("cupboard.toOrder")}</Button>
            <TextLink onPress={() => setListOpen(!listOpen)} pressed={listOpen}>
              {say("cupboard.pasteList")}
            </TextLink>
            <TextLink onPress={() => void saveCsv()}>{say("cupboard.saveCsv")}</TextLink>
          </div>
          <LastAct about={isAboutCupboard} />
          {listOpen && <StockList onClose={() => setListOpen(false)} />}
          <Field
            label={say("cupboard.search")}
            hint={say("cupboard.searchHint")}
            width="middle"
            value={search}
            onInput={setSearch}
          />
        </>
      }
    >
      <Row at={short === null ? undefined : missing.length} as="section">
        <h2>{say("cupboard.shortHeading")}</h2>
        <PlanWork />
      </Row>
      <Short things={short} search={search} />

      <Row as="section">
        <h2>{say("cupboard.kitsHeading")}</h2>
      </Row>
      <Kits search={search} />

      <Row as="section">
        <h2>{say("cupboard.looseHeading")}</h2>
        <p class="note">{say("cupboard.looseHint")}</p>
      </Row>
      <LooseStock needed={plan.value === null ? new Map() : mostNeeded(plan.value, today)} search={search} />
      {search === "" && (
        <Row>
          <details>
            <summary>{say("cupboard.addHeading")}</summary>
            <AddThing
              kinds={itemKinds}
              boxes={[...new Set(stock.map((line) => line.box).filter((box) => box !== ""))]}
              onAdd={(line) => {
                const before = stock.find((l) => l.item === line.item && l.box === line.box)?.count ?? 0;
                return act({ kind: "set-stock", line: { ...line, count: before + line.count } });
              }}
            />
          </details>
        </Row>
      )}

      <Row as="section">
        <h2>{say("cupboard.boards")}</h2>
      </Row>
      <Devices what="boards" search={search} />
      <Row as="section">
        <h2>{say("cupboard.cables")}</h2>
      </Row>
      <Devices what="cables" search={search} />
      <Row as="section">
        <h2>{say("cupboard.computers")}</h2>
      </Row>
      <Computers search={search} />
      <Row as="section">
        <h2>{say("cupboard.supplies")}</h2>
      </Row>
      <Supplies search={search} />
      {search === "" && (
        <>
          <Row as="section">
            <h2>{say("cupboard.cutsHeading")}</h2>
          </Row>
          <PowerCuts />
        </>
      )}
    </Page>
  );

  async function saveCsv(): Promise<void> {
    // A spreadsheet set to a decimal comma takes semicolons between cells.
    const text = stockCsv(asList(thereNow(session)), { separator: language.decimalMark === "," ? ";" : "," });
    await session.saveFile(say("cupboard.csvName", { day: today.replaceAll("-", " ") }), text, "text/csv");
  }
}

const kindsHere: ReadonlySet<string> = new Set([
  ...["set-kit", "set-stock", "remove-stock", "take-stock", "move-stock", "set-computer", "remove-computer", "set-device"],
  ...["remove-device", "count-devices", "set-supply", "remove-supply", "add-power-cut", "remove-power-cut", "order-came"],
]);
const isAboutCupboard = (change: { readonly kind: string }) => kindsHere.has(change.kind);
