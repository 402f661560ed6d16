// The lessons, kits and the demo that come with Benchday, read from their texts as the commands read them from a disk.
//
// Does not know: how the texts came here.
import type { Day } from "../../base/index.ts";
import { type Lesson, readLesson } from "../../bench/lesson/index.ts";
import { type Kit, readKit } from "../../school/file/index.ts";
import type { Shipped } from "./engine.ts";

/** What the build packs: texts by path from the project's root, and the day on which the demo is looked at. */
export interface PackedFiles {
  readonly files: Readonly<Record<string, string>>;
  readonly demo: { readonly path: string; readonly today: Day };
}

/** @returns everything that could be read; the project's own tests see to it that this is all of it. */
export function readShipped({ files, demo }: PackedFiles): Shipped {
  const paths = Object.keys(files).sort();
  const lessons = new Map<string, Lesson>();
  const kits = new Map<string, Kit>();
  for (const path of paths) {
    const lessonId = /^lessons\/([^/]+)\/lesson\.yaml$/.exec(path)?.[1];
    if (lessonId !== undefined) {
      const lesson = readLesson(sourceOf(`lessons/${lessonId}`, files, paths)).value;
      if (lesson) lessons.set(lessonId, lesson);
    } else if (/^kits\/[^/]+\.yaml$/.test(path)) {
      const kit = readKit(path, files[path] ?? "").value;
      if (kit) kits.set(kit.id, kit);
    }
  }
  return { lessons, kits, demo: { text: files[demo.path] ?? "", today: demo.today } };
}

function sourceOf(folder: string, files: PackedFiles["files"], paths: readonly string[]) {
  return {
    folder,
    read: (path: string) => files[`${folder}/${path}`] ?? null,
    list: (below: string) => {
      const start = below === "" ? `${folder}/` : `${folder}/${below}/`;
      const names = paths.filter((p) => p.startsWith(start)).map((p) => p.slice(start.length).split("/")[0] ?? "");
      return [...new Set(names)];
    },
  };
}
