// The published JSON Schemas, made from the schemas that reading uses, with a word on each field for whoever writes a file by hand.
//
// `node scripts/schemas.mjs` writes them to schemas/; a test compares what is committed. To publish another one, add it to the list.
import { toJsonSchema } from "@valibot/to-json-schema";
import type { GenericSchema } from "valibot";
import { lessonSchema } from "../src/bench/lesson/index.ts";
import { classFileShape, kitShape } from "../src/school/file/index.ts";

/** What each field says: names from the top, "[]" for the entries of a list. */
type Words = Readonly<Record<string, string>>;

const classWords: Words = {
  format: "What kind of file this is, and which version.",
  about: "In your own words: whose file this is.",
  language: "Language of the papers, as BCP 47 writes it.",
  currency: "ISO 4217. Every sum in the file is in it.",
  chance: "Wished chance that every team works in a lesson; spares follow from it.",
  budget: 'Most that an order may cost. "0" is nothing; null is no limit.',
  lessonFolder: "Where your own lessons lie, relative to this file; null for those that come with Benchday.",
  kitFolder: "Where your own kits lie, relative to this file; null for those that come with Benchday.",
  room: "The room: sockets for charging, and its light in lux if somebody measured it.",
  classes: "The classes that share the cupboard.",
  "classes[].teamSize": "Pupils in a team, 2 to 6.",
  "classes[].balance": "The mark that teams are balanced on, or null.",
  "classes[].pupils[].marks": "Any numbers that teams may be balanced on.",
  "classes[].apart": "Pairs of pupil ids that must not sit in one team.",
  "classes[].together": "Groups of pupil ids that stay in one team.",
  "classes[].lessons": "Which lesson on which day at which time, and who is known to be away.",
  kits: "How many of each kit the school owns.",
  stock: "What lies loose in the cupboard, and in which box.",
  "stock[].item": "Kind, then what tells it apart: resistor 220, led red, servo.",
  movements: "What came, went, broke or was found since the stock was counted.",
  "movements[].change": "Positive for what came, negative for what went.",
  suppliers: "Who sells what.",
  "suppliers[].freeFrom": "Orders from this sum on are sent free, or null.",
  "suppliers[].days": "Days from order to delivery.",
  "suppliers[].offers": "A packet: either an item and its count, or one kit.",
  "suppliers[].offers[].available": "Most packets to be had, or null.",
  computers: "One by one, because single ones go bad.",
  "computers[].batteryMinutes": "Minutes that it was seen to run on its battery; 0 if only on mains; null if nobody tried.",
  "computers[].usbMilliamps": "What each port gives: 500 for USB 2.0, 900 for USB 3.",
  boards: "One by one; a pin that is dead need not end a board's life.",
  cables: "One by one; a cable that only charges does not work.",
  supplies: "Batteries, power banks and adapters that the school owns.",
  powerCuts: "Stretches without mains that are known beforehand.",
  decisions: "What the teacher settled: a substitute, a supply, a lesson left out.",
  prepared: "What was ticked off before a meeting: class/lesson/date, and which preparation.",
  counts: "After a lesson: how many were handed out, came back whole, came back broken. Losses are learnt from it.",
  log: "What happened in a lesson, by team.",
};

const kitWords: Words = {
  format: "What kind of file this is, and which version.",
  id: "How class files call it; the file is named for it.",
  name: "As it stands on the box.",
  contents: "Item and how many of it are in one box: resistor 220: 10.",
  supplier: "Who sells it, if you know.",
  price: "What one costs, with its currency: 39.00 EUR.",
};

interface Published {
  readonly name: string;
  readonly title: string;
  readonly schema: GenericSchema;
  readonly words: Words;
}

const published: readonly Published[] = [
  { name: "class", title: "Benchday class file, version 1", schema: classFileShape, words: classWords },
  { name: "kit", title: "Benchday kit, version 1", schema: kitShape, words: kitWords },
  // Its fields say their words themselves.
  { name: "lesson", title: "Benchday lesson, version 1", schema: lessonSchema, words: {} },
];

type Node = { [name: string]: unknown };

/** @returns each file of schemas/ with its text. Throws if a word is said on a field that does not exist. */
export function schemaFiles(): { readonly path: string; readonly text: string }[] {
  return published.map(({ name, title, schema, words }) => {
    // Flags and two patterns on one text have no counterpart; our Unicode patterns are what JSON Schema means by a pattern.
    const made = toJsonSchema(schema, { typeMode: "input", errorMode: "ignore" }) as unknown as Node;
    for (const [path, description] of Object.entries(words)) nodeAt(made, path).description = description;
    const { $schema, ...rest } = made;
    return { path: `schemas/${name}.schema.json`, text: `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n` };
  });
}

function nodeAt(root: Node, path: string): Node {
  let here = root;
  for (const step of path.split(".")) {
    const found = (here.properties as Node | undefined)?.[step.replace("[]", "")] as Node | undefined;
    if (!found) throw new Error(`no field ${path}`);
    here = step.endsWith("[]") ? (found.items as Node) : found;
  }
  return here;
}
