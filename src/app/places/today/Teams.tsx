// The teams of the day with their roles, and who is away.
//
// Opening the list of names takes one tap, each name one more; the teams are mended while one looks. Who is away stands struck
// out in the team of the rota, so that everybody sees what changed.
// Does not know: how teams are mended.
import { useState } from "preact/hooks";
import { compareNames, formatList } from "../../../language/index.ts";
import type { Role } from "../../../school/classroom/index.ts";
import { type ClassGroup, type LessonDate, meetingsOf } from "../../../school/file/index.ts";
import type { PlannedLesson } from "../../../school/readiness/index.ts";
import { LastAct, Table, TextLink, Tick } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";

const roles: readonly Role[] = ["builder", "programmer", "checker"];

export interface TeamsProps {
  readonly group: ClassGroup;
  readonly meeting: LessonDate;
  readonly planned: PlannedLesson | null;
}

export function Teams({ group, meeting, planned }: TeamsProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const [asks, setAsks] = useState(false);
  const names = new Map(group.pupils.map((p) => [p.id, p.name]));
  const away = new Set(meeting.absent);
  const sitting = { class: group.id, lesson: meeting.lesson, date: meeting.date };
  const rota = rotaOf(session.plan.value.value, group, meeting);
  const compare = compareNames(language);
  return (
    <section aria-labelledby="teams" class="teampart">
      <div class="teamhead">
        <h2 id="teams">
          {say("today.teams", {
            teams: planned?.teams.length ?? 0,
            here: group.pupils.length - away.size,
            pupils: group.pupils.length,
          })}
        </h2>
        <TextLink onPress={() => setAsks(!asks)}>{say(asks ? "today.awayDone" : "today.whoIsAway")}</TextLink>
      </div>
      {asks && (
        <fieldset class="away">
          <legend>{say("today.tickAway")}</legend>
          {[...group.pupils]
            .sort((a, b) => compare(a.name, b.name))
            .map(({ id, name }) => (
              <Tick
                key={id}
                label={<bdi>{name}</bdi>}
                ticked={away.has(id)}
                onChange={(on) => session.act({ kind: on ? "mark-absent" : "mark-present", sitting, pupils: [id] })}
              />
            ))}
        </fieldset>
      )}
      <LastAct about={(change) => change.kind === "mark-absent" || change.kind === "mark-present"} />
      {planned && planned.teams.length > 0 ? (
        <Table
          caption={say("today.teamsCaption")}
          class="teams"
          head={[{ says: say("today.team") }, ...roles.map((role) => ({ says: say(`today.${role}`) }))]}
        >
          {planned.teams.map((team) => {
            // Who is away is struck out under the role that was theirs.
            const before = rota?.find((t) => t.number === team.number);
            const gone = (before?.pupils ?? [])
              .filter((id) => away.has(id))
              .map((id) => ({ id, was: before?.roles.find((r) => r.pupil === id)?.role ?? "checker" }));
            const moved = team.pupils.filter((id) => planned.moved.includes(id));
            return (
              <tr key={team.number}>
                <th scope="row">{team.number}</th>
                {roles.map((role) => (
                  <td key={role} data-l={say(`today.${role}`)}>
                    {team.roles
                      .filter((r) => r.role === role)
                      .map(({ pupil }, i) => (
                        <span key={pupil}>
                          {i > 0 && ", "}
                          <bdi>{names.get(pupil) ?? pupil}</bdi>
                          {moved.includes(pupil) && <span class="note"> {say("today.moved")}</span>}
                          {pupil === team.presenter && <span class="note"> {say("today.presents")}</span>}
                        </span>
                      ))}
                    {gone.some(({ was }) => was === role) && (
                      <s class="note under">
                        {gone
                          .filter(({ was }) => was === role)
                          .map(({ id }, i) => (
                            <span key={id}>
                              {i > 0 && ", "}
                              <bdi>{names.get(id) ?? id}</bdi>
                            </span>
                          ))}
                      </s>
                    )}
                  </td>
                ))}
              </tr>
            );
          })}
        </Table>
      ) : (
        <p>{say("today.noTeams")}</p>
      )}
      {away.size > 0 && (
        <p class="note">
          {say("today.awayToday", {
            count: away.size,
            names: formatList(
              language,
              meeting.absent.map((id) => names.get(id) ?? id),
            ),
          })}
        </p>
      )}
    </section>
  );
}

/** The teams as the rota has them, before anybody was away. */
function rotaOf(
  plan: {
    readonly rotas: readonly {
      readonly class: string;
      readonly rota: {
        readonly lessons: readonly (readonly {
          readonly number: number;
          readonly pupils: readonly string[];
          readonly roles: readonly { readonly pupil: string; readonly role: Role }[];
        }[])[];
      };
    }[];
  } | null,
  group: ClassGroup,
  meeting: LessonDate,
) {
  const order = meetingsOf(group);
  const at = order.findIndex((l) => l.lesson === meeting.lesson && l.date === meeting.date);
  return plan?.rotas.find((r) => r.class === group.id)?.rota.lessons[at] ?? null;
}
