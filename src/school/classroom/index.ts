// The door of this room: other rooms enter only here.
export { type ClassroomWork, makeRota, type RotaTask, rotaAtOnce } from "./makeRota.ts";
export { countMeetings, type Meetings, pairKey } from "./meetings.ts";
export { type DayTask, repairDay } from "./repairDay.ts";
export * from "./rota.ts";
export { teamSizes } from "./teamSizes.ts";
