// benchday print CLASS PAPER: papers as HTML files, and as PDF where Chromium is there.
//
// One file a lesson and paper, named for class, day and lesson, so that a folder sorts in the order of use. `all` makes every
// paper of each lesson in one file, in the order in which they are needed.
// Does not know: what stands on a paper.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, delimiter, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { type Day, near } from "../../base/index.ts";
import type { Lesson } from "../../bench/lesson/index.ts";
import { makePapers, type PaperKind, type PaperOrder, type PaperWish, paperKinds, paperOrders } from "../../documents/index.ts";
import { sayUnchecked } from "../../language/index.ts";
import { writeSafely } from "../files.ts";
import type { CliProblem } from "../loadFiles.ts";
import {
  clearProgress,
  type ExitStatus,
  print,
  printJson,
  printProblems,
  problemsAsJson,
  showProgress,
  type Talk,
} from "../output.ts";
import { isPlanned, type PlannedSchool, planSchool, statusOf } from "../planSchool.ts";
import { orderFor } from "./order.ts";

/** Papers of one lesson, in the order of use; labels, order and rota belong to the whole class file or class. */
const ofLesson: readonly PaperKind[] = ["run-sheet", "waveform", "tray"];
export const papers = [...paperKinds, "all"] as const;

export interface PrintOptions {
  readonly today: Day;
  readonly seed: number;
  readonly pdf: boolean;
  readonly paperSize: "A4" | "Letter";
  /** Folder for the files; "papers" beside where the command runs if null. */
  readonly out: string | null;
  readonly lesson: string | null;
  readonly class: string | null;
}

export interface PrintedPaper {
  readonly paper: string;
  readonly file: string;
  readonly sheets: number;
}

export async function printCommand(
  path: string,
  paper: PaperKind | "all",
  options: PrintOptions,
  talk: Talk,
): Promise<ExitStatus> {
  const fail = (problems: readonly CliProblem[]): ExitStatus => {
    if (talk.json) printJson({ papers: [], problems: problemsAsJson(problems) });
    else printProblems(problems, talk);
    return 1;
  };
  const planned = planSchool(path, options.today, options.seed, talk);
  if (!isPlanned(planned)) {
    if (talk.json) printJson({ papers: [], problems: problemsAsJson(planned) });
    return 1;
  }
  const { classFile } = planned.files;
  const known = {
    class: classFile.classes.map((c) => c.id),
    lesson: [...new Set(classFile.classes.flatMap((c) => c.lessons.map((l) => l.lesson)))],
  };
  for (const what of ["class", "lesson"] as const) {
    const wanted = options[what];
    if (wanted !== null && !known[what].includes(wanted))
      return fail([
        { code: what === "class" ? "cli.noSuchClass" : "cli.noSuchLesson", found: wanted, near: near(wanted, known[what]) },
      ]);
  }
  const files = await papersFor(planned, paper, options);
  if (files.length === 0) return fail([{ code: "cli.noPapers", paper }]);
  const written = writePapers(planned, files, options, talk);
  if (!Array.isArray(written)) return fail([written as CliProblem]);
  if (talk.json) printJson({ papers: written, problems: problemsAsJson(planned.problems) });
  else
    for (const { file, sheets } of written as PrintedPaper[])
      print(sayUnchecked(talk.language, "command.printed", { file, sheets }));
  return statusOf(planned);
}

interface PaperFile {
  readonly name: string;
  readonly paper: string;
  readonly orders: readonly PaperOrder[];
}

