// Reads what lies in the cupboard, or what is in a kit, from a table of items and counts.
//
// Does not know: what the class file said before.
import { hasErrors } from "../../base/index.ts";
import type { ItemKey, StockLine } from "./classFile.ts";
import type { CsvRow } from "./csvTable.ts";
import { looseItem, nearItem, readItem } from "./itemText.ts";
import {
  type ColumnSpec,
  cellPlace,
  closeTable,
  demandColumns,
  ignoreColumns,
  mostTableProblems,
  type OpenTable,
  openTable,
  type TableReading,
  textAt,
} from "./openTable.ts";
import { readCountCell, shownCell } from "./tableCell.ts";

/** Words of headers in English, French, Spanish, Portuguese, German, Swahili and Indonesian (from memory). */
const stockColumns: readonly ColumnSpec[] = [
  {
    name: "item",
    words: [
      "item",
      "items",
      "thing",
      "things",
      "part",
      "parts",
      "component",
      "article",
      "pièce",
      "composant",
      "pieza",
      "componente",
      "peça",
      "teil",
      "bauteil",
      "kifaa",
      "barang",
    ],
  },
  {
    name: "count",
    words: [
      "count",
      "here",
      "number",
      "quantity",
      "qty",
      "pieces",
      "pcs",
      "how many",
      "quantité",
      "nombre",
      "cantidad",
      "quantidade",
      "anzahl",
      "menge",
      "stück",
      "idadi",
      "jumlah",
    ],
  },
  {
    name: "box",
    words: ["box", "place", "where", "drawer", "location", "shelf", "boîte", "caja", "caixa", "kiste", "fach", "kasha", "kotak"],
  },
];

/** @returns the lines in the order of the table; the same item may lie in two boxes. */
export function readStockCsv(file: string, content: Uint8Array | string): TableReading<readonly StockLine[]> {
  const open = openTable(file, content, stockColumns);
  const lines = readItems(open).map(({ row, item, count }) => ({ item, count, box: textAt(open, row, "box") }));
  return closeTable(open, lines);
}

/** @returns how many of each item; an item that stands twice is added up, with a warning. */
export function readKitList(file: string, content: Uint8Array | string): TableReading<ReadonlyMap<ItemKey, number>> {
  const open = openTable(file, content, stockColumns);
  const contents = new Map<ItemKey, number>();
  const lines = new Map<ItemKey, number>();
  for (const { row, item, count } of readItems(open)) {
    const before = lines.get(item);
    if (before === undefined) lines.set(item, row.line);
    else
      open.problems.push({
        code: "file.sameItem",
        severity: "warning",
        place: cellPlace(open, row, "item"),
        item,
        firstLine: before,
      });
    contents.set(item, (contents.get(item) ?? 0) + count);
  }
  return closeTable(open, contents);
}

function readItems(open: OpenTable): { row: CsvRow; item: ItemKey; count: number }[] {
  demandColumns(open, ["item", "count"]);
  if (hasErrors(open.problems)) return [];
  ignoreColumns(open, open.others);
  return open.body.map((row) => {
    // Looking for near names in twenty thousand wrong rows would take minutes.
    const isFull = open.problems.length > mostTableProblems;
    const written = textAt(open, row, "item");
    const item = readItem(written) ?? looseItem(written);
    const place = cellPlace(open, row, "item");
    if (written === "") open.problems.push({ code: "file.csvEmptyCell", place, column: "item" });
    else if (item === null)
      open.problems.push({ code: "file.unknownItem", place, found: shownCell(written), near: isFull ? null : nearItem(written) });
    else if (readItem(written) === null)
      open.problems.push({
        code: "file.csvItemGuessed",
        severity: "warning",
        place,
        found: shownCell(written),
        understood: item,
      });
    return { row, item: item ?? "", count: countAt(open, row, "count") };
  });
}

/** The count in a cell; what is wrong with it goes to the problems. */
export function countAt(open: OpenTable, row: CsvRow, column: string): number {
  const written = textAt(open, row, column);
  const read = readCountCell(written);
  const problem = { place: cellPlace(open, row, column), column, found: shownCell(written) };
  if (written === "") open.problems.push({ code: "file.csvEmptyCell", place: problem.place, column });
  else if (read.status === "unclear") open.problems.push({ code: "file.csvUnclearNumber", ...problem });
  else if (read.status === "notANumber") open.problems.push({ code: "file.csvNotACount", ...problem });
  return read.status === "read" ? read.value : 0;
}
