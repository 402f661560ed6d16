// Rosters, stock and kit lists as tables for a spreadsheet, in the words that reading knows.
//
// Does not know: where the table goes, the class's language.
import type { ItemKey, Pupil, StockLine } from "./classFile.ts";
import { type CsvStyle, writeCsv } from "./csvTable.ts";

/** Id, name, and a column for each mark; a pupil without the mark has an empty cell. */
export function rosterCsv(pupils: readonly Pupil[], style: CsvStyle): string {
  const marks = [...new Set(pupils.flatMap((pupil) => Object.keys(pupil.marks)))];
  const rows = pupils.map(({ id, name, marks: own }) => [id, name, ...marks.map((mark) => own[mark] ?? "")]);
  return writeCsv([["id", "name", ...marks], ...rows], style);
}

export function stockCsv(stock: readonly StockLine[], style: CsvStyle): string {
  return writeCsv([["item", "count", "box"], ...stock.map(({ item, count, box }) => [item, count, box])], style);
}

export function kitListCsv(contents: ReadonlyMap<ItemKey, number>, style: CsvStyle): string {
  return writeCsv([["item", "count"], ...contents], style);
}
