// The door of this room: other rooms enter only here.
export { explainSetupMessage, type SetupExplanation, setupWords } from "./explainSetupMessage.ts";
export { type SetupCause, type SetupMessage, setupCauses, setupMessages } from "./setupCauses.ts";
