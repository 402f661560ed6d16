// The catalogue: every kind of part by its name, and the types that are a kind with certain values.
//
// To add a part: write kinds/<name>.ts and add it here (README.md of this room).
// Does not know: prices, what a school owns.
import { activeBuzzer } from "./kinds/activeBuzzer.ts";
import { adapter } from "./kinds/adapter.ts";
import { barGraph } from "./kinds/barGraph.ts";
import { battery4aa } from "./kinds/battery4aa.ts";
import { battery9v } from "./kinds/battery9v.ts";
import { board } from "./kinds/board.ts";
import { breadboard } from "./kinds/breadboard.ts";
import { button } from "./kinds/button.ts";
import { capacitor } from "./kinds/capacitor.ts";
import { computer } from "./kinds/computer.ts";
import { dcMotor } from "./kinds/dcMotor.ts";
import { diode } from "./kinds/diode.ts";
import { display16x2 } from "./kinds/display16x2.ts";
import { electrolytic } from "./kinds/electrolytic.ts";
import { humidity } from "./kinds/humidity.ts";
import { inductor } from "./kinds/inductor.ts";
import { irReceiver } from "./kinds/irReceiver.ts";
import { joystick } from "./kinds/joystick.ts";
import { keypad } from "./kinds/keypad.ts";
import { l293d } from "./kinds/l293d.ts";
import { led } from "./kinds/led.ts";
import { magneticBuzzer } from "./kinds/magneticBuzzer.ts";
import { motion } from "./kinds/motion.ts";
import { multimeter } from "./kinds/multimeter.ts";
import { nmos } from "./kinds/nmos.ts";
import { npn } from "./kinds/npn.ts";
import { photoresistor } from "./kinds/photoresistor.ts";
import { phototransistor } from "./kinds/phototransistor.ts";
import { piezo } from "./kinds/piezo.ts";
import { pnp } from "./kinds/pnp.ts";
import { potentiometer } from "./kinds/potentiometer.ts";
import { powerBank } from "./kinds/powerBank.ts";
import { reedSwitch } from "./kinds/reedSwitch.ts";
import { relay } from "./kinds/relay.ts";
import { resistor } from "./kinds/resistor.ts";
import { rgbLed } from "./kinds/rgbLed.ts";
import { schottky } from "./kinds/schottky.ts";
import { servo } from "./kinds/servo.ts";
import { sevenSegment } from "./kinds/sevenSegment.ts";
import { shiftRegister595 } from "./kinds/shiftRegister595.ts";
import { slideSwitch } from "./kinds/slideSwitch.ts";
import { speaker } from "./kinds/speaker.ts";
import { stepper } from "./kinds/stepper.ts";
import { temperature10mv } from "./kinds/temperature10mv.ts";
import { thermistor } from "./kinds/thermistor.ts";
import { tiltSwitch } from "./kinds/tiltSwitch.ts";
import { uln2003a } from "./kinds/uln2003a.ts";
import { ultrasonic } from "./kinds/ultrasonic.ts";
import { usbCable } from "./kinds/usbCable.ts";
import { usbPort } from "./kinds/usbPort.ts";
import { wire } from "./kinds/wire.ts";
import { zener } from "./kinds/zener.ts";
import type { PartKind, PartValues } from "./partKind.ts";

const kinds: readonly PartKind[] = [
  resistor,
  capacitor,
  electrolytic,
  inductor,
  potentiometer,
  photoresistor,
  thermistor,
  phototransistor,
  button,
  slideSwitch,
  tiltSwitch,
  reedSwitch,
  led,
  rgbLed,
  sevenSegment,
  barGraph,
  diode,
  zener,
  schottky,
  npn,
  pnp,
  nmos,
  piezo,
  activeBuzzer,
  magneticBuzzer,
  speaker,
  servo,
  dcMotor,
  relay,
  stepper,
  shiftRegister595,
  uln2003a,
  l293d,
  ultrasonic,
  motion,
  irReceiver,
  temperature10mv,
  humidity,
  joystick,
  keypad,
  display16x2,
  usbPort,
  adapter,
  powerBank,
  battery9v,
  battery4aa,
  board,
  breadboard,
  wire,
  usbCable,
  computer,
  multimeter,
];

/** Every kind by its name. */
export const catalogue: ReadonlyMap<string, PartKind> = new Map(kinds.map((kind) => [kind.id, kind]));

/** Kinds by the names of their types: "BC547" is an npn. */
const kindOfType: ReadonlyMap<string, PartKind> = new Map(
  kinds.flatMap((kind) => Object.keys(kind.types ?? {}).map((type) => [type, kind] as const)),
);

/** All names that a lesson may write behind `part:`, kinds first. */
export const partNames: readonly string[] = [...catalogue.keys(), ...kindOfType.keys()];

/** @returns the kind that a lesson means by `part: name` with, where it names one, `type: type`; null if there is none. */
export function findKind(name: string, type?: string): { readonly kind: PartKind; readonly type: string | null } | null {
  const special = type === undefined ? undefined : kinds.find((k) => k.typeOf?.kind === name && k.typeOf.type === type);
  if (special) return { kind: special, type: null };
  const kind = catalogue.get(name);
  if (kind) return { kind, type: null };
  const typed = kindOfType.get(name);
  return typed ? { kind: typed, type: name } : null;
}

/** @returns all values of a part: those given, then those of its type, then the usual ones. */
export function allValues(kind: PartKind, given: PartValues): PartValues {
  const usual = Object.entries(kind.parameters).flatMap(([name, { usual }]) => (usual ? [[name, usual.value] as const] : []));
  const values = { ...Object.fromEntries(usual), ...given };
  return { ...values, ...kind.types?.[String(values.type)], ...given };
}
