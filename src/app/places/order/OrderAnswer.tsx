// An order as it was worked out: the sum and how sure it is, each line with its reasons, what can be held and what cannot.
//
// Does not know: how it was found.
import { useState } from "preact/hooks";
import type { Day, Money } from "../../../base/index.ts";
import {
  countedItem,
  formatAmount,
  formatChance,
  formatDay,
  formatList,
  formatMoney,
  formatSum,
  itemName,
  say as sayIn,
} from "../../../language/index.ts";
import type { Offer } from "../../../school/file/index.ts";
import type { OrderPlan } from "../../../school/order/index.ts";
import { Button, Row, shortDay, Table, TextLink } from "../../pieces/index.ts";
import type { Session } from "../../session/session.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "../cupboard/act.ts";
import { lessonName, sittingParts } from "../cupboard/lessonName.ts";
import { goodsOf, leftOf } from "./money.ts";
import { bySupplier, type SupplierOrder, whatCame, whyByLesson } from "./orderLines.ts";

export interface OrderAnswerProps {
  readonly order: OrderPlan;
  /** False: it belongs to the class as it was before the last change. */
  readonly fresh: boolean;
}

export function OrderAnswer({ order, fresh }: OrderAnswerProps) {
  const say = useSay();
  const session = useSession();
  const classFile = session.classFile.value;
  if (classFile === null) return null;
  const language = session.language.value;
  const { currency, decimals, budget } = classFile;
  const money = (sum: Money) => formatMoney(language, sum, currency, decimals);
  const left = leftOf(budget, order.cost);
  const name = (sitting: string) => sittingName(session, sitting);
  const names = (sittings: readonly string[]) => formatList(language, sittings.map(name));
  const items = (keys: readonly string[]) =>
    formatList(
      language,
      keys.map((key) => itemName(language, key, 2)),
    );
  const parts = bySupplier(order, classFile.suppliers);
  return (
    <>
      <Row at={order.lines.length > 0 ? money(order.cost) : "—"} as="section">
        <h2>{say(`orderPage.${order.outcome}`)}</h2>
        {order.lines.length > 0 && (
          <p>
            {order.status === "optimal"
              ? say("orderPage.optimal")
              : say("orderPage.feasible", { bound: money(order.bound), gap: formatAmount(language, order.gap, "%") })}
          </p>
        )}
        {budget !== null && left !== null && (
          <p>
            {say(left < 0 ? "orderPage.overBudget" : "orderPage.budgetLeft", {
              budget: money(budget),
              left: money(Math.abs(left)),
            })}
          </p>
        )}
        {order.next && <p>{say("orderPage.next", { cost: money(order.next.cost), sittings: names(order.next.sittings) })}</p>}
        {order.costOfAll !== null && order.notHeld.length > 0 && (
          <p>{say("orderPage.costOfAll", { cost: money(order.costOfAll) })}</p>
        )}
        {parts.length > 0 && <Came lines={order.lines} label={say("orderPage.allCame")} fresh={fresh} />}
      </Row>
      {parts.map((part) => (
        <SupplierLines key={part.supplier.id} part={part} fresh={fresh} />
      ))}
      {order.notHeld.map((lesson) => (
        <Row key={lesson.sitting} at={dayOf(session, lesson.sitting)}>
          <h3>{say("orderPage.notHeld", { name: name(lesson.sitting) })}</h3>
          <p>
            {say("orderPage.because", {
              reason: say(`notHeld.${lesson.reason}`),
              things: items(lesson.items),
            })}
          </p>
        </Row>
      ))}
      {order.chances.length > 0 && (
        <Row as="section">
          <h2>{say("orderPage.chancesHeading")}</h2>
          <p class="note">{say("orderPage.wanted", { chance: classFile.chance })}</p>
          <Table
            caption={say("orderPage.chancesHeading")}
            head={[{ says: say("orderPage.lesson") }, { says: say("orderPage.everyTeam"), numeric: true }]}
          >
            {order.chances.map(({ sitting, chance }) => {
              const below = order.below.find((b) => b.sitting === sitting);
              return (
                <tr key={sitting}>
                  <th scope="row">
                    {name(sitting)}
                    {below && <span class="note under">{say("orderPage.below", { things: items(below.items) })}</span>}
                  </th>
                  <td class="num">{formatChance(language, chance)}</td>
                </tr>
              );
            })}
          </Table>
        </Row>
      )}
    </>
  );
}

