// Opens a teacher's table: which column holds what, from the words of its header.
//
// Tables come with columns in any order, under names of their own, below a title line. A header is recognised by one column
// that is named exactly; for a column that is then still missing the nearest word is taken, and said.
// Does not know: what the cells mean.
import { hasErrors, near, type Reading, sortProblems } from "../../base/index.ts";
import { type CsvRow, type CsvTable, readCsvTable, type Separator } from "./csvTable.ts";
import type { Encoding } from "./decodeText.ts";
import type { FileProblem } from "./fileProblem.ts";
import { leftOut } from "./leftOut.ts";
import { cellText, shownCell } from "./tableCell.ts";

export interface ColumnSpec {
  /** What the column is for us. */
  readonly name: string;
  /** Words that people use for it, folded (see `fold`). */
  readonly words: readonly string[];
}

/** What was made of a table, to be shown to a person before it is taken. */
export interface Understood {
  readonly encoding: Encoding | null;
  readonly separator: Separator | null;
  /** Line of the header, or null where there was none. */
  readonly headerLine: number | null;
  /** For each column of the header: its words, and what it was taken for (null: left out). */
  readonly columns: readonly { readonly found: string; readonly understood: string | null }[];
  /** Rows below the header. */
  readonly rows: number;
}

export interface TableReading<Value> extends Reading<Value, FileProblem> {
  readonly understood: Understood;
}

/** A table with its columns found. Readers add to `problems`. */
export interface OpenTable {
  readonly file: string;
  readonly table: CsvTable;
  /** Line of the header, or null; then every row is in `body`. */
  readonly headerLine: number | null;
  /** Name of a spec to the position of its cell, from 0. */
  readonly at: ReadonlyMap<string, number>;
  /** Named columns that belong to no spec. */
  readonly others: readonly { readonly found: string; readonly at: number }[];
  readonly body: readonly CsvRow[];
  readonly problems: FileProblem[];
}

/** A table full of slips is told the first of them. */
export const mostTableProblems = 100;
/** A header may stand below a title. */
const linesLookedAt = 5;

/** @param content bytes of the file, or pasted text. */
export function openTable(file: string, content: Uint8Array | string, specs: readonly ColumnSpec[]): OpenTable {
  const table = readCsvTable(file, content);
  const { rows } = table;
  const problems: FileProblem[] = [...table.problems, ...leftOut(file, table.text, "table")];
  if (rows.length === 0 && !hasErrors(problems)) problems.push({ code: "file.csvEmpty", place: { file, line: 1, column: 1 } });
  const specOf = (cell: string) => specs.find((spec) => spec.words.includes(fold(cell)));
  let at = rows.slice(0, linesLookedAt).findIndex((row) => row.cells.some(specOf));
  if (at === -1 && couldBeHeader(rows[0], specs)) at = 0;
  const header = rows[at];
  if (!header || hasErrors(problems)) return { file, table, headerLine: null, at: new Map(), others: [], body: rows, problems };

  const found = new Map<string, number>();
  const unnamed: { found: string; at: number }[] = [];
  for (const [i, cell] of header.cells.entries()) {
    const spec = specOf(cell);
    const place = { file, line: header.line, column: i + 1 };
    const first = spec && found.get(spec.name);
    if (first !== undefined)
      problems.push({ code: "file.csvColumnTwice", place, found: shownCell(cell), firstColumn: first + 1 });
    else if (spec) found.set(spec.name, i);
    else if (cell.trim() !== "") unnamed.push({ found: cellText(cell), at: i });
  }
  const others: { found: string; at: number }[] = [];
  for (const column of unnamed) {
    const missing = specs.filter((spec) => !found.has(spec.name));
    const words = missing.flatMap((spec) => spec.words);
    const word = near(fold(column.found), words);
    const spec = missing.find((s) => word !== null && s.words.includes(word));
    if (!spec) {
      others.push(column);
      continue;
    }
    found.set(spec.name, column.at);
    problems.push({
      code: "file.csvColumnGuessed",
      severity: "warning",
      place: { file, line: header.line, column: column.at + 1 },
      found: shownCell(column.found),
      understood: spec.name,
    });
  }
  const body = rows.slice(at + 1);
  const width = header.cells.length;
  // Under a header of one column every comma belongs to the text.
  const isOne = width === 1;
  for (const row of isOne ? [] : body) {
    if (row.cells.slice(width).every((cell) => cell.trim() === "")) continue;
    const place = { file, line: row.line, column: width + 1 };
    problems.push({ code: "file.csvTooManyCells", place, found: row.cells.length, expected: width });
  }
  if (body.length === 0) problems.push({ code: "file.csvEmpty", place: { file, line: header.line, column: 1 } });
  return { file, table, headerLine: header.line, at: found, others, body, problems };
}

