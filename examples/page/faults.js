// Faults are shown at their fields, and in a list that leads there.
import { id, make } from "./markup.js";

// said is a fault in words. Which function of the library read the text, and at which
// byte it stopped, is left out.
export function said(fault, field) {
  const want = field?.matches("select") ? "one of the choices" : fault.want.replace(/^units\.Parse\w+: (at byte \d+: )?/, "");
  return `Wanted: ${want}.` + (fault.value && fault.value !== '""' ? ` Found: ${fault.value}` : "");
}

// show marks every field that has a fault and takes all other marks away.
export function show(root, list, faults) {
  for (const note of root.querySelectorAll("p.fault:not([hidden])")) clear(note);
  list.replaceChildren(...faults.map((fault) => make("li", {}, ...entry(fault))));
  for (const folded of root.querySelectorAll("details")) count(folded);
}

function clear(note) {
  note.hidden = true;
  note.textContent = "";
  const field = document.getElementById(note.id.slice(0, -"!fault".length));
  field.removeAttribute("aria-invalid");
  const others = described(field).filter((name) => name !== note.id);
  if (others.length) field.setAttribute("aria-describedby", others.join(" "));
  else field.removeAttribute("aria-describedby");
}

const described = (field) => (field.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean);

// entry marks the field of a fault and makes the link to it. A fault of the whole
// job has neither.
function entry(fault) {
  const field = nearest(fault.path);
  if (!field) return [said(fault)];
  mark(field, said(fault, field));
  const link = make("a", { href: "#" + encodeURI(field.id), onclick: (event) => { event.preventDefault(); visit(field); } }, nameOf(field));
  return [link, ": " + said(fault, field)];
}

// nearest is the field of a path, or of what it lies in: a fault may tell of
// something that is not there.
export function nearest(path) {
  for (; path; path = path.slice(0, path.lastIndexOf("/"))) {
    const field = document.getElementById(id(path));
    if (field) return field;
  }
  return null;
}

function mark(field, text) {
  const note = document.getElementById(field.id + "!fault");
  note.textContent += (note.textContent && " ") + text;
  note.hidden = false;
  if (field.matches("input, select, textarea")) field.setAttribute("aria-invalid", "true");
  field.setAttribute("aria-describedby", [...new Set([note.id, ...described(field)])].join(" "));
}

// unfold opens all that has something refused in it.
export function unfold(root) {
  for (const folded of root.querySelectorAll("details")) folded.open ||= folded.querySelector("p.fault:not([hidden])") !== null;
}

// visit unfolds what a field lies in, and goes there.
export function visit(field) {
  for (let e = field.closest("details"); e; e = e.parentElement.closest("details")) e.open = true;
  field.focus();
  field.scrollIntoView({ block: "center" });
}

// nameOf is what a field is called, from the outside in.
function nameOf(field) {
  const names = [field.dataset.label ?? field.labels?.[0]?.textContent ?? field.querySelector("legend")?.textContent ?? field.textContent];
  for (let e = field.parentElement.closest("fieldset"); e; e = e.parentElement.closest("fieldset")) {
    names.unshift(e.querySelector("legend").textContent);
  }
  return names.join(", ");
}

// count says on what is folded how many fields in it are refused.
function count(folded) {
  const n = folded.querySelectorAll("p.fault:not([hidden])").length;
  folded.querySelector(".count").textContent = n ? ` (${n} refused)` : "";
}