function SupplierLines({ part, fresh }: { readonly part: SupplierOrder; readonly fresh: boolean }) {
  const say = useSay();
  const session = useSession();
  const language = session.language.value;
  const classFile = session.classFile.value;
  const decimals = classFile?.decimals ?? 2;
  const sum = (value: Money) => formatSum(language, value, decimals);
  return (
    <Row at={<OrderBy day={part.by} />} as="section">
      <h3>{say("orderPage.orderFrom", { name: part.supplier.name, day: formatDay(language, part.by, "short") })}</h3>
      <p class="note">{say("orderPage.delivery", { days: part.supplier.days })}</p>
      <Table
        caption={say("orderPage.linesOf", { name: part.supplier.name })}
        phone="paragraphs"
        class="order-lines"
        head={[
          { says: say("orderPage.packets"), numeric: true },
          { says: say("orderPage.packetOf") },
          { says: say("orderPage.by") },
          { says: say("orderPage.why") },
          { says: say("orderPage.sum", { currency: classFile?.currency ?? "" }), numeric: true },
          { says: "" },
        ]}
        foot={
          <>
            <tr>
              <th scope="row" colSpan={4}>
                {say("orderPage.shipping")}
              </th>
              <td class="num">{sum(part.shipping)}</td>
              <td />
            </tr>
            <tr>
              <th scope="row" colSpan={4}>
                {say("orderPage.together")}
              </th>
              <td class="num">{sum(goodsOf(part.lines.map(({ line }) => line)) + part.shipping)}</td>
              <td />
            </tr>
          </>
        }
      >
        {part.lines.map(({ line, offer }) => {
          const what = offerName(session, offer, line.offer);
          return (
            <tr key={line.offer}>
              <td class="num">{line.packets} ×</td>
              <th scope="row">
                {what}
                <span class="note under">
                  <bdi>{line.offer}</bdi>
                </span>
              </th>
              <td data-l={say("orderPage.by")}>{shortDay(language, line.orderBy)}</td>
              <td>
                {line.fillsUp && say("orderPage.fillsUp")}
                {whyByLesson(line).map(({ sitting, things }) => (
                  <span class="one-why" key={sitting}>
                    {say("orderPage.whyOf", {
                      name: sittingName(session, sitting),
                      reasons: formatList(
                        language,
                        things.map(({ item, count, reason }) =>
                          isSeveral(offer)
                            ? say("orderPage.whyItem", {
                                reason: say(`orderReason.${reason}`, { count }),
                                name: itemName(language, item, count),
                              })
                            : say(`orderReason.${reason}`, { count }),
                        ),
                      ),
                    })}{" "}
                  </span>
                ))}
              </td>
              <td class="num" data-l={say("orderPage.sum", { currency: classFile?.currency ?? "" })}>
                {sum(line.cost)}
              </td>
              <td>
                <Came lines={[line]} label={say("orderPage.came")} of={what} fresh={fresh} quiet />
              </td>
            </tr>
          );
        })}
      </Table>
    </Row>
  );
}

const isSeveral = (offer: Offer | null) => offer?.contains.kind === "kit";

/** What a packet holds: "20 LEDs, red" or the kit's name; the offer's id where it is gone from the list. */
function offerName(session: Session, offer: Offer | null, id: string): string {
  if (offer === null) return id;
  const { contains } = offer;
  if (contains.kind === "item") return countedItem(session.language.value, contains.item, contains.count);
  return session.shipped.value?.kits.get(contains.kit)?.name ?? contains.kit;
}

interface CameProps {
  readonly lines: OrderPlan["lines"];
  readonly label: string;
  /** What has come, for listeners. */
  readonly of?: string;
  readonly fresh: boolean;
  readonly quiet?: boolean;
}

/** One tap puts what was ordered into the cupboard. */
function Came({ lines, label, of, fresh, quiet = false }: CameProps) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState(false);
  const classFile = session.classFile.value;
  if (classFile === null) return null;
  // After a change the order is of before; a line that has come once must not come again by a second tap.
  if (done && !fresh) return <span class="note">{say("orderPage.isIn")}</span>;
  const take = () => {
    const acts = whatCame(lines, classFile, session.shipped.value?.kits ?? new Map(), session.today.value);
    const wrong = acts.reduce<string | null>((before, change) => before ?? act(change), null);
    setProblem(wrong);
    setDone(wrong === null);
  };
  return (
    <>
      {quiet ? (
        <TextLink onPress={take} label={of === undefined ? label : say("orderPage.cameOf", { name: of })}>
          {label}
        </TextLink>
      ) : (
        <div class="acts">
          <Button onPress={take}>{label}</Button>
        </div>
      )}
      {problem && <p class="problem">{problem}</p>}
    </>
  );
}

function OrderBy({ day }: { readonly day: Day }) {
  const say = useSay();
  const session = useSession();
  return (
    <>
      <b>{shortDay(session.language.value, day)}</b>
      {day < session.today.value && <span class="note under">{say("orderPage.dayIsOver")}</span>}
    </>
  );
}

/** "The barrier, Class 7b, 9 March". */
function sittingName(session: Session, id: string): string {
  const parts = sittingParts(id);
  const { lesson, name } = lessonName(session, parts);
  const day = parts.date === null ? "—" : formatDay(session.language.value, parts.date, "short");
  const several = (session.classFile.value?.classes.length ?? 0) > 1;
  return sayIn(session.language.value, several ? "order.sittingOfClass" : "order.sitting", { lesson, name, day });
}

function dayOf(session: Session, id: string): string {
  const { date } = sittingParts(id);
  return date === null ? "—" : shortDay(session.language.value, date);
}
