// The kinds of things that can be added to the cupboard, and what tells their items apart.
//
// The page loads no engine, and the catalogue of parts is half an engine; this is the list of its names, held equal to it by
// itemKinds.test.ts. What a person writes is checked by the engine when the thing is taken.
// Does not know: legs, ratings, what the words mean.

/** What is asked besides the kind: a value with its unit, one of some words, or nothing. */
export type Telling =
  | { readonly ask: "value"; readonly unit: "Ω" | "F" | "H" | "V" | "A"; readonly needed: boolean }
  | { readonly ask: "word"; readonly words: readonly string[]; readonly needed: boolean };

const colours = ["red", "orange", "yellow", "green", "blue", "white", "ultraviolet", "infrared"];
const value = (unit: "Ω" | "F" | "H" | "V" | "A", needed = true): Telling => ({ ask: "value", unit, needed });
const words = (list: readonly string[], needed = true): Telling => ({ ask: "word", words: list, needed });

/** Kind to what is asked for it, in the order of the item's key. */
export const itemKinds: ReadonlyMap<string, readonly Telling[]> = new Map<string, readonly Telling[]>([
  ["resistor", [value("Ω")]],
  ["capacitor", [value("F")]],
  ["electrolytic", [value("F")]],
  ["inductor", [value("H")]],
  ["potentiometer", [value("Ω")]],
  ["photoresistor", []],
  ["thermistor", [value("Ω", false)]],
  ["phototransistor", []],
  ["button", []],
  ["slide-switch", []],
  ["tilt-switch", []],
  ["reed-switch", []],
  ["led", [words(colours), words(["standard", "emerald"], false)]],
  ["rgb-led", [words(["cathode", "anode"], false)]],
  ["seven-segment", [words(["cathode", "anode"], false), words(colours, false)]],
  ["bar-graph", [words(colours, false)]],
  ["diode", [words(["1N4007", "1N4148"])]],
  ["zener", [value("V")]],
  ["schottky", [words(["1N5817", "1N5819"])]],
  ["npn", [words(["BC547", "PN2222A", "2N2222"])]],
  ["pnp", [words(["BC557"])]],
  ["nmos", [words(["2N7000"])]],
  ["piezo", []],
  ["active-buzzer", []],
  ["magnetic-buzzer", []],
  ["speaker", []],
  ["servo", []],
  ["dc-motor", [value("V", false)]],
  ["relay", [value("V", false)]],
  ["stepper", []],
  ["74HC595", []],
  ["ULN2003A", []],
  ["L293D", []],
  ["ultrasonic", []],
  ["motion", []],
  ["ir-receiver", []],
  ["temperature-10mv", []],
  ["humidity", []],
  ["joystick", []],
  ["keypad", []],
  ["display-16x2", []],
  ["breadboard", [words(["half", "full"], false)]],
  ["wire", [words(["male-male", "male-female"], false)]],
  ["multimeter", []],
]);

/** Supplies that a school owns; they lie in a list of their own. */
export const supplyKinds: ReadonlyMap<string, readonly Telling[]> = new Map<string, readonly Telling[]>([
  ["adapter", [value("A"), value("V", false)]],
  ["power-bank", [value("A", false)]],
  ["battery-9v", [words(["6LR61", "6F22"], false)]],
  ["battery-4aa", [words(["alkaline", "nimh"], false)]],
]);

/**
 * The text of an item from its kind and what was answered, in the notation that the engine reads: "resistor 4k7".
 *
 * @param answers one for each thing asked, "" where nothing was said. A bare number of an adapter is mA, as on its label.
 */
export function itemText(kind: string, answers: readonly string[]): string {
  const asked = itemKinds.get(kind) ?? supplyKinds.get(kind) ?? [];
  const written = asked.map((telling, i) => {
    const answer = (answers[i] ?? "").trim();
    if (telling.ask === "word" || answer === "") return answer.slice(0, 60);
    const close = answer
      .replace(",", ".")
      .replace(/\s+/g, "")
      .replace(/(?:Ω|\u2126|ohms?)$/i, "")
      .slice(0, 60);
    if (telling.unit === "A" && /^\d+(?:\.\d+)?$/.test(close)) return `${close}mA`;
    if (telling.unit === "V" && /^\d+(?:\.\d+)?$/.test(close)) return `${close}V`;
    return close;
  });
  return [kind, ...written.filter((word) => word !== "")].join(" ");
}
