// An order as a table: out for the office, and back in when it comes back with other numbers of packets.
//
// Does not know: why a line is ordered, whether it is the cheapest.
import { type Day, hasErrors, type Money, near, writeMoney } from "../../base/index.ts";
import type { ClassFile } from "./classFile.ts";
import { type CsvStyle, writeCsv } from "./csvTable.ts";
import {
  type ColumnSpec,
  cellPlace,
  closeTable,
  demandColumns,
  ignoreColumns,
  openTable,
  type TableReading,
  textAt,
} from "./openTable.ts";
import { countAt } from "./readStockCsv.ts";
import { shownCell } from "./tableCell.ts";

/** So many packets of one offer. */
export interface OrderLine {
  readonly supplier: string;
  readonly offer: string;
  readonly packets: number;
  /** The last day on which ordering it still serves the first lesson that needs it, where that is known. */
  readonly orderBy?: Day;
}

const orderColumns: readonly ColumnSpec[] = [
  { name: "supplier", words: ["supplier", "shop", "seller"] },
  { name: "offer", words: ["offer", "article number", "order number"] },
  { name: "packets", words: ["packets", "packs", "packet", "quantity", "qty"] },
  // Written for people; what they say follows from the offer.
  { name: "contains", words: ["contains"] },
  { name: "each", words: ["each"] },
  { name: "price", words: ["price"] },
  { name: "cost", words: ["cost"] },
  { name: "currency", words: ["currency"] },
  { name: "order by", words: ["order by"] },
];

/** One row a line, with what a packet contains, its price, the cost and, where known, the last day; shipping is not in it. */
export function orderCsv(classFile: ClassFile, lines: readonly OrderLine[], style: CsvStyle): string {
  const { decimals, currency, suppliers } = classFile;
  const money = (sum: Money) => writeMoney(sum, decimals).replace(".", style.decimalMark ?? ".");
  const isDated = lines.some((line) => line.orderBy !== undefined);
  const heads = orderColumns.map((column) => column.name).filter((name) => isDated || name !== "order by");
  const rows = lines.map(({ supplier, offer, packets, orderBy }) => {
    const last = isDated ? [orderBy ?? ""] : [];
    const found = suppliers.find((s) => s.id === supplier)?.offers.find((o) => o.id === offer);
    if (!found) return [supplier, offer, packets, "", "", "", "", currency, ...last];
    const { contains, price } = found;
    const what = contains.kind === "kit" ? [contains.kit, 1] : [contains.item, contains.count];
    return [supplier, offer, packets, ...what, money(price), money(price * packets), currency, ...last];
  });
  return writeCsv([heads, ...rows], style);
}

/** @returns the lines of an order; a supplier or an offer that the class file does not have is an error. */
export function readOrderCsv(
  file: string,
  content: Uint8Array | string,
  classFile: ClassFile,
): TableReading<readonly OrderLine[]> {
  const open = openTable(file, content, orderColumns);
  demandColumns(open, ["supplier", "offer", "packets"]);
  if (hasErrors(open.problems)) return closeTable<readonly OrderLine[]>(open, null);
  ignoreColumns(open, open.others);
  const lines = open.body.map((row) => {
    const supplier = textAt(open, row, "supplier");
    const offer = textAt(open, row, "offer");
    const known = classFile.suppliers.find((s) => s.id === supplier);
    const [found, words, column] = known
      ? [offer, known.offers.map((o) => o.id), "offer"]
      : [supplier, classFile.suppliers.map((s) => s.id), "supplier"];
    if (!words.includes(found))
      open.problems.push({
        code: "file.csvUnknownOffer",
        place: cellPlace(open, row, column),
        found: shownCell(found),
        near: near(found, words),
      });
    return { supplier, offer, packets: countAt(open, row, "packets") };
  });
  return closeTable(open, lines);
}
