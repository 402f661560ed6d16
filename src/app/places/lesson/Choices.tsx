// Other values and other supplies, each with its verdict and why, and one tap to take it; how far each value may drift.
//
// A taken value or supply is a decision of the class: the plan follows it, and it can be taken back.
// Does not know: how they were rehearsed.
import type { Lesson } from "../../../bench/lesson/index.ts";
import type { Margin, RehearsalResult, SupplyResult, VariantResult } from "../../../bench/rehearsal/index.ts";
import { formatAmount, formatList, itemName, type Language, say as sayIn, sayUnchecked } from "../../../language/index.ts";
import type { Decision } from "../../../school/file/index.ts";
import { LastAct, Table, TextLink, Verdict } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { seenWord } from "./lessonWords.ts";

export interface ChoicesProps {
  readonly lesson: Lesson;
  readonly result: RehearsalResult;
}

/** What the class decided about a lesson, by what it is about. */
function useDecisions(lesson: string): {
  readonly of: (kind: "substitute" | "supply", item: string, part?: string) => Decision | undefined;
  readonly isOpen: boolean;
} {
  const classFile = useSession().classFile.value;
  return {
    isOpen: classFile !== null,
    of: (kind, item, part) =>
      classFile?.decisions.find(
        (d) => d.kind === kind && d.lesson === lesson && d.item === item && (d.kind !== "substitute" || d.part === part),
      ),
  };
}

interface TakeProps {
  readonly decision: Decision;
  readonly taken: Decision | undefined;
  readonly name: string;
}

function Take({ decision, taken, name }: TakeProps) {
  const session = useSession();
  const say = useSay();
  return taken ? (
    <>
      <b>{say("lessonPage.taken")}</b>{" "}
      <TextLink label={say("lessonPage.takeBackOf", { name })} onPress={() => session.act({ kind: "undecide", decision: taken })}>
        {say("lessonPage.takeBack")}
      </TextLink>
    </>
  ) : (
    <TextLink label={say("lessonPage.takeOf", { name })} onPress={() => session.act({ kind: "decide", decision })}>
      {say("lessonPage.take")}
    </TextLink>
  );
}

export function Values({ lesson, result }: ChoicesProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const decisions = useDecisions(lesson.id);
  const values = result.variants.flatMap((variant) => {
    const { what } = variant;
    return what.kind === "value" && what.item !== lesson.parts.get(what.part)?.item ? [{ what, variant }] : [];
  });
  return (
    <>
      {values.length === 0 ? (
        <p>{say("lessonPage.noValues")}</p>
      ) : (
        <Table
          caption={say("lessonPage.values")}
          phone="paragraphs"
          class="values"
          head={[
            { says: say("lessonPage.part") },
            { says: say("lessonPage.inPlace") },
            { says: say("lessonPage.verdict") },
            { says: "" },
          ]}
        >
          {values.map(({ what, variant }) => (
            <tr key={`${what.part} ${what.item}`}>
              <th scope="row">{what.part}</th>
              <td>{itemName(language, what.item)}</td>
              <td>
                <Verdict word={variant.verdict} calm />
                {variant.verdict !== "ready" && <span class="note under">{whyNot(language, lesson, variant)}</span>}
              </td>
              <td>
                {decisions.isOpen && (variant.verdict === "ready" || decisions.of("substitute", what.item, what.part)) && (
                  <Take
                    name={`${what.part}: ${itemName(language, what.item)}`}
                    taken={decisions.of("substitute", what.item, what.part)}
                    decision={{
                      kind: "substitute",
                      lesson: lesson.id,
                      part: what.part,
                      item: what.item,
                      date: session.today.value,
                    }}
                  />
                )}
              </td>
            </tr>
          ))}
        </Table>
      )}
      <LastAct about={(c) => (c.kind === "decide" || c.kind === "undecide") && c.decision.kind === "substitute"} />
    </>
  );
}

/** How many there are of each. */
function grouped<Thing>(things: readonly Thing[], by: (thing: Thing) => string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const thing of things) counts.set(by(thing), (counts.get(by(thing)) ?? 0) + 1);
  return counts;
}

/** Why a variant is not ready, in one sentence: what it stresses first, else what a person would not see. */
function whyNot(language: Language, lesson: Lesson, { hazards, failedChecks }: VariantResult): string | null {
  const worst = hazards.find((h) => h.severity === "unsafe") ?? (failedChecks.length === 0 ? hazards[0] : undefined);
  if (worst) return sayUnchecked(language, `hazard.${worst.code}`, { ...worst });
  const check = lesson.checks[failedChecks[0] ?? -1];
  if (check === undefined) return null;
  const { when, expectation } = check;
  const seconds = when.kind === "throughout" ? when.from : when.at;
  if (expectation.kind === "text")
    return sayIn(language, "lessonPage.wouldNotWrite", { seconds, text: expectation.is ?? expectation.contains ?? "" });
  if (expectation.kind !== "part") return sayIn(language, "lessonPage.wouldNotPass", { seconds });
  const { part, seen, degrees, hertz } = expectation;
  const expected =
    seen !== null
      ? seenWord(language, seen)
      : degrees !== undefined
        ? seenWord(language, `${degrees} degrees`)
        : hertz === undefined
          ? null
          : formatAmount(language, hertz, "Hz");
  return expected === null
    ? sayIn(language, "lessonPage.wouldNotPass", { seconds })
    : sayIn(language, "lessonPage.wouldNotBe", { seconds, part, expected });
}

