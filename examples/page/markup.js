// What the page makes of elements. Text goes in as text, never as markup.

// make is an element with attributes and children; a function is a listener. What is
// undefined or empty is left out.
export function make(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value !== undefined && value !== "" || name === "value") element.setAttribute(name, value);
  }
  element.append(...children.filter((child) => child !== undefined));
  return element;
}

// id is the id of the field at a JSON Pointer: the pointer itself, but for spaces,
// which an id cannot have.
export const id = (path) => path.replace(/[\s%]/g, encodeURIComponent);

// notes stand below a field: a hint, and room for what is wrong with it. The field
// names them as what describes it.
export function notes(path, hint, described) {
  const box = make("div", { class: "notes" });
  if (hint) box.append(make("p", { class: "hint", id: id(path) + "!hint" }, hint));
  box.append(make("p", { class: "fault", id: id(path) + "!fault", hidden: "hidden" }));
  if (hint && described) described.setAttribute("aria-describedby", id(path) + "!hint");
  return box;
}
