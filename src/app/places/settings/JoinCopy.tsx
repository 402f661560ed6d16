// A copy of the class that was changed on another laptop, joined with the one here: what comes is shown, clashes are chosen.
//
// The two are joined from the state in which they went apart, which is looked for among the states kept here. Joining is an act
// like others: it can be undone, and the state from before stays among those kept here.
// Does not know: how two copies are joined, how a clash is settled.
import { useSignal } from "@preact/signals";
import { sayProblem, sayUnchecked } from "../../../language/index.ts";
import { type Clash, type Merged, mergeFiles } from "../../../school/changes/index.ts";
import { type ClassFile, writeClassFile } from "../../../school/file/index.ts";
import { Button, Choice, LastAct, Message, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { OpenFile } from "../first/OpenFile.tsx";
import { commonBase } from "./commonBase.ts";
import { FilesSideBySide } from "./FilesSideBySide.tsx";
import { settleClash } from "./settleClash.ts";

interface Joining extends Merged {
  readonly fileName: string;
  readonly choices: readonly ("before" | "mine" | "theirs")[];
  /** No earlier state is kept here, so what differs is taken from the copy. */
  readonly withoutBase: boolean;
}

/** States that are looked through for the one in which the copies went apart. */
const mostStates = 60;

export function JoinCopy() {
  const session = useSession();
  const say = useSay();
  const joining = useSignal<Joining | null>(null);
  const trouble = useSignal<string | null>(null);

  const read = async (text: string): Promise<ClassFile | null> =>
    (await session.engine.readClass("class.json", new TextEncoder().encode(text)).answer.catch(() => null))?.value ?? null;

  const look = async (theirs: ClassFile, fileName: string): Promise<void> => {
    const mine = session.classFile.peek();
    const open = session.open.peek();
    if (mine === null || open === null) return;
    await open.settled();
    const kept = [...(await open.generations())].filter((g) => !g.damaged).sort((a, b) => b.counter - a.counter);
    const texts: string[] = [];
    for (const { id } of kept.slice(0, mostStates)) {
      const snapshot = await open.read(id);
      if (snapshot) texts.push(snapshot.text);
    }
    const at = commonBase(writeClassFile(theirs), texts);
    const base = at === null ? null : await read(texts[at]!);
    const merged = mergeFiles(base ?? mine, mine, theirs, { kits: session.shipped.peek()?.kits ?? new Map() });
    joining.value = { ...merged, fileName, withoutBase: base === null, choices: merged.clashes.map(() => "before") };
    trouble.value = null;
  };

  const take = async (): Promise<void> => {
    const now = joining.value;
    if (now === null) return;
    let file: ClassFile | null = now.value;
    for (const [n, clash] of now.clashes.entries()) {
      const choice = now.choices[n] ?? "before";
      if (file !== null && choice !== "before") file = settleClash(file, clash, choice);
    }
    // Choices that do not go together make a file that its own reader refuses.
    const answer =
      file &&
      (await session.engine.readClass("joined.json", new TextEncoder().encode(writeClassFile(file))).answer.catch(() => null));
    if (!answer?.value) {
      const first = answer?.problems[0];
      trouble.value = first ? sayProblem(session.language.peek(), first).says : say("joining.doNotGo");
      return;
    }
    const problem = session.act({ kind: "join-copy", name: now.fileName, file: answer.value });
    if (problem) {
      trouble.value = sayUnchecked(session.language.peek(), problem.code, { ...problem });
      return;
    }
    joining.value = null;
    trouble.value = null;
  };

  const now = joining.value;
  return (
    <Row as="section">
      <h2>{say("joining.heading")}</h2>
      <p>{say("joining.what")}</p>
      <LastAct about={({ kind }) => kind === "join-copy"} />
      <OpenFile
        as="link"
        drops={false}
        label={say("joining.open")}
        takeLabel={say("joining.lookAtIt")}
        onClass={(file, name) => void look(file, name)}
      />
      {now !== null && (
        <section class="looked" aria-label={say("joining.heading")}>
          <h3>
            <bdi>{now.fileName}</bdi>
          </h3>
          {now.withoutBase && <Message says={say("joining.withoutBase")} />}
          <FilesSideBySide there={now.value} thereSays={say("joining.together")} />
          <p role="status">{say("joining.clashes", { count: now.clashes.length })}</p>
          {now.clashes.map((clash, n) => (
            <ClashChoice
              key={clash.path.join("/")}
              clash={clash}
              chosen={now.choices[n] ?? "before"}
              onChoose={(choice) => {
                joining.value = { ...now, choices: now.choices.map((old, at) => (at === n ? choice : old)) };
              }}
            />
          ))}
          {trouble.value !== null && <Message live says={trouble.value} try={say("joining.chooseOther")} />}
          <div class="acts">
            <Button onPress={() => void take()}>{say("joining.take")}</Button>
            <TextLink
              onPress={() => {
                joining.value = null;
              }}
            >
              {say("settings.close")}
            </TextLink>
          </div>
        </section>
      )}
    </Row>
  );
}

interface ClashChoiceProps {
  readonly clash: Clash;
  readonly chosen: "before" | "mine" | "theirs";
  readonly onChoose: (choice: "before" | "mine" | "theirs") => void;
}

function ClashChoice({ clash, chosen, onChoose }: ClashChoiceProps) {
  const say = useSay();
  const option = (value: "mine" | "theirs" | "before", state: unknown) => ({
    value,
    label: say(`joining.${value}`),
    note: <bdi>{shown(state) ?? say("joining.notThere")}</bdi>,
  });
  return (
    <Choice
      label={<bdi>{clash.path.join(", ")}</bdi>}
      value={chosen}
      options={[option("before", clash.base), option("mine", clash.mine), option("theirs", clash.theirs)]}
      onChange={(choice) => onChoose(choice as "before" | "mine" | "theirs")}
    />
  );
}

/** Longest piece of a file that is shown to choose by. */
const mostShown = 200;

/** A value as the class file has it; null where there is none. */
function shown(state: unknown): string | null {
  if (state === null || state === undefined) return null;
  const text = typeof state === "string" ? state : JSON.stringify(state);
  return text.length > mostShown ? `${text.slice(0, mostShown)} …` : text;
}
