// How a contact trembles when it is made or let go: some edges within its bounce time, then it is quiet.
//
// One to four short openings, as measured on push buttons (J. Ganssle, A Guide to Debouncing: 1–8 edges in 0.2–6 ms). Seeded, so
// that a program without a wait fails the same way each time.
// Does not know: which part, what the program does about it.
import { seededRandom } from "../../base/index.ts";

export interface BounceEdge {
  /** s after the press. */
  readonly after: number;
  /** Whether the contact is as the press wants it, or back as it was. */
  readonly made: boolean;
}

/** @param seconds the part's bounce time. @returns edges in order; the last one leaves the contact made. */
export function bounceEdges(seconds: number, name: string, seed: number): readonly BounceEdge[] {
  const random = seededRandom(seed, name);
  const openings = random.int(1, 4);
  const times = Array.from({ length: 2 * openings }, () => random.next() * seconds).sort((a, b) => a - b);
  return times.map((after, i) => ({ after, made: i % 2 === 1 }));
}
