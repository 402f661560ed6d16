// The writing lines of the six questions. Each keeps what is typed and reads it when the person goes on.
//
// Does not know: where an answer goes, which question comes next.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { countedItem, formatClock, itemName } from "../../../language/index.ts";
import type { Kit } from "../../../school/file/index.ts";
import { Choice, DayField, Field, Tick } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import type { Answers, QuestionName } from "./answers.ts";
import { usualCurrency } from "./classOf.ts";
import {
  type FieldProblem,
  type ReadFields,
  readBoxes,
  readComputers,
  readLessons,
  readMeeting,
  readMoney,
  readPupils,
  type Typed,
} from "./readFields.ts";
import { teachingOrder } from "./teachingOrder.ts";

export interface FieldsProps {
  readonly answers: Answers;
  readonly problems: readonly FieldProblem[];
  readonly onDone: (read: ReadFields<Answers[QuestionName]>) => void;
  /** The buttons at the end of the form. */
  readonly children: ComponentChildren;
}

/** What stands in a line before anybody writes there (common practice, no source). */
const usual = { teamSize: 3, minutes: 80, weeks: 1 } as const;

export function PupilsFields({ answers, problems, onDone, children }: FieldsProps) {
  const before = said(answers.pupils);
  const form = useTyped({ count: text(before?.count), teamSize: String(before?.teamSize ?? usual.teamSize) });
  return (
    <Form onSend={() => onDone(readPupils(form.typed()))}>
      <Line form={form} name="count" label="questionField.pupils" problems={problems} />
      <Line form={form} name="teamSize" label="questionField.teamSize" problems={problems} />
      {children}
    </Form>
  );
}

export function MeetingFields({ answers, problems, onDone, children }: FieldsProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const before = said(answers.meeting);
  const first = useSignal(before?.first ?? null);
  const form = useTyped({
    start: before === null ? "" : formatClock(language, before.start),
    minutes: String(before?.minutes ?? usual.minutes),
    weeks: String(before?.weeks ?? usual.weeks),
  });
  return (
    <Form onSend={() => onDone(readMeeting(first.value, form.typed(), session.today.value))}>
      <div id="q-first" tabIndex={-1}>
        <DayField
          label={say("questionField.firstLesson")}
          hint={say("questionField.dayExample")}
          value={first.value}
          onChange={(day) => {
            first.value = day;
          }}
          problem={troubleOf("first", problems, say)}
        />
      </div>
      <Line form={form} name="start" label="questionField.start" problems={problems} />
      <Line form={form} name="minutes" label="questionField.minutesALesson" problems={problems} />
      <Line form={form} name="weeks" label="questionField.weeks" problems={problems} />
      {children}
    </Form>
  );
}

export function LessonsFields({ answers, problems, onDone, children }: FieldsProps) {
  const session = useSession();
  const say = useSay();
  const lessons = session.shipped.value!.lessons;
  const order = teachingOrder(lessons);
  const wanted = useSignal<ReadonlySet<string>>(new Set(said(answers.lessons) ?? order));
  const trouble = troubleOf("lessons", problems, say);
  return (
    <Form onSend={() => onDone(readLessons(order.filter((id) => wanted.value.has(id))))}>
      <fieldset class="choice" id="q-lessons" tabIndex={-1}>
        <legend>{say("questionField.lessons")}</legend>
        {order.map((id) => {
          const lesson = lessons.get(id)!;
          return (
            <Tick
              key={id}
              label={<bdi>{lessonTitle(session.shipped.value, id, session.language.value.tag)}</bdi>}
              note={say("questionField.minutes", { minutes: lesson.minutes })}
              ticked={wanted.value.has(id)}
              onChange={(ticked) => {
                const next = new Set(wanted.value);
                if (ticked) next.add(id);
                else next.delete(id);
                wanted.value = next;
              }}
            />
          );
        })}
        {trouble && <p class="problem">{trouble}</p>}
      </fieldset>
      {children}
    </Form>
  );
}

export function BoxesFields({ answers, problems, onDone, children }: FieldsProps) {
  const say = useSay();
  const kits = [...useSession().shipped.value!.kits.values()];
  const before = said(answers.boxes) ?? [];
  const form = useTyped(Object.fromEntries(kits.map(({ id }) => [id, text(before.find((box) => box.kit === id)?.count)])));
  const ids = kits.map(({ id }) => id);
  return (
    <Form onSend={() => onDone(readBoxes(form.typed(), ids))}>
      {kits.map((kit) => (
        <div key={kit.id}>
          <Line form={form} name={kit.id} label="questionField.boxesOf" data={{ kit: kit.name }} problems={problems} />
          <Contents kit={kit} />
        </div>
      ))}
      <p class="note">{say("questionField.otherKit")}</p>
      {children}
    </Form>
  );
}

