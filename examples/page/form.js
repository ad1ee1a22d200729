// The form is made from the job itself. The id of a field is its JSON Pointer, so
// that a fault finds it. What is typed goes into the job as it is typed.
import { fits, fresh, step } from "./job.js";
import { id, make, notes } from "./markup.js";

let format, edited, changed;

// prepare tells what the types of a job are, and what to call when a field has new
// text, and when fields have come or gone (with the path of what to look at next).
export function prepare(types, onEdit, onChange) {
  [format, edited, changed] = [types, onEdit, onChange];
}

// draw makes the fields of a job: what is read most often first and in the open, the
// rest folded up.
export function draw(root, job) {
  const open = new Set([...root.querySelectorAll("details[open]")].map((e) => e.dataset.path));
  const fields = format.job;
  const readings = fields.filter((f) => f.part === "survey");
  const parts = fields.filter((f) => f.part && f.part !== "survey");
  const words = fields.filter((f) => !f.part);
  root.replaceChildren(
    ...readings.map((f) => member(job, f, "")),
    folded("", "Job", make("div", { class: "fields" }, ...words.map((f) => member(job, f, "")), ...strangers(job, "job", ""))),
    ...parts.map((f) => (fits(f, job[f.name]) ? folded(step("", f.name), f.label, member(job, f, "")) : member(job, f, ""))),
  );
  for (const e of root.querySelectorAll("details")) e.open = open.has(e.dataset.path);
}

const folded = (path, label, ...inside) =>
  make("details", { "data-path": path }, make("summary", {}, make("h3", {}, label), make("span", { class: "count" })), ...inside);

// member is one field of an object, there or not.
function member(owner, field, path) {
  const here = { owner, key: field.name, path: step(path, field.name), field };
  const there = Object.hasOwn(owner, field.name);
  if (there && !fits(field, owner[field.name])) return odd(here, field.label);
  if (field.list) return list(here);
  if (field.part) return there ? part(here) : field.one ? methodAdder(here) : adder(here);
  return field.yes ? check(here) : leaf(here, field.label);
}

// strangers are what stands in an object and belongs to no job. They are shown, so
// that nothing is dropped unseen.
function strangers(owner, type, path) {
  const known = new Set(format[type].map((f) => f.name));
  return Object.keys(owner).filter((key) => !known.has(key))
    .map((key) => odd({ owner, key, path: step(path, key), field: {} }, key));
}

// odd shows a value that no field can hold.
function odd(here, label) {
  const value = JSON.stringify(here.owner[here.key]);
  return make("div", { class: "field", id: id(here.path), tabindex: -1, "data-label": label },
    make("span", {}, label + ": "), make("code", {}, value), remover(here, label), notes(here.path));
}

// leaf is a field with text in it, or a choice of words. Text that is no longer
// there is left out, unless the field is needed.
function leaf(here, label, hidden) {
  const { owner, key, field, path } = here;
  const value = Object.hasOwn(owner, key) ? owner[key] : "";
  const input = control(field, value);
  input.value = value;
  input.id = id(path);
  input.addEventListener("input", () => {
    if (input.value === "" && !field.needed) delete owner[key];
    else owner[key] = input.value;
    edited();
  });
  if (field.needed) input.setAttribute("aria-required", "true");
  return make("div", { class: "field" }, make("label", { for: id(path), class: hidden ? "hidden" : "" }, label), input, notes(path, field.hint, input));
}

// control has a line for a quantity, and as many lines as it takes for words.
function control(field, value) {
  if (field.choice) return choice(field, value);
  const plain = { autocomplete: "off", spellcheck: "false" };
  return field.words ? make("textarea", { rows: Math.ceil((value.length + 1) / 40), ...plain }) : make("input", { type: "text", ...plain });
}

// choice keeps a word that is none of those to choose from.
function choice(field, value) {
  const words = { "": field.needed ? "choose" : "not stated", ...field.choice };
  if (!Object.hasOwn(words, value)) words[value] = value;
  return make("select", {}, ...Object.entries(words).map(([word, text]) => make("option", { value: word }, text)));
}

function check(here) {
  const input = make("input", { type: "checkbox", id: id(here.path) });
  input.checked = here.owner[here.key] === true;
  input.addEventListener("change", () => {
    if (input.checked) here.owner[here.key] = true;
    else delete here.owner[here.key];
    edited();
  });
  return make("div", { class: "field check" }, input, make("label", { for: id(here.path) }, here.field.label), notes(here.path, here.field.hint, input));
}

// part is an object inside another.
function part(here) {
  const { field, path } = here;
  return group(path, field.label, field.hint, ...members(here.owner[here.key], field.part, path),
    field.needed ? undefined : remover(here, field.label));
}

