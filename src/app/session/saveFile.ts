// Hands a file to the person by the browser's own download, which works for a page from a card too.
//
// Does not know: where the file goes.

/** Never rejects: what the browser does with it afterwards cannot be known. */
export async function saveFile(name: string, text: string, type: string): Promise<void> {
  const url = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.hidden = true;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the file after this task; a minute is more than it needs.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
