// Reads the pupils of a class from a table, or from a column of names that somebody pasted.
//
// Needed is a name, or a given and a family name. Ids are made where there are none. Every further column of numbers is a mark
// that teams can be balanced on. What was understood goes back with the pupils, so that a person can look before it is taken.
// Does not know: which pupils the class had before.
import { hasErrors } from "../../base/index.ts";
import type { Pupil } from "./classFile.ts";
import { isId } from "./classFileShape.ts";
import type { CsvRow } from "./csvTable.ts";
import {
  type ColumnSpec,
  cellPlace,
  closeTable,
  demandColumns,
  ignoreColumns,
  type OpenTable,
  openTable,
  type TableReading,
  textAt,
} from "./openTable.ts";
import { cellText, readNumberCell, shownCell } from "./tableCell.ts";

/** Words of headers in English, French, Spanish, Portuguese, German, Swahili, Indonesian, Arabic and Hindi (from memory). */
const rosterColumns: readonly ColumnSpec[] = [
  {
    name: "id",
    words: ["id", "no", "nr", "n°", "nº", "number", "pupil id", "student id", "numéro", "número", "nummer", "nomor", "nambari"],
  },
  {
    name: "name",
    words: [
      ...["name", "names", "full name", "pupil", "pupils", "pupil name", "student", "students", "student name", "learner"],
      ...["nom", "nom complet", "élève", "nombre", "nombre completo", "alumno", "nome", "nome completo", "aluno"],
      ...["schüler", "schülerin", "jina", "nama", "nama lengkap", "siswa", "الاسم", "नाम"],
    ],
  },
  { name: "given", words: ["first name", "given name", "forename", "prénom", "nombre de pila", "vorname", "nome próprio"] },
  {
    name: "family",
    words: [
      "last name",
      "family name",
      "surname",
      "nom de famille",
      "apellido",
      "apellidos",
      "nachname",
      "familienname",
      "sobrenome",
    ],
  },
];

interface NamedRow {
  readonly row: CsvRow;
  readonly id: string;
  readonly name: string;
  readonly marks: Readonly<Record<string, number>>;
}

/**
 * @param content bytes of the file, or pasted text.
 * @returns the pupils in the order of the table. Places are the line of the file and the number of the cell.
 */
export function readRoster(file: string, content: Uint8Array | string): TableReading<readonly Pupil[]> {
  const open = openTable(file, content, rosterColumns);
  if (hasErrors(open.problems)) return closeTable<readonly Pupil[]>(open, null);
  if (open.headerLine === null) return closeTable(open, toPupils(open, namesAlone(open)));
  if (!open.at.has("given") && !open.at.has("family")) demandColumns(open, ["name"]);
  const marks = findMarks(open);
  // Under a header of one column a comma belongs to the name.
  const isOne = open.table.rows.find((row) => row.line === open.headerLine)?.cells.length === 1;
  const rows = open.body.map((row): NamedRow => {
    const whole = isOne ? cellText(row.cells.join(open.table.separator ?? "")) : textAt(open, row, "name");
    const name = whole || `${textAt(open, row, "given")} ${textAt(open, row, "family")}`.trim();
    return { row, id: textAt(open, row, "id"), name, marks: readMarks(row, marks) };
  });
  return closeTable(open, toPupils(open, rows), marks);
}

/** A column of names, or "family, given" written without quotes. */
function namesAlone(open: OpenTable): NamedRow[] {
  const { table, problems, file } = open;
  const isOne = table.rows.every((row) => row.cells.slice(1).every((cell) => cell.trim() === ""));
  const isPair =
    table.separator === "," &&
    table.rows.every((row) => row.cells.length === 2 && row.cells.every((cell) => /^[^\p{N}]*\p{L}[^\p{N}]*$/u.test(cell)));
  if (!isOne && !isPair) demandColumns(open, ["name"]);
  const [first] = table.rows;
  if (first && !isOne && isPair) {
    const place = { file, line: first.line, column: 2 };
    problems.push({ code: "file.csvNamesJoined", severity: "warning", place, found: shownCell(first.cells.join(",")) });
  }
  return table.rows.map((row) => ({
    row,
    id: "",
    name: cellText(isOne ? (row.cells[0] ?? "") : row.cells.join(",")),
    marks: {},
  }));
}

/** Checks ids and names, and makes the ids that are missing by the row: p01, p02 … */
function toPupils(open: OpenTable, rows: readonly NamedRow[]): readonly Pupil[] {
  const { problems } = open;
  const byId = new Map<string, number>();
  const byName = new Map<string, number>();
  const digits = rows.length > 99 ? 3 : 2;
  const taken = new Set(rows.map(({ id }) => id));
  return rows.map(({ row, id, name, marks }, i) => {
    const firstId = byId.get(id);
    if (id !== "" && !isId(id)) problems.push({ code: "file.csvBadId", place: cellPlace(open, row, "id"), found: shownCell(id) });
    else if (id !== "" && firstId !== undefined)
      problems.push({ code: "file.sameId", place: cellPlace(open, row, "id"), what: "pupil", found: id, firstLine: firstId });
    byId.set(id, firstId ?? row.line);
    const place = cellPlace(open, row, open.at.has("name") ? "name" : "given");
    const plain = name.replace(/\s+/g, " ").toLowerCase();
    const firstName = byName.get(plain);
    if (name === "") problems.push({ code: "file.csvEmptyCell", place, column: "name" });
    else if (firstName !== undefined)
      problems.push({ code: "file.csvSameName", severity: "warning", place, found: shownCell(name), firstLine: firstName });
    byName.set(plain, firstName ?? row.line);
    let made = `p${String(i + 1).padStart(digits, "0")}`;
    while (taken.has(made)) made = `${made}b`;
    return { id: id === "" ? made : id, name, marks };
  });
}

/** Columns of numbers become marks, by name; of a column that is hardly numbers, nothing is taken. */
function findMarks(open: OpenTable): ReadonlyMap<string, number> {
  const marks = new Map<string, number>();
  for (const other of open.others) {
    const { found, at } = other;
    const rows = open.body.filter((row) => (row.cells[at] ?? "").trim() !== "");
    const wrong = rows.filter((row) => readNumberCell(row.cells[at] ?? "").status === "notANumber");
    if (rows.length === 0 || wrong.length * 2 > rows.length || found.length > 60 || marks.has(found)) {
      ignoreColumns(open, [other]);
      continue;
    }
    marks.set(found, at);
    for (const row of rows) {
      const { status } = readNumberCell(row.cells[at] ?? "");
      const problem = { place: cellPlace(open, row, at), column: found, found: shownCell(row.cells[at] ?? "") };
      if (status === "notANumber") open.problems.push({ code: "file.csvNotANumber", ...problem });
      if (status === "unclear") open.problems.push({ code: "file.csvUnclearNumber", ...problem });
    }
  }
  return marks;
}

function readMarks(row: CsvRow, marks: ReadonlyMap<string, number>): Record<string, number> {
  const entries: [string, number][] = [];
  for (const [column, at] of marks) {
    const read = readNumberCell(row.cells[at] ?? "");
    if (read.status === "read") entries.push([column, read.value]);
  }
  return Object.fromEntries(entries);
}