const isReadings = (field) => field.list === "reading";

// members are the fields of an object: words and quantities first, and of two dials
// the one beside the other. Where there are readings these come first of all.
function members(owner, type, path) {
  const all = format[type].map((f) => [f, member(owner, f, path)]);
  const pick = (wanted) => all.filter(([f]) => wanted(f)).map(([, e]) => e);
  const plain = (f) => !f.part && !f.list;
  const fields = make("div", { class: "fields" }, ...pick(plain), ...strangers(owner, type, path));
  const readings = pick(isReadings);
  if (readings.length === 0) {
    const dials = pick((f) => format[f.part]?.some(isReadings));
    return [fields, make("div", { class: "pair" }, ...dials), ...pick((f) => !plain(f) && !format[f.part]?.some(isReadings))];
  }
  const rest = pick((f) => f.part);
  return [...readings, fields, rest.length ? folded(path, "Mandrel, uncertainties", ...rest) : undefined];
}

const group = (path, label, hint, ...inside) => {
  const box = make("fieldset", { id: id(path), tabindex: -1, class: "group" }, make("legend", {}, label));
  box.append(notes(path, hint, box), ...inside.filter(Boolean));
  return box;
};

// list is any number of elements; of readings a table.
function list(here) {
  const { owner, key, field, path } = here;
  const values = owner[key] ?? [];
  const elements = values.map((value, i) => ({ owner: values, key: i, path: step(path, i), field: { ...field, needed: true }, value }));
  const rows = isReadings(field) ? [table(elements)] : elements.map(element);
  return group(path, field.label, field.hint, ...rows, button(`Add: ${field.item}`, () => {
    if (!Object.hasOwn(owner, key)) owner[key] = [];
    owner[key].push(fresh(format, field.list));
    changed(step(path, owner[key].length - 1));
  }));
}

const nth = (here) => `${here.field.item} ${here.key + 1}`;

function element(here) {
  const { field, path, value } = here;
  if (field.list === "text") {
    if (typeof value !== "string") return odd(here, nth(here));
    return make("div", { class: "row" }, leaf({ ...here, field: { needed: true, words: true } }, nth(here)), remover(here, nth(here)));
  }
  if (!fits({ part: field.list }, value)) return odd(here, nth(here));
  return group(path, nth(here), undefined, ...members(value, field.list, path), remover(here, nth(here)));
}

// table has a row of fields for each reading, under headings that are their labels.
function table(elements) {
  const heads = format.reading.map((f) => make("th", { scope: "col" }, f.label));
  return make("table", {}, make("thead", {}, make("tr", {}, ...heads, make("td", {}))), make("tbody", {}, ...elements.flatMap(tableRow)));
}

// tableRow is a reading, and below it a row for what is wrong with it.
function tableRow(here) {
  const wide = (...inside) => make("tr", { class: "told" }, make("td", { colspan: 3 }, ...inside));
  if (!fits({ part: "reading" }, here.value) || strangers(here.value, "reading", here.path).length) return [wide(element(here))];
  const cells = format.reading.map((f) => cell(here, f));
  const told = cells.map((c) => c.querySelector(".notes"));
  const row = make("tr", { id: id(here.path), tabindex: -1, "data-label": nth(here) }, ...[...cells, remover(here, nth(here), "Take out")].map((c) => make("td", {}, c)));
  return [row, wide(...told, notes(here.path))];
}

function cell(here, field) {
  const path = step(here.path, field.name);
  const place = { owner: here.value, key: field.name, path, field };
  if (Object.hasOwn(here.value, field.name) && !fits(field, here.value[field.name])) return odd(place, field.label);
  return leaf(place, `${nth(here)}, ${field.label.toLowerCase()}`, true);
}

const button = (text, act, attributes = {}) => make("button", { type: "button", onclick: act, ...attributes }, text);

// adder stands where a part may be.
function adder(here) {
  const add = button(`Add: ${here.field.label}`, () => {
    here.owner[here.key] = fresh(format, here.field.part);
    changed(here.path);
  }, { id: id(here.path) });
  return make("div", { class: "adder" }, add, notes(here.path, here.field.hint, add));
}

// methodAdder is there as long as no method is.
function methodAdder(here) {
  return format.survey.some((f) => Object.hasOwn(here.owner, f.name)) ? "" : adder(here);
}

// remover takes out what an object or a list holds.
function remover(here, label, text = `Take out: ${label}`) {
  return button(text, () => {
    const { owner, key, path } = here;
    if (Array.isArray(owner)) owner.splice(key, 1);
    else delete owner[key];
    changed(Array.isArray(owner) ? path.slice(0, path.lastIndexOf("/")) : path);
  }, { "aria-label": `Take out: ${label}`, class: "remover" });
}
