// Asks the program for the browser about a list of calls, and prints the answers:
// node ask.mjs FOLDER, with the calls, each a list of arguments, on the standard input.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [folder] = process.argv.slice(2);
const file = (name) => `${folder}/${name}`;
await import(pathToFileURL(file("wasm_exec.js")));
const go = new Go();
const { instance } = await WebAssembly.instantiate(readFileSync(file("collinear.wasm")), go.importObject);
go.run(instance);
const calls = JSON.parse(readFileSync(0, "utf8"));
const answers = calls.map((call) => collinear(...call));
const strange = [undefined, null, 1, true, Symbol("s"), [], {}, () => 1, new String("{}"), 10n, new Proxy({}, { getPrototypeOf() { throw 1; } })];
const refusals = [[], ["{}"], ["{}", "", ""], ...strange.flatMap((s) => [[s, ""], ["{}", s]])].map((call) => collinear(...call));
process.stdout.write(JSON.stringify({ answers, refusals }), () => process.exit(0));
