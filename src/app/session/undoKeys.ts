// Ctrl+Z takes back the last act, Ctrl+Shift+Z does it again, wherever the person is, but not while text is typed.
//
// In a field the keys belong to the field.
// Does not know: what an act is.
import type { Session } from "./session.ts";

/** @returns how to stop listening. */
export function startUndoKeys(session: Session): () => void {
  const onKey = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== "z" || isTyping(event.target)) return;
    event.preventDefault();
    if (event.shiftKey) session.redo();
    else session.undo();
  };
  addEventListener("keydown", onKey);
  return () => removeEventListener("keydown", onKey);
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return !["checkbox", "radio", "button", "file"].includes(target.type);
  return target instanceof HTMLTextAreaElement || target.isContentEditable;
}
