// The folder of a lesson as it is handed in: names and texts, wherever they come from (a disk, a pack, a page).
//
// Does not know: disks, networks.

export interface LessonSource {
  /** Name of the folder as problems show it, without a slash at its end: "lessons/lighthouse". */
  readonly folder: string;
  /** @param path below the folder: "lesson.yaml", "text/en.md". @returns the file's text, or null where there is none. */
  read(path: string): string | null;
  /** @param folder below the folder; "" is the folder itself. @returns names of the entries, without the folder; none where it is missing. */
  list(folder: string): readonly string[];
}
