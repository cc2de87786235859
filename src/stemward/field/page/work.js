// Work: the next stem or the clock, Cut and Treated, and what belongs to them. Nothing moves when a clock starts.

import { clock, h, length, once, say } from "./dom.js";
import { clockLeft, clockPart, direction, distanceM, minutesShown, moment } from "./rules.js";
import * as s from "./state.js";

let picked = "";
const skipped = new Set();
let told = "";

/** Choose a stem from the list or the map. */
export const pick = (id) => { picked = id; skipped.delete(id); };

/** The stem that comes next: the one picked, else the first that is not done, not skipped and not cut. */
export function current(all = s.inOrder()) {
  const open = all.filter((one) => !one.done && !(one.cut > one.treated && one.id !== picked));
  return open.find((one) => one.id === picked) || open.find((one) => !skipped.has(one.id)) || open[0] || null;
}

/** The stump whose clock is shown: the one picked if it waits, else the oldest. */
export function ticking() {
  const own = s.waiting();
  return own.find((one) => one.id === picked) || own[0] || null;
}

const many = () => s.state.settings.rhythm === "lots";

/** What to do next: "cut", "treated" or "" when all is done. */
export function expected() {
  const sheet = s.sheet();
  if (!sheet || sheet.stopped.length) return "";
  const stem = current();
  const wait = s.waiting();
  if (!sheet.cut) return stem ? "treated" : "";
  if (!sheet.treat) return stem ? "cut" : "";
  if (!stem) return wait.length ? "treated" : "";
  const lot = many() ? 1 : (s.walk() ? Math.max(1, ...wait.map((one) => lotOf(one.id)), stem.lot || 1) : sheet.lot || 1);
  return wait.length >= lot ? "treated" : "cut";
}

const lotOf = (id) => (s.walked().find((one) => one.id === id && one.sheet === s.state.settings.sheet) || {}).lot || 1;

/** Write a mark down. stems: plants by stem id. */
async function mark(what, stems, more = {}) {
  const sheet = s.sheet();
  const body = {
    what, rows: stems, patch: sheet.patch, species: sheet.species, state: sheet.state, treatment: sheet.id, plan: s.state.plan.code,
    people: s.state.settings.who ? [s.state.settings.who] : [], ...more,
  };
  await s.add("marked", body);
  if (navigator.vibrate) navigator.vibrate(40);
  picked = "";
  await s.follow();
  changed();
}

const clockMore = (sheet, cutMs) => (sheet.limit_s && cutMs ? { waited_s: Math.max(0, Math.round((Date.now() - cutMs) / 1000)), limit_s: sheet.limit_s } : {});

/** The button CUT, or LOT CUT with its count. */
export async function cut() {
  const sheet = s.sheet();
  if (!sheet || !sheet.cut) return;
  if (many()) return lot("cut");
  const stem = current();
  if (stem) await mark("cut", { [stem.id]: stem.count - stem.cut > 0 ? stem.count - stem.cut : 1 });
}

/** The button TREATED: the stump whose clock is shown, else the stem that is shown. */
export async function treated(why = "") {
  const sheet = s.sheet();
  if (!sheet || !sheet.treat) return;
  if (many() && !why) return lot("treated");
  const wait = ticking();
  const anyway = why ? { anyway: why } : {};
  if (sheet.cut && wait) return mark("treated", { [wait.id]: wait.count }, { ...clockMore(sheet, wait.cutMs), ...anyway });
  const stem = current();
  if (stem) await mark("treated", { [stem.id]: Math.max(1, stem.count - stem.treated) }, anyway);
}

/** All that wait are treated, one row each, so that each keeps its own time. */
export async function allTreated() {
  const sheet = s.sheet();
  for (const wait of s.waiting()) await mark("treated", { [wait.id]: wait.count }, clockMore(sheet, wait.cutMs));
}

export const lotCount = () => s.state.settings.lot || (s.sheet() && s.sheet().lot) || 10;

