// benchday order CLASS: what to buy, from whom, why, and how sure it is that nothing is cheaper.
//
// Does not know: how a purchase is found.
import type { Day } from "../../base/index.ts";
import { formatChance, formatMoney, itemName, type Language, sayUnchecked } from "../../language/index.ts";
import { orderCsv } from "../../school/file/index.ts";
import { type OrderPlan, planOrder } from "../../school/order/index.ts";
import { writeSafely } from "../files.ts";
import type { SchoolFiles } from "../loadFiles.ts";
import {
  bold,
  clearProgress,
  columns,
  type ExitStatus,
  print,
  printJson,
  printProblems,
  problemsAsJson,
  showProgress,
  type Talk,
  wrap,
} from "../output.ts";
import { isPlanned, type PlannedSchool, planSchool, statusOf } from "../planSchool.ts";

export interface OrderOptions {
  readonly today: Day;
  readonly seed: number;
  readonly csv: string | null;
  /** Seconds for the search; afterwards the best so far is told with its gap. */
  readonly seconds: number;
}

export async function orderCommand(path: string, options: OrderOptions, talk: Talk): Promise<ExitStatus> {
  const planned = planSchool(path, options.today, options.seed, talk);
  if (!isPlanned(planned)) {
    if (talk.json) printJson({ status: "infeasible", cost: 0, bound: 0, gap: 0, lines: [], problems: problemsAsJson(planned) });
    return 1;
  }
  showProgress(sayUnchecked(talk.language, "progress.order"));
  const purchase = await orderFor(planned, options.seconds);
  clearProgress();
  if (options.csv !== null) {
    const failed = writeSafely(
      options.csv,
      orderCsv(planned.files.classFile, purchase.lines, { separator: talk.language.decimalMark === "," ? ";" : "," }),
    );
    if (failed) return printProblems([failed], talk);
  }
  if (talk.json) printJson({ ...purchase, problems: problemsAsJson(planned.problems) });
  else printOrder(purchase, planned.files, talk.language);
  return statusOf(planned);
}

export function orderFor(planned: PlannedSchool, seconds = 30): Promise<OrderPlan> {
  const { files, sittings, store, rates, world } = planned;
  return planOrder(
    { classFile: files.classFile, kits: files.kits, sittings, cupboard: store, rates, today: world.today, seconds },
    world,
  );
}

export function printOrder(purchase: OrderPlan, { classFile, kits }: SchoolFiles, language: Language): void {
  const say = (key: string, data: Record<string, unknown> = {}) => sayUnchecked(language, `ordering.${key}`, data);
  const money = (sum: number) => formatMoney(language, sum, classFile.currency, classFile.decimals);
  print(bold(say("heading")));
  if (purchase.lines.length === 0 && purchase.status !== "infeasible") print(wrap(say("nothing"), "  "));
  for (const supplier of classFile.suppliers) {
    const lines = purchase.lines.filter((l) => l.supplier === supplier.id);
    if (lines.length === 0) continue;
    print(`  ${supplier.name}`);
    print(
      columns(
        lines.map((line) => {
          const offer = supplier.offers.find((o) => o.id === line.offer);
          const what =
            offer === undefined
              ? line.offer
              : offer.contains.kind === "kit"
                ? (kits.get(offer.contains.kit)?.name ?? offer.contains.kit)
                : say("packet", {
                    count: offer.contains.count,
                    name: itemName(language, offer.contains.item, offer.contains.count),
                  });
          return [
            `    ${line.packets} ×`,
            what,
            money(line.cost),
            say("orderBy", { date: line.orderBy }),
            line.fillsUp ? say("fillsUp") : line.why.map((w) => whyWords(w, language)).join("; "),
          ];
        }),
        [2],
      ),
    );
    const shipping = purchase.shipping.find((s) => s.supplier === supplier.id);
    if (shipping) print(`    ${say("shipping")} ${money(shipping.cost)}`);
  }
  print();
  print(
    bold(
      say(purchase.status, {
        cost: money(purchase.cost),
        bound: money(purchase.bound),
        gap: formatChance(language, purchase.gap),
      }),
    ),
  );
  if (classFile.budget !== null)
    print(say("budget", { budget: money(classFile.budget), left: money(classFile.budget - purchase.cost) }));
  for (const held of purchase.chances)
    print(wrap(say("held", { sitting: held.sitting, chance: formatChance(language, held.chance) }), "  "));
  for (const lost of purchase.notHeld)
    print(
      wrap(
        say("notHeld", {
          sitting: lost.sitting,
          why: sayUnchecked(language, `notHeld.${lost.reason}`),
          items: lost.items.map((i) => itemName(language, i)),
        }),
        "  ",
      ),
    );
  for (const { sitting, chance, items } of purchase.below)
    print(wrap(say("below", { sitting, chance: formatChance(language, chance), items }), "  "));
  if (purchase.next !== null)
    print(wrap(say("next", { cost: money(purchase.next.cost), sitting: purchase.next.sittings }), "  "));
  if (purchase.costOfAll !== null && purchase.notHeld.length > 0) print(say("all", { cost: money(purchase.costOfAll) }));
}

function whyWords(why: OrderPlan["lines"][number]["why"][number], language: Language): string {
  return sayUnchecked(language, `orderWhy.${why.reason}`, {
    sitting: why.sitting,
    name: itemName(language, why.item, why.count),
    count: why.count,
  });
}
