// Programs in virtual time, against simavr, which runs the chip's instructions one by one: virtual seconds a second.
//
// The same four programs on both sides, compiled by avr-g++ for the other. Ours runs ten virtual minutes where the program only
// waits, simavr a few seconds, less a run of its start alone. Processor time is compared, not the clock, and both sides take
// turns, because other work may share the machine. Reading and checking has no peer here: a goal in milliseconds.
import { spawnSync } from "node:child_process";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { haveTools, inputLines, openChip } from "../reference/programs/chip.ts";
import { type BoardPort, type Inputs, inputsPort, parseProgram, runProgram, runWithInputs } from "../src/bench/program/index.ts";
import { type Board, makeBoard } from "../src/bench/program/run/makeMachine.ts";
import { runBoard } from "../src/bench/program/runProgram.ts";

interface Row {
  name: string;
  ours: string;
  reference: string;
  ratio: number | null;
  goal: string;
  met: boolean | null;
}

interface Race {
  readonly name: string;
  readonly text: string;
  readonly inputs: (seconds: number) => Inputs;
  readonly seconds: number;
  /** Virtual seconds a second, and how many times simavr's. */
  readonly goal: number;
  readonly times: number;
}

const none = () => [];
const races: readonly Race[] = [
  {
    name: "a light that blinks, ten minutes",
    text: `void setup() { pinMode(13, OUTPUT); }
void loop() { digitalWrite(13, HIGH); delay(500); digitalWrite(13, LOW); delay(500); }`,
    inputs: none,
    seconds: 600,
    goal: 100_000,
    times: 10_000,
  },
  {
    name: "a button that is asked all the time, ten minutes, a press a second",
    text: `void setup() { pinMode(2, INPUT_PULLUP); pinMode(13, OUTPUT); }
void loop() { if (digitalRead(2) == LOW) digitalWrite(13, HIGH); else digitalWrite(13, LOW); }`,
    inputs: (seconds) =>
      Array.from({ length: 2 * seconds }, (_, i) => ({
        ms: 500 * i + 7,
        pin: 2,
        level: i % 2 === 0 ? ("low" as const) : ("high" as const),
      })),
    seconds: 600,
    goal: 100_000,
    times: 10_000,
  },
  {
    name: "arithmetic in 16 and 32 bits",
    text: `volatile long result;
void setup() {}
void loop() {
  int x = 1;
  long s = 0;
  for (unsigned long i = 0; i < 10000; i++) {
    x = x * 25 + 13;
    s += x >> 3;
    if (s > 100000) s -= 100000;
  }
  result = s;
}`,
    inputs: none,
    seconds: 30,
    goal: 20,
    times: 10,
  },
  {
    name: "text at 9600 baud",
    text: `void setup() { Serial.begin(9600); }
void loop() { Serial.print("reading "); Serial.println(512); }`,
    inputs: none,
    seconds: 120,
    goal: 1000,
    times: 100,
  },
];

const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1] as number;
/** Pairs of runs, and those that only warm up. */
const pairs = 7;
const warm = 3;