async function lot(what) {
  const sheet = s.sheet();
  const flag = s.state.settings.flag ? { flag: s.state.settings.flag } : {};
  const name = { lot: `${s.state.settings.device} ${s.state.rows.length + 1}`, ...flag };
  if (what === "treated" && sheet.cut) {
    const wait = s.waiting();
    if (wait.length) {
      const rows = Object.fromEntries(wait.map((one) => [one.id, one.count]));
      return mark("treated", rows, { ...clockMore(sheet, wait[0].cutMs), ...name });
    }
  }
  const rows = {};
  let left = lotCount();
  for (const stem of s.stems()) {
    if (left <= 0) break;
    const open = stem.done ? 0 : stem.count - (what === "cut" ? stem.cut : stem.treated);
    if (open <= 0) continue;
    rows[stem.id] = Math.min(open, left);
    left -= rows[stem.id];
  }
  if (Object.keys(rows).length) await mark(what, rows, name);
}

export function skip() {
  const stem = current();
  if (!stem) return;
  skipped.add(stem.id);
  if (picked === stem.id) picked = "";
  changed();
}

/** Not done on purpose, or not there: ends the work on a stem. */
export async function leave(what) {
  const stem = current();
  if (stem) await mark(what, { [stem.id]: stem.count });
}

/** A plant that stands on no list: noted with the place where the phone knows it. */
export async function missed() {
  const sheet = s.sheet();
  const here = s.state.here;
  const place = here ? { latitude_deg: here.latitude, longitude_deg: here.longitude, accuracy_m: Math.round(here.accuracy) } : {};
  await s.add("noted", { what: "missed one", patch: sheet ? sheet.patch : "", ...place });
  say("Missed one noted.");
  changed();
}

export async function takeBack() {
  const row = s.last();
  if (!row) return;
  await s.add("taken back", { why: "taken back on the phone" }, row.id);
  say("Taken back.");
  changed();
}

/** What a row says, for Take back and the list of marks. */
export function rowWords(row) {
  const numbers = new Map((s.state.plan ? s.state.plan.sheets : []).flatMap((sheet) => sheet.rows.map((r) => [r[0], r[1]])));
  const named = Object.entries(row.body.rows || {}).map(([id, n]) => (n > 1 ? `${numbers.get(id) ?? id} (${n})` : `${numbers.get(id) ?? id}`));
  const stems = named.length > 4 ? `${named.length} rows` : named.join(", ");
  const what = row.kind === "marked" ? row.body.what : row.body.what === "missed one" ? "missed one" : "note";
  return `${stems} ${what}`.trim() + `, ${clock(moment(row))}`;
}

/** Keys of a one-key clicker press the filled button. */
export function clicker() {
  const next = expected();
  if (next) once(`clicker ${next}`, () => (next === "cut" ? cut() : treated()));
}

let changed = () => {};
export const onChange = (act) => { changed = act; };

const octagon = () => { const one = h("span", { class: "octagon", "aria-hidden": "true" }, "✕"); return one; };

/** Where a stem is: from where the phone is, else from the stem marked last. */
function where(stem) {
  const plan = s.state.plan;
  if (stem.x === null) return "";
  const from = s.here() || lastPlace();
  if (!from) return "";
  const [x, y] = [stem.x - from[0], stem.y - from[1]];
  const way = direction(x, y);
  return way === "here" ? "here" : `${length(distanceM(x, y), plan.units)} ${way}${s.here() ? "" : " of the last"}`;
}

/** Where one stands: by the phone, else at the last stem that was marked. */
export const standing = () => s.here() || lastPlace();

function lastPlace() {
  const row = s.last();
  const id = row && row.body.rows && Object.keys(row.body.rows)[0];
  const found = id && s.sheet().rows.find((one) => one[0] === id);
  return found && found[5] !== null ? [found[5], found[6]] : null;
}

/** The page. */
export function draw() {
  const sheet = s.sheet();
  if (!sheet) return h("div", {}, h("p", {}, "No plan on this phone. On the computer: Day, Put it on a phone."), h("p", {}, "Or open a plan file: Day."));
  const stem = current();
  const wait = s.waiting();
  const last = s.last();
  const next = expected();
  const one = h("div", { class: "work" }, card(sheet, stem, wait),
    h("button", { id: "back", class: "outlined wide", disabled: !last, on: takeBack }, last ? `Take back: ${rowWords(last)}` : "Nothing to take back"),
    h("div", { class: "three" },
      h("button", { id: "skip", class: "outlined", on: skip }, "Skip"),
      h("button", { id: "missed", class: "outlined", on: missed }, "Missed one"),
      h("button", { id: "note", class: "outlined", on: () => dispatchEvent(new CustomEvent("note")) }, "Note")));
  if (sheet.stopped.length) {
    one.append(h("button", { id: "anyway", class: "outlined wide tall", on: () => dispatchEvent(new CustomEvent("anyway")) }, "Record that it was done anyway"));
    return one;
  }
  const lots = many();
  const buttons = h("div", { class: sheet.cut && sheet.treat ? "two" : "one" });
  if (sheet.cut) buttons.append(h("button", { id: "cut", class: next === "cut" ? "filled" : "outlined", on: cut }, lots ? `LOT CUT: ${lotCount()}` : "CUT"));
  if (sheet.treat) buttons.append(h("button", { id: "treated", class: next === "treated" ? "filled" : "outlined", on: () => treated() }, lots ? `LOT TREATED${sheet.cut && wait.length ? `: ${wait.reduce((sum, w) => sum + w.count, 0)}` : sheet.cut ? "" : `: ${lotCount()}`}` : "TREATED"));
  one.append(buttons);
  return one;
}

