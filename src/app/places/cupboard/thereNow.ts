// What lies in the cupboard of the open class today.
//
// Does not know: how it is shown.
import { compareNames } from "../../../language/index.ts";
import type { Session } from "../../session/session.ts";
import { type WhatIsThere, whatIsThere } from "./whatIsThere.ts";

/** Nothing where no class is open. */
export function thereNow(session: Pick<Session, "classFile" | "shipped" | "today" | "language">): WhatIsThere {
  const classFile = session.classFile.value;
  if (classFile === null) return { boxes: [], inKitsOnly: [] };
  const kits = session.shipped.value?.kits ?? new Map();
  return whatIsThere(classFile, kits, session.today.value, compareNames(session.language.value));
}