/** What a box holds, so that a person can compare it with the one on the shelf. */
function Contents({ kit }: { readonly kit: Kit }) {
  const language = useSession().language.value;
  const say = useSay();
  const things = [...kit.contents].map(([item, count]) =>
    count === 1 ? itemName(language, item) : countedItem(language, item, count),
  );
  return (
    <details>
      <summary>{say("questionField.contents")}</summary>
      <ul class="plain">
        {things.map((thing) => (
          <li key={thing}>
            <bdi>{thing}</bdi>
          </li>
        ))}
      </ul>
    </details>
  );
}

export function ComputersFields({ answers, problems, onDone, children }: FieldsProps) {
  const form = useTyped({ count: text(said(answers.computers)?.count) });
  return (
    <Form onSend={() => onDone(readComputers(form.typed()))}>
      <Line form={form} name="count" label="questionField.computers" problems={problems} />
      {children}
    </Form>
  );
}

export function MoneyFields({ answers, problems, onDone, children }: FieldsProps) {
  const session = useSession();
  const say = useSay();
  const kits = [...session.shipped.value!.kits.values()];
  const before = said(answers.money);
  const form = useTyped({
    currency: before?.currency ?? usualCurrency,
    budget: before?.budget ?? "",
    price: before?.price ?? "",
    // The box that is there already is the likeliest to be bought again.
    kit: before?.kit ?? said(answers.boxes)?.[0]?.kit ?? kits[0]?.id ?? "",
  });
  return (
    <Form onSend={() => onDone(readMoney(form.typed()))}>
      <Line form={form} name="currency" label="questionField.currency" problems={problems} keys="text" />
      <Line form={form} name="budget" label="questionField.budget" problems={problems} keys="decimal" />
      <Choice
        id="q-kit"
        label={say("questionField.kit")}
        hint={say("questionField.kitHint")}
        as="list"
        value={form.value("kit") || null}
        options={kits.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(kit) => form.set("kit", kit)}
        problem={troubleOf("kit", problems, say)}
      />
      <Line form={form} name="price" label="questionField.price" problems={problems} keys="decimal" />
      {children}
    </Form>
  );
}

interface TypedForm {
  value(name: string): string;
  set(name: string, value: string): void;
  typed(): Typed;
}

/** What stands in the fields now. */
function useTyped(first: Typed): TypedForm {
  const typed = useSignal(first);
  return {
    value: (name) => typed.value[name] ?? "",
    set: (name, value) => {
      typed.value = { ...typed.value, [name]: value };
    },
    typed: () => typed.value,
  };
}

interface LineProps {
  readonly form: TypedForm;
  readonly name: string;
  readonly label: `questionField.${"pupils" | "teamSize" | "start" | "minutesALesson" | "weeks" | "boxesOf" | "computers" | "currency" | "budget" | "price"}`;
  readonly data?: Readonly<Record<string, unknown>>;
  readonly problems: readonly FieldProblem[];
  readonly keys?: "text" | "numeric" | "decimal";
}

function Line({ form, name, label, data, problems, keys = "numeric" }: LineProps) {
  const say = useSay();
  return (
    <Field
      id={`q-${name}`}
      label={say(label, data)}
      width="middle"
      // A clock needs its colon, which number keys do not have.
      keys={name === "start" ? "text" : keys}
      value={form.value(name)}
      onInput={(value) => form.set(name, value)}
      problem={troubleOf(name, problems, say)}
    />
  );
}

function Form({ onSend, children }: { readonly onSend: () => void; readonly children: ComponentChildren }) {
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
      }}
    >
      {children}
    </form>
  );
}

/** The sentence for a field, or null; the same stands in the list at the top. */
function troubleOf(field: string, problems: readonly FieldProblem[], say: ReturnType<typeof useSay>): string | null {
  const problem = problems.find((p) => p.field === field);
  return problem === undefined ? null : troubleText(problem, say);
}

export function troubleText({ code, found, least, most }: FieldProblem, say: ReturnType<typeof useSay>): string {
  return say(`fieldTrouble.${code}`, { found, least, most, isEmpty: found === "" ? "yes" : "no" });
}

function said<Value>(answer: Value | "unknown" | null): Value | null {
  return answer === "unknown" ? null : answer;
}

const text = (count: number | undefined) => (count === undefined ? "" : String(count));
