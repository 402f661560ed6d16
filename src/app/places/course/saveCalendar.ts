// The dates of the class as a calendar file, so that a phone takes them in one tap.
//
// Times are the school's own wall times without a zone (RFC 5545, form 1). Each meeting has a stable UID, so that importing the file
// again moves entries and doubles none; the newer file wins by its SEQUENCE.
// Does not know: the class file's form, where the file goes.
import ical from "ical-generator";
import { say } from "../../../language/index.ts";
import type { Session } from "../../session/session.ts";
import { planWords } from "./sayPlan.ts";

export async function saveCalendar(session: Session): Promise<void> {
  const group = session.group.value;
  const open = session.open.value;
  if (group === null || open === null) return;
  const language = session.language.value;
  const words = planWords(language, session.shipped.value);
  const now = new Date();
  const calendar = ical({ name: group.name, prodId: "-//Benchday//Benchday//EN" });
  const times = new Map<string, number>();
  for (const meeting of group.lessons) {
    const n = (times.get(meeting.lesson) ?? 0) + 1;
    times.set(meeting.lesson, n);
    const minutes = session.shipped.value?.lessons.get(meeting.lesson)?.minutes ?? 0;
    calendar.createEvent({
      id: `${open.id}-${group.id}-${meeting.lesson}-${n}@benchday.invalid`,
      // Minutes since 2020: goes up with every file and stays a small number.
      sequence: Math.max(0, Math.floor((now.getTime() - Date.UTC(2020, 0, 1)) / 60_000)),
      stamp: now,
      start: localTime(meeting.date, meeting.start),
      end: localTime(meeting.date, meeting.start + minutes),
      floating: true,
      summary: say(language, "course.calendarEntry", { name: group.name, title: words.title(meeting.lesson) }),
      location: session.classFile.value?.room.name ?? "",
    });
  }
  await session.saveFile(`${group.id.replace(/[^A-Za-z0-9-]+/g, "") || "class"}.ics`, calendar.toString(), "text/calendar");
}

/** A moment that reads as this day and minute on the wall of whoever looks; `floating` keeps it so. */
function localTime(day: string, minutes: number): Date {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  return new Date(year, month - 1, date, Math.floor(minutes / 60), minutes % 60);
}
