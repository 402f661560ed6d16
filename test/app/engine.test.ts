// The engine in a real browser, opened from a file with the network off: the same answers as the commands, it stops when told,
// it survives its own end, and it works where there is no worker.
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Engine, School } from "../../src/app/engine/engine.ts";
import { planAsJson } from "../../src/cli/commands/plan.ts";
import type { Plan } from "../../src/school/readiness/index.ts";
import { answerOf } from "../cli/benchday.ts";
import { browser, type EnginePage, makeEnginePages } from "./enginePage.ts";
import { hardOrder } from "./hardOrder.ts";

/** What test/app/engineAlone.ts leaves in the page. */
declare global {
  var engine: Engine;
  var another: () => Engine;
  var shelf: Map<string, unknown>;
  /** Put there by `withDemo`. */
  var school: School;
}

/** Twelve figures of every number: browsers and Node round the last figure of exp, log and pow each in their own way. */
const rounded = (text: string) =>
  JSON.stringify(JSON.parse(text, (_, value) => (typeof value === "number" ? Number(value.toPrecision(12)) : value)));

/** Where two answers part, with what stands around it; whole plans would fill the screen. */
function firstDifference(one: string, other: string): string | null {
  const [a, b] = [rounded(one), rounded(other)];
  if (a === b) return null;
  const at = [...a].findIndex((sign, i) => sign !== b[i]);
  const around = (text: string) => text.slice(Math.max(0, at - 60), at + 60);
  return `at ${at}: ${around(a)} instead of ${around(b)}`;
}

const day = ["--today", "2026-12-01"];
const demo = "demo/harbour.json";

