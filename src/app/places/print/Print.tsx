// Print: everything for the next lesson in one go, in the order of use, with the number of sheets said before; or any one paper.
//
// Without an address of its own the place begins with the next lesson, so that two taps from Today are enough. The browser's own
// print gives the sheets that the preview shows. Where it cannot, and on a phone, the papers are saved as a file.
// Does not know: how a paper is made, what stands on it.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { parseDay } from "../../../base/index.ts";
import { formatDay, sayUnchecked } from "../../../language/index.ts";
import { Button, Message, Nothing, Page, ProgressRuler, Row, Table, TextLink } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { copyName } from "../../session/saveClassCopy.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { address } from "../../shell/router.ts";
import { looksOf } from "../settings/looksOf.ts";
import { addressOf, type Choice, choiceAt, type Meeting, meetingsToCome, wishOf } from "./choosePapers.ts";
import { Preview } from "./Preview.tsx";
import { papersOf } from "./papersOf.ts";
import "./print.css";

export function Print() {
  const session = useSession();
  const say = useSay();
  const classFile = session.classFile.value;
  const school = session.school.value;
  const shipped = session.shipped.value;
  const looks = looksOf(session);
  const asking = papersOf(session);
  const canPrint = useSignal<boolean | null>(null);
  const meetings =
    classFile === null
      ? []
      : meetingsToCome(
          classFile,
          classFile.classes,
          session.today.value,
          session.clock.value,
          (id) => shipped?.lessons.get(id)?.minutes ?? 0,
        );
  const group = session.group.value;
  const own = meetings.filter((meeting) => meeting.class === group?.id);
  const next = own[0] ?? meetings[0];
  const choice = choiceAt(address.value.rest) ?? (next === undefined ? null : ({ what: "all", sitting: next.sitting } as Choice));
  const language = session.language.value.tag;
  const size = looks.paper.value;
  const wish =
    choice === null || school === null
      ? null
      : { school, wish: { ...wishOf(choice), language, paperSize: size, source: copyName(session) } };
  useEffect(() => {
    if (wish !== null) asking.ask(wish);
  });
  const answer = asking.answer.value;
  const papers = answer.fresh ? answer.value : null;
  const names = useNames();

  if (choice === null)
    return (
      <Page
        name={say("printPage.name")}
        under={
          <Nothing
            says={say("printPage.nothing")}
            will={say("printPage.willStand")}
            first={{ label: say("printPage.toCourse"), to: "#/course" }}
            others={<TextLink to="#/print/label">{say("printPage.labels")}</TextLink>}
          />
        }
      />
    );
  return (
    <Page
      name={say("printPage.name")}
      {...(papers === null ? {} : { at: <Sheets count={papers.sheets} /> })}
      heading={names.choice(choice)}
      over={<p class="note">{names.when(choice)}</p>}
      under={
        <>
          {papers !== null && papers.sheets > 0 && (
            <p>
              {say("printPage.inOrder", {
                parts: papers.parts.map((part) => say("printPage.part", { kind: part.kind, count: part.sheets })),
              })}
            </p>
          )}
          {papers !== null && papers.sheets === 0 && (
            <Message live says={say("printPage.noSheets")} try={say("printPage.noSheetsTry")} />
          )}
          {answer.progress !== null && (
            <ProgressRuler
              done={answer.progress.done}
              total={answer.progress.total}
              says={sayUnchecked(session.language.value, `engine.${answer.progress.doing}`)}
              onStop={asking.stop}
            />
          )}
          {answer.trouble !== null && (
            <Message live says={sayUnchecked(session.language.value, `engine.${answer.trouble}`)}>
              <TextLink onPress={asking.again}>{say("printPage.again")}</TextLink>
            </Message>
          )}
          <div class="acts">
            <Button
              id="print-now"
              onPress={() => window.print()}
              notYet={
                papers === null || canPrint.value === null
                  ? say("printPage.making")
                  : papers.sheets === 0
                    ? say("printPage.noSheets")
                    : canPrint.value
                      ? null
                      : say("printPage.cannotPrint")
              }
            >
              {papers === null ? say("printPage.print") : say("printPage.printSheets", { count: papers.sheets })}
            </Button>
            {papers !== null && papers.sheets > 0 && (
              <TextLink onPress={() => void session.saveFile(`${fileName(choice)}.html`, papers.html, "text/html")}>
                {say("printPage.saveAsFile")}
              </TextLink>
            )}
          </div>
          <p class="note">
            {say("printPage.paper")}{" "}
            {(["A4", "Letter"] as const).map((paper) => (
              <span key={paper}>
                <TextLink pressed={paper === size} onPress={() => looks.setPaper(paper)}>
                  {paper}
                </TextLink>{" "}
              </span>
            ))}
          </p>
        </>
      }
    >
      <Row as="section">
        <details>
          <summary>{say("printPage.others")}</summary>
          <Others meetings={meetings} />
        </details>
      </Row>
      {papers !== null && papers.sheets > 0 && (
        <Row as="section" class="sheets">
          <h2>{say("printPage.look")}</h2>
          <div class="bleed">
            <Preview
              html={papers.html}
              title={papers.title}
              onReady={(can) => {
                canPrint.value = can;
              }}
            />
          </div>
        </Row>
      )}
    </Page>
  );
}

