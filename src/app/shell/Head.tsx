// The head of a page: the six places as words, and at its end the class, with a chooser where there are several.
//
// Does not know: what the places show.
import { useSay, useSession } from "../session/useSession.ts";
import { address, linkTo } from "./router.ts";

export const mainPlaces = ["today", "course", "cupboard", "order", "pupils", "print"] as const;

/** A lesson is part of the course, a question part of what stands before any class. */
const under: Readonly<Record<string, string>> = { lesson: "course" };

export function Head() {
  const session = useSession();
  const say = useSay();
  const here = under[address.value.place] ?? address.value.place;
  const classFile = session.classFile.value;
  const group = session.group.value;
  return (
    <header class="head">
      {classFile !== null && (
        <nav aria-label={say("shell.places")}>
          {mainPlaces.map((place) => (
            <a key={place} href={linkTo(place)} aria-current={place === here ? "page" : undefined}>
              {say(`shell.${place}`)}
            </a>
          ))}
        </nav>
      )}
      <div class="who">
        {classFile !== null && group !== null && classFile.classes.length > 1 ? (
          <label>
            <span class="unseen">{say("shell.chooseClass")}</span>
            <select value={group.id} onChange={(event) => session.chooseGroup(event.currentTarget.value)}>
              {classFile.classes.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        ) : (
          group !== null && <bdi>{group.name}</bdi>
        )}
        {session.isDemo.value && <span>{say("shell.invented")}</span>}
        <a class="link" href={linkTo("settings")} aria-current={here === "settings" ? "page" : undefined}>
          {say("shell.settings")}
        </a>
      </div>
    </header>
  );
}
