// Classes on this computer: open one, take one off, forget everything. What was taken off can be brought back until the page is left.
//
// Before anything is taken off its state is held in memory, so that bringing it back needs nothing from the storage.
// Does not know: how a class is kept.
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { Button, Message, Row, TextLink } from "../../pieces/index.ts";
import { useSay, useSession } from "../../session/useSession.ts";
import { goTo } from "../../shell/router.ts";
import type { Snapshot, StoredClass } from "../../store/store.ts";
import { momentOf } from "./DaysBefore.tsx";

interface Gone {
  readonly id: string;
  readonly title: string;
  readonly snapshot: Snapshot;
}

export function ClassesHere() {
  const session = useSession();
  const say = useSay();
  const list = useSignal<readonly StoredClass[]>([]);
  const gone = useSignal<readonly Gone[]>([]);
  const unread = useSignal<string | null>(null);
  const openId = session.open.value?.id ?? null;

  const refresh = async (): Promise<void> => {
    list.value = await session.store.classes();
  };
  useEffect(() => {
    void refresh();
  }, [openId, session.kept.value.word]);

  /** The state of a class, to bring it back; null where it cannot be read, and then nothing is taken off. */
  const hold = async ({ id, title }: StoredClass): Promise<Gone | null> => {
    const open = session.open.peek();
    if (open?.id === id) await open.settled();
    const reader = open?.id === id ? open : await session.store.open(id, title);
    const newest = [...(await reader.generations())].sort((a, b) => b.counter - a.counter).find((g) => !g.damaged);
    const snapshot = newest ? await reader.read(newest.id) : null;
    if (reader !== open) await reader.close();
    return snapshot === null ? null : { id, title, snapshot };
  };
  const takeOff = async (stored: StoredClass): Promise<void> => {
    const held = await hold(stored);
    if (held === null) {
      unread.value = stored.title;
      return;
    }
    unread.value = null;
    if (stored.id === openId) {
      // The session holds it itself and offers it on every page.
      await session.throwAway();
      gone.value = [];
    } else {
      if (await session.store.forget(stored.id)) gone.value = [held];
      else unread.value = stored.title;
    }
    await refresh();
  };
  const forgetAll = async (): Promise<void> => {
    const held: Gone[] = [];
    for (const stored of list.value) {
      const one = await hold(stored);
      if (one) held.push(one);
    }
    if (openId !== null) await session.throwAway();
    // Another tab keeps the class, or the storage refused: it was told, and nothing else is taken off.
    if (session.open.peek() !== null) return refresh();
    if (await session.store.forgetAll()) gone.value = held;
    else unread.value = held.map(({ title }) => title).join(", ");
    await refresh();
  };
  const bringBack = async (): Promise<void> => {
    const [newest] = gone.value;
    for (const { id, title, snapshot } of [...gone.value].reverse()) {
      const open = await session.store.open(id, title);
      open.keep(snapshot, "");
      await open.settled();
      await open.close();
    }
    gone.value = [];
    await refresh();
    if (session.classFile.peek() === null && newest) await session.reopen(newest.id);
  };
  return (
    <Row as="section">
      <h2>{say("settings.classesHere")}</h2>
      {session.thrown.value !== null && gone.value.length === 0 && (
        <p class="says" role="status">
          <span>{say("settings.takenOff", { title: session.thrown.value.title })}</span>
          <TextLink onPress={() => void session.takeBack().then(refresh)}>{say("settings.bringBack")}</TextLink>
        </p>
      )}
      {gone.value.length > 0 && (
        <p class="says" role="status">
          <span>{say("settings.takenOff", { title: gone.value.map(({ title }) => title) })}</span>
          <TextLink onPress={() => void bringBack()}>{say("settings.bringBack")}</TextLink>
        </p>
      )}
      {unread.value !== null && (
        <Message live says={say("settings.stayed", { title: unread.value })} try={say("settings.stayedTry")} />
      )}
      {list.value.length === 0 && <p>{say("settings.noClasses")}</p>}
      <ul class="plain">
        {list.value.map((stored) => (
          <li key={stored.id}>
            <b>
              <bdi>{stored.title}</bdi>
            </b>{" "}
            <span class="note">{say("settings.keptAt", { when: momentOf(session.language.value, stored.keptAt) })}</span>{" "}
            {stored.id === openId ? (
              <span>{say("settings.isOpen")}</span>
            ) : (
              <TextLink
                label={say("settings.openOf", { title: stored.title })}
                onPress={() => void session.reopen(stored.id).then(() => goTo("#/today"))}
              >
                {say("settings.open")}
              </TextLink>
            )}{" "}
            <TextLink label={say("settings.takeOffOf", { title: stored.title })} onPress={() => void takeOff(stored)}>
              {say("settings.takeOff")}
            </TextLink>
          </li>
        ))}
      </ul>
      <p>
        <TextLink to="#/questions/1">{say("settings.another")}</TextLink>{" "}
        <TextLink onPress={() => void session.openDemo().then(() => goTo("#/today"))}>{say("first.demo")}</TextLink>
      </p>
      {list.value.length > 0 && (
        <>
          <p>{say("settings.forgetWhat")}</p>
          <Button onPress={() => void forgetAll()}>{say("settings.forget")}</Button>
        </>
      )}
    </Row>
  );
}
