// A job is held as the document that it is: plain objects, lists and text. Nothing
// here knows what a job means; what is wrong with it the program says.

// step is the JSON Pointer one step further on.
export const step = (path, key) => path + "/" + String(key).replaceAll("~", "~0").replaceAll("/", "~1");

export const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

// fits tells whether a value is of the kind that a field of the format takes.
export function fits(field, value) {
  if (field.part) return isObject(value);
  if (field.list) return Array.isArray(value);
  return typeof value === (field.yes ? "boolean" : "string");
}

// fresh is an object of a type with all that it needs, and nothing in its fields.
export function fresh(format, type) {
  if (type === "text") return "";
  const needed = format[type].filter((field) => field.needed);
  return Object.fromEntries(needed.map((field) => [field.name, freshValue(format, field)]));
}

function freshValue(format, field) {
  if (field.start) return structuredClone(field.start);
  if (field.part) return fresh(format, field.part);
  return field.list ? [fresh(format, field.list)] : "";
}

// newJob is a job to be measured by one method.
export function newJob(format, method) {
  const job = fresh(format, "job");
  job.found = { [method]: fresh(format, method) };
  return job;
}

const most = 1 << 20; // bytes; the program refuses more, which need not be read to know it

// opened reads a file into {job}, or says in {faults} why its fields cannot be shown:
// it is no JSON, or holds what would be lost on the way, like a name given twice.
export async function opened(file, faultsOf) {
  const text = await contents(file);
  if (text === undefined) return { faults: [{ path: "", value: file.name, want: "UTF-8 text of at most 1 MiB" }] };
  const faults = faultsOf(text);
  const job = parsed(text);
  const whole = isObject(job) && !faults.some((fault) => fault.path === "");
  return whole && listed(faults) === listed(faultsOf(JSON.stringify(job))) ? { job } : { faults };
}

const listed = (faults) => JSON.stringify(faults.map((f) => [f.code, f.path, f.value, f.want]));

async function contents(file) {
  if (file.size > most) return undefined;
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(await file.arrayBuffer());
  } catch {
    return undefined;
  }
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