if (browser === null && process.env.REQUIRE_TOOLS) test("Chromium is there", () => expect(browser).not.toBeNull());
describe.skipIf(browser === null)("the engine in Chromium", () => {
  let pages: Awaited<ReturnType<typeof makeEnginePages>>;
  beforeAll(async () => {
    pages = await makeEnginePages();
  });
  afterAll(() => pages.close());

  /** A page with the demo read and ready as `school`. */
  async function withDemo(how: Parameters<typeof pages.open>[0] = {}, text?: string) {
    const opened = await pages.open(how);
    const problems = await opened.frame.evaluate(async (given) => {
      const { demo } = await globalThis.engine.shipped().answer;
      const read = await globalThis.engine.readClass("harbour.json", new TextEncoder().encode(given ?? demo.text)).answer;
      if (read.value) globalThis.school = { classFile: read.value, today: demo.today, seed: 1 };
      return read.problems;
    }, text);
    expect(problems).toEqual([]);
    return opened;
  }
  const planIn = (frame: EnginePage["page"] | Awaited<ReturnType<typeof pages.open>>["frame"]) =>
    frame.evaluate(async () => JSON.stringify(await globalThis.engine.plan(globalThis.school).answer));
  const cliPlan = () => {
    const { problems: _, ...plan } = answerOf<Record<string, unknown>>(["plan", demo, ...day]);
    return plan;
  };
  const same = (plan: string) =>
    expect(firstDifference(JSON.stringify(planAsJson(JSON.parse(plan) as Plan)), JSON.stringify(cliPlan()))).toBeNull();

  describe("beside the page", () => {
    let open: Awaited<ReturnType<typeof withDemo>>;
    beforeAll(async () => {
      open = await withDemo();
    });
    afterAll(() => open.close());

    test("the plan of the demo is that of the command, to the byte", async () => {
      same(await planIn(open.frame));
      expect(await open.frame.evaluate(() => globalThis.engine.runs)).toBe("worker");
    });

    test("the order of the demo is that of the command, to the byte", async () => {
      const order = await open.frame.evaluate(async () =>
        JSON.stringify(await globalThis.engine.order(globalThis.school, 30).answer),
      );
      const { problems: _, ...expected } = answerOf<Record<string, unknown>>(["order", demo, ...day]);
      expect(firstDifference(order, JSON.stringify(expected))).toBeNull();
    });

    test("papers have as many sheets as those of the command, paper by paper", async () => {
      const made = await open.frame.evaluate(async () => {
        const { engine, school } = globalThis;
        const plan = await engine.plan(school).answer;
        const wish = { classes: [], language: "en", paperSize: "A4" as const, source: "harbour.json" };
        const sittings = plan.lessons.map((l) => l.id);
        const kinds = ["tray", "run-sheet", "waveform", "rota", "order", "label"] as const;
        return (await engine.papers(school, { ...wish, kinds, sittings }).answer).parts;
      });
      const printed = answerOf<{ papers: { paper: string; sheets: number }[] }>([
        "print",
        demo,
        "all",
        "--out",
        pages.folder("papers"),
        ...day,
      ]).papers;
      const ofLessons = made.filter((p) => p.sitting !== null);
      const bySitting = [...new Set(ofLessons.map((p) => p.sitting))].map((id) =>
        ofLessons.filter((p) => p.sitting === id).reduce((sum, p) => sum + p.sheets, 0),
      );
      expect(bySitting).toEqual(printed.filter((p) => p.paper === "all").map((p) => p.sheets));
      const rest = (papers: readonly { sheets: number }[]) => papers.map((p) => p.sheets);
      expect(rest(made.filter((p) => p.sitting === null))).toEqual(rest(printed.filter((p) => p.paper !== "all")));
    });

    test("a lesson's rehearsal is that of the command", async () => {
      const made = await open.frame.evaluate(async () =>
        JSON.stringify(await globalThis.engine.rehearse("barrier", globalThis.school).answer),
      );
      const {
        supplies,
        problems: _,
        ...expected
      } = answerOf<Record<string, object[]>>(["rehearse", "barrier", "--class", demo, ...day]);
      const { supplies: own, problems: __, ...rest } = JSON.parse(made) as Record<string, object[]>;
      // A command names its answer `outcome` and gives true, false or null beside it.
      expect(own?.map((s) => ({ ...s, outcome: (s as { fits: string }).fits, fits: null }))).toEqual(
        supplies?.map((s) => ({ ...s, fits: null })),
      );
      expect(rest).toEqual(expected);
    });

    test("lists in any encoding", async () => {
      const read = await open.frame.evaluate(async () => {
        const { engine } = globalThis;
        const utf16 = (text: string) => new Uint8Array(Uint16Array.from(`\ufeff${text}`, (c) => c.charCodeAt(0)).buffer);
        const latin = (text: string) => Uint8Array.from(text, (c) => c.charCodeAt(0));
        const roster = await engine.readRoster("pupils.csv", utf16("name\r\nZoë\r\nŁukasz\r\n")).answer;
        const stock = await engine.readStock("stock.csv", latin("item;count\r\nled red;20\r\nresistor 4k7;7\r\n")).answer;
        const wrong = await engine.readClass("broken.json", latin('{"format": 7')).answer;
        return { names: roster.value?.map((p) => p.name), stock: stock.value?.map((s) => [s.item, s.count]), wrong };
      });
      expect(read.names).toEqual(["Zoë", "Łukasz"]);
      expect(read.stock).toEqual([
        ["led red", 20],
        ["resistor 4k7", 7],
      ]);
      expect(read.wrong.value).toBeNull();
      expect(read.wrong.problems[0]?.place?.file).toBe("broken.json");
    });

    test("a class file is written as the text that was read, and reads back equal", async () => {
      const [first, second] = await open.frame.evaluate(async () => {
        const { engine, school } = globalThis;
        const text = await engine.write("class", school).answer;
        const read = await engine.readClass("again.json", new TextEncoder().encode(text)).answer;
        return [text, read.value === null ? "" : await engine.write("class", { ...school, classFile: read.value }).answer];
      });
      expect(first).toBe(second);
    });

    test("tables are written for a spreadsheet", async () => {
      const [roster, stock, order] = await open.frame.evaluate(async () => {
        const { engine, school } = globalThis;
        return [
          await engine.write("roster", school, { class: "7c" }).answer,
          await engine.write("stock", school).answer,
          await engine.write("order", school).answer,
        ];
      });
      for (const text of [roster, stock, order]) expect(text?.startsWith("\ufeff")).toBe(true);
      expect(roster?.trim().split("\r\n")).toHaveLength(25);
      expect(order).toContain("pier-supplies,photoresistor-5,1,");
    });

    test("nothing was asked of anywhere, and nothing failed", () => {
      expect(open.outside).toEqual([]);
      expect(open.faults).toEqual([]);
    });

    test("a script put into the page does not run, a picture from outside is not fetched", async () => {
      const ran = await open.frame.evaluate(async () => {
        const blocked: string[] = [];
        document.addEventListener("securitypolicyviolation", (e) => blocked.push(e.effectiveDirective));
        const attempts = [
          () => {
            const script = document.createElement("script");
            script.textContent = "document.title = 'ran'";
            document.body.append(script);
          },
          () => document.body.insertAdjacentHTML("beforeend", "<img src=x onerror=\"document.title='ran'\">"),
          () => document.body.setAttribute("onclick", "document.title='ran'"),
          () => {
            const picture = document.createElement("img");
            picture.src = "http://example.com/picture.png";
            document.body.append(picture);
          },
          () => {
            const frame = document.createElement("iframe");
            frame.srcdoc = "<script>parent.document.title = 'ran'</script>";
            document.body.append(frame);
          },
          () => void new Worker("https://example.com/w.js"),
        ];
        for (const attempt of attempts)
          try {
            attempt();
          } catch {
            blocked.push("refused");
          }
        document.body.click();
        await new Promise((resolve) => setTimeout(resolve, 300));
        return { title: document.title, blocked };
      });
      expect(ran.title).not.toBe("ran");
      expect(ran.blocked).toContain("img-src");
      expect(ran.blocked.length).toBeGreaterThanOrEqual(5);
      expect(open.outside.filter((a) => !a.startsWith("http://example.com/picture.png"))).toEqual([]);
    });
  });

  test("what was worked out is there again for a fresh engine, without work", async () => {
    const { frame, close } = await withDemo();
    const first = await planIn(frame);
    const [again, told, kept] = await frame.evaluate(async () => {
      const words: string[] = [];
      const plan = await globalThis.another().plan(globalThis.school, (p) => words.push(p.doing)).answer;
      return [JSON.stringify(plan), words, globalThis.shelf.size] as const;
    });
    expect(again).toBe(first);
    expect(told).toEqual([]);
    expect(kept).toBeGreaterThan(0);
    // Another seed is another question.
    const other = await frame.evaluate(async () => {
      const words: string[] = [];
      await globalThis.another().plan({ ...globalThis.school, seed: 2 }, (p) => words.push(p.doing)).answer;
      return words;
    });
    expect(other.length).toBeGreaterThan(0);
    await close();
  });

  test("an order that is stopped inside the solver leaves everything usable, and a plan does not wait for it", async () => {
    const { frame, close } = await withDemo({}, hardOrder());
    const seen = await frame.evaluate(async () => {
      const { engine, school } = globalThis;
      await engine.plan(school).answer;
      const job = engine.order(school, 60);
      const ended = job.answer.then(
        () => "answered",
        (fault: Error) => fault.message,
      );
      await new Promise((resolve) => setTimeout(resolve, 2500));
      const start = performance.now();
      await engine.plan({ ...school, today: "2027-02-01" as School["today"] }).answer;
      const planMs = performance.now() - start;
      job.stop();
      const how = await ended;
      const after = await engine.order(school, 1).answer;
      return { how, planMs, status: after.status };
    });
    expect(seen.how).toBe("stopped");
    expect(seen.planMs).toBeLessThan(10_000);
    expect(seen.status).toBe("feasible");
    await close();
  });

  test("of several plans each is answered, and one that was stopped is not", async () => {
    const { frame, close } = await withDemo();
    const outcomes = await frame.evaluate(async () => {
      const { engine, school } = globalThis;
      const jobs = [1, 2, 3, 4].map((seed) => engine.plan({ ...school, seed }));
      jobs[1]?.stop();
      const order: number[] = [];
      const ended = await Promise.allSettled(jobs.map((job, i) => job.answer.then(() => order.push(i + 1))));
      return { ended: ended.map((e) => e.status), order };
    });
    expect(outcomes.ended).toEqual(["fulfilled", "rejected", "fulfilled", "fulfilled"]);
    // The first was under way; of those that waited the newest came first.
    expect(outcomes.order.indexOf(4)).toBeLessThan(outcomes.order.indexOf(3));
    await close();
  });

  test("a worker that fails in the midst of a question is told as such, and the next answer is right", async () => {
    const { page, frame, close } = await withDemo();
    for (let round = 0; round < 3; round += 1) {
      await frame.evaluate((seed) => {
        const job = globalThis.engine.plan({ ...globalThis.school, seed });
        const told = job.answer.then(
          () => "answered",
          (fault: Error & { remedy?: string }) => `${fault.constructor === Error ? "" : "broken"} ${fault.remedy}`,
        );
        Object.assign(globalThis, { told });
      }, 100 + round);
      // It starts with the first question.
      const worker = page.workers().at(-1) ?? (await page.waitForEvent("worker"));
      await worker.evaluate(
        () =>
          void setTimeout(() => {
            throw new Error("ended by the test");
          }),
      );
      expect(await frame.evaluate(() => (globalThis as unknown as { told: Promise<string> }).told)).toBe("broken broken");
      same(await planIn(frame));
    }
    await close();
  });

  test("a worker that ends without a word is missed, and a fresh one answers its question", async () => {
    const { page, frame, close } = await withDemo();
    await frame.evaluate(() => {
      const told = globalThis.engine.plan({ ...globalThis.school, seed: 9 }).answer.then((plan) => plan.lessons.length);
      Object.assign(globalThis, { told });
    });
    const worker = page.workers().at(-1) ?? (await page.waitForEvent("worker"));
    // After the answer to this very question, which would else never come.
    await worker.evaluate(() => void setTimeout(() => (globalThis as unknown as { close(): void }).close()));
    expect(await frame.evaluate(() => (globalThis as unknown as { told: Promise<number> }).told)).toBeGreaterThan(0);
    same(await planIn(frame));
    await close();
  });

  test("without workers the page does the work itself, stays alive, and can stop it", async () => {
    const { frame, close, faults } = await withDemo({
      before: () => {
        Object.defineProperty(globalThis, "Worker", {
          value: class {
            constructor() {
              throw new Error("no workers here");
            }
          },
        });
      },
    });
    const seen = await frame.evaluate(async () => {
      const { engine, school } = globalThis;
      let last = performance.now();
      let longest = 0;
      const beat = setInterval(() => {
        longest = Math.max(longest, performance.now() - last);
        last = performance.now();
      }, 5);
      const plan = await engine.plan(school).answer;
      clearInterval(beat);
      const job = engine.plan({ ...school, seed: 5 });
      setTimeout(() => job.stop(), 60);
      const stopped = await job.answer.then(
        () => "answered",
        (fault: Error) => fault.message,
      );
      const order = await engine.order(school, 30).answer;
      return { plan: JSON.stringify(plan), longest, stopped, cost: order.cost, runs: engine.runs };
    });
    same(seen.plan);
    expect(seen.runs).toBe("page");
    expect(seen.stopped).toBe("stopped");
    expect(seen.cost).toBe(5320);
    expect(seen.longest).toBeLessThan(1000);
    expect(faults).toEqual([]);
    await close();
  });

  test("in a sandboxed frame without storage it plans and prints", async () => {
    const { frame, close, outside } = await withDemo({ boxed: true });
    same(await planIn(frame));
    const made = await frame.evaluate(async () => {
      const wish = { kinds: ["label"], sittings: [], classes: [], language: "en", paperSize: "A4", source: "a.json" } as const;
      const { html, sheets } = await globalThis.engine.papers(globalThis.school, wish).answer;
      const shown = document.createElement("iframe");
      shown.srcdoc = html;
      document.body.append(shown);
      const isLoaded = await new Promise((resolve) => {
        shown.onload = () => resolve(true);
      });
      let storage = "there";
      try {
        localStorage.getItem("x");
      } catch {
        storage = "none";
      }
      return { sheets, isLoaded, storage };
    });
    expect(made).toEqual({ sheets: 1, isLoaded: true, storage: "none" });
    expect(outside).toEqual([]);
    await close();
  });

  test("a paper is shown in a frame that the page can print", async () => {
    const { frame, close } = await withDemo();
    const shown = await frame.evaluate(async () => {
      const wish = { kinds: ["label"], sittings: [], classes: [], language: "en", paperSize: "A4", source: "a.json" } as const;
      const { html } = await globalThis.engine.papers(globalThis.school, wish).answer;
      const paper = document.createElement("iframe");
      paper.srcdoc = html;
      document.body.append(paper);
      await new Promise((resolve) => {
        paper.onload = resolve;
      });
      await paper.contentDocument?.fonts.ready;
      const fonts = [...(paper.contentDocument?.fonts ?? [])].filter((f) => f.status === "loaded").length;
      return {
        sheets: paper.contentDocument?.querySelectorAll(".sheet").length,
        fonts,
        print: typeof paper.contentWindow?.print,
      };
    });
    expect(shown.sheets).toBe(1);
    expect(shown.fonts).toBeGreaterThan(0);
    expect(shown.print).toBe("function");
    await close();
  });
});
