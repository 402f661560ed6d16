// benchday check PATH…: what is wrong in lessons, kits and class files, with place and remedy.
//
// A table from a spreadsheet is read as a list of pupils or of stock; with --json the answer holds its rows in the form that a
// class file wants. A folder is a lesson if lesson.yaml lies in it; otherwise everything below it is checked. A file says itself what it is: a
// class file is JSON, a kit is YAML that begins with its format.
// Does not know: what is checked in each.
import { join } from "node:path";
import { sayUnchecked } from "../../language/index.ts";
import { type Pupil, readRoster, readStockCsv, type StockLine } from "../../school/file/index.ts";
import { isFolder, listFolder, readBytes, readText } from "../files.ts";
import { loadKit, loadLesson, loadSchool, shown } from "../loadFiles.ts";
import { type ExitStatus, print, printJson, printProblems, problemsAsJson, type SpokenProblem, type Talk } from "../output.ts";

export function checkCommand(paths: readonly string[], talk: Talk): ExitStatus {
  const problems: SpokenProblem[] = [];
  const understood: TableRows[] = [];
  let checked = 0;
  for (const path of paths) {
    const found = checkPath(path, 0);
    checked += found.checked;
    if (found.table) understood.push(found.table);
    problems.push(...found.problems);
    if (found.checked === 0 && found.problems.length === 0) problems.push({ code: "cli.nothingHere", path } as SpokenProblem);
  }
  const unique = [...new Map(problems.map((p) => [JSON.stringify(p), p])).values()];
  if (talk.json) {
    printJson({ checked, problems: problemsAsJson(unique), ...(understood.length > 0 ? { understood } : {}) });
    return unique.some((p) => p.severity !== "warning") ? 1 : 0;
  }
  const status = printProblems(unique, talk);
  for (const table of understood)
    print(
      sayUnchecked(talk.language, table.pupils ? "command.understoodPupils" : "command.understoodStock", {
        count: (table.pupils ?? table.stock ?? []).length,
      }),
    );
  print(sayUnchecked(talk.language, "command.checked", { count: checked, problems: unique.length }));
  return status;
}

/** Folders deeper than this are not somebody's lessons. */
const deepest = 6;

/** The rows of a table in the form of a class file. */
interface TableRows {
  readonly file: string;
  readonly pupils?: readonly Pupil[];
  readonly stock?: readonly StockLine[];
}

interface Checked {
  readonly checked: number;
  readonly problems: readonly SpokenProblem[];
  readonly table?: TableRows;
}

function checkPath(path: string, depth: number): Checked {
  if (isFolder(path)) {
    const names = listFolder(path);
    if (names.includes("lesson.yaml")) return { checked: 1, problems: loadLesson(path).problems };
    if (depth >= deepest) return { checked: 0, problems: [] };
    const below = names
      .filter((n) => !n.startsWith(".") && n !== "node_modules")
      .map((n) => join(path, n))
      .filter((p) => isFolder(p) || /\.(ya?ml|json)$/.test(p))
      .map((p) => checkPath(p, depth + 1));
    return { checked: below.reduce((n, b) => n + b.checked, 0), problems: below.flatMap((b) => b.problems) };
  }
  if (/lesson\.ya?ml$/.test(path)) return { checked: 1, problems: loadLesson(path).problems };
  if (/\.(csv|tsv|txt)$/.test(path)) return checkTable(path);
  const text = readText(path);
  if (text === null) return { checked: 1, problems: loadSchool(path).problems };
  if (/\.json$/.test(path)) {
    // A JSON file below a folder may be anything; only one that was named, or that speaks of our format, is judged.
    if (depth > 0 && !/"format"\s*:\s*"benchday-/.test(text)) return { checked: 0, problems: [] };
    return { checked: 1, problems: loadSchool(path).problems };
  }
  if (/\.ya?ml$/.test(path)) {
    if (depth > 0 && !/^\s*format\s*:/m.test(text)) return { checked: 0, problems: [] };
    return { checked: 1, problems: /benchday-lesson/.test(text) ? loadLesson(path).problems : loadKit(path).problems };
  }
  return { checked: 1, problems: [{ code: "cli.unknownKindOfFile", path } as SpokenProblem] };
}

/** A list of stock has a column of items that we know; any other table is a list of names. */
function checkTable(path: string): Checked {
  const read = readBytes(path);
  if (!("bytes" in read)) return { checked: 1, problems: [read as SpokenProblem] };
  const file = shown(path);
  const stock = readStockCsv(file, read.bytes);
  if (stock.value !== null) return { checked: 1, problems: stock.problems, table: { file, stock: stock.value } };
  const roster = readRoster(file, read.bytes);
  // Slips in a list of stock must not be told as slips in a list of names.
  const isStock = stock.understood.columns.some((c) => c.understood === "item");
  if (isStock || roster.value === null) return { checked: 1, problems: isStock ? stock.problems : roster.problems };
  return { checked: 1, problems: roster.problems, table: { file, pupils: roster.value } };
}
