// What texts a language must have: one for every code that any room can produce.
//
// The rooms' own unions of codes are the keys, so a code without a text does not compile, and neither does a text that no
// code asks for. Only types are taken from the rooms. locales/en.json is read through this type; other languages too.
// Does not know: the words themselves, how they are filled in.
import en from "../../locales/en.json" with { type: "json" };
import type { DocumentProblem } from "../base/index.ts";
import type { Activity, LessonProblem, SectionId } from "../bench/lesson/index.ts";
import type { ExplainCode, ProgramProblem } from "../bench/program/index.ts";
import type {
  DoubtCode,
  Hazard,
  HazardCode,
  LoudnessWord,
  ReadinessWord,
  RehearsalProblemCode,
  SeenWord,
  SupplyReason,
  TouchClass,
} from "../bench/rehearsal/index.ts";
import type { SetupCause, SetupMessage } from "../bench/setup/index.ts";
import type { AssumedCode, ChangeEffect, ChangeKind, ChangesProblem } from "../school/changes/index.ts";
import type { Role, Rota } from "../school/classroom/index.ts";
import type { EquipmentCode } from "../school/equipment/index.ts";
import type { FileProblem } from "../school/file/index.ts";
import type { Purchase, PurchaseLine } from "../school/order/index.ts";
import type { PreparationCode, ReasonCode, RemedyCode } from "../school/readiness/index.ts";

/** A problem has two texts: what is wrong, and what to do about it. */
export interface ProblemText {
  readonly says: string;
  readonly try: string;
}
export type Text = string | ProblemText;

type Texts<Code extends string> = { readonly [C in Code]: string };
/** Problems of files carry those of base too, whose texts stand in base alone. */
type Problems<Code extends string> = { readonly [C in Exclude<Code, `document.${string}`>]: ProblemText };

/** Texts by room, then by family. A family's name is unique; the key of a text is "family.code", of a problem its code. */
export interface Catalogue {
  readonly language: { readonly tag: string; readonly intl: string; readonly name: string; readonly direction: string };
  readonly base: {
    readonly problems: { readonly [C in DocumentProblem["code"]]: ProblemText };
    readonly shape: typeof en.base.shape;
    readonly quote: Texts<"text">;
    /** Numbers in a row: "7 to 10". */
    readonly run: Texts<"of">;
  };
  readonly program: {
    readonly problems: Problems<ProgramProblem["code"]>;
    /** What is wrong behind the compiler's first message; where to look; how to mend it. */
    readonly mistakeSays: Texts<ExplainCode>;
    readonly mistakeLook: Texts<ExplainCode>;
    readonly mistakeTry: Texts<ExplainCode>;
  };
  readonly setup: {
    /** What the up-loader's message means; what may be behind it; how that is checked. */
    readonly setupMessage: Texts<SetupMessage>;
    readonly setupCause: Texts<SetupCause>;
    readonly setupCheck: Texts<SetupCause>;
  };
  /** Kinds, colours, states and cautions are data of the catalogue of parts, not unions: a test compares them with it. */
  readonly parts: typeof en.parts;
  readonly lesson: {
    readonly problems: Problems<LessonProblem["code"]>;
    readonly activity: Texts<Activity>;
    readonly section: Texts<SectionId>;
    /** Tools are free text in a lesson; these have a word in every language. */
    readonly tool: typeof en.lesson.tool;
  };
  readonly rehearsal: {
    readonly problems: Problems<RehearsalProblemCode>;
    readonly verdict: Texts<ReadinessWord>;
    readonly loudness: Texts<LoudnessWord>;
    readonly seen: Texts<Exclude<SeenWord, `${number} degrees`> | "degrees">;
    readonly hazard: Texts<HazardCode>;
    /** What to do now, in words for somebody who knows no electronics. */
    readonly hazardTry: Texts<HazardCode>;
    /** What nobody can foresee, and what to do about it. */
    readonly doubt: Texts<DoubtCode>;
    readonly doubtTry: Texts<DoubtCode>;
    /** What a finger makes of a part's surface. */
    readonly touch: Texts<TouchClass>;
    readonly severity: Texts<Hazard["severity"]>;
    readonly supplyWhy: Texts<SupplyReason>;
  };
  readonly file: { readonly problems: Problems<FileProblem["code"]> };
  readonly classroom: {
    readonly role: Texts<Role>;
    /** One letter for narrow tables. */
    readonly roleLetter: Texts<Role>;
    readonly brokenWish: Texts<Rota["broken"][number]["code"]>;
  };
  /** Its codes carry the room's name already. */
  readonly equipment: { readonly codes: Texts<EquipmentCode> };
  readonly order: {
    readonly orderReason: Texts<PurchaseLine["why"][number]["reason"]>;
    readonly notHeld: Texts<Purchase["notHeld"][number]["reason"]>;
  };
  readonly readiness: {
    readonly reason: Texts<ReasonCode>;
    readonly remedy: Texts<RemedyCode>;
    readonly preparation: Texts<PreparationCode>;
    /** A sitting's id in words. */
    readonly sitting: Texts<"of">;
  };
  readonly changes: {
    readonly problems: Problems<ChangesProblem["code"]>;
    /** What a change brought with it. */
    readonly effect: Texts<ChangeEffect["code"]>;
    /** What a new class takes for granted until somebody says better. */
    readonly assumedFact: Texts<AssumedCode>;
  };
  /** Words of the commands and of the papers: their own keys, which tests look for in the code. */
  readonly cli: typeof en.cli;
  /** Words of the page. */
  readonly app: typeof en.app & { readonly change: Texts<ChangeKind> };
  readonly papers: typeof en.papers & { readonly activityDoes: Partial<Texts<Activity>> };
}

/** A text that the catalogue holds and no code asks for. */
type Unused<Have, Want> = {
  [Room in keyof Have]: Room extends keyof Want
    ? {
        [F in keyof Have[Room]]: F extends keyof Want[Room] ? Exclude<keyof Have[Room][F], keyof Want[Room][F]> : F;
      }[keyof Have[Room]]
    : Room;
}[keyof Have];

/** Both directions at once: every wanted text is there, and nothing else. */
export const english: Catalogue = en;
export const noTextIsUnused: [Unused<Omit<typeof en, "language">, Catalogue>] extends [never]
  ? true
  : Unused<Omit<typeof en, "language">, Catalogue> = true;

/** A problem's code. */
export type ProblemCode = {
  [Room in keyof Catalogue]: Catalogue[Room] extends { readonly problems: infer P } ? keyof P : never;
}[keyof Catalogue];

/** The key of any other text: "family.code", or the code alone where it stands under "codes". */
export type TextKey =
  | {
      [Room in Exclude<keyof Catalogue, "language">]: {
        [F in Exclude<keyof Catalogue[Room], "problems" | "codes">]: `${F & string}.${keyof Catalogue[Room][F] & string}`;
      }[Exclude<keyof Catalogue[Room], "problems" | "codes">];
    }[Exclude<keyof Catalogue, "language">]
  | keyof Catalogue["equipment"]["codes"];
