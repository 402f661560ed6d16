// The command `benchday`: which commands there are, what they take, and how a slip is answered.
//
// commander reads the words; the answers come from src/cli/commands/. Wrong use ends with status 2 and names the nearest
// command or option; nothing ever ends with a stack trace: a fault of ours is told in one sentence with its place.
// Does not know: how anything is answered.
import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { type Day, parseDay, parseQuantity } from "../base/index.ts";
import { languageFor, languageTags, sayUnchecked } from "../language/index.ts";
import { checkCommand } from "./commands/check.ts";
import { explainCommand, explainMessageCommand } from "./commands/explain.ts";
import { orderCommand } from "./commands/order.ts";
import { planCommand } from "./commands/plan.ts";
import { papers, printCommand } from "./commands/print.ts";
import { rehearseCommand } from "./commands/rehearse.ts";
import { runCommand } from "./commands/run.ts";
import { teamsCommand } from "./commands/teams.ts";
import type { ExitStatus, Talk } from "./output.ts";

/** What every command takes. */
export interface CommonOptions {
  readonly json?: boolean;
  readonly today: Day;
  readonly seed: number;
  readonly language: string;
}

const talkOf = (o: CommonOptions): Talk => ({ language: languageFor(o.language), json: o.json === true });

async function main(words: readonly string[]): Promise<ExitStatus> {
  const english = languageFor("en");
  const t = (key: string) => sayUnchecked(english, `help.${key}`);
  let status: ExitStatus = 0;
  const program = new Command("benchday")
    .description(t("program"))
    .version("0.1.0")
    .showSuggestionAfterError(true)
    .showHelpAfterError(t("moreHelp"))
    .exitOverride();

  const add = (name: string, examples: readonly string[]): Command =>
    program
      .command(name)
      .description(t(name.split(" ")[0] ?? name))
      .addHelpText("before", `${t("examples")}\n${examples.map((e) => `  benchday ${e}`).join("\n")}\n`)
      .option("--json", t("json"))
      .addOption(new Option("--today <YYYY-MM-DD>", t("today")).argParser(readDay).default(systemDay(), t("todayDefault")))
      .addOption(new Option("--seed <N>", t("seed")).argParser(readCount).default(1))
      .addOption(new Option("--language <tag>", t("language")).choices([...languageTags]).default("en"))
      .exitOverride();

  add("check", ["check lessons/lighthouse", "check demo/harbour.json kits", "check my-class.json --json"])
    .argument("<path...>", t("pathArgument"))
    .action((paths: string[], o: CommonOptions) => {
      status = checkCommand(paths, talkOf(o));
    });
  add("run", ["run lessons/signal-lamp/program.cpp --for 5s", "run program.cpp --inputs inputs.json --for 5s --json"])
    .argument("<program>", t("programArgument"))
    .option("--inputs <file>", t("inputs"))
    .addOption(new Option("--for <time>", t("for")).argParser(readSeconds).default(5, "5s"))
    .action((file: string, o: CommonOptions & { inputs?: string; for: number }) => {
      status = runCommand(file, { inputs: o.inputs ?? null, seconds: o.for, seed: o.seed }, talkOf(o));
    });
  add("explain", [
    "explain program.cpp",
    "explain program.cpp --wording new --json",
    "explain --message what-the-up-loader-wrote.txt",
  ])
    .argument("[program]", t("programArgument"))
    .option("--message <file>", t("message"))
    .addOption(new Option("--wording <which>", t("wording")).choices(["old", "new"]).default("old"))
    .action((file: string | undefined, o: CommonOptions & { message?: string; wording: "old" | "new" }, command: Command) => {
      if (o.message !== undefined) status = explainMessageCommand(o.message, talkOf(o));
      else if (file !== undefined) status = explainCommand(file, { wording: o.wording }, talkOf(o));
      else command.error(t("explainNeeds"));
    });
  add("rehearse", [
    "rehearse lighthouse",
    "rehearse lessons/barrier --class demo/harbour.json",
    "rehearse dimmer --trace D9,LED1.anode:A --from 1s --to 1010ms",
  ])
    .argument("<lesson>", t("lessonArgument"))
    .option("--class <file>", t("class"))
    .option("--trace <places>", t("trace"))
    .addOption(new Option("--from <time>", t("from")).argParser(readMoment).default(0, "0s"))
    .addOption(new Option("--to <time>", t("to")).argParser(readSeconds).default(1, "1s"))
    .option("--supply <item>", t("supply"))
    .action(
      (lesson: string, o: CommonOptions & { class?: string; trace?: string; from: number; to: number; supply?: string }) => {
        const trace =
          o.trace === undefined
            ? null
            : { places: o.trace, fromSeconds: o.from, toSeconds: o.to, supply: o.supply ?? null, seed: o.seed };
        status = rehearseCommand(lesson, { classPath: o.class ?? null, today: o.today, seed: o.seed, trace }, talkOf(o));
      },
    );
  add("plan", ["plan demo/harbour.json", "plan my-class.json --today 2027-01-04"])
    .argument("<class>", t("classArgument"))
    .option("--trays", t("trays"))
    .action((path: string, o: CommonOptions & { trays?: boolean }) => {
      status = planCommand(path, { today: o.today, seed: o.seed, trays: o.trays === true }, talkOf(o));
    });
  add("order", ["order demo/harbour.json", "order my-class.json --csv order.csv"])
    .argument("<class>", t("classArgument"))
    .option("--csv <file>", t("csv"))
    .addOption(new Option("--seconds <N>", t("seconds")).argParser(readCount).default(30))
    .action(async (path: string, o: CommonOptions & { csv?: string; seconds: number }) => {
      status = await orderCommand(path, { today: o.today, seed: o.seed, csv: o.csv ?? null, seconds: o.seconds }, talkOf(o));
    });
  add("teams", ["teams --pupils 30 --size 3 --lessons 14", "teams --pupils 30 --apart 3,17 --together 5,6"])
    .addOption(new Option("--pupils <N>", t("pupils")).argParser(readCount).makeOptionMandatory())
    .addOption(new Option("--size <N>", t("size")).argParser(readCount).default(3))
    .addOption(new Option("--lessons <N>", t("lessons")).argParser(readCount).default(14))
    .option("--apart <a,b>", t("apart"), collect, [])
    .option("--together <a,b>", t("together"), collect, [])
    .action((o: CommonOptions & { pupils: number; size: number; lessons: number; apart: string[][]; together: string[][] }) => {
      status = teamsCommand(o, talkOf(o));
    });
  add("print", [
    "print demo/harbour.json tray",
    "print demo/harbour.json run-sheet --lesson barrier --pdf",
    "print demo/harbour.json all",
  ])
    .argument("<class>", t("classArgument"))
    .addArgument(program.createArgument("<paper>", t("paperArgument")).choices([...papers]))
    .option("--pdf", t("pdf"))
    .addOption(new Option("--paper <size>", t("paperSize")).choices(["A4", "Letter"]).default("A4"))
    .option("--out <folder>", t("out"))
    .option("--lesson <id>", t("onlyLesson"))
    .option("--class <id>", t("onlyClass"))
    .action(
      async (
        path: string,
        paper: (typeof papers)[number],
        o: CommonOptions & { pdf?: boolean; paper: "A4" | "Letter"; out?: string; lesson?: string; class?: string },
      ) => {
        status = await printCommand(
          path,
          paper,
          {
            today: o.today,
            seed: o.seed,
            pdf: o.pdf === true,
            paperSize: o.paper,
            out: o.out ?? null,
            lesson: o.lesson ?? null,
            class: o.class ?? null,
          },
          talkOf(o),
        );
      },
    );

  try {
    await program.parseAsync([...words], { from: "user" });
    return status;
  } catch (fault) {
    if (fault instanceof CommanderError) return fault.exitCode === 0 ? 0 : 2;
    throw fault;
  }
}

