// The order: one sheet that says what it buys and what it costs, then a sheet for each supplier to be signed and sent.
//
// A head of school asks why each line is there and whether it could be had for less; both stand beside the sums. A supplier's
// sheet names article, packet, number, price and sum as purchase forms do, and the last day on which the order helps.
// Does not know: how the purchase was found.
import { addDays, type Day, type Money } from "../base/index.ts";
import type { Lesson } from "../bench/lesson/index.ts";
import {
  countedItem,
  formatChance,
  formatDay,
  formatList,
  formatMoney,
  formatNumber,
  formatSum,
  itemName,
  type Language,
  say,
} from "../language/index.ts";
import type { ClassFile, Kit, Offer, Supplier } from "../school/file/index.ts";
import type { Purchase, PurchaseLine } from "../school/order/index.ts";
import { type Html, html, user } from "./html.ts";
import type { PaperContent, Sheet } from "./makePage.ts";
import { lineCount } from "./measure.ts";
import { splitByHeight } from "./splitByHeight.ts";
import { sheetHeight } from "./styleSheet.ts";
import { groupOf, lessonTitle, sittingParts } from "./who.ts";

export interface OrderInput {
  readonly classFile: ClassFile;
  readonly purchase: Purchase;
  readonly kits: ReadonlyMap<string, Kit>;
  /** Lessons by id, for their names. */
  readonly lessons: ReadonlyMap<string, Lesson>;
}

/** One line of a supplier's sheet. */
interface Row {
  readonly article: string;
  readonly contents: string;
  readonly why: string;
  readonly packets: number;
  readonly price: Money | null;
  readonly cost: Money;
}

interface SupplierPart {
  readonly supplier: Supplier;
  readonly rows: readonly Row[];
  readonly goods: Money;
  readonly shipping: Money;
  readonly orderBy: Day | null;
}

export function orderPaper(input: OrderInput, language: Language): PaperContent {
  const parts = supplierParts(input, language);
  return {
    title: say(language, "order.heading"),
    name: say(language, "order.name"),
    lesson: null,
    classAndDate: null,
    classFile: input.classFile,
    sheets: [...summarySheets(parts, input, language), ...parts.flatMap((part) => supplierSheets(part, input, language))],
  };
}

function supplierParts(input: OrderInput, language: Language): SupplierPart[] {
  const { classFile, purchase } = input;
  const ids = [...new Set([...purchase.lines.map((l) => l.supplier), ...purchase.shipping.map((s) => s.supplier)])];
  return ids.map((id) => {
    const supplier = classFile.suppliers.find((s) => s.id === id) ?? unknownSupplier(id);
    const lines = purchase.lines.filter((l) => l.supplier === id);
    const days = lines.flatMap((l) => l.why.flatMap((w) => sittingParts(w.sitting).date ?? [])).sort();
    return {
      supplier,
      rows: lines.map((line) => toRow(line, supplier, input, language)),
      goods: lines.reduce((sum, l) => sum + l.cost, 0),
      shipping: purchase.shipping.filter((s) => s.supplier === id).reduce((sum, s) => sum + s.cost, 0),
      orderBy: days[0] === undefined ? null : addDays(days[0], -supplier.days),
    };
  });
}

const unknownSupplier = (id: string): Supplier => ({ id, name: id, shipping: 0, freeFrom: null, days: 0, offers: [] });

function toRow(line: PurchaseLine, supplier: Supplier, input: OrderInput, language: Language): Row {
  const offer = supplier.offers.find((o) => o.id === line.offer);
  return {
    article: line.offer,
    contents: offer ? contentsOf(offer, input.kits, language) : "—",
    why: whyOf(line, input, language),
    packets: line.packets,
    price: offer?.price ?? null,
    cost: line.cost,
  };
}

function contentsOf(offer: Offer, kits: ReadonlyMap<string, Kit>, language: Language): string {
  const { contains } = offer;
  if (contains.kind === "kit") return say(language, "order.kit", { name: kits.get(contains.kit)?.name ?? contains.kit });
  return countedItem(language, contains.item, contains.count);
}

/** "The barrier, 4 March: servo, 1 missing, 1 spare": by lesson, then by item. */
function whyOf(line: PurchaseLine, input: OrderInput, language: Language): string {
  const bySitting = new Map<string, PurchaseLine["why"][number][]>();
  for (const why of line.why) bySitting.set(why.sitting, [...(bySitting.get(why.sitting) ?? []), why]);
  const severalItems = new Set(line.why.map((w) => w.item)).size > 1;
  return [...bySitting]
    .map(([sitting, whys]) =>
      say(language, "order.because", {
        sitting: sittingName(sitting, input, language),
        reasons: formatList(
          language,
          whys.map((w) => {
            const reason = say(language, `orderReason.${w.reason}`, { count: w.count });
            return severalItems
              ? say(language, "order.reasonOfItem", { reason, name: itemName(language, w.item, w.count) })
              : reason;
          }),
        ),
      }),
    )
    .join(" ");
}

