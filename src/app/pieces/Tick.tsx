// A box to tick, crossed when done, in a row that is easy to hit.
//
// Does not know: what is ticked.
import type { ComponentChildren } from "preact";

export interface TickProps {
  readonly label: ComponentChildren;
  readonly note?: ComponentChildren;
  readonly ticked: boolean;
  readonly onChange: (ticked: boolean) => void;
  readonly id?: string;
}

export function Tick({ label, note, ticked, onChange, id }: TickProps) {
  return (
    <label class="row tickrow">
      <input
        type="checkbox"
        id={id}
        checked={ticked}
        onChange={({ currentTarget: box }) => {
          const on = box.checked;
          // The box shows what is so: where the act is refused, nothing is drawn anew and it must not stay crossed.
          box.checked = ticked;
          onChange(on);
        }}
      />
      <span>
        {label}
        {note && <span class="note under">{note}</span>}
      </span>
    </label>
  );
}
