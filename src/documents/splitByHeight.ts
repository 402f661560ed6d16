// Cuts a list into sheets by the height of its pieces.
//
// Does not know: what the pieces are.

/**
 * @param height of one piece, mm.
 * @param first room on the first sheet, mm; `further` on each other one.
 * @returns the pieces sheet by sheet, in order; at least one sheet, and at least one piece on each if there is any.
 */
export function splitByHeight<T>(things: readonly T[], height: (thing: T) => number, first: number, further = first): T[][] {
  const sheets: T[][] = [[]];
  let used = 0;
  for (const thing of things) {
    const room = sheets.length === 1 ? first : further;
    if (used + height(thing) > room && sheets.at(-1)!.length > 0) {
      sheets.push([]);
      used = 0;
    }
    sheets.at(-1)!.push(thing);
    used += height(thing);
  }
  return sheets;
}
