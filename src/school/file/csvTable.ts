// CSV as people really write it, in both directions: text to rows of cells, and rows to text that no spreadsheet runs.
//
// Reading takes commas, semicolons and tabs, any line end, a `sep=` line and line breaks inside quotes. Writing follows
// RFC 4180 with a UTF-8 mark, so that a double click opens it with its accents whole. A text that a spreadsheet would run as a
// formula is written behind an apostrophe; reading takes that apostrophe off again, so a round trip gives the same cells.
// Does not know: what the columns mean.
import Papa from "papaparse";
import { decodeText, type Encoding } from "./decodeText.ts";
import type { FileProblem } from "./fileProblem.ts";

export type Separator = "," | ";" | "\t";

export interface CsvRow {
  /** Line of the file on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvTable {
  /** The whole text, for whoever looks at its characters. */
  readonly text: string;
  readonly encoding: Encoding | null;
  /** Null where there is one column only. */
  readonly separator: Separator | null;
  readonly rows: readonly CsvRow[];
  readonly problems: readonly FileProblem[];
}

/** Rows a file may have: a hundred times the largest school list, and little enough for an old laptop. */
export const mostRows = 20_000;
/** Characters a file may have. */
const mostCharacters = 2_000_000;

const separators: readonly Separator[] = [";", "\t", ","];

/**
 * Splits a file into rows of cells. Rows without any text are left out, and no cell is changed except that a protecting
 * apostrophe is taken off.
 *
 * @param file name for the places of problems; a place's column is the number of the cell, 1 for the first.
 */
export function readCsvTable(file: string, content: Uint8Array | string): CsvTable {
  const place = { file, line: 1, column: 1 };
  const refused = (problem: FileProblem, encoding: Encoding | null): CsvTable => {
    return { text: "", encoding, separator: null, rows: [], problems: [problem] };
  };
  // A byte may be a character; four of them surely are.
  const tooLarge = (found: number) => refused({ code: "document.tooLarge", place, found, most: mostCharacters }, null);
  if (content.length > 4 * mostCharacters) return tooLarge(content.length);
  const { text, encoding } = decodeText(content);
  if (text.length > mostCharacters) return tooLarge(text.length);
  const said = /^sep=([,;\t])[ \t]*(?:\r\n?|\n|$)/i.exec(text);
  const body = endLines(said ? text.slice(said[0].length) : text);
  const separator = (said?.[1] as Separator | undefined) ?? guessSeparator(body);
  const read = Papa.parse<string[]>(body, {
    delimiter: separator ?? "\u001f",
    newline: "\n",
    preview: mostRows + 1,
  });
  if (read.data.length > mostRows)
    return refused({ code: "file.csvTooLong", place, found: read.data.length, most: mostRows }, encoding);
  const rows: CsvRow[] = [];
  const starts: number[] = [];
  let line = said ? 2 : 1;
  for (const cells of read.data) {
    starts.push(line);
    if (cells.some((cell) => cell.trim() !== "")) rows.push({ line, cells: cells.map(disarmed) });
    line += 1 + cells.reduce((sum, cell) => sum + countBreaks(cell), 0);
  }
  const problems = read.errors
    .filter((error) => error.type === "Quotes")
    .map((error): FileProblem => {
      const at = { file, line: starts[error.row ?? 0] ?? line, column: 1 };
      return error.code === "MissingQuotes"
        ? { code: "file.csvQuoteOpen", place: at }
        : { code: "file.csvQuoteStray", place: at };
    });
  return { text, encoding, separator, rows, problems: problems.slice(0, 1) };
}

/** Turns every line end outside quotes into one character; the last one ends the last row and begins none. */
function endLines(text: string): string {
  const pieces = text.split('"').map((piece, i) => (i % 2 === 0 ? piece.replace(/\r\n?/g, "\n") : piece));
  const ended = pieces.join('"');
  return pieces.length % 2 === 1 && ended.endsWith("\n") ? ended.slice(0, -1) : ended;
}

/** The separator that stands most often in the first rows outside quotes, the rarer in running text first; null for none. */
function guessSeparator(text: string): Separator | null {
  const head = text.slice(0, 20_000).replace(/"[^"]*"/g, "x");
  const lines = head.split("\n").filter((line) => line.trim() !== "");
  const first = lines[0] ?? "";
  // The first row decides: commas in the texts further down must not win over its semicolons, nor make columns of one.
  const found =
    separators.find((s) => first.includes(s) && lines.slice(0, 5).every((line) => line.includes(s))) ??
    separators.find((s) => first.includes(s));
  return found ?? null;
}

function countBreaks(cell: string): number {
  return cell.match(/\r\n?|\n/g)?.length ?? 0;
}

/**
 * What a spreadsheet takes for the beginning of a formula or a command (OWASP, CSV injection; ASVS 1.2.10), also in full width,
 * after blanks, and after a quote, an apostrophe or a separator, at which careless readers split a cell.
 */
const live = /^[\s"',;|]*[=+\-@\t\r\0\uff1d\uff0b\uff0d\uff20]/;

/** A text as a cell: behind an apostrophe if a spreadsheet would run it. */
function armed(text: string): string {
  return live.test(text) ? `'${text}` : text;
}

/** The text that was written: without the apostrophe that `armed` put before it. */
function disarmed(cell: string): string {
  return cell.startsWith("'") && live.test(cell.slice(1)) ? cell.slice(1) : cell;
}

export interface CsvStyle {
  readonly separator: Separator;
  /** Decimal mark of numbers; a spreadsheet with semicolons usually wants a comma. */
  readonly decimalMark?: "." | ",";
}

/**
 * Writes rows as RFC 4180 wants them: CRLF at each end, quotes where needed and doubled inside, after a UTF-8 byte order mark.
 *
 * @param rows a text cell is defused if need be; a number stays a number, also a negative one. Numbers must be finite.
 */
export function writeCsv(rows: readonly (readonly (string | number)[])[], style: CsvStyle): string {
  const { separator, decimalMark = "." } = style;
  const write = (cell: string | number): string => {
    const text = typeof cell === "number" ? writeNumber(cell).replace(".", decimalMark) : armed(cell);
    return mustQuote(text, separator) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  const lines = rows.map((row) => (row.length === 1 && row[0] === "" ? '""' : row.map(write).join(separator)));
  return `\ufeff${lines.map((line) => `${line}\r\n`).join("")}`;
}

/** Three decimals get a fourth: 1.234 could be read as one thousand two hundred and thirty-four. */
function writeNumber(value: number): string {
  return String(value).replace(/^-?\d{1,3}\.\d{3}$/, (written) => `${written}0`);
}

/** Also for outer blanks, which some readers trim, and for a first cell that would be taken for a `sep=` line. */
function mustQuote(text: string, separator: string): boolean {
  return text.includes(separator) || /["\r\n]|^\s|\s$|^sep=/i.test(text);
}
