// The door of this room: other rooms enter only here.
export { boardFacts, boardLegs, type PortGroup } from "./boardFacts.ts";
export { allValues, catalogue, findKind, partNames } from "./catalogue.ts";
export { itemKey, parseItemKey, tellingParameters } from "./itemKey.ts";
export { cableOhms } from "./kinds/usbCable.ts";
export { ledColour, ledColourWords } from "./ledColours.ts";
export * from "./partKind.ts";
