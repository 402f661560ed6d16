// Folders of lessons for tests: from the disk, or made of texts.
import { readdirSync, readFileSync } from "node:fs";
import type { LessonSource } from "../../src/bench/lesson/index.ts";

const root = new URL("../../", import.meta.url);

/** A folder of the repository, such as "lessons/lighthouse". */
export function folderOnDisk(folder: string): LessonSource {
  const at = (path: string) => new URL(`${folder}/${path}`, root);
  return {
    folder,
    read: (path) => {
      try {
        return readFileSync(at(path), "utf8");
      } catch {
        return null;
      }
    },
    list: (inner) => {
      try {
        return readdirSync(at(inner)).sort();
      } catch {
        return [];
      }
    },
  };
}

/** A folder that consists of these files. */
export function folderOf(folder: string, files: Readonly<Record<string, string>>): LessonSource {
  return {
    folder,
    read: (path) => (Object.hasOwn(files, path) ? files[path]! : null),
    list: (inner) => {
      const prefix = inner === "" ? "" : `${inner}/`;
      const inside = Object.keys(files).filter((path) => path.startsWith(prefix));
      return [...new Set(inside.map((path) => path.slice(prefix.length).split("/")[0]!))].sort();
    },
  };
}