function ourSeconds(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** Processor time of the driver in seconds, as the shell counts it. */
function theirSeconds(driver: string, elf: string, seconds: number, inputs: Inputs): number {
  const script = `TIMEFORMAT='cpu %U %S'; time ${driver} ${elf} ${seconds * 16_000_000} > /dev/null`;
  const { stderr } = spawnSync("bash", ["-c", script], { encoding: "utf8", input: inputLines(inputs) });
  const [, user, system] = /cpu (\S+) (\S+)/.exec(stderr) ?? [];
  return Number(user) + Number(system);
}

/** A program of a hundred lines, as the last lessons of a course have them. */
const hundredLines = `// Tide gauge: eight lights show how high the water stands, a tone warns of the flood.
const int lights = 8;
const int firstPin = 2;
const int soundPin = 11;
const int sensorPin = A0;
const unsigned long every = 200;
int levels[lights] = {100, 200, 300, 400, 500, 600, 700, 800};
unsigned long before = 0;
bool warned = false;
struct Mean {
  int values[5];
  byte at;
  long sum;
};
Mean mean;

void setup() {
  Serial.begin(9600);
  for (int i = 0; i < lights; i++) {
    pinMode(firstPin + i, OUTPUT);
  }
  for (byte i = 0; i < 5; i++) {
    mean.values[i] = 0;
  }
  mean.at = 0;
  mean.sum = 0;
}

int smooth(int value) {
  mean.sum -= mean.values[mean.at];
  mean.values[mean.at] = value;
  mean.sum += value;
  mean.at = (mean.at + 1) % 5;
  return mean.sum / 5;
}

void show(int height) {
  for (int i = 0; i < lights; i++) {
    if (height >= levels[i]) {
      digitalWrite(firstPin + i, HIGH);
    } else {
      digitalWrite(firstPin + i, LOW);
    }
  }
}

void warn(int height) {
  if (height > 850 && !warned) {
    tone(soundPin, 440, 500);
    warned = true;
    Serial.println("flood");
  }
  if (height < 700) {
    warned = false;
  }
}

void report(int raw, int height) {
  Serial.print("raw ");
  Serial.print(raw);
  Serial.print(", height ");
  Serial.print(map(height, 0, 1023, 0, 250));
  Serial.println(" cm");
}

int readCommand() {
  if (Serial.available() == 0) {
    return 0;
  }
  char c = Serial.read();
  switch (c) {
    case 't':
      return 1;
    case 'l':
      return 2;
    default:
      return 0;
  }
}

void loop() {
  unsigned long now = millis();
  if (now - before >= every) {
    before = now;
    int raw = analogRead(sensorPin);
    int height = smooth(raw);
    show(height);
    warn(height);
    report(raw, height);
  }
  int command = readCommand();
  if (command == 1) {
    tone(soundPin, 880, 100);
  } else if (command == 2) {
    for (int i = 0; i < lights; i++) {
      digitalWrite(firstPin + i, HIGH);
      delay(50);
    }
  }
}
`;

export async function run(): Promise<Row[]> {
  const rows: Row[] = [];
  const chip = haveTools() ? openChip("reference/programs") : null;
  for (const race of races) {
    const program = parseProgram(race.name, race.text).value!;
    const inputs = race.inputs(race.seconds);
    const built = chip?.build(race.text);
    const ours: number[] = [];
    const theirs: number[] = [];
    for (let i = 0; i < pairs + warm; i += 1) {
      const mine = race.seconds / ourSeconds(() => runWithInputs(program, inputs, race.seconds * 1000, { mostWork: 1e12 }));
      if (i < warm) continue;
      ours.push(mine);
      if (built) {
        const length = 4;
        const whole = theirSeconds(built.driver, built.elf, length, race.inputs(length));
        theirs.push(length / (whole - theirSeconds(built.driver, built.elf, 0, [])));
      }
    }
    const mine = median(ours);
    const other = theirs.length > 0 ? median(theirs) : null;
    rows.push({
      name: race.name,
      ours: `${mine.toFixed(0)} virtual s a s`,
      reference: other === null ? "simavr is not here" : `simavr ${other.toFixed(1)}`,
      ratio: other === null ? null : mine / other,
      goal: `≥ ${race.goal} and ≥ ${race.times} × simavr`,
      met: other === null ? null : mine >= race.goal && mine >= race.times * other,
    });
  }
  chip?.close();
  const reading: number[] = [];
  for (let i = 0; i < 60; i += 1) reading.push(1000 * ourSeconds(() => parseProgram("tide.cpp", hundredLines)));
  const ms = median(reading.slice(30));
  rows.push({
    name: "reading and checking a hundred lines",
    ours: `${ms.toFixed(2)} ms`,
    reference: "–",
    ratio: null,
    goal: "≤ 2 ms warm",
    met: ms <= 2,
  });
  rows.push(startRow(), memoryRow());
  return rows;
}

/** Two lessons of a hundred lines in one: the functions of the second are never called, and read all the same. */
const twoHundredLines = `${hundredLines}${hundredLines
  .replace(
    /\b(lights|firstPin|soundPin|sensorPin|every|levels|before|warned|Mean|mean|smooth|show|warn|report|readCommand)\b/g,
    "$1Again",
  )
  .replace("void setup()", "void setupAgain()")
  .replace("void loop()", "void loopAgain()")}`;

/** From the text of a program to its first change of a pin, everything warm. */
function startRow(): Row {
  const times: number[] = [];
  for (let i = 0; i < 60; i += 1)
    times.push(
      1000 *
        ourSeconds(() => {
          const program = parseProgram("long.cpp", twoHundredLines).value!;
          runProgram(program, stopAtFirstChange(), { until: 10e6, seed: 0 });
        }),
    );
  const ms = median(times.slice(30));
  const lines = twoHundredLines.split("\n").length;
  return {
    name: `text to first change of a pin, ${lines} lines`,
    ours: `${ms.toFixed(1)} ms`,
    reference: "–",
    ratio: null,
    goal: "≤ 20 ms warm",
    met: ms <= 20,
  };
}

/** A world that wants nothing more once an output has changed; the light on the sensor lets one change. */
function stopAtFirstChange(): BoardPort {
  const port = inputsPort([{ ms: 0, pin: 14, value: 900 }]);
  let hasChanged = false;
  const write = port.digitalWrite.bind(port);
  const reach = port.reach.bind(port);
  const event = port.nextEvent.bind(port);
  port.digitalWrite = (pin, level, now) => {
    hasChanged ||= level === 1;
    write(pin, level, now);
  };
  port.nextEvent = () => (hasChanged ? 0 : event());
  port.reach = (now) => (hasChanged ? "stop" : reach(now));
  return port;
}

/** What the heap and the arrays grow by for each of twenty programs that run at the same time. */
function memoryRow(): Row {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const used = () => {
    collect();
    collect();
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    return heapUsed + arrayBuffers;
  };
  const kept: Board[] = [];
  const program = parseProgram("long.cpp", twoHundredLines).value!;
  const options = { until: 16e6, mostWork: 1e12, seed: 0, skips: true, trace: null };
  const before = used();
  for (let i = 0; i < 20; i += 1) {
    const board = makeBoard(program.checked, inputsPort([]), options);
    runBoard(program, board);
    kept.push(board);
  }
  const bytes = (used() - before) / kept.length;
  return {
    name: "memory of one running program, 200 lines",
    ours: `${(bytes / 1e6).toFixed(2)} MB`,
    reference: "–",
    ratio: null,
    goal: "≤ 5 MB",
    met: bytes <= 5e6,
  };
}
