// Tables in both directions. The rules: RFC 4180 for quotes and line ends; OWASP, "CSV Injection", and ASVS 1.2.10 for
// the cells that a spreadsheet would run.
import Papa from "papaparse";
import { expect, test } from "vitest";
import { patience } from "../../../test/files/patience.ts";
import { seededRandom } from "../../base/index.ts";
import { readCsvTable, type Separator, writeCsv } from "./csvTable.ts";

const cellsOf = (text: string | Uint8Array) => readCsvTable("t.csv", text).rows.map((row) => row.cells);

const reads: [name: string, text: string, rows: string[][], separator?: Separator | null][] = [
  [
    "commas",
    "a,b\r\n1,2\r\n",
    [
      ["a", "b"],
      ["1", "2"],
    ],
    ",",
  ],
  [
    "semicolons",
    "a;b\n1,5;2\n",
    [
      ["a", "b"],
      ["1,5", "2"],
    ],
    ";",
  ],
  [
    "tabs",
    "a\tb\n1,5\t2;3\n",
    [
      ["a", "b"],
      ["1,5", "2;3"],
    ],
    "\t",
  ],
  ["one column", "a\nb, c\n", [["a"], ["b, c"]], null],
  [
    "no line end at the end",
    "a,b\n1,2",
    [
      ["a", "b"],
      ["1", "2"],
    ],
    ",",
  ],
  [
    "old line ends",
    "a,b\r1,2\r",
    [
      ["a", "b"],
      ["1", "2"],
    ],
    ",",
  ],
  [
    "mixed line ends",
    "a,b\r\n1,2\n3,4\r5,6",
    [
      ["a", "b"],
      ["1", "2"],
      ["3", "4"],
      ["5", "6"],
    ],
    ",",
  ],
  [
    "a line that says the separator",
    "sep=;\na,b;c\n1;2\n",
    [
      ["a,b", "c"],
      ["1", "2"],
    ],
    ";",
  ],
  ["quotes", '"a,b","say ""hi"""\n', [["a,b", 'say "hi"']], ","],
  // RFC 4180: the field a"b,c.
  ["RFC 4180's field", '"a""b,c",d\n', [['a"b,c', "d"]], ","],
  ["a line break in quotes", '"a\r\nb",c\n', [["a\r\nb", "c"]], ","],
  [
    "a separator in quotes decides nothing",
    '"a;b",c\n1,2\n',
    [
      ["a;b", "c"],
      ["1", "2"],
    ],
    ",",
  ],
  ["an inch in the middle", 'cable 5",1\n', [['cable 5"', "1"]], ","],
  [
    "blank rows are left out",
    "a,b\n\n ,\n1,2\n",
    [
      ["a", "b"],
      ["1", "2"],
    ],
    ",",
  ],
  ["empty cells stay", "a,,c\n", [["a", "", "c"]], ","],
  ["a protecting apostrophe goes", "'=1+1,'-5,it's\n", [["=1+1", "-5", "it's"]], ","],
  ["an apostrophe that protects nothing stays", "'abc,'5\n", [["'abc", "'5"]], ","],
  ["a mark of the encoding is no letter", "\ufeffa,b\n", [["a", "b"]], ","],
  ["nothing", "", [], null],
];
for (const [name, text, rows, separator] of reads)
  test(`reads ${name}`, () => {
    const table = readCsvTable("t.csv", text);
    expect(table.problems).toEqual([]);
    expect(table.rows.map((row) => row.cells)).toEqual(rows);
    expect(table.separator).toBe(separator);
  });

test("lines are those of the file, also below a cell with line breaks and a blank row", () => {
  const { rows } = readCsvTable("t.csv", 'sep=,\na,"x\ny\nz"\n\nb,2\r\nc,3\n');
  expect(rows.map((row) => row.line)).toEqual([2, 6, 7]);
});

const broken: [name: string, text: string, code: string, line: number][] = [
  ["a quote that is never closed", 'a,b\n1,"2\n3,4\n', "file.csvQuoteOpen", 2],
  ["text behind a closing quote", 'a,b\n"1"x,2\n3,"4"\n', "file.csvQuoteStray", 2],
  ["a million rows", "a,b\n".repeat(1_000_000), "document.tooLarge", 1],
  ["twenty thousand and one rows", "a,b\n".repeat(20_001), "file.csvTooLong", 1],
  ["one line of ten million letters", "a".repeat(10_000_000), "document.tooLarge", 1],
];
for (const [name, text, code, line] of broken)
  test(`${name}: ${code}`, { timeout: patience }, () =>
    expect(readCsvTable("t.csv", text).problems).toMatchObject([{ code, place: { file: "t.csv", line } }]),
  );