function readDay(text: string): Day {
  const day = parseDay(text);
  if (day === null) throw new InvalidArgumentError("Write a day that exists, such as 2027-01-12.");
  return day;
}
function readCount(text: string): number {
  if (!/^\d{1,7}$/.test(text)) throw new InvalidArgumentError("Write a whole number, such as 3.");
  return Number(text);
}
function readSeconds(text: string): number {
  const time = parseQuantity(text, "s");
  if (time.status !== "read" || time.value <= 0) throw new InvalidArgumentError("Write a time, such as 5s or 300ms.");
  if (time.value > 86_400) throw new InvalidArgumentError("Write at most one day, such as 86400s.");
  return time.value;
}
/** As readSeconds, and the very beginning. */
function readMoment(text: string): number {
  return /^0 ?(s|ms)?$/.test(text.trim()) ? 0 : readSeconds(text);
}
function collect(text: string, before: string[][]): string[][] {
  return [...before, text.split(",").map((s) => s.trim())];
}

/** The machine's own day. Anything that must not change with it is asked with --today. */
function systemDay(): Day {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` as Day;
}

// A reader that has seen enough (`| head`) closes the pipe; that is no fault.
process.stdout.on("error", (fault: NodeJS.ErrnoException) => process.exit(fault.code === "EPIPE" ? 0 : 1));
main(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (fault: unknown) => {
    const where = fault instanceof Error ? (fault.stack?.split("\n")[1]?.trim() ?? "") : "";
    process.stderr.write(`A fault in Benchday itself: ${fault instanceof Error ? fault.message : String(fault)} ${where}\n`);
    process.stderr.write("Your files are as they were. Please tell whoever maintains it what you did.\n");
    process.exitCode = 1;
  },
);
