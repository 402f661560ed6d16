// The places that the first screen does without.
//
// Does not know: what they show, when they come.
import type { ComponentType } from "preact";
import { Course } from "./course/Course.tsx";
import { Cupboard } from "./cupboard/Cupboard.tsx";
import { Explain } from "./explain/Explain.tsx";
import { First } from "./first/First.tsx";
import { LessonPlace } from "./lesson/LessonPlace.tsx";
import { LinesWall } from "./lesson/LinesWall.tsx";
import { Order } from "./order/Order.tsx";
import { Print } from "./print/Print.tsx";
import { Pupils } from "./pupils/Pupils.tsx";
import { Questions } from "./questions/Questions.tsx";
import { Settings } from "./settings/Settings.tsx";
import { Wall } from "./today/Wall.tsx";

export type LaterPlace =
  | "first"
  | "questions"
  | "wall"
  | "course"
  | "lesson"
  | "explain"
  | "lines"
  | "cupboard"
  | "order"
  | "pupils"
  | "print"
  | "settings";

export const laterPlaces: Readonly<Record<LaterPlace, ComponentType>> = {
  first: First,
  questions: Questions,
  wall: Wall,
  course: Course,
  lesson: LessonPlace,
  explain: Explain,
  lines: LinesWall,
  cupboard: Cupboard,
  order: Order,
  pupils: Pupils,
  print: Print,
  settings: Settings,
};
