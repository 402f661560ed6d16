// Pasting a list or opening a table: first what was understood, row by row, then the taking.
//
// What was opened stands in the box as text, so that a doubtful row can be mended there, or left out, without the spreadsheet.
// Does not know: what the rows are; who takes them.
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { sayUnchecked } from "../../../language/index.ts";
import { decodeText } from "../../../school/file/index.ts";
import type { EngineProblem, Job, ReadAnswer } from "../../engine/engine.ts";
import { Button, Drop, Field, Problem, Table, TextLink } from "../../pieces/index.ts";
import { troubleOf } from "../../session/answering.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { withoutLines } from "./withoutLines.ts";

export interface TableBoxProps<Row> {
  readonly label: string;
  readonly hint: string;
  readonly read: (fileName: string, bytes: Uint8Array) => Job<ReadAnswer<readonly Row[]>>;
  /** Heads of the columns in which rows are shown, and the cells of a row. */
  readonly heads: readonly string[];
  readonly cells: (row: Row) => readonly string[];
  /** What may be done with the rows; the first is the usual one. @returns why not, or null. */
  readonly ways: readonly { readonly label: string; readonly take: (rows: readonly Row[]) => string | null }[];
  readonly onClose: () => void;
}

interface Look<Row> {
  readonly rows: readonly Row[] | null;
  readonly problems: readonly EngineProblem[];
  /** Key of a text, where nothing could be read at all. */
  readonly trouble: string | null;
}

/** A long list is looked at by its beginning; all of it is taken. */
const rowsShown = 40;

export function TableBox<Row>({ label, hint, read, heads, cells, ways, onClose }: TableBoxProps<Row>) {
  const say = useSay();
  const language = useSession().language.value;
  const [text, setText] = useState("");
  const [name, setName] = useState<string | null>(null);
  const [look, setLook] = useState<Look<Row> | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const asked = useRef(0);
  // With the answer itself, so that nobody who is already further is called back.
  useLayoutEffect(() => {
    if (look) heading.current?.focus();
  }, [look]);

  const lookAt = async (table: string, file: string | null): Promise<void> => {
    asked.current += 1;
    const mine = asked.current;
    setLook(null);
    let seen: Look<Row>;
    try {
      const job = read(file ?? say("cupboard.pastedName"), new TextEncoder().encode(table));
      const { value, problems } = await job.answer;
      seen = { rows: value, problems, trouble: null };
    } catch (error) {
      seen = {
        rows: null,
        problems: [],
        trouble: `engine.${troubleOf(error)}`,
      };
    }
    if (mine !== asked.current) return;
    setLook(seen);
  };
  const put = (table: string, file: string | null) => {
    setText(table);
    setName(file);
    setRefused(null);
    void lookAt(table, file);
  };
  const problems = look?.problems ?? [];
  const errors = problems.filter((problem) => problem.severity !== "warning");
  const doubtful = [...new Set(errors.flatMap(({ place }) => place?.line ?? []))];
  // Without its first line a table has no heads; that one is mended, not left out.
  const canLeaveOut = doubtful.length > 0 && errors.every((problem) => (problem.place?.line ?? 1) > 1);
  return (
    <div class="table-box">
      <Field
        label={label}
        hint={hint}
        lines={6}
        value={text}
        onInput={(typed) => {
          setText(typed);
          setLook(null);
        }}
      />
      <div class="acts">
        <Button notYet={text.trim() === "" ? say("cupboard.boxIsEmpty") : null} onPress={() => void lookAt(text, name)}>
          {say("cupboard.lookAtIt")}
        </Button>
        <TextLink onPress={onClose}>{say("cupboard.close")}</TextLink>
      </div>
      <Drop
        label={say("cupboard.orFile")}
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        paste={false}
        onData={(file, bytes) => put(decodeText(bytes).text, file)}
      />
      {look && (
        <section class="understood">
          <h2 ref={heading} tabIndex={-1}>
            {look.trouble
              ? sayUnchecked(language, look.trouble)
              : look.rows
                ? say("cupboard.understood", { count: look.rows.length })
                : say("cupboard.inDoubt", { count: errors.length })}
          </h2>
          {errors.map((problem, n) => (
            <Problem key={n} problem={problem} />
          ))}
          {errors.length > 0 && (
            <div class="acts">
              {canLeaveOut && (
                <Button onPress={() => put(withoutLines(text, doubtful), name)}>
                  {say("cupboard.leaveOut", { count: doubtful.length })}
                </Button>
              )}
              <span>{say("cupboard.orMend")}</span>
            </div>
          )}
          {look.rows && (
            <>
              <div class="acts">
                {ways.map((way) => (
                  <Button
                    key={way.label}
                    onPress={() => {
                      const why = way.take(look.rows ?? []);
                      setRefused(why);
                      if (why === null) onClose();
                    }}
                  >
                    {way.label}
                  </Button>
                ))}
              </div>
              {refused && <p class="problem">{refused}</p>}
              {problems.map((problem, n) => (
                <Problem key={n} problem={problem} />
              ))}
              <Table caption={say("cupboard.understood", { count: look.rows.length })} head={heads.map((says) => ({ says }))}>
                {look.rows.slice(0, rowsShown).map((row, n) => (
                  <tr key={n}>
                    {cells(row).map((cell, m) => (
                      <td key={heads[m]}>
                        <bdi>{cell}</bdi>
                      </td>
                    ))}
                  </tr>
                ))}
              </Table>
              {look.rows.length > rowsShown && (
                <p class="note">{say("cupboard.andMore", { count: look.rows.length - rowsShown })}</p>
              )}
            </>
          )}
        </section>
      )}
    </div>
  );
}