/** "The barrier, 4 March"; with the class where the file has several. */
function sittingName(id: string, { classFile, lessons }: OrderInput, language: Language): string {
  const { class: group, lesson, date } = sittingParts(id);
  const data = {
    lesson: lessonTitle(lessons.get(lesson), language, lesson),
    day: date === null ? "—" : formatDay(language, date, "short"),
    name: groupOf(classFile, group)?.name ?? group,
  };
  return say(language, classFile.classes.length > 1 ? "order.sittingOfClass" : "order.sitting", data);
}

// ---- the first sheet: what it buys

function summarySheets(parts: readonly SupplierPart[], input: OrderInput, language: Language): Sheet[] {
  const { classFile, purchase } = input;
  const money = (sum: Money) => formatMoney(language, sum, classFile.currency, classFile.decimals);
  const sum = (value: Money) => formatSum(language, value, classFile.decimals);
  const head = html`<header class="top"><div><h1>${say(language, "order.heading")}</h1><p>${lessonsSpan(input, language)}</p></div><div class="end"><small>${say(language, "order.total")}</small><div class="sum">${money(purchase.cost)}</div></div></header>`;
  const table =
    parts.length === 0
      ? html`<p class="lead">${say(language, purchase.status === "infeasible" ? "order.infeasible" : "order.nothing")}</p>`
      : html`<table class="money"><thead><tr><th>${say(language, "order.supplier")}</th><th>${say(language, "order.orderBy")}</th><th class="num">${say(language, "order.goods", { currency: classFile.currency })}</th><th class="num">${say(language, "order.shipping")}</th><th class="num">${say(language, "order.sum")}</th></tr></thead><tbody>${parts.map(
          (p) =>
            html`<tr><th scope="row">${user(p.supplier.name)}</th><td>${p.orderBy === null ? "—" : formatDay(language, p.orderBy)}</td><td class="num">${sum(p.goods)}</td><td class="num">${sum(p.shipping)}</td><td class="num">${sum(p.goods + p.shipping)}</td></tr>`,
        )}</tbody><tfoot><tr><th scope="row">${say(language, "order.total")}</th><td></td><td class="num">${sum(parts.reduce((s, p) => s + p.goods, 0))}</td><td class="num">${sum(parts.reduce((s, p) => s + p.shipping, 0))}</td><td class="num">${sum(purchase.cost)}</td></tr></tfoot></table>`;
  const facts = [
    purchase.status === "optimal" && parts.length > 0 ? say(language, "order.noneCheaper") : null,
    purchase.status === "feasible" ? say(language, "order.maybeCheaper", { money: money(purchase.cost - purchase.bound) }) : null,
    classFile.budget === null
      ? null
      : say(language, purchase.cost > classFile.budget ? "order.overBudget" : "order.budget", {
          budget: money(classFile.budget),
          left: money(Math.abs(classFile.budget - purchase.cost)),
        }),
    purchase.notHeld.length > 0 && purchase.costOfAll !== null
      ? say(language, "order.costOfAll", { money: money(purchase.costOfAll) })
      : null,
  ].filter((f) => f !== null);
  const rows = lessonRows(input, language);
  const first = { head, before: html`${table}<div class="facts">${facts.map((f) => html`<p>${f}</p>`)}</div>` };
  const used = 26 + parts.length * 9 + 18 + facts.reduce((n, f) => n + lineCount(f, 185, 4.2) * 5.7, 0) + 20;
  const pages = splitByHeight(
    rows,
    (row) => row.height,
    sheetHeight - 13.5 - signHeight - used,
    sheetHeight - 13.5 - signHeight - 40,
  );
  return pages.map((page, i) => ({
    for: html`${say(language, "order.forSchool")}`,
    body: html`${first.head}${i === 0 ? first.before : null}${page.length === 0 ? null : html`<table class="held"><thead><tr><th>${say(language, "order.lesson")}</th><th>${say(language, "order.day")}</th><th>${say(language, "order.canBeHeld")}</th><th class="num">${say(language, "order.everyTeamWorks")}</th></tr></thead><tbody>${page.map((r) => r.html)}</tbody></table>`}${i === pages.length - 1 ? signature(language) : null}`,
  }));
}

function lessonsSpan({ purchase }: OrderInput, language: Language): string {
  const days = purchase.held.flatMap((id) => sittingParts(id).date ?? []).sort();
  const [from, to] = [days[0], days.at(-1)];
  if (from === undefined || to === undefined) return "";
  return say(language, "order.lessonsSpan", { count: purchase.held.length, from, to });
}