/** A first row without figures that nearly names a column. One column alone is a list of names, and names are near to words. */
function couldBeHeader(row: CsvRow | undefined, specs: readonly ColumnSpec[]): boolean {
  if (!row || row.cells.length < 2 || row.cells.some((cell) => /\d/.test(cell))) return false;
  const words = specs.flatMap((spec) => spec.words);
  return row.cells.some((cell) => near(fold(cell), words) !== null);
}

/** Words of a header without case, stops and doubled blanks: "Box-No.:" is "box no". */
function fold(cell: string): string {
  return cellText(cell)
    .toLowerCase()
    .replace(/[.:;_\-/()'’]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

/** Demands columns; a missing one is reported at the header, or at the first row if there is no header. */
export function demandColumns(open: OpenTable, names: readonly string[]): void {
  const { file, table, headerLine, at, others, problems } = open;
  const [first] = table.rows;
  if (!first || hasErrors(problems)) return;
  if (headerLine === null) {
    const found = shownCell(first.cells.join(", "));
    problems.push({ code: "file.csvNoHeader", place: { file, line: first.line, column: 1 }, found, expected: names.join(", ") });
    return;
  }
  for (const name of names.filter((n) => !at.has(n))) {
    const found = others.map((other) => shownCell(other.found)).join(", ");
    problems.push({ code: "file.csvMissingColumn", place: { file, line: headerLine, column: 1 }, expected: name, found });
  }
}

/** Says of the columns that nobody took. */
export function ignoreColumns(open: OpenTable, columns: OpenTable["others"]): void {
  for (const { found, at } of columns)
    open.problems.push({
      code: "file.csvColumnIgnored",
      severity: "warning",
      place: { file: open.file, line: open.headerLine ?? 1, column: at + 1 },
      found: shownCell(found),
    });
}

/** The place of a cell of a row: the line of the file and the number of the cell. */
export function cellPlace(open: OpenTable, row: CsvRow, column: string | number) {
  const at = typeof column === "number" ? column : (open.at.get(column) ?? 0);
  return { file: open.file, line: row.line, column: at + 1 };
}

/** The text of a cell; empty where the table has no such column. */
export function textAt(open: OpenTable, row: CsvRow, column: string): string {
  return cellText(row.cells[open.at.get(column) ?? -1] ?? "");
}

/** @param marks further columns that were taken, by name. */
export function closeTable<Value>(
  open: OpenTable,
  value: Value | null,
  marks: ReadonlyMap<string, number> = new Map(),
): TableReading<Value> {
  const { table, headerLine, body } = open;
  const names = new Map([...open.at, ...marks].map(([name, at]) => [at, name]));
  const header = table.rows.find((row) => row.line === headerLine);
  const columns = (header?.cells ?? []).map((cell, i) => ({ found: shownCell(cell), understood: names.get(i) ?? null }));
  const problems = sortProblems(open.problems).slice(0, mostTableProblems);
  return {
    value: hasErrors(problems) ? null : value,
    problems,
    understood: { encoding: table.encoding, separator: table.separator, headerLine, columns, rows: body.length },
  };
}
