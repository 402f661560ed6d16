// benchday explain PROGRAM.cpp: what the class's compiler will say first, which slip is behind it, and what it would not say.
//
// With --message FILE it reads what the up-loader wrote, and lists the causes in the order of their likelihood.
// Does not know: how a slip is told.
import { explainProgram, type FirstMessage, type Wording } from "../../bench/program/index.ts";
import { explainSetupMessage } from "../../bench/setup/index.ts";
import { type Language, sayUnchecked } from "../../language/index.ts";
import { loadText, shown } from "../loadFiles.ts";
import {
  bold,
  type ExitStatus,
  print,
  printJson,
  printProblems,
  problemsAsJson,
  type SpokenProblem,
  type Talk,
  wrap,
} from "../output.ts";

export function explainCommand(file: string, options: { readonly wording: Wording }, talk: Talk): ExitStatus {
  const text = loadText(file);
  if (text.value === null) return failed(text.problems, { first: null, silent: [] }, talk);
  const { first, problems, silent } = explainProgram(shown(file), text.value, options);
  const status = first?.severity === "error" ? 1 : 0;
  if (talk.json) {
    printJson({ first, problems: problemsAsJson(problems), silent: problemsAsJson(silent) });
    return status;
  }
  if (first === null) print(sayUnchecked(talk.language, "explain.nothing"));
  else printFirst(shown(file), first, talk.language);
  // What the compiler warns of has been said above.
  const unsaid = silent.filter((p) => first?.severity !== "warning" || !problems.includes(p) || p.place?.line !== first.line);
  if (unsaid.length > 0) print(`\n${sayUnchecked(talk.language, "explain.silent")}`);
  printProblems(unsaid, talk);
  return status;
}

function printFirst(file: string, first: FirstMessage, language: Language): void {
  const where = first.line === null ? file : `${file}:${first.line}:${first.column}`;
  print(bold(`${where}: ${first.severity}: ${first.message}`));
  for (const family of ["mistakeSays", "mistakeLook", "mistakeTry"])
    print(wrap(sayUnchecked(language, `${family}.${first.code}`, { ...first }), "  "));
}

export function explainMessageCommand(file: string, talk: Talk): ExitStatus {
  const text = loadText(file);
  if (text.value === null) return failed(text.problems, { message: null, causes: [] }, talk);
  const read = explainSetupMessage(text.value);
  if (talk.json) {
    printJson({ ...read, problems: [] });
    return 0;
  }
  const say = (key: string) => sayUnchecked(talk.language, key, { port: read.port });
  if (read.message === null) {
    print(say("explain.unknownMessage"));
    return 0;
  }
  print(bold(read.found ?? ""));
  print(wrap(say(`setupMessage.${read.message}`), "  "));
  for (const [i, cause] of read.causes.entries()) {
    print(`\n${i + 1}. ${say(`setupCause.${cause}`)}`);
    print(wrap(say(`setupCheck.${cause}`), "   "));
  }
  return 0;
}

function failed(problems: readonly SpokenProblem[], empty: object, talk: Talk): ExitStatus {
  if (!talk.json) return printProblems(problems, talk) || 1;
  printJson({ ...empty, problems: problemsAsJson(problems) });
  return 1;
}
