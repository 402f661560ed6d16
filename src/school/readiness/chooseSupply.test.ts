// Which supply is chosen: rows of what fits, how many there are, and what must come out.
import { expect, test } from "vitest";
import type { SupplyResult } from "../../bench/rehearsal/index.ts";
import { chooseSupply } from "./chooseSupply.ts";

const result = (supply: string, fits: SupplyResult["fits"]): SupplyResult => ({
  supply,
  fits,
  why: fits === "fits" ? [] : ["over-current"],
  amps: 0.1,
  peakAmps: 0.2,
  leastVolts: 4.8,
  hours: null,
  regulatorCelsius: null,
  leastVoltsMs: 0,
  lessons: null,
  cableMetres: null,
  hottest: null,
});

const port = "usb-port 500mA";
const rows: [
  what: string,
  results: [string, SupplyResult["fits"]][],
  owned: Record<string, number>,
  teams: number,
  decided: string | null,
  chosen: string | null,
][] = [
  [
    "the port where it fits",
    [
      [port, "fits"],
      ["adapter 2000mA", "fits"],
    ],
    { [port]: 10, "adapter 2000mA": 10 },
    10,
    null,
    port,
  ],
  [
    "what lies in the cupboard where the port does not",
    [
      [port, "does not fit"],
      ["adapter 2000mA", "fits"],
    ],
    { [port]: 10, "adapter 2000mA": 10 },
    10,
    null,
    "adapter 2000mA",
  ],
  ["nothing that is in doubt", [[port, "undetermined"]], { [port]: 10 }, 10, null, null],
  ["nothing that only some teams could have", [["adapter 2000mA", "fits"]], { "adapter 2000mA": 9 }, 10, null, null],
  [
    "what the teacher settled, if it fits",
    [
      [port, "fits"],
      ["power-bank", "fits"],
    ],
    { [port]: 10, "power-bank": 10 },
    10,
    "power-bank",
    "power-bank",
  ],
  [
    "not what the teacher settled, if it does not fit",
    [
      [port, "fits"],
      ["power-bank", "does not fit"],
    ],
    { [port]: 10, "power-bank": 10 },
    10,
    "power-bank",
    port,
  ],
  [
    "the port that fits, even where ports are too few: that is no matter of the supply",
    [[port, "fits"]],
    { [port]: 3 },
    10,
    null,
    port,
  ],
  [
    "of two the one that there are more of",
    [
      ["power-bank", "fits"],
      ["adapter 2000mA", "fits"],
    ],
    { "power-bank": 10, "adapter 2000mA": 12 },
    10,
    null,
    "adapter 2000mA",
  ],
];
for (const [what, results, owned, teams, decided, chosen] of rows)
  test(what, () => {
    const choice = chooseSupply(
      results.map(([s, f]) => result(s, f)),
      (item) => owned[item] ?? 0,
      teams,
      port,
      decided,
      () => false,
    );
    expect(choice.supply).toBe(chosen);
  });

test("several that each carry the lesson go round together", () => {
  const choice = chooseSupply(
    [result(port, "does not fit"), result("adapter 2000mA", "fits"), result("power-bank", "fits")],
    (item) => ({ "adapter 2000mA": 6, "power-bank": 4 })[item] ?? 0,
    10,
    port,
    null,
    () => false,
  );
  expect(choice.supply).toBe("adapter 2000mA");
  expect(choice.others).toEqual(["power-bank"]);
});

test("tells what would help: what a supplier sells first, then what there are most of, never a port", () => {
  const choice = chooseSupply(
    [
      result(port, "does not fit"),
      result("usb-port 900mA", "fits"),
      result("adapter 2000mA", "fits"),
      result("power-bank", "fits"),
      result("battery-9v", "fits"),
    ],
    (item) => ({ "power-bank": 2, "battery-9v": 4 })[item] ?? 0,
    10,
    port,
    null,
    (item) => item === "adapter 2000mA",
  );
  expect(choice.helps).toEqual(["adapter 2000mA", "battery-9v", "power-bank"]);
  expect(choice.owned).toBe(6);
  expect(choice.why).toEqual(["over-current"]);
});
