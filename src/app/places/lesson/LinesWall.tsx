// A lesson's program with its lines running, for the projector: large, without names, stepped by keys.
//
// It goes on from where the lesson page stands. The arrow key in the direction of reading is a step, the other one goes back,
// down goes to the next change of a pin and up to the one before, Escape goes back to the lesson.
// Does not know: how a walk is made.
import "./walk.css";
import { useEffect } from "preact/hooks";
import { lessonTitle } from "../../session/lessonTitle.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { address, goTo, linkTo, pageName } from "../../shell/router.ts";
import { Nowhere } from "../Nowhere.tsx";
import { Listing, Told, Ways } from "./Walk.tsx";
import { PinTable, SeenTable, SentText, ValueTable } from "./WalkTables.tsx";
import { walkingOf } from "./walking.ts";

export function LinesWall() {
  const session = useSession();
  const rest = address.value.rest;
  const id = rest.length >= 3 ? rest[1]! : (rest[0] ?? "");
  const shipped = session.shipped.value;
  const lesson = shipped?.lessons.get(id);
  if (shipped === null) return <main id="main" class="wall" />;
  return lesson === undefined ? <Nowhere /> : <Lines key={id} id={id} />;
}

function Lines({ id }: { readonly id: string }) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const lesson = session.shipped.value!.lessons.get(id)!;
  const walking = walkingOf(session, lesson, lesson.translatedPrograms?.get(language.tag) ?? lesson.program);
  const title = lessonTitle(session.shipped.value, id, language.tag);
  const home = linkTo("lesson", ...address.value.rest);
  useEffect(() => {
    pageName.value = title;
    walking.setOpen(true);
  }, [title, walking]);
  useEffect(() => {
    const forward = language.direction === "rtl" ? "ArrowLeft" : "ArrowRight";
    const back = language.direction === "rtl" ? "ArrowRight" : "ArrowLeft";
    const onKey = (event: KeyboardEvent): void => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.key === forward) walking.move({ to: "step" });
      else if (event.key === back) walking.move({ to: "back" });
      else if (event.key === "ArrowDown") walking.move({ to: "pinChange" });
      else if (event.key === "ArrowUp") walking.move({ to: "backToPinChange" });
      else if (event.key === "Escape") goTo(home);
      else return;
      event.preventDefault();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  });
  const answer = walking.answer.value;
  return (
    <main id="main" class="wall lineswall">
      <h1 tabIndex={-1}>
        <bdi>{title}</bdi>
      </h1>
      <div class="now">
        <Told walking={walking} />
        <div class="stands">
          <Listing walking={walking} around={3} folds={false} />
          {answer?.step && (
            <div class="holds">
              <PinTable lesson={lesson} step={answer.step} short />
              <SeenTable seen={answer.seen} />
              <ValueTable step={answer.step} short />
              <SentText step={answer.step} />
            </div>
          )}
        </div>
      </div>
      <footer>
        <Ways walking={walking} short />
        <a class="button" href={home}>
          {say("walkPage.backToLesson")}
        </a>
      </footer>
    </main>
  );
}
