// The stock by list: pasted or opened, looked at, then taken as the whole stock, on top of it, or for what it names.
//
// Does not know: encodings, separators, what makes an item.
import { itemName } from "../../../language/index.ts";
import type { StockLine } from "../../../school/file/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "./act.ts";
import { TableBox } from "./TableBox.tsx";
import { thereNow } from "./thereNow.ts";
import { asCounted, kitsAddTo } from "./whatIsThere.ts";

export function StockList({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const language = session.language.value;
  const isEmpty = (session.classFile.value?.stock ?? []).length === 0;
  const way = (how: "replace" | "add" | "update", label: string) => ({
    label,
    take: (lines: readonly StockLine[]) =>
      act({ kind: "take-stock", lines: how === "add" ? lines : asCounted(lines, thereNow(session)), how }),
  });
  const kits = session.shipped.value?.kits ?? new Map();
  /** What kits hold of it already is counted on top. */
  const onTop = ({ item, count }: StockLine): string => {
    const more = session.classFile.value === null ? 0 : kitsAddTo(session.classFile.value, kits, item);
    return more === 0 ? "" : say("cupboard.kitsHoldToo", { count: more, total: more + count });
  };
  const ways = isEmpty
    ? [way("replace", say("cupboard.takeAll"))]
    : [way("update", say("cupboard.update")), way("add", say("cupboard.onTop")), way("replace", say("cupboard.replace"))];
  return (
    <TableBox
      label={say("cupboard.listLabel")}
      hint={say("cupboard.listHint")}
      read={(name, bytes) => session.engine.readStock(name, bytes)}
      heads={[say("cupboard.item"), say("cupboard.howMany"), say("cupboard.box"), say("cupboard.inKits")]}
      cells={(line) => [itemName(language, line.item), String(line.count), line.box === "" ? "—" : line.box, onTop(line)]}
      ways={ways}
      onClose={onClose}
    />
  );
}
