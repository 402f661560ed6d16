// The answer at once: which lessons can be held, what it takes, what it costs. It grows with each question that is answered.
//
// The old answer stays readable while the new one is worked out. Prices of the invented kits are never used: without a price of
// the teacher's own there is no sum.
// Does not know: how it is computed.
import type { ComponentChildren } from "preact";
import { formatDay, formatMoney, itemName, sayUnchecked } from "../../../language/index.ts";
import type { OrderPlan } from "../../../school/order/index.ts";
import type { PlannedLesson } from "../../../school/readiness/index.ts";
import { Message, ProgressRuler, Row, shortDay, Table, TextLink, Verdict } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import type { Answer } from "../../session/session.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import type { Asking } from "./makeAsking.ts";
import { questionsOf } from "./questionsOf.ts";
import { whatItTakes } from "./whatItTakes.ts";

/** @param whole it stands on a page of its own, which has a heading already. */
export function AnswerSoFar({ whole = false }: { readonly whole?: boolean }) {
  const session = useSession();
  const say = useSay();
  const { answers, school, plan, order } = questionsOf(session);
  const about = school.value;
  if (about === null) return null;
  const said = answers.value;
  const answer = plan.answer.value;
  const known = answer.value;
  const head = whole ? "h2" : "h3";
  return (
    <>
      <Row as="section">
        {!whole && <h2>{say("questions.answer")}</h2>}
        <Working asking={plan} answer={answer} />
        {known !== null && (
          <p>
            {say("questions.takesSets", {
              teams: whatItTakes(known, about.classFile.chance).teams,
              lessons: known.lessons.length,
            })}
          </p>
        )}
      </Row>
      {known !== null && said.lessons !== null && <Lessons lessons={known.lessons} judged={said.boxes !== null} head={head} />}
      {known !== null && (said.lessons !== null || said.boxes !== null) && <Takes all={said.boxes !== null} />}
      {said.money !== null && <Cost hasPrice={about.classFile.suppliers.length > 0} order={order} head={head} />}
    </>
  );
}

/** What is under way, or why it is not. */
function Working<Q, V>({ asking, answer }: { readonly asking: Asking<Q, V>; readonly answer: Answer<V> }) {
  const say = useSay();
  const language = useSession().language.value;
  if (answer.trouble !== null)
    return (
      <Message says={sayUnchecked(language, `engine.${answer.trouble}`)} live>
        <TextLink onPress={asking.again}>{say("questions.workAgain")}</TextLink>
      </Message>
    );
  if (answer.progress !== null)
    return (
      <ProgressRuler
        done={answer.progress.done}
        total={answer.progress.total}
        says={sayUnchecked(language, `engine.${answer.progress.doing}`)}
        onStop={asking.stop}
      />
    );
  return answer.fresh ? null : <p role="status">{say(answer.value === null ? "questions.working" : "questions.workingAnew")}</p>;
}

interface LessonsProps {
  readonly lessons: readonly PlannedLesson[];
  readonly judged: boolean;
  readonly head: "h2" | "h3";
}

/** Each lesson on its day; with its verdict once it is known what is there. */
function Lessons({ lessons, judged, head: Head }: LessonsProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const title = (id: string) => lessonTitle(session.shipped.value, id, language.tag);
  const canHold = lessons.filter((lesson) => lesson.verdict === "ready").length;
  return (
    <>
      {judged && (
        <Row as="section">
          <Head>{say("questions.canHold", { count: canHold, total: lessons.length })}</Head>
        </Row>
      )}
      {lessons.map((lesson) => (
        <Row
          key={lesson.id}
          at={<span title={formatDay(language, lesson.date)}>{shortDay(language, lesson.date)}</span>}
          {...(judged ? { line: lesson.verdict } : {})}
        >
          <p>
            <b>
              <bdi>{title(lesson.lesson)}</bdi>
            </b>
          </p>
          {judged && (
            <>
              <p>
                <Verdict word={lesson.verdict} />
              </p>
              <Why lesson={lesson} title={title} />
            </>
          )}
        </Row>
      ))}
    </>
  );
}

/** The first reasons of a verdict; what is ready needs none. */
function Why({ lesson, title }: { readonly lesson: PlannedLesson; readonly title: (id: string) => string }) {
  const language = useSession().language.value;
  const reasons = lesson.reasons.filter((reason) => reason.verdict === lesson.verdict && reason.verdict !== "ready").slice(0, 3);
  return (
    <p class="note">
      {reasons
        .map(({ code, data }) =>
          sayUnchecked(
            language,
            `reason.${code}`,
            typeof data.lesson === "string" ? { ...data, lesson: title(data.lesson) } : data,
          ),
        )
        .join(" ")}
    </p>
  );
}

