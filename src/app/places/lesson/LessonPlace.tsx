export function LessonPlace() {
  return null;
}
