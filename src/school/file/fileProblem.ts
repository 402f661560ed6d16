// What can be wrong with a class file, a kit or a table from a spreadsheet, as codes with data.
//
// Each carries its place, what was found and, where it makes sense, what was expected or the nearest name. What is wrong with
// the notation or the shape itself is found by base (DocumentProblem).
// Does not know: any language.
import type { DocumentProblem, Place, ProblemBase } from "../../base/index.ts";

type At<Code extends string, Data extends object = object> = ProblemBase<Code, { readonly place: Place } & Data>;

/** What an id belongs to. */
export type IdOwner = "class" | "pupil" | "kit" | "supplier" | "offer" | "computer" | "board" | "cable";

export type FileProblem = DocumentProblem | FormatProblem | ClassProblem | StockProblem | CsvProblem;

type FormatProblem =
  /** A newer Benchday wrote it. Nothing of it was read. */
  | At<"file.newerFormat", { readonly found: string; readonly expected: string }>
  /** Not this kind of file: a lesson, another program's file. */
  | At<"file.otherFormat", { readonly found: string; readonly expected: string }>
  /** Characters that only change how a text looks were left out; the text is otherwise as it was. */
  | At<"file.charactersLeftOut", { readonly found: string; readonly character: string }>
  | At<"file.sameId", { readonly what: IdOwner; readonly found: string; readonly firstLine: number }>
  | At<"file.noSuchDay", { readonly found: string }>
  | At<"file.tooFineSum", { readonly found: string; readonly currency: string; readonly decimals: number }>
  | At<"file.unknownCurrency", { readonly found: string; readonly near: string | null }>
  | At<"file.timesBackwards", { readonly from: string; readonly to: string }>;

type ClassProblem =
  | At<"file.noClasses">
  /** A class without pupils: paste or read a list of names. */
  | At<"file.noPupils", { readonly class: string }>
  | At<"file.manyPupils", { readonly class: string; readonly found: number; readonly most: number }>
  | At<"file.teamSize", { readonly class: string; readonly found: number; readonly least: number; readonly most: number }>
  | At<"file.sameName", { readonly class: string; readonly found: string; readonly firstLine: number }>
  | At<
      "file.unknownPupil",
      {
        readonly class: string;
        readonly where: "apart" | "together" | "absent";
        readonly found: string;
        readonly near: string | null;
      }
    >
  | At<"file.pairWithItself", { readonly class: string; readonly found: string }>
  /** `together` (line `otherLine`) joins two pupils whom `apart` parts. */
  | At<"file.apartAndTogether", { readonly class: string; readonly pupils: readonly string[]; readonly otherLine: number }>
  | At<"file.togetherTooMany", { readonly class: string; readonly found: number; readonly most: number }>
  | At<"file.unknownMark", { readonly class: string; readonly found: string; readonly near: string | null }>
  | At<"file.sameSitting", { readonly class: string; readonly lesson: string; readonly date: string; readonly firstLine: number }>
  | At<
      "file.lessonsOverlap",
      {
        readonly class: string;
        readonly date: string;
        readonly lesson: string;
        readonly start: string;
        readonly other: string;
        readonly otherStart: string;
        readonly otherLine: number;
      }
    >
  | At<"file.unknownLesson", { readonly found: string; readonly near: string | null }>
  | At<"file.unknownClass", { readonly found: string; readonly near: string | null }>;

type StockProblem =
  | At<"file.unknownItem", { readonly found: string; readonly near: string | null }>
  | At<"file.unknownKit", { readonly found: string; readonly near: string | null }>
  | At<"file.notASupply", { readonly found: string; readonly near: string | null }>
  /** The same item under two names: "resistor 4k7" and "resistor 4.7k". */
  | At<"file.sameItem", { readonly item: string; readonly firstLine: number }>
  | At<"file.noChange", { readonly item: string }>
  /** "lost" with more instead of fewer. */
  | At<"file.wrongSign", { readonly item: string; readonly why: string; readonly found: number; readonly expected: "+" | "-" }>
  /** More went than was there on that day. */
  | At<
      "file.takesTooMany",
      {
        readonly item: string;
        readonly date: string;
        readonly found: number;
        readonly there: number;
        readonly near: string | null;
      }
    >
  /** An offer that holds neither an item nor a kit, or both. */
  | At<"file.offerHolds", { readonly offer: string; readonly found: "nothing" | "both" }>
  | At<"file.offerWithoutCount", { readonly offer: string; readonly item: string }>
  | At<"file.kitWithCount", { readonly offer: string; readonly kit: string }>
  | At<"file.noPorts", { readonly computer: string }>
  | At<"file.moreBackThanOut", { readonly item: string; readonly out: number; readonly back: number; readonly broken: number }>;

/** In tables the column of a place is the number of the cell, 1 for the first. */
type CsvProblem =
  | At<"file.csvEmpty">
  | At<"file.csvTooLong", { readonly found: number; readonly most: number }>
  /** A quote that is never closed: everything after it would be one cell. */
  | At<"file.csvQuoteOpen">
  /** A closing quote is not followed by a separator. */
  | At<"file.csvQuoteStray">
  /** The first row names none of the columns that are looked for. */
  | At<"file.csvNoHeader", { readonly found: string; readonly expected: string }>
  | At<"file.csvMissingColumn", { readonly expected: string; readonly found: string }>
  | At<"file.csvColumnTwice", { readonly found: string; readonly firstColumn: number }>
  /** A header that was taken for another word. */
  | At<"file.csvColumnGuessed", { readonly found: string; readonly understood: string }>
  /** An item in other words than ours: "220 Ω resistor". */
  | At<"file.csvItemGuessed", { readonly found: string; readonly understood: string }>
  | At<"file.csvColumnIgnored", { readonly found: string }>
  | At<"file.csvBadId", { readonly found: string }>
  | At<"file.csvSameName", { readonly found: string; readonly firstLine: number }>
  | At<"file.csvEmptyCell", { readonly column: string }>
  /** A row with more cells than the header has, often a comma inside a text or a number without quotes. */
  | At<"file.csvTooManyCells", { readonly found: number; readonly expected: number }>
  | At<"file.csvNotANumber", { readonly column: string; readonly found: string }>
  | At<"file.csvNotACount", { readonly column: string; readonly found: string }>
  /** "1.000" may be one or a thousand. */
  | At<"file.csvUnclearNumber", { readonly column: string; readonly found: string }>
  /** Names written "family, given" without quotes were put together again. */
  | At<"file.csvNamesJoined", { readonly found: string }>
  /** A line of an order that names no offer of the class file. */
  | At<"file.csvUnknownOffer", { readonly found: string; readonly near: string | null }>;
