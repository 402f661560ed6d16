// Pupils: who is in a class, who should or should not sit together, and the teams that follow for each lesson.
//
// Does not know: how teams are made, lessons.
import { useEffect, useState } from "preact/hooks";
import { teamSizes } from "../../../school/file/index.ts";
import { AddByName, Choice, LastAct, Nothing, Page, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "../cupboard/act.ts";
import { Entry } from "../cupboard/Entry.tsx";
import { TableBox } from "../cupboard/TableBox.tsx";
import { newClassId } from "../newId.ts";
import { LessonTeams } from "./LessonTeams.tsx";
import { PupilList } from "./PupilList.tsx";
import { markColumns } from "./teams.ts";

export function Pupils() {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const group = session.group.value;
  const [listOpen, setListOpen] = useState(false);
  const [refused, setRefused] = useState<{ readonly of: "size" | "balance"; readonly says: string | null } | null>(null);
  if (group === null) return null;
  const marks = markColumns(group.pupils);
  const roster = (
    <TableBox
      label={say("pupilsPage.listLabel")}
      hint={say("pupilsPage.listHint")}
      read={(name, bytes) => session.engine.readRoster(name, bytes)}
      heads={[say("pupilsPage.name"), say("pupilsPage.marks")]}
      cells={(pupil) => [
        pupil.name,
        Object.entries(pupil.marks)
          .map(([mark, value]) => `${mark} ${value}`)
          .join(", ") || "—",
      ]}
      ways={[
        {
          label: say(group.pupils.length === 0 ? "pupilsPage.takeAll" : "pupilsPage.takeInstead"),
          take: (pupils) => act({ kind: "take-roster", class: group.id, pupils }),
        },
      ]}
      onClose={() => setListOpen(false)}
    />
  );
  return (
    <Page
      class="lists"
      name={say("pupilsPage.heading")}
      heading={say("pupilsPage.headingOf", { name: group.name })}
      under={
        <>
          <p>{say("pupilsPage.count", { count: group.pupils.length, size: group.teamSize })}</p>
          <div class="acts">
            <TextLink onPress={() => setListOpen(!listOpen)} pressed={listOpen}>
              {say("pupilsPage.pasteList")}
            </TextLink>
            <TextLink onPress={() => void saveCsv()}>{say("pupilsPage.saveCsv")}</TextLink>
            <TextLink to="#/print/rota">{say("pupilsPage.toPrint")}</TextLink>
          </div>
          <LastAct about={isAboutPupils} />
          {listOpen && roster}
        </>
      }
    >
      {group.pupils.length === 0 && (
        <Row at="—">
          <Nothing
            says={say("pupilsPage.isEmpty")}
            will={say("pupilsPage.willStand")}
            first={{ label: say("pupilsPage.pasteList"), onPress: () => setListOpen(true) }}
          />
        </Row>
      )}
      <PupilList key={group.id} group={group} />
      <Row as="section">
        <h2>{say("pupilsPage.sizeHeading")}</h2>
        <Choice
          label={say("pupilsPage.size")}
          hideLabel
          value={String(group.teamSize)}
          options={sizes.map((size) => ({ value: String(size), label: say("pupilsPage.sizeOf", { count: size }) }))}
          problem={refused?.of === "size" ? refused.says : null}
          onChange={(size) =>
            setRefused({ of: "size", says: act({ kind: "set-team-size", class: group.id, teamSize: Number(size) }) })
          }
        />
        {marks.length > 0 && (
          <Choice
            label={say("pupilsPage.balance")}
            hint={say("pupilsPage.balanceHint")}
            as="marks"
            value={group.balance ?? ""}
            options={[{ value: "", label: say("pupilsPage.noBalance") }, ...marks.map((mark) => ({ value: mark, label: mark }))]}
            problem={refused?.of === "balance" ? refused.says : null}
            onChange={(mark) =>
              setRefused({
                of: "balance",
                says: act({ kind: "set-balance", class: group.id, balance: mark === "" ? null : mark }),
              })
            }
          />
        )}
      </Row>
      <LessonTeams key={`teams ${group.id}`} group={group} />
      <Classes />
    </Page>
  );

  async function saveCsv(): Promise<void> {
    const school = session.school.value;
    if (school === null || group === null) return;
    const text = await session.run(() => session.engine.write("roster", school, { class: group.id }));
    await session.saveFile(say("pupilsPage.csvName", { name: group.id }), text, "text/csv");
  }
}

const sizes = Array.from({ length: teamSizes.most - teamSizes.least + 1 }, (_, n) => teamSizes.least + n);

/** All classes of the file: which one is shown, names, one more, one fewer. */
function Classes() {
  const say = useSay();
  const act = useAct();
  const session = useSession();
  const classes = session.classFile.value?.classes ?? [];
  const shown = session.group.value?.id;
  const [added, setAdded] = useState<string | null>(null);
  // A class is shown as soon as it is there.
  useEffect(() => {
    if (added === null || !classes.some((group) => group.id === added)) return;
    session.chooseGroup(added);
    setAdded(null);
  }, [added, classes]);
  return (
    <Row as="section" at={classes.length}>
      <h2>{say("pupilsPage.classesHeading")}</h2>
      {classes.map((group) => (
        <div class="acts one-class" key={group.id}>
          <Entry
            label={say("pupilsPage.classNameOf", { name: group.name })}
            width="middle"
            value={group.name}
            onEnter={(text) => act({ kind: "rename-class", class: group.id, name: text })}
          />
          <span class="note">{say("pupilsPage.pupilsIn", { count: group.pupils.length })}</span>
          {group.id === shown ? (
            <span>{say("pupilsPage.isShown")}</span>
          ) : (
            <TextLink
              onPress={() => {
                session.chooseGroup(group.id);
                scrollTo(0, 0);
              }}
              label={say("pupilsPage.showOf", { name: group.name })}
            >
              {say("pupilsPage.show")}
            </TextLink>
          )}
          {classes.length > 1 && (
            <TextLink
              onPress={() => act({ kind: "remove-class", class: group.id })}
              label={say("pupilsPage.removeOf", { name: group.name })}
            >
              {say("pupilsPage.remove")}
            </TextLink>
          )}
        </div>
      ))}
      <AddByName
        label={say("pupilsPage.newClass")}
        button={say("pupilsPage.addClass")}
        add={(name) => {
          const id = newClassId(
            name,
            classes.map((group) => group.id),
          );
          const wrong = act({ kind: "add-class", id, name, teamSize: session.group.value?.teamSize ?? usualTeam });
          if (wrong === null) setAdded(id);
          return wrong;
        }}
      />
    </Row>
  );
}

/** Builder, programmer, checker. */
const usualTeam = 3;

const kindsHere: ReadonlySet<string> = new Set([
  ...["add-class", "rename-class", "remove-class", "set-team-size", "set-balance", "take-roster", "add-pupil", "rename-pupil"],
  ...["remove-pupil", "keep-apart", "keep-together", "drop-wish", "mark-absent", "mark-present"],
]);
const isAboutPupils = (change: { readonly kind: string }) => kindsHere.has(change.kind);
