// The door of this room: other rooms enter only here.
export { byTime, meetingsOf } from "./byTime.ts";
export * from "./classFile.ts";
export { classFileShape, isId, kitShape, pinNames } from "./classFileShape.ts";
export { type CsvStyle, type Separator, writeCsv } from "./csvTable.ts";
export { decodeText } from "./decodeText.ts";
export type { FileProblem, IdOwner } from "./fileProblem.ts";
export { type CupboardLists, findOverdrawn, type Overdrawn } from "./findOverdrawn.ts";
export { nearItem, readItem } from "./itemText.ts";
export type { KnownFiles } from "./judge.ts";
export { teamSizes } from "./judgeClass.ts";
export type { TableReading, Understood } from "./openTable.ts";
export { type OrderLine, orderCsv, readOrderCsv } from "./orderCsv.ts";
export { readClassFile } from "./readClassFile.ts";
export { readKit } from "./readKit.ts";
export { readRoster } from "./readRoster.ts";
export { readKitList, readStockCsv } from "./readStockCsv.ts";
export { writeClassFile } from "./writeClassFile.ts";
export { kitListCsv, rosterCsv, stockCsv } from "./writeTables.ts";