/** What all lessons together take. @param all also what is there and what is still to be had. */
function Takes({ all }: { readonly all: boolean }): ComponentChildren {
  const session = useSession();
  const say = useSay();
  const { answers, school, plan } = questionsOf(session);
  const known = plan.answer.value.value;
  const about = school.value;
  if (known === null || about === null) return null;
  const { rows } = whatItTakes(known, about.classFile.chance);
  const language = session.language.value;
  /** A dash is what nobody said: a count of computers that was assumed is no count. */
  const number = (count: number, label: string, isKnown = true) => (
    <td class="num" data-l={label}>
      {isKnown ? count : "—"}
    </td>
  );
  const said = answers.value;
  const isUnsaid = (answer: unknown) => answer === null || answer === "unknown";
  const isThereKnown = (item: string) => !isUnsaid(item === "computer" ? said.computers : said.boxes);
  // Where nobody knows what is in the cupboard, all of it is to be had; computers are wherever the school keeps them.
  const isShortKnown = (item: string) => item !== "computer" || isThereKnown(item);
  return (
    <Row as="section">
      <Table
        caption={say("questions.takes")}
        showCaption
        phone="paragraphs"
        class="takes"
        head={[
          { says: say("questions.thing") },
          { says: say("questions.inUse"), numeric: true },
          { says: say("questions.toSpare"), numeric: true },
          ...(all
            ? [
                { says: say("questions.there"), numeric: true },
                { says: say("questions.toGet"), numeric: true },
              ]
            : []),
        ]}
      >
        {rows.map((row) => (
          <tr key={row.item}>
            <th scope="row">
              <bdi>{itemName(language, row.item)}</bdi>
            </th>
            {number(row.wanted, say("questions.inUse"))}
            {number(row.spare, say("questions.toSpare"))}
            {all && number(row.have, say("questions.there"), isThereKnown(row.item))}
            {all && number(row.short, say("questions.toGet"), isShortKnown(row.item))}
          </tr>
        ))}
      </Table>
      {all && rows.some(({ item }) => !isThereKnown(item)) && <p class="note">{say("questions.dash")}</p>}
      <p class="note">{say("questions.spareWhy", { chance: about.classFile.chance })}</p>
    </Row>
  );
}

interface CostProps {
  readonly hasPrice: boolean;
  readonly order: Asking<unknown, OrderPlan>;
  readonly head: "h2" | "h3";
}

function Cost({ hasPrice, order, head: Head }: CostProps) {
  const say = useSay();
  const session = useSession();
  const language = session.language.value;
  const answer = order.answer.value;
  const { school } = questionsOf(session);
  const file = school.value!.classFile;
  const money = (sum: number) => formatMoney(language, sum, file.currency, file.decimals);
  const lessonsOf = (sittings: readonly string[]) =>
    [...new Set(sittings.map((id) => id.split("/")[1] ?? id))].map((id) => lessonTitle(session.shipped.value, id, language.tag));
  /** What more boxes cost where only the money is short: for all lessons, or else for the next one. */
  const tooDear = (plan: OrderPlan): string | null => {
    const sum = plan.costOfAll ?? plan.next?.cost ?? null;
    const price = file.suppliers[0]?.offers[0]?.price ?? 0;
    if (plan.outcome !== "budget short" || file.budget === null || sum === null || price <= 0 || sum <= file.budget) return null;
    // One kind of box and no shipping: the sum is boxes times price.
    const costs = { count: Math.round(sum / price), money: money(sum), over: money(sum - file.budget) };
    return plan.costOfAll !== null || plan.next === null
      ? say("questions.boxesTooDear", costs)
      : say("questions.boxesForNext", { ...costs, lessons: lessonsOf(plan.next.sittings) });
  };
  const known = answer.value;
  const dear = known === null ? null : tooDear(known);
  return (
    <Row as="section">
      <Head>{say("questions.cost")}</Head>
      {!hasPrice && <p>{say("questions.noPrice")}</p>}
      {hasPrice && <Working asking={order} answer={answer} />}
      {hasPrice && known !== null && (
        <>
          {known.lines.length === 0 ? (
            known.outcome !== "budget short" && (
              <p>{say(known.notHeld.length === 0 ? "questions.nothingToBuy" : "questions.boxesDoNotHelp")}</p>
            )
          ) : (
            <p>
              <b>
                {say("questions.boxesCost", {
                  count: known.lines.reduce((n, line) => n + line.packets, 0),
                  money: money(known.cost),
                })}
              </b>{" "}
              {known.status === "optimal" && say("questions.noneCheaper")}
            </p>
          )}
          {file.budget !== null && known.lines.length > 0 && (
            <p>{say("questions.budgetLeft", { budget: money(file.budget), left: money(file.budget - known.cost) })}</p>
          )}
          {dear !== null && (
            <p>
              <b>{dear}</b>
            </p>
          )}
          {known.notHeld.length > 0 && (
            <p>
              {say(`notCovered.${known.notHeld.some((n) => n.reason === "budget") ? "budget" : "other"}`, {
                lessons: lessonsOf(known.notHeld.map((n) => n.sitting)),
                things: [...new Set(known.notHeld.flatMap((n) => n.items))].map((item) => itemName(language, item)),
              })}
            </p>
          )}
        </>
      )}
      {hasPrice && <p class="note">{say("questions.costOf")}</p>}
    </Row>
  );
}
