// The lessons, kits and the demo that come with Benchday, read from their texts as the commands read them from a disk.
//
// The build does this once, so that a page starts with what was read and without the readers.
// Does not know: where the texts come from.
import type { Day } from "../../base/index.ts";
import { type Lesson, readLesson } from "../../bench/lesson/index.ts";
import { type Kit, readClassFile, readKit } from "../../school/file/index.ts";
import type { Shipped } from "./engine.ts";

/** Texts by path from the project's root, and the day on which the demo is looked at. */
export interface ShippedFiles {
  readonly files: Readonly<Record<string, string>>;
  readonly demo: { readonly path: string; readonly today: Day };
}

/** @throws where one of them cannot be read without a problem: a fault of ours, which no page should be built with. */
export function readShipped({ files, demo }: ShippedFiles): Shipped {
  const paths = Object.keys(files).sort();
  const lessons = new Map<string, Lesson>();
  const kits = new Map<string, Kit>();
  for (const path of paths) {
    const lessonId = /^lessons\/([^/]+)\/lesson\.yaml$/.exec(path)?.[1];
    if (lessonId !== undefined) {
      lessons.set(lessonId, sound(readLesson(sourceOf(`lessons/${lessonId}`, files, paths))));
    } else if (/^kits\/[^/]+\.yaml$/.test(path)) {
      const kit = sound(readKit(path, files[path] ?? ""));
      kits.set(kit.id, kit);
    }
  }
  const text = files[demo.path] ?? "";
  const lessonMinutes = new Map([...lessons].map(([id, lesson]) => [id, lesson.minutes]));
  const classFile = sound(readClassFile(demo.path, text, { lessonMinutes, kits }));
  return { lessons, kits, demo: { text, today: demo.today, classFile } };
}

function sound<Value>({ value, problems }: { readonly value: Value | null; readonly problems: readonly unknown[] }): Value {
  if (value === null || problems.length > 0) throw new Error(`what is shipped has a fault: ${JSON.stringify(problems[0])}`);
  return value;
}

function sourceOf(folder: string, files: ShippedFiles["files"], paths: readonly string[]) {
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
