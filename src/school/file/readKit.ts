// Reads a kit: what a shop sells as a box, item by item, from YAML.
//
// Does not know: how many of the kit a school has, which lesson uses what.
import {
  checkShape,
  currencyDecimals,
  hasErrors,
  type Money,
  near,
  type Place,
  parseMoney,
  type Reading,
  readYaml,
  sortProblems,
} from "../../base/index.ts";
import type { ItemKey, Kit } from "./classFile.ts";
import { type KitShape, kitShape } from "./classFileShape.ts";
import type { FileProblem } from "./fileProblem.ts";
import { bringToNewest, type Format } from "./formatVersion.ts";
import { nearItem, readItem } from "./itemText.ts";
import { leftOut } from "./leftOut.ts";

const kitFormat: Format = { name: "benchday-kit", newest: 1, migrations: new Map() };

/** @returns the kit, or null and everything that is wrong with it. Never throws. */
export function readKit(file: string, text: string): Reading<Kit, FileProblem> {
  const document = readYaml(file, text);
  if (document.value === null) return { value: null, problems: document.problems };
  const newest = bringToNewest(document.value, kitFormat);
  if (newest.value === null) return { value: null, problems: newest.problems };
  const shape = checkShape<KitShape>(newest.value, kitShape);
  if (shape.value === null) return { value: null, problems: shape.problems };
  const { id, name, contents, note, supplier, price } = shape.value;
  const problems: FileProblem[] = [...leftOut(file, text, "document")];
  const items = new Map<ItemKey, number>();
  const lines = new Map<ItemKey, number>();
  for (const [written, count] of Object.entries(contents)) {
    const place = newest.value.namePlace(["contents", written]);
    const item = readItem(written);
    const before = item === null ? undefined : lines.get(item);
    if (item === null) problems.push({ code: "file.unknownItem", place, found: written.slice(0, 60), near: nearItem(written) });
    else if (before !== undefined) problems.push({ code: "file.sameItem", place, item, firstLine: before });
    else {
      items.set(item, count);
      lines.set(item, place.line);
    }
  }
  const cost = price === undefined ? null : readPrice(price, newest.value.place(["price"]), problems);
  const kit: Kit = {
    format: "benchday-kit/1",
    id,
    name,
    contents: items,
    note,
    ...(supplier === undefined ? {} : { supplier }),
    ...(cost === null ? {} : { price: cost }),
  };
  const sorted = sortProblems(problems);
  return { value: hasErrors(sorted) ? null : kit, problems: sorted };
}

function readPrice(text: string, place: Place, problems: FileProblem[]): { sum: Money; currency: string } | null {
  const [written = "", currency = ""] = text.split(" ");
  const currencies = Intl.supportedValuesOf("currency");
  const decimals = currencies.includes(currency) ? currencyDecimals(currency) : null;
  const sum = decimals === null ? null : parseMoney(written, decimals);
  if (decimals === null)
    problems.push({ code: "file.unknownCurrency", place, found: currency, near: near(currency, currencies) });
  else if (sum === null) problems.push({ code: "file.tooFineSum", place, found: written, currency, decimals });
  return sum === null ? null : { sum, currency };
}
