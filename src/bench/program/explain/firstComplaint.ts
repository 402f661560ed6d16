// The first thing that the class's compiler says of a program.
//
// Characters and grammar are read in its own order (compiler/); what can be read and does not fit together is known from our
// checker. Of both, the one that stands first comes first; what the linker misses comes last.
// Does not know: explanations.

import { parseProgram } from "../parseProgram.ts";
import type { ProgramProblem } from "../problems.ts";
import type { Token } from "../read/token.ts";
import { firstOfMeaning } from "./compiler/firstOfMeaning.ts";
import { firstWarning } from "./compiler/firstWarning.ts";
import { readAsCompiler } from "./compiler/readAsCompiler.ts";
import type { Said } from "./compiler/said.ts";

export interface FirstComplaint {
  readonly said: Said | null;
  /** The tokens as the compiler has them. */
  readonly tokens: readonly Token[];
  readonly problems: readonly ProgramProblem[];
}

export function firstComplaint(file: string, text: string): FirstComplaint {
  const { said: read, tokens } = readAsCompiler(text);
  const { problems } = parseProgram(file, text);
  const meant = firstOfMeaning(problems, tokens);
  const isFirst = (a: Said, b: Said) => a.line < b.line || (a.line === b.line && a.column < b.column);
  // A stray character or an open quote is told before anything is understood.
  if (read === null) return { said: meant ?? firstWarning(problems), tokens, problems };
  if (meant === null || meant.line === 0 || read.index < 0) return { said: read, tokens, problems };
  return { said: isFirst(meant, read) ? meant : read, tokens, problems };
}