const written: [name: string, cell: string | number, field: string][] = [
  ["plain text", "led red", "led red"],
  ["a comma", "box 3, a7", '"box 3, a7"'],
  ["a quote", 'the "good" one', '"the ""good"" one"'],
  ["a line break", "a\nb", '"a\nb"'],
  ["a formula", "=1+1", "'=1+1"],
  ["a telephone number", "+49 30 123", "'+49 30 123"],
  ["a dash that a person typed", "-5", "'-5"],
  ["an at sign", "@SUM(A1)", "'@SUM(A1)"],
  ["a formula after blanks", "  =1+1", '"\'  =1+1"'.replace('"\'  =1+1"', "'  =1+1")],
  ["a formula after a tab", "\t=1", "'\t=1"],
  ["a carriage return", "\rcmd", '"\'\rcmd"'],
  ["a nul", "\0=1", "'\0=1"],
  ["a full-width sign", "＝1+1", "'＝1+1"],
  ["a formula behind a quote", '"=1', '"\'""=1"'],
  ["a formula behind a separator", ";=1", "';=1"],
  ["a formula behind an apostrophe", "'=1", "''=1"],
  ["a number below nought", -5, "-5"],
  ["a number with decimals", 2.5, "2.5"],
  ["three decimals, which could be a thousand", 1.234, "1.2340"],
  ["outer blanks", " a ", '" a "'],
];
for (const [name, cell, field] of written)
  test(`writes ${name}`, () => expect(writeCsv([[cell, "x"]], { separator: "," })).toBe(`\ufeff${field},x\r\n`));

test("the locale's decimal mark", () =>
  expect(writeCsv([[2.5, -1]], { separator: ";", decimalMark: "," })).toBe("\ufeff2,5;-1\r\n"));
test("a first cell that looks like a separator line is quoted", () =>
  expect(cellsOf(writeCsv([["sep=;"], ["a;b"]], { separator: "," }))).toEqual([["sep=;"], ["a;b"]]));

/** Cells made of what breaks tables, runs in spreadsheets, or turns text round. */
const pieces = [
  ...["=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n", "\r\n", "\0", ",", ";", '"', '""', "'", "|", " ", "\u00a0"],
  ...[
    "\ufeff",
    "\u202e",
    "ليلى",
    "שלום",
    "é",
    "😀",
    "a",
    "1",
    "sep=;",
    "cmd|' /C calc'!A0",
    'HYPERLINK("http://x")',
    "1.000",
    "0,5",
  ],
];

/** The first character that a spreadsheet looks at, if it is one that makes it compute. Written apart from our own rule. */
function runs(field: string): boolean {
  let at = 0;
  while (at < field.length && ' \t\r\n\0\u00a0\ufeff"'.includes(field[at] ?? "")) at += 1;
  return "=+-@＝＋－＠".includes(field[at] ?? "x") || "\t\r\0".includes(field[0] ?? "x");
}

for (const separator of [",", ";", "\t"] as const)
  test(`nasty cells come back as they were, and none of them runs: "${separator}"`, () => {
    const random = seededRandom(20_261_125, separator);
    const piece = () => pieces[random.int(0, pieces.length - 1)] ?? "";
    const cells = Array.from({ length: 700 }, () => Array.from({ length: random.int(1, 6) }, piece).join(""));
    // A word at the ends keeps a row of blanks from being left out, and the first row shows the separator.
    const rows = [
      ["first", "second", "third", "fourth"],
      ...Array.from({ length: 100 }, (_, i) => ["x", ...cells.slice(i * 7, i * 7 + 7), "y"]),
    ];
    const text = writeCsv(rows, { separator });
    expect(cellsOf(text)).toEqual(rows);
    expect(cellsOf(new TextEncoder().encode(text))).toEqual(rows);
    // Another reader of RFC 4180 sees the same fields, and not one that a spreadsheet would run.
    const fields = Papa.parse<string[]>(text.slice(1), { delimiter: separator, newline: "\r\n" }).data.flat();
    expect(fields.filter(runs)).toEqual([]);
  });