function Sheets({ count }: { readonly count: number }) {
  const say = useSay();
  return (
    <>
      <b>{count}</b> <span class="unit">{say("printPage.sheets", { count })}</span>
    </>
  );
}

/** Every paper that there is, by lesson. */
function Others({ meetings }: { readonly meetings: readonly Meeting[] }) {
  const session = useSession();
  const say = useSay();
  const names = useNames();
  const link = (choice: Choice, words: string, label?: string) => (
    <TextLink to={`#${addressOf(choice)}`} {...(label === undefined ? {} : { label })}>
      {words}
    </TextLink>
  );
  return (
    <>
      <ul class="papers-of">
        {(session.classFile.value?.classes ?? []).map((group) => (
          <li key={group.id}>{link({ what: "rota", class: group.id }, say("printPage.rotaOf", { name: group.name }))}</li>
        ))}
        <li>{link({ what: "label" }, say("printPage.labels"))}</li>
        <li>{link({ what: "order" }, say("printPage.order"))}</li>
      </ul>
      {meetings.length > 0 && (
        <Table
          caption={say("printPage.byLesson")}
          phone="paragraphs"
          head={[{ says: say("printPage.day") }, { says: say("printPage.lesson") }, { says: say("printPage.papers") }]}
        >
          {meetings.map(({ sitting, date, lesson, class: id }) => {
            const about = names.when({ what: "all", sitting });
            const named = (words: string) => say("printPage.paperFor", { paper: words, about });
            return (
              <tr key={sitting}>
                <td>{formatDay(session.language.value, date, "short")}</td>
                <th scope="row">
                  <bdi>{lessonTitle(session.shipped.value, lesson, session.language.value.tag)}</bdi>{" "}
                  <span class="unit">
                    <bdi>{names.group(id)}</bdi>
                  </span>
                </th>
                <td>
                  {link({ what: "all", sitting }, say("printPage.all"), named(say("printPage.all")))}{" "}
                  {link({ what: "run-sheet", sitting }, say("printPage.runSheet"), named(say("printPage.runSheet")))}{" "}
                  {link({ what: "tray", sitting }, say("printPage.trays"), named(say("printPage.trays")))}
                </td>
              </tr>
            );
          })}
        </Table>
      )}
    </>
  );
}

/** How a choice, a lesson's day and a class are called. */
function useNames() {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const group = (id: string) => session.classFile.value?.classes.find((c) => c.id === id)?.name ?? id;
  const title = (sitting: string) => lessonTitle(session.shipped.value, sitting.split("/")[1] ?? sitting, language.tag);
  return {
    group,
    choice: (choice: Choice): string => {
      if (choice.what === "all") return say("printPage.everythingFor", { title: title(choice.sitting) });
      if (choice.what === "run-sheet") return say("printPage.runSheetFor", { title: title(choice.sitting) });
      if (choice.what === "tray") return say("printPage.traysFor", { title: title(choice.sitting) });
      if (choice.what === "rota") return say("printPage.rotaOf", { name: group(choice.class) });
      return say(choice.what === "label" ? "printPage.labels" : "printPage.order");
    },
    when: (choice: Choice): string => {
      if (!("sitting" in choice)) return say("printPage.ofTheWhole");
      const [id = "", , date = ""] = choice.sitting.split("/");
      const day = parseDay(date);
      return say("printPage.classOnDay", { name: group(id), day: day === null ? date : formatDay(language, day, "weekday") });
    },
  };
}

function fileName(choice: Choice): string {
  return addressOf(choice)
    .slice(1)
    .replace(/[^A-Za-z0-9-]+/g, "-");
}
