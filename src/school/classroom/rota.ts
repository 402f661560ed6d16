// Teams for a row of lessons: who sits with whom, who does what.
//
// Does not know: lessons, stock, how the teams were found.

export type Role = "builder" | "programmer" | "checker";

export interface Team {
  /** From 1. */
  readonly number: number;
  readonly pupils: readonly string[];
  readonly roles: readonly { readonly pupil: string; readonly role: Role }[];
  /** Who shows the others what the team made. */
  readonly presenter?: string;
}

export interface Rota {
  /** lessons[l] are the teams of lesson l. */
  readonly lessons: readonly (readonly Team[])[];
  /**
   * No plan for this number of pupils and these wishes can go on longer without a pair meeting twice (meetingBound.ts); the
   * number of lessons asked for where no pair can ever meet twice.
   */
  readonly bound: number;
  /** How many lessons from the first on have no pair twice, pairs that must stay together not counted. */
  readonly fresh: number;
  /** Pairs that meet more than once in all lessons together, counted with repetition, forced pairs left out. */
  readonly repeated: number;
  /** Wishes that could not be kept, by code. */
  readonly broken: readonly {
    readonly code: "apart" | "together";
    readonly pupils: readonly string[];
    /** Index into `lessons`. */
    readonly lesson: number;
  }[];
  /** How far the teams' means lie from the class's, root mean square, in standard deviations; only with a wish for balance. */
  readonly spread?: number;
}

/** Teams of one day after absences. */
export interface DayTeams {
  readonly teams: readonly Team[];
  /** Pupils who sit in another team than the rota said. */
  readonly moved: readonly string[];
}
