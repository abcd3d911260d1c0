// A component list on its way: sent over HTTP, its plan shown here. However long the list, only counts and columns go through the circuit.
import { statusWords } from "./WorkbenchPage.razor.js";

const shownLines = 40;
const shownRows = 400;
const shownColumns = 100;

let answer = null;

// Source is a file field, or a text field with pasted rows.
export async function send(source, address, token) {
  const none = { rows: 0, imported: 0, added: 0, updated: 0, unchanged: 0, rejectedCount: 0, warningCount: 0, missing: 0, kept: 0, unread: 0 };
  answer = null;
  let body = source.value;
  if (source.files) {
    if (!source.files[0]) return { ...none, problem: "no file was chosen" };
    body = new FormData();
    body.append("file", source.files[0]);
  } else if (!body.trim()) return { ...none, problem: "nothing was pasted" };
  try {
    const response = await fetch(address, { method: "POST", body, headers: { RequestVerificationToken: token, Accept: "application/json" } });
    const got = await response.json().catch(() => ({}));
    if (!response.ok) return { ...none, problem: got.detail ?? got.title ?? statusWords(response.status) };
    answer = got;
    return {
      rows: got.rows, imported: got.imported, added: got.added, updated: got.updated, unchanged: got.unchanged,
      rejected: got.rejected.slice(0, shownLines), rejectedCount: got.rejected.length,
      warnings: got.warnings.slice(0, shownLines).map(text => text.slice(0, 300)), warningCount: got.warnings.length,
      columns: got.columns.slice(0, shownColumns).map(column => ({ header: (column.header ?? "").slice(0, 120), meaning: column.meaning ?? null })),
      sheets: got.sheets.slice(0, shownLines).map(sheet => ({ ...sheet, name: sheet.name.slice(0, 120), reason: sheet.reason?.slice(0, 300) ?? null })),
      encoding: got.encoding ?? null, delimiter: got.delimiter ?? null,
      missing: got.missing.length, kept: got.lines.filter(line => line.kept.length > 0).length, unread: got.rejected_cells.length,
    };
  } catch {
    return { ...none, problem: "the lab was not reached" };
  }
}

// What becomes of each row. With onlyOpen the rows alone that a person should look at.
export function show(place, onlyOpen) {
  place.replaceChildren();
  if (!answer) return 0;
  const lines = answer.lines.filter(line => !onlyOpen || isOpen(line));
  const columns = answer.columns.filter(column => column.meaning && !quiet.has(column.meaning)).map(column => column.header);
  const rows = lines.slice(0, shownRows).map(line => make("tr", line.action === "same" ? "calm" : "", [
    make("th", "num", [line.sheet ? `${line.sheet}, ${line.row}` : `${line.row}`], { scope: "row" }),
    make("td", "", [actionWord(line.action), ...(line.fitted ? [] : [make("small", "", ["not fitted"])])]),
    ...columns.map(column => make("td", "", line.cells.filter(cell => cell.column === column).map(cellText))),
    make("td", "", line.ratings.filter(rating => rating.action !== "keep").map(rating => make("span", "reason", [ratingText(rating)]))),
    make("td", "mono", line.family ? [line.family.name, ...(line.family.slug ? [] : [make("small", "", ["new family"])])] : []),
    make("td", "", [
      ...line.changes.map(change => make("span", "reason", [`${words(change.field)}: ${change.from ?? "nothing"} becomes ${change.to ?? "nothing"}`])),
      ...line.kept.map(kept => make("span", "reason", [`${words(kept.field)} stays ${kept.from ?? "empty"}; the list says ${kept.to ?? "nothing"}`])),
      ...line.remarks.map(remark => make("span", "reason not-known", [remark])),
    ]),
  ]));
  const head = ["Row", "", ...columns, "Ratings", "Family", "Remarks"].map((word, at) => make("th", at === 0 ? "num" : "", at === 1 ? [make("span", "hidden", ["What happens"])] : [word], { scope: "col" }));
  place.append(make("table", "table plan", [make("thead", "", [make("tr", "", head)]), make("tbody", "", rows)]));
  return lines.length - rows.length;
}

// Every row and every cell that was not taken as it stands, as a file.
export function save(name) {
  if (!answer) return;
  const records = [["sheet", "row", "what_happened", "column", "text", "read_as", "remark"]];
  for (const row of answer.rejected) records.push([row.sheet, row.row, "rejected", "", "", "", row.reason]);
  for (const part of answer.missing) records.push(["", "", "missing", "", part.name, "", "not in this list; left as it is"]);
  for (const line of answer.lines) {
    for (const cell of line.cells) records.push([line.sheet, line.row, line.action, cell.column, cell.text, cell.reading ?? "", cell.problem ?? ""]);
    for (const kept of line.kept) records.push([line.sheet, line.row, "kept", kept.field, kept.to, kept.from, "a person's word stands"]);
    for (const remark of line.remarks) records.push([line.sheet, line.row, line.action, "", "", "", remark]);
  }
  const text = "\uFEFF" + records.map(record => record.map(field).join(",")).join("\r\n") + "\r\n";
  const link = make("a", "", [], { href: URL.createObjectURL(new Blob([text], { type: "text/csv" })), download: name });
  link.click();
  URL.revokeObjectURL(link.href);
}

const quiet = new Set(["running_number", "link", "supplier", "supplier_part_number"]);

function isOpen(line) {
  return line.kept.length > 0 || line.remarks.length > 0 || line.changes.length > 0 || line.cells.some(cell => cell.problem);
}

function actionWord(action) {
  return { add: "new", update: "changed", same: "as it is" }[action] ?? action;
}

function cellText(cell) {
  const parts = [cell.text.slice(0, 200)];
  if (cell.reading) parts.push(make("small", "", [cell.reading]));
  if (cell.problem) parts.push(make("small", "", [`not read: ${cell.problem}`]));
  return make("span", cell.problem ? "reason not-known" : "reason", parts);
}

function ratingText(rating) {
  return rating.action === "remove" ? `${rating.text} goes` : rating.action === "update" ? `now ${rating.text}` : rating.text;
}

function words(code) {
  return code.replaceAll("_", " ");
}

// A spreadsheet runs what begins like a formula.
function field(value) {
  const text = `${value ?? ""}`;
  const safe = /^[=+\-@\t\r]/.test(text) && isNaN(Number(text)) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function make(name, style, children, attributes = {}) {
  const element = document.createElement(name);
  if (style) element.className = style;
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}
