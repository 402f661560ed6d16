// The papers of one session as the engine makes them: the newest wish wins.
//
// One for the whole page, so that coming back to the print place shows what was made before.
// Does not know: which papers are wished for.
import type { PapersAnswer, PapersWish, School } from "../../engine/engine.ts";
import type { Session } from "../../session/session.ts";
import { type Asking, makeAsking } from "../questions/makeAsking.ts";

export interface PapersQuestion {
  readonly school: School;
  readonly wish: PapersWish;
}

const all = new WeakMap<Session, Asking<PapersQuestion, PapersAnswer>>();

export function papersOf(session: Session): Asking<PapersQuestion, PapersAnswer> {
  const known = all.get(session);
  if (known) return known;
  const made = makeAsking<PapersQuestion, PapersAnswer>(
    ({ school, wish }, tell) => session.engine.papers(school, wish, tell),
    (ms, then) => void setTimeout(then, ms),
  );
  all.set(session, made);
  return made;
}
