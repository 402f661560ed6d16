// Work that takes longer than a second: a ruler with as many ticks as there are things, a heavy line for those done.
//
// What is known already can be read meanwhile. Nothing moves but the line, and only when something was done.
// Does not know: what is done.
import { useSay } from "../session/useSession.ts";
import { Button } from "./Button.tsx";

export interface ProgressRulerProps {
  readonly done: number;
  readonly total: number;
  /** What is being done, as a sentence. */
  readonly says: string;
  readonly onStop?: () => void;
}

export function ProgressRuler({ done, total, says, onStop }: ProgressRulerProps) {
  const say = useSay();
  const parts = Math.max(1, Math.min(40, total));
  const share = total > 0 ? Math.min(1, done / total) : 0;
  return (
    <div class="progress">
      <p role="status">{says}</p>
      <svg
        class="ruler"
        viewBox="0 0 400 16"
        preserveAspectRatio="none"
        role="progressbar"
        aria-label={says}
        aria-valuemin={0}
        aria-valuemax={total}
        aria-valuenow={Math.min(done, total)}
      >
        <path
          d={Array.from({ length: parts + 1 }, (_, n) => `M${(400 * n) / parts} 0V16`).join("")}
          stroke="var(--rule)"
          vector-effect="non-scaling-stroke"
        />
        <path d="M0 15.5H400" stroke="var(--black)" vector-effect="non-scaling-stroke" />
        <path d={`M0 13H${400 * share}`} stroke="var(--black)" stroke-width="5" vector-effect="non-scaling-stroke" />
      </svg>
      <p class="note">{say("pieces.doneOf", { done, total })}</p>
      {onStop && <Button onPress={onStop}>{say("pieces.stopHere")}</Button>}
    </div>
  );
}
