// How a screen comes by the session and its words.
//
// Does not know: what a session holds, how one is made.
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { type Data, say, type TextKey } from "../../language/index.ts";
import type { Session } from "./session.ts";

export const SessionContext = createContext<Session | null>(null);

/** @returns the session of the page. Only inside the shell. */
export function useSession(): Session {
  const session = useContext(SessionContext);
  if (session === null) throw new Error("a screen stands outside the shell");
  return session;
}

/** @returns how a text is said in the language of the page. The screen follows when the language changes. */
export function useSay(): (key: TextKey, data?: Data) => string {
  const language = useSession().language.value;
  return (key, data) => say(language, key, data);
}
