// npm run --silent deck -- FILE: the circuit of a SPICE deck solved by us, printed as JSON.
//
// {outcome, volts: {node: V}, amps: {element: A}, samples: [{s, volts}]}; what a deck may hold: reference/circuits/readDeck.ts.
// Exit status 0 when solved, 1 when the circuit has no answer or the deck is not of ours, 2 when there is no such file.
import { existsSync, readFileSync } from "node:fs";
import { importTypeScript } from "./bundle.mjs";

const [file] = process.argv.slice(2);
if (file === undefined || !existsSync(file)) {
  console.error(file === undefined ? "npm run --silent deck -- FILE" : `There is no file ${file}.`);
  process.exit(2);
}
const { answerDeck } = await importTypeScript("reference/circuits/answerDeck.ts");
const answer = answerDeck(readFileSync(file, "utf8"));
console.log(JSON.stringify(answer, null, 2));
process.exitCode = answer.outcome === "solved" ? 0 : 1;
