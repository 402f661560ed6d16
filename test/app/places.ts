// The places that tests of the whole page walk through.
//
// Does not know: what stands in them.

export const placesOfDemo: readonly [name: string, hash: string][] = [
  ["Today", "#/today"],
  ["Course", "#/course"],
  ["a lesson", "#/lesson/7b/quay-lamp-at-dusk/2027-02-16"],
  ["Cupboard", "#/cupboard"],
  ["Order", "#/order"],
  ["Pupils", "#/pupils"],
  ["Print", "#/print"],
  ["Settings", "#/settings"],
  ["what a message means", "#/explain"],
  ["a program on the wall", "#/lines/7b/signal-lamp/2027-01-26"],
  ["the wall", "#/wall/7b/lighthouse/2027-01-12"],
];

/** Without any class. */
export const placesBefore: readonly [name: string, hash: string][] = [
  ["the first page", "#/first"],
  ["question 1", "#/questions/1"],
  ["question 2", "#/questions/2"],
  ["question 3", "#/questions/3"],
  ["question 4", "#/questions/4"],
  ["question 5", "#/questions/5"],
  ["question 6", "#/questions/6"],
];