async function papersFor(planned: PlannedSchool, paper: PaperKind | "all", options: PrintOptions): Promise<PaperFile[]> {
  const { files, plan } = planned;
  const wants = (kind: PaperKind) => paper === "all" || paper === kind;
  const makings = {
    ...files,
    lessons: readable(files.lessons),
    plan,
    purchase: wants("order") ? await orderFor(planned) : null,
  };
  const chosen = plan.lessons.filter(
    (l) => (options.lesson === null || l.lesson === options.lesson) && (options.class === null || l.class === options.class),
  );
  const out: PaperFile[] = [];
  const add = (name: string, file: PaperKind | "all", wish: Partial<PaperWish>) => {
    const orders = paperOrders(makings, { kinds: [], sittings: [], classes: [], ...wish });
    if (orders.length > 0) out.push({ name, paper: file, orders });
  };
  for (const { id, date, class: group, lesson } of chosen)
    add(`${date}-${group}-${lesson}-${paper}`, paper, { kinds: ofLesson.filter(wants), sittings: [id] });
  if (wants("rota"))
    for (const { class: id } of plan.rotas)
      if (options.class === null || options.class === id) add(`${id}-rota`, "rota", { kinds: ["rota"], classes: [id] });
  if (wants("order")) add("order", "order", { kinds: ["order"] });
  if (wants("label")) add("labels", "label", { kinds: ["label"] });
  return out;
}

function readable(lessons: ReadonlyMap<string, Lesson | null>): Map<string, Lesson> {
  return new Map([...lessons].flatMap(([id, lesson]) => (lesson === null ? [] : [[id, lesson] as const])));
}

/** @returns what was written, or why not. */
function writePapers(
  planned: PlannedSchool,
  files: readonly PaperFile[],
  options: PrintOptions,
  talk: Talk,
): PrintedPaper[] | CliProblem {
  const folder = options.out ?? "papers";
  const browser = options.pdf ? findBrowser() : null;
  if (options.pdf && browser === null) return { code: "cli.noBrowser" };
  const written: PrintedPaper[] = [];
  for (const [i, file] of files.entries()) {
    showProgress(sayUnchecked(talk.language, "progress.print", { done: i + 1, total: files.length }));
    const paper = makePapers(file.orders, {
      language: talk.language,
      paperSize: options.paperSize,
      source: basename(planned.files.path),
    });
    const html = join(folder, `${file.name}.html`);
    const failed = writeSafely(html, paper.html);
    if (failed) return failed;
    if (browser === null) written.push({ paper: file.paper, file: html, sheets: paper.sheets });
    else {
      const pdf = join(folder, `${file.name}.pdf`);
      const fault = printToPdf(browser, html, pdf);
      if (fault) return fault;
      written.push({ paper: file.paper, file: pdf, sheets: paper.sheets });
    }
  }
  clearProgress();
  return written;
}

/** Chromium by the variable CHROMIUM, else by its usual names on the path; null if there is none. */
function findBrowser(): string | null {
  const named = process.env.CHROMIUM;
  if (named) return existsSync(named) ? named : null;
  for (const folder of (process.env.PATH ?? "").split(delimiter))
    for (const name of ["chromium", "chromium-browser", "chromium.exe"])
      if (folder && existsSync(join(folder, name))) return join(folder, name);
  return null;
}

function printToPdf(browser: string, html: string, pdf: string): CliProblem | null {
  const profile = mkdtempSync(join(tmpdir(), "benchday-"));
  const fresh = join(profile, "paper.pdf");
  const flags = [
    "--headless",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ];
  // Chromium refuses its sandbox to the root user of a container; nothing foreign is ever opened here.
  if (process.getuid?.() === 0) flags.push("--no-sandbox");
  spawnSync(
    browser,
    [
      ...flags,
      `--user-data-dir=${profile}`,
      "--no-pdf-header-footer",
      `--print-to-pdf=${fresh}`,
      pathToFileURL(resolve(html)).href,
    ],
    {
      stdio: "ignore",
      timeout: 120_000,
    },
  );
  const made = existsSync(fresh) ? readFileSync(fresh) : null;
  rmSync(profile, { recursive: true, force: true });
  if (made === null) return { code: "cli.browserFailed", path: html };
  return writeSafely(pdf, made);
}