function lessonRows(input: OrderInput, language: Language): { html: Html; height: number }[] {
  const { purchase } = input;
  const row = (id: string, words: string, chance: string | null) => {
    const { class: group, lesson, date } = sittingParts(id);
    const title = lessonTitle(input.lessons.get(lesson), language, lesson);
    const name =
      input.classFile.classes.length > 1
        ? html`${user(title)}, ${user(groupOf(input.classFile, group)?.name ?? group)}`
        : user(title);
    const answer = chance === null ? html`<td colspan="2">${words}</td>` : html`<td>${words}</td><td class="num">${chance}</td>`;
    return {
      date,
      height: Math.max(lineCount(words, chance === null ? 80 : 40, 4.2), lineCount(title, 56, 4.2, "bold")) * 5.7 + 2.4,
      html: html`<tr><th scope="row">${name}</th><td class="nowrap">${date === null ? "—" : formatDay(language, date)}</td>${answer}</tr>`,
    };
  };
  const chances = new Map(purchase.chances.map((c) => [c.sitting, c.chance]));
  const held = purchase.held.map((id) => {
    const chance = chances.get(id);
    return row(id, say(language, "order.yes"), chance === undefined ? "—" : formatChance(language, chance));
  });
  const not = purchase.notHeld.map((n) => {
    const names = n.items.map((i) => itemName(language, i));
    return row(n.sitting, say(language, "order.no", { why: say(language, `notHeld.${n.reason}`), names }), null);
  });
  return [...held, ...not].sort((a, b) => ((a.date ?? "") < (b.date ?? "") ? -1 : 1));
}

// ---- a sheet for each supplier

/** Height of the lines for date and name, mm. */
const signHeight = 22;

function supplierSheets(part: SupplierPart, input: OrderInput, language: Language): Sheet[] {
  const { classFile } = input;
  const { supplier, rows } = part;
  const sum = (value: Money) => formatSum(language, value, classFile.decimals);
  const height = (row: Row) =>
    Math.max(
      lineCount(row.article, 33, 4.2, "bold") * 5.7,
      lineCount(row.contents, 84, 4.2, "bold") * 5.7 + lineCount(row.why, 84, 2.8) * 3.7,
    ) + 2.6;
  const top = 22 + lineCount(supplier.name, sheetWidthForName, 10, "bold") * 11;
  const room = sheetHeight - top - 13.5 - signHeight - 10;
  const pages = splitByHeight(rows, height, room - 25);
  return pages.map((page, i) => {
    const last = i === pages.length - 1;
    const foot = last
      ? html`<tfoot>${foot3(say(language, "order.goodsSum"), sum(part.goods))}${foot3(say(language, "order.shipping"), sum(part.shipping))}${foot3(say(language, "order.sumIn", { currency: classFile.currency }), sum(part.goods + part.shipping))}</tfoot>`
      : null;
    const when =
      part.orderBy === null
        ? null
        : html`<p>${say(language, "order.orderByDay", { day: formatDay(language, part.orderBy) })} ${say(language, "order.daysOfDelivery", { days: supplier.days })}</p>`;
    return {
      for: user(supplier.name),
      body: html`<header class="top"><div><small>${say(language, "order.orderTo")}</small><h1>${user(supplier.name)}</h1>${when}</div></header>
<table class="money articles"><thead><tr><th>${say(language, "order.article")}</th><th>${say(language, "order.packet")}</th><th class="num">${say(language, "order.packets")}</th><th class="num">${say(language, "order.price", { currency: classFile.currency })}</th><th class="num">${say(language, "order.sumIn", { currency: classFile.currency })}</th></tr></thead><tbody>${page.map((row) => articleRow(row, sum, language))}</tbody>${foot}</table>${last ? signature(language) : null}`,
    };
  });
}

const sheetWidthForName = 185;

const foot3 = (words: string, value: string) =>
  html`<tr><td colspan="2"></td><th scope="row" colspan="2" class="num">${words}</th><td class="num">${value}</td></tr>`;

function articleRow(row: Row, sum: (value: Money) => string, language: Language): Html {
  return html`<tr><th scope="row">${user(row.article)}</th><td><b>${row.contents}</b>${row.why === "" ? null : html`<small class="under">${row.why}</small>`}</td><td class="num"><b>${formatNumber(language, row.packets)}</b></td><td class="num">${row.price === null ? "—" : sum(row.price)}</td><td class="num">${sum(row.cost)}</td></tr>`;
}

function signature(language: Language): Html {
  const field = (key: "date" | "orderedBy" | "approvedBy") =>
    html`<div><i class="line"></i><small>${say(language, `order.${key}`)}</small></div>`;
  return html`<div class="sign">${field("date")}${field("orderedBy")}${field("approvedBy")}</div>`;
}
