// Answers the questions about one team's table with the functions of the bench.
//
// Does not know: classes, messages, workers.
import { explainProgram } from "../../bench/program/index.ts";
import { explainSetupMessage } from "../../bench/setup/index.ts";
import type { BenchAnswers, BenchQuestion } from "./benchQuestions.ts";
import type { Work } from "./work.ts";

export function* answerBench(question: BenchQuestion): Work<BenchAnswers[BenchQuestion["ask"]]> {
  // Told before the work, because each of these is done in one piece.
  yield { done: 0, total: 1, doing: question.ask };
  switch (question.ask) {
    case "explain":
      return explainProgram(question.file, question.text, { wording: question.wording });
    case "explainMessage":
      return explainSetupMessage(question.text);
  }
}