function card(sheet, stem, wait) {
  const left = s.inOrder().filter((x) => !x.done).length;
  const made = h("div", { class: "card", id: "card" });
  if (stem) {
    made.append(...[
      h("p", { class: "head" }, h("strong", { class: "number" }, String(stem.n)), h("span", {}, `${sheet.plants} · ${sheet.what.toLowerCase()}${stem.count > 1 ? ` · ${stem.count} plants` : ""}`)),
      h("p", {}, [stem.size, stem.dose ? (sheet.dose_head === "Squirts" ? `${stem.dose} squirts` : stem.dose) : ""].filter(Boolean).join(" · ")),
      stem.refill ? h("p", {}, h("strong", {}, "Refill first. "), "Back to where the mix is made.") : null,
      h("p", {}, where(stem) || `${left} left in ${sheet.patch_name}`)].filter(Boolean));
  } else {
    made.append(h("p", { class: "head" }, h("strong", {}, wait.length ? "All cut." : "All done here.")), h("p", {}, wait.length ? "Treat what waits." : s.walk() ? "This walk is done. Others: Day." : "Choose another treatment: Day."));
  }
  if (sheet.stopped.length) {
    made.classList.add("stop");
    made.append(h("p", { class: "stopped" }, octagon(), h("strong", {}, "Stop. "), sheet.stopped[0]));
    return made;
  }
  made.append(h("p", { class: "clock", id: "clock" }), h("p", { class: "under" },
    wait.length ? h("button", { class: "plain", id: "waiting-stems", on: () => dispatchEvent(new CustomEvent("waiting")) }, `${wait.length} cut, waiting`) : h("span", {}, sheet.cautions[0] || "")));
  return made;
}

/** The clock that runs, in words: {wait, part, text}; null while none does. */
export function running() {
  const sheet = s.sheet();
  const wait = sheet && s.state.settings.clock ? ticking() : null;
  if (!wait || !sheet.limit_s) return null;
  const waited = (Date.now() - wait.cutMs) / 1000;
  const part = clockPart(sheet.limit_s, waited);
  const by = clock(wait.cutMs + sheet.limit_s * 1000);
  const left = minutesShown(clockLeft(sheet.limit_s, waited));
  const text = part === "over" ? `Out of time: ${wait.n}. Cut a fresh face, or do as the label says.` : `${left} min left · treat by ${by}`;
  return { wait, part, text };
}

/** Tell the clock's words where they stand, once a second; answers true while one runs. */
export function tick() {
  const place = document.getElementById("clock");
  const frame = document.getElementById("card");
  const found = running();
  document.body.classList.toggle("over", Boolean(found && found.part === "over" && place));
  if (frame) frame.classList.toggle("half", Boolean(found && found.part === "second half"));
  if (place) place.textContent = found ? found.text : "";
  if (place) place.classList.toggle("late", Boolean(found && found.part === "over"));
  if (!found) {
    told = "";
    return false;
  }
  const now = `${found.wait.id} ${found.part}`;
  if (told !== now) {
    if (found.part === "over") alarm();
    if (told.startsWith(`${found.wait.id} `) || found.part === "over") say(found.text);
    told = now;
  }
  return true;
}

function alarm() {
  if (navigator.vibrate) navigator.vibrate([400, 200, 400, 200, 400]);
  try {
    const sound = new AudioContext();
    const tone = sound.createOscillator();
    tone.connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + 0.6);
    tone.onended = () => sound.close();
  } catch { /* the screen is the signal */ }
}
