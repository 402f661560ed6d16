export function Course() {
  return null;
}