/** What parts that are not as printed do to the lesson, and how far each value may drift before something fails or is stressed. */
export function Drift({ lesson, result }: ChoicesProps) {
  const say = useSay();
  const language = useSession().language.value;
  const corners = result.variants.filter((v) => v.what.kind === "corner");
  const failing = corners.filter((v) => v.verdict !== "ready");
  const whyOf = (variant: VariantResult) =>
    (variant.verdict === "needs another supply" ? null : whyNot(language, lesson, variant)) ?? say(`verdict.${variant.verdict}`);
  return (
    <>
      {corners.length > 0 && <p>{say("lessonPage.corners", { count: corners.length, failing: failing.length })}</p>}
      {failing.length > 0 && (
        <ul class="dots">
          {[...grouped(failing, whyOf)].map(([why, count]) => (
            <li key={why}>{say("lessonPage.cornersWhy", { count, why })}</li>
          ))}
        </ul>
      )}
      {result.margins.length > 0 && (
        <>
          <h3>{say("lessonPage.margins")}</h3>
          <ul class="dots margins">
            {result.margins.map((margin) => (
              <li key={`${margin.part} ${margin.parameter}`}>{marginWords(language, margin)}</li>
            ))}
          </ul>
          <p class="note">{say("lessonPage.marginsNote")}</p>
        </>
      )}
    </>
  );
}

/** Shares beyond which nothing was tried (bench/rehearsal). */
const [tenth, tenfold] = [0.1, 10];
/** A margin tells where it begins to fail, to 1 %: inside of that it works. */
const edge = 1.01;

function marginWords(language: Language, { part, is, unit, down, up }: Margin): string {
  const key =
    down === null && up === null ? "marginAny" : down === null ? "marginUpTo" : up === null ? "marginFrom" : "marginBetween";
  // Two figures, to the safe side: nobody buys 149.6 Ω.
  const least = roundedTo(is * (down === null ? tenth : down * edge), Math.ceil);
  const most = roundedTo(is * (up === null ? tenfold : up / edge), Math.floor);
  return sayUnchecked(language, `lessonPage.${key}`, { part, is, least, most, unit });
}

function roundedTo(value: number, round: (value: number) => number): number {
  if (value <= 0) return 0;
  const power = 10 ** (Math.floor(Math.log10(value)) - 1);
  // What is round already stays, whatever the last bit of a double says.
  return Number((round(Number((value / power).toPrecision(9))) * power).toPrecision(2));
}

export function Supplies({ lesson, result }: ChoicesProps) {
  const session = useSession();
  const say = useSay();
  const language = session.language.value;
  const decisions = useDecisions(lesson.id);
  const rank = ["fits", "undetermined", "does not fit"];
  const supplies = [...result.supplies].sort((a, b) => rank.indexOf(a.fits) - rank.indexOf(b.fits));
  const fitting = supplies.filter((s) => s.fits === "fits").length;
  return (
    <>
      <p>{say("lessonPage.suppliesFit", { count: fitting, of: supplies.length })}</p>
      <Table
        caption={say("lessonPage.supplies")}
        phone="paragraphs"
        class="supplies"
        head={[{ says: say("lessonPage.supply") }, { says: say("lessonPage.doesItFit") }, { says: "" }]}
      >
        {supplies.map((told) => (
          <tr key={told.supply}>
            <th scope="row">{itemName(language, told.supply)}</th>
            <td>
              <Verdict
                word={
                  told.fits === "fits" ? "ready" : told.fits === "undetermined" ? "not rehearsed yet" : "needs another supply"
                }
                calm
              >
                {say(`lessonPage.${told.fits}`)}
              </Verdict>
              {supplyWords(language, told).map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </td>
            <td>
              {decisions.isOpen && (told.fits === "fits" || decisions.of("supply", told.supply)) && (
                <Take
                  name={itemName(language, told.supply)}
                  taken={decisions.of("supply", told.supply)}
                  decision={{ kind: "supply", lesson: lesson.id, item: told.supply, date: session.today.value }}
                />
              )}
            </td>
          </tr>
        ))}
      </Table>
      <LastAct about={(c) => (c.kind === "decide" || c.kind === "undecide") && c.decision.kind === "supply"} />
    </>
  );
}

/** Why it fits or not; where it fits, how long it lasts; what gets warm. One idea a sentence. */
function supplyWords(language: Language, told: SupplyResult): readonly string[] {
  const say = (key: string, data: Readonly<Record<string, unknown>> = {}) => sayUnchecked(language, `lessonPage.${key}`, data);
  const why = formatList(
    language,
    told.why.map((reason) => sayUnchecked(language, `supplyWhy.${reason}`)),
  );
  const doesFit = told.fits === "fits";
  const first = doesFit
    ? say("gives", { peakAmps: told.peakAmps })
    : say(told.fits === "undetermined" ? "nobodyCanSay" : "notBecause", { why });
  const sags = told.why.includes("sags");
  const { hottest, hours, lessons, cableMetres } = told;
  return [
    first,
    ...(sags ? [say("fallsTo", { leastVolts: told.leastVolts, ms: told.leastVoltsMs })] : []),
    ...(doesFit && cableMetres !== null
      ? [sayUnchecked(language, `rehearsing.${cableKey(cableMetres)}`, { cableMetres: Math.floor(cableMetres * 10) / 10 })]
      : []),
    ...(doesFit ? [hours === null ? say("asLongAsMains") : sayUnchecked(language, "rehearsing.lasts", { hours, lessons })] : []),
    ...(hottest === null || (!doesFit && hottest.touch === "cold")
      ? []
      : [
          sayUnchecked(language, "rehearsing.hottest", {
            part: hottest.part,
            celsius: Math.round(hottest.celsius),
            touch: sayUnchecked(language, `touch.${hottest.touch}`),
          }),
        ]),
  ];
}

/** m: none that is sold is longer than the first, or of use below the second (bench/rehearsal). */
const cableKey = (metres: number) => (metres >= 5 ? "cableAny" : metres < 0.3 ? "cableNone" : "cable");
