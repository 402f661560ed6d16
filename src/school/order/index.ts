// The door of this room: other rooms enter only here.
export { type HighsOptions, highsSolver, type IntegerSolver } from "./highsSolver.ts";
export { lpText } from "./lpText.ts";
export { type OrderQuestion, orderModel } from "./orderModel.ts";
export { planOrder } from "./planOrder.ts";
export * from "./purchase.ts";
export { type OrderInput, type StatedOrder, stateOrder } from "./stateOrder.ts";
