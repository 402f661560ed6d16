// A servo's way in time. Expected: 0.11 s for 60° and 35 ms of start (figures of bench/parts), straight lines.
import { expect, test } from "vitest";
import { catalogue } from "../parts/index.ts";
import { angleAt, driveServo, restingServo, type ServoState } from "./driveServo.ts";

const kind = catalogue.get("servo")!;
const part = { name: "SERVO1", kind, values: { "start-milliamps": 0.7 } };
const perDegree = kind.figures.secondsPerDegree!.value;
const start = kind.figures.startSeconds!.value;

const tell = (servo: ServoState, now: number, degrees: number | null, powered = true, held = false) =>
  driveServo(part, servo, now, degrees, powered, held);

test("it begins in its middle, because nobody knows how it was left", () =>
  expect(angleAt(restingServo(part).moves, 5)).toBe(90));

test("told 150°, it starts, moves and rests", () => {
  const told = tell(restingServo(part), 1, 150);
  expect([told.doing, told.until]).toEqual(["start", 1 + start]);
  const moving = tell(told, told.until, 150);
  expect(moving.doing).toBe("moving");
  expect(moving.until).toBeCloseTo(1 + 60 * perDegree, 12);
  expect(angleAt(moving.moves, 1 + 30 * perDegree)).toBeCloseTo(120, 9);
  const rests = tell(moving, moving.until, 150);
  expect(rests.doing).toBe("idle");
  expect(angleAt(rests.moves, 100)).toBe(150);
});

test("a twitch of 2° costs no start", () => expect(tell(restingServo(part), 1, 92).doing).toBe("moving"));
test("told nothing, it stays", () => expect(tell(restingServo(part), 1, null).doing).toBe("idle"));
test("without enough voltage it stays", () => expect(angleAt(tell(restingServo(part), 1, 150, false).moves, 9)).toBe(90));
test("held fast, it stalls where it is", () => {
  const held = tell(restingServo(part), 1, 150, true, true);
  expect([held.doing, angleAt(held.moves, 9)]).toEqual(["stalled", 90]);
});
test("told another angle on its way, it turns round where it is and starts no second time", () => {
  const told = tell(tell(restingServo(part), 1, 180), 1 + start, 180);
  const now = 1 + 60 * perDegree;
  const back = tell(told, now, 90);
  expect(back.doing).toBe("moving");
  expect(angleAt(back.moves, now)).toBeCloseTo(150, 9);
  expect(back.until).toBeCloseTo(now + 60 * perDegree, 12);
});
test("no pulse takes it beyond its ends", () => {
  let servo = tell(restingServo(part), 0, 400);
  while (servo.until < Number.POSITIVE_INFINITY) servo = tell(servo, servo.until, 400);
  expect(angleAt(servo.moves, 9)).toBe(180);
});
