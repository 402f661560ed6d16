// The shape of lesson.yaml: which fields there are and what kind of value each has.
//
// What depends on the catalogue (parameters, legs, states, words of expectations) is checked afterwards, with problems that
// name the part; the shape is also the source of schemas/lesson.schema.json, by which editors complete and underline.
// Does not know: parts, units.
import * as v from "valibot";
import { activities, sectionIds } from "./lesson.ts";
import { currentFormat } from "./lessonFormat.ts";

const name = v.pipe(v.string(), v.regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, "a-z 0-9 -"), v.maxLength(60));
const language = v.pipe(v.string(), v.regex(/^[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*$/, "en, pt-BR"));
const scalar = v.union([v.string(), v.number(), v.boolean()]);
/** A moment or a span: 0, "1s", "300ms". */
const time = v.union([v.string(), v.number()]);

const part = v.objectWithRest(
  {
    part: v.pipe(v.string(), v.description("A kind or a type of the catalogue: resistor, led, BC547.")),
    "may-be": v.optional(
      v.pipe(v.array(v.union([v.string(), v.number()])), v.maxLength(40), v.description("Values that may be taken instead.")),
    ),
  },
  scalar,
);

const step = v.strictObject({
  at: v.optional(v.pipe(time, v.description("The moment, as 1s or 300ms."))),
  within: v.optional(v.pipe(time, v.description("It comes true somewhere in so long after `at`."))),
  from: v.optional(v.pipe(time, v.description("It is true all the way from here …"))),
  to: v.optional(v.pipe(time, v.description("… to here."))),
  set: v.optional(v.pipe(v.record(v.string(), scalar), v.description("B1.pressed: true, LDR1.lux: 400, text: a, supply: off"))),
  expect: v.optional(
    v.pipe(
      v.record(v.string(), v.union([v.string(), v.record(v.string(), scalar)])),
      v.description("LED1: lit, SERVO1: 90 degrees"),
    ),
  ),
});

export const lessonSchema = v.strictObject({
  format: v.literal(currentFormat),
  id: v.pipe(name, v.description("The name of the lesson's folder.")),
  minutes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000), v.description("From hand-out to count-in.")),
  needs: v.optional(v.pipe(v.array(name), v.description("Lessons that come before.")), []),
  tools: v.optional(
    v.pipe(v.array(v.pipe(v.string(), v.minLength(1), v.maxLength(60))), v.description("What lies beside the set: multimeter.")),
    [],
  ),
  parts: v.pipe(v.record(v.string(), part), v.maxEntries(300), v.description("The parts by their names in the circuit.")),
  nets: v.pipe(
    v.array(v.pipe(v.array(v.string()), v.maxLength(200))),
    v.maxLength(500),
    v.description("Legs that are joined: [board.D9, R1.1]."),
  ),
  rehearsal: v.optional(v.pipe(v.array(step), v.maxLength(2000)), []),
  plan: v.optional(
    v.array(
      v.strictObject({
        what: v.picklist(activities),
        minutes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000)),
        "may-be-dropped": v.optional(v.pipe(v.boolean(), v.description("When time is short.")), false),
        note: v.optional(v.pipe(v.picklist(sectionIds), v.description("The section of the text that belongs to it."))),
      }),
    ),
    [],
  ),
  media: v.optional(
    v.array(
      v.strictObject({
        path: v.pipe(v.string(), v.minLength(1), v.maxLength(200), v.description("Below the lesson's folder: media/build.mp4.")),
        language,
        captions: v.optional(v.pipe(v.string(), v.minLength(1), v.maxLength(200))),
      }),
    ),
    [],
  ),
});

/** lesson.yaml as it has been checked for its shape. */
export type LessonShape = v.InferOutput<typeof lessonSchema>;
