// The teams of each lesson, as the rota says, with who is away and who was moved for it.
//
// Does not know: how the rota was made.
import { useState } from "preact/hooks";
import { formatDay, formatList, type Language } from "../../../language/index.ts";
import type { ClassGroup } from "../../../school/file/index.ts";
import { Row, shortDay, Table, TextLink, Tick } from "../../pieces/index.ts";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { PlanWork } from "../course/PlanWork.tsx";
import { useAct } from "../cupboard/act.ts";
import { type LessonTeams as OneLesson, rotaOf, type TeamMember, teamsByLesson } from "./teams.ts";

export function LessonTeams({ group }: { readonly group: ClassGroup }) {
  const say = useSay();
  const session = useSession();
  const language = session.language.value;
  const plan = session.plan.value.value;
  const today = session.today.value;
  const [opened, setOpened] = useState<ReadonlyMap<string, boolean>>(new Map());
  const rota = plan === null ? null : rotaOf(plan, group.id);
  const lessons = plan === null ? [] : teamsByLesson(plan, group);
  const next = lessons.find((lesson) => lesson.date >= today)?.id;
  const name = (id: string) => group.pupils.find((pupil) => pupil.id === id)?.name ?? id;
  return (
    <>
      <Row as="section" at={lessons.length > 0 ? lessons.length : undefined}>
        <h2>{say("pupilsPage.teamsHeading")}</h2>
        <PlanWork />
        {rota && lessons.length > 0 && (
          <p>
            {say("pupilsPage.fresh", { fresh: rota.fresh, count: lessons.length })}{" "}
            {rota.fresh < lessons.length && say("pupilsPage.bound", { bound: rota.bound })}
          </p>
        )}
        {rota?.broken.map((broken) => (
          <p key={`${broken.lesson} ${broken.pupils.join()}`} class="message">
            {say("pupilsPage.wishBroken", {
              names: formatList(language, broken.pupils.map(name)),
              day: lessons[broken.lesson] ? formatDay(language, lessons[broken.lesson]!.date, "short") : "—",
            })}
          </p>
        ))}
        {plan !== null && lessons.length === 0 && <p>{say("pupilsPage.noLessons")}</p>}
      </Row>
      {lessons.map((lesson) => {
        const isOpen = opened.get(lesson.id) ?? lesson.id === next;
        return (
          <Row key={lesson.id} at={shortDay(language, lesson.date)} {...(lesson.date < today ? { line: "past" as const } : {})}>
            <h3>{lessonTitle(session.shipped.value, lesson.lesson, language.tag)}</h3>
            <p>
              {lesson.away.length > 0 &&
                say("pupilsPage.areAway", { names: namesOf(language, lesson.away), count: lesson.away.length })}{" "}
              {lesson.moved.length > 0 &&
                say("pupilsPage.wereMoved", { names: namesOf(language, lesson.moved), count: lesson.moved.length })}{" "}
              <TextLink
                onPress={() => setOpened(new Map(opened).set(lesson.id, !isOpen))}
                pressed={isOpen}
                label={say(isOpen ? "pupilsPage.hideTeamsOf" : "pupilsPage.showTeamsOf", {
                  day: formatDay(language, lesson.date, "short"),
                })}
              >
                {say(isOpen ? "pupilsPage.hideTeams" : "pupilsPage.showTeams")}
              </TextLink>
            </p>
            {isOpen && <Teams group={group} lesson={lesson} />}
          </Row>
        );
      })}
    </>
  );
}

const namesOf = (language: Language, pupils: readonly { readonly name: string }[]) =>
  formatList(
    language,
    pupils.map((pupil) => pupil.name),
  );

function Teams({ group, lesson }: { readonly group: ClassGroup; readonly lesson: OneLesson }) {
  const say = useSay();
  const act = useAct();
  const language = useSession().language.value;
  const [choosing, setChoosing] = useState(false);
  const sitting = { class: group.id, lesson: lesson.lesson, date: lesson.date };
  const day = formatDay(language, lesson.date, "short");
  const role = (members: readonly TeamMember[], wanted: string) =>
    members.filter((m) => m.roles.some((r) => r === wanted)).map((m) => m.pupil);
  return (
    <>
      <Table
        caption={say("pupilsPage.teamsOf", { day })}
        head={[
          { says: say("pupilsPage.team") },
          { says: say("pupilsPage.builds") },
          { says: say("pupilsPage.programs") },
          { says: say("pupilsPage.checks") },
        ]}
        phone="paragraphs"
        class="team-lines"
      >
        {lesson.teams.map((team) => (
          <tr key={team.number}>
            <th scope="row" data-l={say("pupilsPage.team")}>
              {team.number}
            </th>
            {(["builder", "programmer", "checker"] as const).map((wanted) => (
              <td key={wanted} data-l={say(`pupilsPage.${doing[wanted]}`)}>
                <bdi>{namesOf(language, role(team.members, wanted)) || "—"}</bdi>
              </td>
            ))}
          </tr>
        ))}
      </Table>
      <p>
        <TextLink
          onPress={() => setChoosing(!choosing)}
          pressed={choosing}
          label={say(choosing ? "pupilsPage.closeAwayOf" : "pupilsPage.whoIsAwayLabel", { day })}
        >
          {say(choosing ? "pupilsPage.closeAway" : "pupilsPage.whoIsAway")}
        </TextLink>
      </p>
      {choosing && (
        <fieldset class="choice columns">
          <legend>{say("pupilsPage.whoIsAwayOn", { day })}</legend>
          {group.pupils.map((pupil) => (
            <Tick
              key={pupil.id}
              label={<bdi>{pupil.name}</bdi>}
              ticked={lesson.away.some((away) => away.id === pupil.id)}
              onChange={(away) => act({ kind: away ? "mark-absent" : "mark-present", sitting, pupils: [pupil.id] })}
            />
          ))}
        </fieldset>
      )}
    </>
  );
}

const doing = { builder: "builds", programmer: "programs", checker: "checks" } as const;
