// Order: what to buy from whom by when, what it costs, how sure that is, and why each line is there.
//
// Nothing is computed before it is asked. The table for the office is two taps from anywhere: Order, then the table; the order is
// worked out on the way.
// Does not know: how the cheapest order is found.
import { useEffect, useState } from "preact/hooks";
import { sayUnchecked } from "../../../language/index.ts";
import { Button, LastAct, Nothing, Page, ProgressRuler, Row, TextLink } from "../../pieces/index.ts";
import { troubleOf } from "../../session/answering.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { OrderAnswer } from "./OrderAnswer.tsx";
import { Suppliers } from "./Suppliers.tsx";
import { Wishes } from "./Wishes.tsx";
import "../cupboard/lists.css";

export function Order() {
  const say = useSay();
  const session = useSession();
  const [asked, setAsked] = useState(false);
  const [writing, setWriting] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const classFile = session.classFile.value;
  const isFresh = session.order.value.fresh;
  // An answer ends the question; a change after it makes the order old and does not ask anew.
  useEffect(() => {
    if (isFresh) setAsked(false);
  }, [isFresh]);
  if (classFile === null) return null;
  const { value, fresh, progress, trouble: stopped } = session.order.value;
  const language = session.language.value;
  const hasSuppliers = classFile.suppliers.length > 0;
  const ask = () => {
    setAsked(true);
    session.askOrder();
  };
  const isWorking = asked && !fresh && stopped === null;
  /** The same question as the page's own: what it finds is remembered by the engine and comes once. */
  const saveCsv = async () => {
    const school = session.school.value;
    if (school === null) return;
    if (!fresh) ask();
    setWriting(true);
    setTrouble(null);
    try {
      const text = await session.run(() => session.engine.write("order", school));
      await session.saveFile(say("orderPage.csvName", { day: session.today.value.replaceAll("-", " ") }), text, "text/csv");
    } catch (error) {
      setTrouble(troubleOf(error));
    } finally {
      setWriting(false);
    }
  };
  const acts = (
    <div class="acts">
      {!fresh && !isWorking && (
        <Button onPress={ask}>{say(value === null ? "orderPage.workOut" : "orderPage.workOutAgain")}</Button>
      )}
      <Button onPress={() => void saveCsv()} notYet={writing ? say("orderPage.writing") : null}>
        {say("orderPage.saveCsv")}
      </Button>
      <TextLink to="#/print/order">{say("orderPage.toPrint")}</TextLink>
    </div>
  );
  return (
    <Page
      class="lists"
      name={say("orderPage.heading")}
      under={
        hasSuppliers && (
          <>
            {value === null && !isWorking && <p>{say("orderPage.notAsked")}</p>}
            {acts}
            {isWorking &&
              (progress ? (
                <ProgressRuler
                  done={progress.done}
                  total={progress.total}
                  says={sayUnchecked(language, `engine.${progress.doing}`)}
                  onStop={() => session.stopWork()}
                />
              ) : (
                <p role="status">{say("orderPage.working")}</p>
              ))}
            {(stopped ?? trouble) && <p role="status">{sayUnchecked(language, `engine.${stopped ?? trouble}`)}</p>}
            {value !== null && !fresh && !isWorking && <p role="status">{say("orderPage.stale")}</p>}
            <LastAct about={isAboutOrder} />
          </>
        )
      }
    >
      {!hasSuppliers && (
        <Row at="—">
          <Nothing
            says={say("orderPage.isEmpty")}
            will={say("orderPage.willStand")}
            first={{ label: say("orderPage.addSupplier"), onPress: () => document.getElementById("new-supplier")?.focus() }}
            others={<TextLink to="#/cupboard">{say("orderPage.toCupboard")}</TextLink>}
          />
          <LastAct about={isAboutOrder} />
        </Row>
      )}
      {hasSuppliers && value !== null && <OrderAnswer order={value} fresh={fresh} />}
      <Wishes />
      <Suppliers />
    </Page>
  );
}

const kindsHere: ReadonlySet<string> = new Set([
  ...["order-came", "set-supplier", "remove-supplier", "set-budget", "set-chance", "count-devices", "set-kit"],
]);
const isAboutOrder = (change: { readonly kind: string }) => kindsHere.has(change.kind);
