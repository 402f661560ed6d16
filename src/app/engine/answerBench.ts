// Answers the questions about one team's table with the functions of the bench.
//
// The last walk is held, because a class goes on from where it stands; any other is made anew and comes to the same place.
// Does not know: classes, messages, workers.
import type { Lesson } from "../../bench/lesson/index.ts";
import { explainProgram, parseProgram, type Walk, type WalkStep } from "../../bench/program/index.ts";
import { type LessonWalk, type Trace, traceLesson, walkLesson } from "../../bench/rehearsal/index.ts";
import { explainSetupMessage } from "../../bench/setup/index.ts";
import type { BenchAnswers, BenchQuestion, WalkAnswer, WalkMove } from "./benchQuestions.ts";
import type { EngineProblem } from "./engine.ts";
import type { Work } from "./work.ts";

type WalkQuestion = BenchQuestion & { readonly ask: "walk" };
type TraceQuestion = BenchQuestion & { readonly ask: "trace" };

export function makeBenchAnswers(
  lessons: ReadonlyMap<string, Lesson>,
): (question: BenchQuestion) => Work<BenchAnswers[BenchQuestion["ask"]]> {
  let held: { readonly key: string; readonly walk: LessonWalk } | null = null;

  function openWalk(question: WalkQuestion): LessonWalk | readonly EngineProblem[] {
    const { lesson: id, program: own, items, acts } = question;
    const key = JSON.stringify([id, own, items, acts]);
    if (held?.key === key) return held.walk;
    const lesson = lessons.get(id);
    if (!lesson) throw new Error(`no lesson ${id}`);
    const { file, text } = own ?? lesson.program;
    const program = parseProgram(file, text);
    if (program.value === null) return asProblems(program.problems.filter((p) => p.severity !== "warning"));
    const { value, problems } = walkLesson(lesson, {
      program: program.value,
      items: new Map(items),
      ...(acts === null ? {} : { acts }),
    });
    if (value === null) return asProblems(problems);
    held = { key, walk: value };
    return value;
  }

  function answerWalk(question: WalkQuestion): WalkAnswer {
    const opened = openWalk(question);
    if (!("walk" in opened)) return { step: null, seen: [], seconds: 0, never: false, problems: opened };
    const { walk, seconds } = opened;
    walk.toStep(question.from);
    const from = walk.now;
    const gone = go(walk, from, question.move);
    const never = question.move.to === "line" && gone.line !== question.move.line;
    if (never) walk.toStep(from.number);
    return { step: walk.now, seen: opened.seen(), seconds, never, problems: [] };
  }

  function trace(question: TraceQuestion): Trace {
    const { probe, fromMs, toMs, items, supply } = question;
    const lesson = lessons.get(question.lesson);
    if (!lesson) throw new Error(`no lesson ${question.lesson}`);
    return traceLesson(lesson, {
      probes: [probe],
      items: new Map(items),
      fromMs,
      toMs,
      ...(supply === null ? {} : { supply }),
    });
  }

  return function* answer(question) {
    // Told before the work, because each of these is done in one piece.
    yield { done: 0, total: 1, doing: question.ask };
    switch (question.ask) {
      case "explain":
        return explainProgram(question.file, question.text, { wording: question.wording });
      case "explainMessage":
        return explainSetupMessage(question.text);
      case "walk":
        return answerWalk(question);
      case "trace":
        return trace(question);
    }
  };
}

function go(walk: Walk, from: WalkStep, move: WalkMove): WalkStep {
  switch (move.to) {
    case "here":
      return from;
    case "start":
      return walk.toStep(0);
    case "line":
      return walk.toLine(move.line);
    case "later":
      return walk.toMoment(from.micros + move.seconds * 1e6);
    case "pinChange":
      return walk.toPinChange();
    case "backToPinChange":
      return walk.backToPinChange();
    default:
      return walk[move.to]();
  }
}

const asProblems = (problems: readonly object[]) => problems as unknown as readonly EngineProblem[];
