// The answer to a deck as data: what `npm run --silent deck -- FILE` prints.
//
// A deck with .op (or with neither) is solved at its operating point, one with .tran over time; with .tran alone the voltages
// and currents are those at its end.
import { nodesOf, type OperatingPoint, solveDc, solveTransient } from "../../src/bench/circuit/index.ts";
import { type Deck, readDeck, type TranLine } from "./readDeck.ts";

export interface DeckAnswer {
  /** "solved", the name of what is wrong with the circuit, or "notOurs" for a deck that is not read. */
  readonly outcome: string;
  /** V by node and A by element, named as in the deck: into the first node named there. */
  readonly volts: Record<string, number>;
  readonly amps: Record<string, number>;
  /** One for each step of the .tran line. */
  readonly samples: readonly { readonly s: number; readonly volts: Record<string, number> }[];
  /** What is known about an outcome other than "solved". */
  readonly why?: object;
}

/** Share of the largest value that one step may be wrong by: well below what a deck's answer is compared to. */
const accuracy = 3e-7;

export function answerDeck(text: string): DeckAnswer {
  const nothing = { volts: {}, amps: {}, samples: [] };
  let deck: Deck;
  try {
    deck = readDeck(text);
  } catch (error) {
    return { outcome: "notOurs", ...nothing, why: { message: (error as Error).message } };
  }
  const { netlist, tran, celsius, gmin } = deck;
  let answer: DeckAnswer = { outcome: "solved", ...nothing };
  if (tran) {
    const { samples, ...outcome } = solveTransient(netlist, {
      untilSeconds: tran.stop,
      sampleSeconds: sampleSeconds(tran),
      fromInitial: tran.fromInitial,
      accuracy,
      celsius,
      gmin,
    });
    const seen = samples.map(({ seconds, point }) => ({ s: seconds, volts: voltsOf(deck, point) }));
    const last = samples.at(-1)?.point;
    answer = { ...answer, outcome: outcome.status, ...(last && namesOf(deck, last)), samples: seen };
    if (outcome.status !== "solved") return { ...answer, why: outcome };
    if (!deck.hasOp) return answer;
  }
  const outcome = solveDc(netlist, { celsius, gmin });
  if (outcome.status !== "solved") return { ...answer, outcome: outcome.status, why: outcome };
  return { ...answer, ...namesOf(deck, outcome.point) };
}

/** s. The grid of the .tran line, with its end. */
export function sampleSeconds({ step, stop, start }: TranLine): number[] {
  const count = Math.floor((stop - start) / step + 1e-9);
  const grid = Array.from({ length: count + 1 }, (_, k) => Math.min(stop, start + k * step));
  return (grid.at(-1) as number) < stop - 1e-9 * step ? [...grid, stop] : grid;
}

function namesOf(deck: Deck, point: OperatingPoint): { volts: Record<string, number>; amps: Record<string, number> } {
  const amps = deck.netlist.elements.map(({ id }) => [deck.spelling.get(id) ?? id, point.amps(id)] as const);
  return { volts: voltsOf(deck, point), amps: Object.fromEntries(amps) };
}

function voltsOf(deck: Deck, point: OperatingPoint): Record<string, number> {
  return Object.fromEntries(nodeNames(deck).map((node) => [deck.spelling.get(node) ?? node, point.volts(node)]));
}

/** The nodes but ground, in the order of the deck. */
function nodeNames({ netlist }: Deck): string[] {
  return [...new Set(netlist.elements.flatMap(nodesOf))].filter((node) => node !== "0");
}
