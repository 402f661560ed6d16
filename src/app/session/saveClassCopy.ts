// Hands the open class to the person as a file.
//
// Written from what is in memory and without the engine, so that it works when nothing else does.
// Does not know: where the browser puts it.
import { writeClassFile } from "../../school/file/index.ts";
import type { Session } from "./session.ts";

/** Saves a copy and remembers when. Does nothing where no class is open. */
export async function saveClassCopy(session: Session): Promise<void> {
  const classFile = session.classFile.value;
  if (classFile === null) return;
  await session.saveFile(copyName(session), writeClassFile(classFile), "application/json");
  session.copied();
}

/**
 * "class-7b-2027-02-11.json": Latin letters and digits only, because cards and copiers know no others.
 * @param held a class that is not the open one, named by its title.
 */
export function copyName(session: Session, held?: { readonly title: string }): string {
  const names = held ? held.title.split(",") : (session.classFile.value?.classes.map((c) => c.id) ?? []);
  const ids = names.map((name) => name.replace(/[^A-Za-z0-9]+/g, "")).filter(Boolean);
  return `class-${ids.slice(0, 3).join("-") || "file"}-${session.today.value}.json`;
}
