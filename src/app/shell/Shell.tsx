// What every page has around it: the places above, what must be told at once, the place itself, and the title block at the foot.
//
// Does not know: what the places show.
import { useEffect, useLayoutEffect } from "preact/hooks";
import { say } from "../../language/index.ts";
import { placeOf } from "../places/places.ts";
import { sayAct } from "../session/sayAct.ts";
import type { Session } from "../session/session.ts";
import { SessionContext } from "../session/useSession.ts";
import { Bars } from "./Bars.tsx";
import { Guard } from "./Guard.tsx";
import { Head } from "./Head.tsx";
import { address, goTo, linkTo } from "./router.ts";
import { TitleBlock } from "./TitleBlock.tsx";

export function Shell({ session }: { readonly session: Session }) {
  const language = session.language.value;
  const { place, whole } = address.value;
  const hasClass = session.classFile.value !== null;
  useEffect(() => {
    document.documentElement.lang = language.intl.split("-u-")[0] ?? "en";
    document.documentElement.dir = language.direction;
  }, [language]);
  useEffect(() => {
    if (place === "") goTo(linkTo(hasClass ? "today" : "first"), true);
    else if (place === "demo") void session.openDemo().then(() => goTo(linkTo("today"), true));
  }, [place, hasClass]);
  const { fresh, value } = session.plan.value;
  // With the drawing and not after it: whoever sees an act must not read that the plan already knows of it.
  useLayoutEffect(() => {
    // Said on the root, so that a style or a test can tell an answer from one that is being worked out.
    document.documentElement.dataset.plan = fresh ? "fresh" : value === null ? "none" : "old";
  }, [fresh, value]);
  const found = placeOf(place, hasClass);
  const act = session.lastAct.value;
  const isWall = found?.bare === true;
  const Place = found?.Place;
  return (
    <SessionContext.Provider value={session}>
      {!isWall && (
        <button type="button" class="skip" onClick={() => document.querySelector<HTMLElement>("h1")?.focus()}>
          {say(language, "shell.skip")}
        </button>
      )}
      {!isWall && <Head />}
      {!isWall && <Bars />}
      {/* It stands before an act does, so that its words are read out when they come; once, though the act is shown in two places. */}
      <p class="unseen" role="status" id="act-said">
        {act && sayAct(language, act, session.shipped.value)}
      </p>
      <Guard key={whole} session={session}>
        {Place && <Place />}
      </Guard>
      {!isWall && <TitleBlock />}
    </SessionContext.Provider>
  );
}
