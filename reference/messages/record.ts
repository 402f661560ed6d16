// Judges slips in all programs with avr-g++ and keeps what it said first. Run by `npm run reference -- --record messages`.
//
// The programs are kept too, so that a lesson can change without spoiling the recording.
import { writeFileSync } from "node:fs";
import { recordingDate, sha256, toolVersion } from "../tools.ts";
import { basePrograms } from "./basePrograms.ts";
import { pupilSlips, withPupilSlip } from "./byHand.ts";
import { reported, reportingSeed, tuningSeeds } from "./draw.ts";
import { command, judgedText, type Message, openJudge } from "./judge.ts";
import { drawSlips, type Slip, withSlip } from "./slips.ts";

export interface Recorded {
  readonly program: string;
  readonly slip: Slip;
  /** SHA-256 of the text as the compiler got it. */
  readonly input: string;
  readonly output: string;
  readonly first: Message | null;
}

export interface Recording {
  readonly tool: string;
  readonly version: string;
  readonly command: string;
  readonly date: string;
  readonly tuningSeeds: readonly number[];
  readonly reportingSeed: number;
  readonly programs: Readonly<Record<string, string>>;
  readonly slips: readonly Recorded[];
  /** Of those in byHand.ts, in order. */
  readonly byHand: readonly { readonly input: string; readonly first: Message | null }[];
}

/** Writes recorded.json from the project's root. */
export async function record(): Promise<void> {
  const folder = "reference/messages";
  const programs = basePrograms("");
  const judge = openJudge("reference/programs/core");
  let slips: Recorded[] = [];
  let byHand: Recording["byHand"] = [];
  try {
    slips = drawSlips(programs, reportingSeed, reported).map(({ program, slip }) => {
      const text = withSlip(programs.get(program)!, slip);
      const first = judge.first(text);
      return { program, slip, input: sha256(judgedText(text)), output: sha256(JSON.stringify(first)), first };
    });
    byHand = pupilSlips.map((slip) => {
      const text = withPupilSlip(slip);
      return { input: sha256(judgedText(text)), first: judge.first(text) };
    });
  } finally {
    judge.close();
  }
  const recording: Recording = {
    tool: "avr-g++",
    version: toolVersion("avr-g++"),
    command,
    date: recordingDate,
    tuningSeeds,
    reportingSeed,
    programs: Object.fromEntries(programs),
    slips,
    byHand,
  };
  writeFileSync(`${folder}/recorded.json`, `${JSON.stringify(recording, null, 1)}\n`);
}
