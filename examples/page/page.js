// The page around the program: what its buttons do, and what is shown of an answer.
import { nearest, show as showFaults, said, unfold, visit } from "./faults.js";
import { draw, prepare } from "./form.js";
import { fresh, isObject, newJob, opened } from "./job.js";
import { make } from "./markup.js";

const $ = (name) => document.getElementById(name);

// state is all that the page holds. The record is that of the job in the fields, and
// empty while this is refused.
export const state = { job: undefined, before: undefined, record: "", faults: [], unsaved: false };

let sample, format;

const stopped = { sheet: "", record: "", faults: [{ path: "", want: "a program that runs. This one has stopped: save the job, and load the page again" }] };

// ask asks the program. If ever it should stop, nothing is left that looks like an
// answer.
function ask(job, units) {
  try {
    return collinear(job, units) ?? stopped;
  } catch {
    return stopped;
  }
}

// solve asks about what stands in the fields, and shows the answer.
function solve() {
  const answer = ask(JSON.stringify(state.job), $("units").value);
  const refused = answer.faults.length > 0;
  state.faults = answer.faults;
  state.record = answer.record;
  if (!refused) $("sheet").innerHTML = answer.sheet; // the program escapes every text in it
  $("stale").hidden = !refused || $("sheet").childElementCount === 0;
  if (refused) $("sheet").setAttribute("aria-describedby", "stale");
  else $("sheet").removeAttribute("aria-describedby");
  document.body.classList.toggle("refused", refused);
  $("print").disabled = $("save-record").disabled = refused;
  showFaults($("form"), $("fault-list"), answer.faults);
  $("faults").hidden = $("to-faults").hidden = !refused;
  say(refused ? refusal(answer.faults) : verdict(JSON.parse(answer.record)));
}

// say changes the live region only where there is something new to say.
function say(text) {
  if ($("verdict").textContent !== text) $("verdict").textContent = text;
}

// refusal tells apart a job that is still being filled in; what is there may have
// faults that are seen only then.
function refusal(faults) {
  const n = faults.length;
  const told = n === 1 ? "told at its field" : "each told at its field";
  const missing = faults.every((fault) => fault.code === "missing");
  return `${missing ? `The job is not complete: ${n} missing` : `The job is refused: ${n === 1 ? "1 fault" : `${n} faults`}`}, ${told}. There is no sheet for what stands in the fields.`;
}

const outcomes = { within: "all limits are kept", outside: "not all limits are kept", undecided: "not decided, the uncertainty is too large" };

const judged = (when, found) => `${when}: ${found.verdict ? outcomes[found.verdict.outcome] : "no limits are given, so there is no verdict"}.`;

function verdict(record) {
  return ["No fault.", judged("As found", record.found), ...(record.left ? [judged("As left", record.left)] : []), "This is not permission to run."].join(" ");
}

// take puts another job into the fields. The one before can be brought back.
function take(job) {
  state.before = state.job;
  $("back").disabled = !state.before;
  show(job, false);
}

function bringBack() {
  const job = state.before;
  state.before = state.job;
  show(job, true);
}

// show draws a job. The sheet of another one goes.
function show(job, unsaved) {
  state.job = job;
  state.unsaved = unsaved;
  $("sheet").replaceChildren();
  $("notice").replaceChildren();
  draw($("form"), job);
  solve();
  unfold($("form"));
}

async function open() {
  const [file] = $("open").files;
  if (!file) return;
  const { job, faults } = await opened(file, (text) => ask(text, "").faults);
  $("open").value = ""; // the same file can be opened again
  if (job) return take(job);
  $("notice").replaceChildren(
    make("p", {}, `${file.name} was not opened, since its fields cannot all be shown. What stands below is as it was.`),
    make("ul", {}, ...faults.map((fault) => make("li", {}, `${fault.path || "the file"}: ${said(fault)}`))));
}

// save hands a file to the browser.
function save(name, text) {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  make("a", { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 10000);
}

function saveJob() {
  save("job.json", JSON.stringify(state.job, null, 2) + "\n");
  state.unsaved = false;
}

function edited() {
  state.unsaved = true;
  solve();
}

// changed draws the fields anew and goes to what has come, or to where something was.
function changed(path) {
  const { found, left } = state.job;
  if (path === "/left" && left && Object.keys(left).length === 0) {
    for (const { name } of format.survey) if (isObject(found) && found[name]) left[name] = fresh(format, name); // as found, so left
  }
  draw($("form"), state.job);
  edited();
  const box = nearest(path) ?? $("form");
  visit(box.querySelector("input, select, textarea") ?? box.querySelector("button") ?? box);
}

// listen gives every control what it does.
function listen() {
  $("method").append(...format.survey.map((f) => make("option", { value: f.name }, f.label)));
  $("new").addEventListener("click", () => take(newJob(format, $("method").value)));
  $("sample").addEventListener("click", () => take(structuredClone(sample)));
  $("back").addEventListener("click", bringBack);
  $("open").addEventListener("change", open);
  $("save").addEventListener("click", saveJob);
  $("save-record").addEventListener("click", () => save("record.json", state.record));
  $("print").addEventListener("click", () => window.print());
  $("units").addEventListener("change", solve);
  window.addEventListener("beforeunload", (event) => state.unsaved && event.preventDefault());
}

// load fetches all that the page will ever ask for.
async function load() {
  const go = new Go();
  const [program, types, job] = await Promise.all(["collinear.wasm", "format.json", "sample.json"].map(fetched));
  [format, sample] = [await types.json(), await job.json()];
  const { instance } = await WebAssembly.instantiate(await program.arrayBuffer(), go.importObject);
  go.run(instance); // up to where it waits to be called
}

async function fetched(name) {
  const answer = await fetch(name);
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return answer;
}

try {
  await load();
  prepare(format, edited, changed);
  listen();
  take(structuredClone(sample));
} catch (err) {
  say(`The program could not be loaded: ${err.message}`);
}
