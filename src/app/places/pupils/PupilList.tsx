// The pupils of a class: names that can be changed where they stand, marks, wishes for the teams.
//
// Two or more are chosen by ticks; the two wishes stand above the list and say what they do with those who are chosen.
// Does not know: how teams are made.
import { Fragment } from "preact";
import { useState } from "preact/hooks";
import { formatList, formatNumber } from "../../../language/index.ts";
import type { ClassGroup } from "../../../school/file/index.ts";
import { AddByName, Button, Row, Table, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { useAct } from "../cupboard/act.ts";
import { Entry } from "../cupboard/Entry.tsx";
import { Fold } from "../cupboard/Fold.tsx";
import { markColumns, pairsOf, wishesOf } from "./teams.ts";

export function PupilList({ group }: { readonly group: ClassGroup }) {
  const say = useSay();
  const act = useAct();
  const language = useSession().language.value;
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  /** Who was ticked last: the wishes stand under that row, where the eye is. */
  const [last, setLast] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const marks = markColumns(group.pupils);
  const picked = group.pupils.filter((pupil) => chosen.has(pupil.id));
  const names = formatList(
    language,
    picked.map((pupil) => pupil.name),
  );
  const chooseNone = () => {
    setChosen(new Set());
    setLast(null);
  };
  const wish = (kind: "apart" | "together") => {
    const ids = picked.map((pupil) => pupil.id);
    const wrong =
      kind === "together"
        ? act({ kind: "keep-together", class: group.id, pupils: ids })
        : pairsOf(ids).reduce<string | null>(
            (before, pupils) => before ?? act({ kind: "keep-apart", class: group.id, pupils }),
            null,
          );
    setProblem(wrong);
    if (wrong === null) chooseNone();
  };
  const wishes = (
    <>
      <p>
        <bdi role="status">{names}</bdi> {picked.length < 2 && say("pupilsPage.chooseOneMore")}
      </p>
      <div class="acts">
        {picked.length > 1 && (
          <>
            <Button onPress={() => wish("apart")}>{say("pupilsPage.keepApart")}</Button>
            <Button onPress={() => wish("together")}>{say("pupilsPage.keepTogether")}</Button>
          </>
        )}
        <TextLink onPress={chooseNone}>{say("pupilsPage.chooseNone")}</TextLink>
      </div>
      {problem && (
        <p class="problem" role="alert">
          <bdi>{problem}</bdi>
        </p>
      )}
    </>
  );
  return (
    <>
      <Row as="section" at={group.pupils.length}>
        <h2>{say("pupilsPage.listHeading")}</h2>
        <p class="note">{say("pupilsPage.chooseHint")}</p>
        {group.pupils.length > 0 && (
          <Fold says={say("cupboard.lookAndChange")}>
            <Table
              caption={say("pupilsPage.pupilsOf", { name: group.name })}
              phone="paragraphs"
              class="pupils"
              head={[
                { says: say("pupilsPage.chosen") },
                { says: say("pupilsPage.name") },
                ...marks.map((mark) => ({ says: <bdi>{mark}</bdi>, numeric: true })),
                { says: "" },
              ]}
            >
              {group.pupils.map((pupil) => (
                <Fragment key={pupil.id}>
                  <tr>
                    <td>
                      <label class="row tickrow">
                        <input
                          type="checkbox"
                          aria-label={say("pupilsPage.choosePupil", { name: pupil.name })}
                          checked={chosen.has(pupil.id)}
                          onChange={(event) => {
                            const next = new Set(chosen);
                            if (event.currentTarget.checked) next.add(pupil.id);
                            else next.delete(pupil.id);
                            setChosen(next);
                            setLast(event.currentTarget.checked ? pupil.id : ([...next].at(-1) ?? null));
                            setProblem(null);
                          }}
                        />
                      </label>
                    </td>
                    <th scope="row">
                      <Entry
                        label={say("pupilsPage.nameOf", { name: pupil.name })}
                        hideLabel
                        value={pupil.name}
                        onEnter={(name) => act({ kind: "rename-pupil", class: group.id, pupil: pupil.id, name })}
                      />
                    </th>
                    {marks.map((mark) => (
                      <td key={mark} class="num" data-l={mark}>
                        {Object.hasOwn(pupil.marks, mark) ? formatNumber(language, pupil.marks[mark] ?? 0) : "—"}
                      </td>
                    ))}
                    <td>
                      <TextLink
                        onPress={() => act({ kind: "remove-pupil", class: group.id, pupil: pupil.id })}
                        label={say("pupilsPage.removeOf", { name: pupil.name })}
                      >
                        {say("pupilsPage.remove")}
                      </TextLink>
                    </td>
                  </tr>
                  {pupil.id === last && (
                    <tr class="open">
                      <td colSpan={3 + marks.length}>{wishes}</td>
                    </tr>
                  )}
                </Fragment>
              ))}
            </Table>
          </Fold>
        )}
        <AddByName
          label={say("pupilsPage.newName")}
          button={say("pupilsPage.addPupil")}
          add={(name) => act({ kind: "add-pupil", class: group.id, name })}
        />
      </Row>
      <Wishes group={group} />
    </>
  );
}

function Wishes({ group }: { readonly group: ClassGroup }) {
  const say = useSay();
  const act = useAct();
  const language = useSession().language.value;
  const wishes = wishesOf(group);
  if (wishes.length === 0) return null;
  return (
    <Row as="section" at={wishes.length}>
      <h2>{say("pupilsPage.wishesHeading")}</h2>
      <ul>
        {wishes.map((wish) => {
          const names = formatList(
            language,
            wish.pupils.map((pupil) => pupil.name),
          );
          return (
            <li key={`${wish.kind} ${wish.ids.join()}`}>
              {say(wish.kind === "apart" ? "pupilsPage.areApart" : "pupilsPage.areTogether", { names })}{" "}
              <TextLink
                onPress={() => act({ kind: "drop-wish", class: group.id, pupils: wish.ids })}
                label={say("pupilsPage.dropOf", { names })}
              >
                {say("pupilsPage.drop")}
              </TextLink>
            </li>
          );
        })}
      </ul>
    </Row>
  );
}
