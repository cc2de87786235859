// List, Map, Day, Emergency, notes: what stands behind the other buttons.

import { clock, h, length, say, svg } from "./dom.js";
import { distanceM, moment } from "./rules.js";
import * as s from "./state.js";
import * as work from "./work.js";

let nearest = false;
const stateWords = (stem, sheet) => {
  if (stem.what === "missed") return "☐ left out";
  if (stem.what === "not found") return "? not found";
  if (stem.done) return sheet.treat ? "● treated" : "● cut";
  if (stem.cut > stem.treated) return "◐ cut, waiting";
  return "○ to do";
};

/** Rows of the stems; nearest first on a press only. */
export function list() {
  const sheet = s.sheet();
  if (!sheet) return work.draw();
  const from = s.here();
  const own = s.walk();
  let rows = own ? s.walked() : s.stems();
  if (nearest && from) rows = [...rows].sort((a, b) => far(a, from) - far(b, from));
  const open = rows.filter((one) => !one.done);
  return h("div", {},
    h("p", {}, own ? `${open.length} of ${rows.length} to do on the walk of ${own.person}: ${own.title}.` : `${open.length} of ${rows.length} to do in ${sheet.patch_name}, ${sheet.plants}.`),
    h("div", { class: "three" },
      h("button", { class: "outlined", on: () => { nearest = true; locate(); } }, "Nearest first"),
      h("button", { class: "outlined", on: () => { nearest = false; dispatchEvent(new CustomEvent("drawn")); } }, own ? "In walking order" : "By number"),
      own ? h("button", { id: "from-here", class: "outlined", on: fromHere }, "Order anew from here") : null,
      s.waiting().length ? h("button", { id: "all-treated", class: "outlined", on: work.allTreated }, `All ${s.waiting().length} treated`) : null),
    nearest && !from ? h("p", {}, s.state.plan.origin ? "This phone does not know where it is." : "The plan does not say where on the earth the land lies, so nearest cannot be told.") : null,
    h("p", {}, "Under leaves a phone is off by 15 to 30 ft: look at the stem, not at the phone."),
    h("ol", { class: "stems" }, rows.slice(0, 400).map((stem) => h("li", {},
      stem.refill ? h("p", {}, "Refill: back to where the mix is made") : null,
      h("button", { class: "row", on: async () => { if (stem.sheet) await s.set({ sheet: stem.sheet }); work.pick(stem.id); dispatchEvent(new CustomEvent("tab", { detail: "work" })); } },
        h("strong", {}, String(stem.n)), h("span", {}, stem.size, from && stem.x !== null ? ` · ${length(far(stem, from), s.state.plan.units)}` : ""), h("span", {}, stateWords(stem, stem.sheet ? s.state.plan.sheets.find((one) => one.id === stem.sheet) : sheet)))))),
    rows.length > 400 ? h("p", {}, "The first 400 are shown.") : null,
    h("h2", {}, "Marks of this phone"),
    marksList());
}

/** From where one stands, or from the last stem marked; says so where neither is known. */
async function fromHere() {
  locate();
  const done = await s.fromHere(work.standing());
  nearest = false;
  say(done ? "Ordered anew from here. Lots and refills of the old order hold no more." : "Mark a stem first, or let the phone know where it is.");
  again();
}

const far = (stem, from) => (stem.x === null ? Infinity : distanceM(stem.x - from[0], stem.y - from[1]));

/** Waiting stumps, the oldest on top, each with its time. */
export function waiting() {
  const sheet = s.sheet();
  return h("div", {}, h("h1", {}, "Cut, waiting"),
    h("ol", { class: "stems" }, s.waiting().map((one) => h("li", {},
      h("button", { class: "row", on: () => { work.pick(one.id); dispatchEvent(new CustomEvent("tab", { detail: "work" })); } },
        h("strong", {}, String(one.n)), h("span", {}, sheet.limit_s ? `treat by ${clock(one.cutMs + sheet.limit_s * 1000)}` : ""), h("span", {}, `cut ${clock(one.cutMs)}`))))),
    h("button", { id: "all-treated", class: "outlined wide", on: async () => { await work.allTreated(); dispatchEvent(new CustomEvent("tab", { detail: "work" })); } }, `All ${s.waiting().length} treated`),
    backToWork());
}

function marksList() {
  const rows = [...s.state.rows].reverse().slice(0, 60);
  if (!rows.length) return h("p", {}, "None yet.");
  const gone = new Set(s.state.rows.map((one) => one.row.corrects).filter(Boolean));
  return h("ol", { class: "marks" }, rows.map(({ row, state, why }) => h("li", {},
    h("span", { class: gone.has(row.id) ? "gone" : "" }, row.kind === "taken back" ? `Taken back, ${clock(moment(row))}` : work.rowWords(row)),
    h("small", {}, { waiting: "not sent yet", sent: "sent", refused: `refused: ${why}` }[state]),
    row.kind !== "taken back" && !gone.has(row.id) && state !== "refused"
      ? h("button", { class: "outlined", on: async () => { await s.add("taken back", { why: "taken back on the phone" }, row.id); dispatchEvent(new CustomEvent("drawn")); } }, "Take back") : null)));
}

/** Ask the phone where it is, once. */
export function locate(after = () => dispatchEvent(new CustomEvent("drawn"))) {
  if (!navigator.geolocation) return after();
  navigator.geolocation.getCurrentPosition(({ coords }) => {
    s.state.here = { latitude: coords.latitude, longitude: coords.longitude, accuracy: coords.accuracy, ms: Date.now() };
    after();
  }, () => { s.state.here = null; after(); }, { enableHighAccuracy: true, timeout: 20000, maximumAge: 20000 });
}

let view = null;
/** Stems as numbers on paper; buttons move it, no gestures. */
export function map() {
  const sheet = s.sheet();
  if (!sheet) return work.draw();
  const all = s.stems().filter((one) => one.x !== null);
  if (!all.length) return h("p", {}, "These plants were counted, not mapped. There is nothing to draw.");
  if (!view || view.sheet !== sheet.id) {
    const xs = all.map((one) => one.x);
    const ys = all.map((one) => one.y);
    const wide = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys), 10) * 1.2;
    view = { sheet: sheet.id, x: (Math.max(...xs) + Math.min(...xs)) / 2, y: (Math.max(...ys) + Math.min(...ys)) / 2, wide };
  }
  const high = view.wide;
  const unit = view.wide / 336;
  const next = work.current();
  const drawn = svg("svg", { viewBox: `${view.x - view.wide / 2} ${-view.y - high / 2} ${view.wide} ${high}`, class: "map", role: "img", "aria-label": `${all.length} stems; the next is ${next ? next.n : "none"}` });
  for (const one of all) {
    const me = next && one.id === next.id;
    drawn.append(svg("circle", { cx: one.x, cy: -one.y, r: 12 * unit, class: one.done ? "done" : me ? "next" : "open", "stroke-width": (me ? 5 : 3) * unit }));
    const words = svg("text", { x: one.x, y: -one.y + 5 * unit, "font-size": 14 * unit, "text-anchor": "middle", class: one.done ? "done" : "" });
    words.textContent = String(one.n);
    drawn.append(words);
  }
  const from = s.here();
  if (from) drawn.append(svg("path", { d: `M${from[0]} ${-from[1] - 18 * unit}l${14 * unit} ${30 * unit}h${-28 * unit}z`, class: "me", "stroke-width": 3 * unit }));
  const move = (dx, dy) => () => { view.x += dx * view.wide; view.y += dy * view.wide; dispatchEvent(new CustomEvent("drawn")); };
  const zoom = (by) => () => { view.wide *= by; dispatchEvent(new CustomEvent("drawn")); };
  const me = () => locate(() => { const at = s.here(); if (at) { view.x = at[0]; view.y = at[1]; } else say("Where you are is not known."); dispatchEvent(new CustomEvent("drawn")); });
  return h("div", {}, drawn, h("p", {}, "North is up."),
    h("div", { class: "pad" },
      h("button", { class: "outlined", on: zoom(0.6) }, "+ closer"), h("button", { class: "outlined", on: move(0, 0.3) }, "North"), h("button", { class: "outlined", on: zoom(1 / 0.6) }, "− wider"),
      h("button", { class: "outlined", on: move(-0.3, 0) }, "West"), h("button", { class: "outlined", on: me }, "Me"), h("button", { class: "outlined", on: move(0.3, 0) }, "East"),
      h("button", { class: "outlined", on: () => { view = null; dispatchEvent(new CustomEvent("drawn")); } }, "All"), h("button", { class: "outlined", on: move(0, -0.3) }, "South"), h("button", { class: "outlined", on: () => { if (next) { view.x = next.x; view.y = next.y; } dispatchEvent(new CustomEvent("drawn")); } }, "Next")));
}

const backToWork = () => h("button", { class: "outlined wide", on: () => dispatchEvent(new CustomEvent("tab", { detail: "work" })) }, "Back to work");

/** What to do in an emergency: works without a signal but for the calls. */
export function emergency() {
  const plan = s.state.plan;
  const here = s.state.here;
  return h("div", {}, h("h1", {}, "EMERGENCY"),
    h("a", { class: "button filled wide", href: "tel:911" }, "Call 911"),
    h("a", { class: "button outlined wide", href: "tel:18002221222" }, "Call Poison Help 1-800-222-1222"),
    h("p", { id: "at" }, here ? `You are at ${here.latitude.toFixed(5)}, ${here.longitude.toFixed(5)} (within ${length(here.accuracy, plan ? plan.units : "us")}).` : "Where you are is not known yet."),
    h("button", { class: "outlined wide", on: () => locate(() => dispatchEvent(new CustomEvent("drawn"))) }, "Where am I?"),
    plan ? plan.emergency.map((line) => h("p", {}, line)) : h("p", {}, "No plan on this phone: the label's first aid is not here. Look on the jug."),
    plan ? plan.products.map((one) => h("div", {}, h("h2", {}, `${one.name}: ${one.signal || "signal word not read"}`), h("p", {}, one.first_aid || "First aid was not read from the label: look on the jug."))) : null,
    backToWork());
}

const choice = (legend, name, options, value, on) => h("fieldset", {}, h("legend", {}, legend),
  options.map(([key, words]) => h("button", { class: key === value ? "filled wide" : "outlined wide", "aria-pressed": key === value ? "true" : "false", "data-name": name, "data-value": key, on: () => on(key) }, words)));

const again = () => dispatchEvent(new CustomEvent("drawn"));
const setting = (name) => async (value) => { await s.set({ [name]: value }); again(); };

/** Treatments, rhythm, looks, sending, files, the end of the day. */
export function day(act) {
  const plan = s.state.plan;
  const set = s.state.settings;
  const made = h("div", {}, h("h1", {}, "Day"));
  if (plan) {
    made.append(h("p", {}, `${plan.name}, plan ${plan.code} of ${plan.as_of}${plan.invented ? " (invented)" : ""}. ${plan.sheets.reduce((sum, one) => sum + one.rows.length, 0)} rows loaded; works without a signal until you send.`));
    if (plan.draft) made.append(h("p", { class: "stopped" }, "This plan has open findings: it is a draft, no work order."));
    if ((plan.walks || []).length) made.append(choice("Whose walk?", "walk", [["", "By number"], ...plan.walks.map((one) => [one.id, `${one.person}: ${one.title}`])], set.walk, async (id) => { await s.set({ walk: id, order: null }); await s.follow(); again(); }));
    made.append(
      choice("Which plants?", "sheet", plan.sheets.map((one) => [one.id, `${one.plants}, ${one.patch_name}: ${one.what.toLowerCase()}${one.stopped.length ? " (stop)" : ""}`]), set.sheet, async (id) => { await setting("sheet")(id); }),
      choice("Marks", "rhythm", [["one", "One by one"], ["lots", "Lots: cut N, then treat N"]], set.rhythm, setting("rhythm")));
    if (set.rhythm === "lots") {
      made.append(h("fieldset", {}, h("legend", {}, `Plants in a lot: ${work.lotCount()}`),
        h("div", { class: "three" },
          h("button", { class: "outlined", on: async () => { await s.set({ lot: Math.max(1, work.lotCount() - 1) }); again(); } }, "− fewer"),
          h("button", { class: "outlined", on: async () => { await s.set({ lot: work.lotCount() + 1 }); again(); } }, "+ more"),
          h("button", { class: "outlined", on: async () => { await s.set({ lot: Math.min(500, work.lotCount() + 10) }); again(); } }, "+ 10"))),
      choice("Flag of this lot", "flag", [["", "none"], ["orange", "orange"], ["pink", "pink"], ["white", "white"]], set.flag, setting("flag")));
    }
    if (plan.people.length) made.append(choice("Who carries the bottle?", "who", plan.people.map((one) => [one, one]), set.who, setting("who")));
    made.append(choice("Does this phone keep the clock?", "clock", [["yes", "Yes: this hand has the bottle"], ["no", "No"]], set.clock ? "yes" : "no", async (key) => { await s.set({ clock: key === "yes" }); again(); }));
  } else {
    made.append(h("p", {}, "No plan on this phone. On the computer: Day, Put it on a phone. Or open the plan file that was carried here."));
  }
  made.append(h("div", {},
    h("h2", {}, "Send"),
    h("p", {}, act.line()),
    s.state.word ? h("button", { id: "send", class: "filled wide", on: act.send }, `Send now (${s.unsent().length})`) : h("p", {}, "This phone was not joined to a notebook: carry the marks back as a file."),
    h("button", { id: "save-file", class: "outlined wide", on: act.save }, "Save all marks as a file"),
    s.state.offS !== null && Math.abs(s.state.offS) > 120 ? h("p", { class: "stopped" }, `This phone's clock is ${Math.round(Math.abs(s.state.offS) / 60)} min ${s.state.offS > 0 ? "ahead of" : "behind"} the notebook's. Set it right; marks are kept with the phone's time.`) : null,
    s.refused().length ? h("div", {}, h("h2", {}, `Refused: ${s.refused().length}`), h("p", {}, "The notebook keeps these for a person; they are kept here as well."), s.refused().map(({ row, why }) => h("p", {}, `${work.rowWords(row)}: ${why}`))) : null,
    h("h2", {}, "Plan"),
    s.state.word ? h("button", { id: "fetch-plan", class: "outlined wide", on: act.fetchPlan }, "Get the newest plan") : null,
    h("label", { class: "button outlined wide" }, "Open a plan file", h("input", { id: "plan-file", type: "file", accept: ".json,application/json", class: "quiet" })),
    h("h2", {}, "Look"),
    choice("Screen", "theme", [["sun", "Sun: black on white"], ["dusk", "Dusk: light on dark"]], set.theme, async (value) => { document.documentElement.className = value; await setting("theme")(value); }),
    h("button", { id: "to-pouch", class: "outlined wide", on: act.pouch }, "Pouch: dark screen, clock only"),
    h("p", {}, "A clicker with one key presses the filled button: Enter, space, page down or the right arrow."),
    h("h2", {}, "Before you begin"),
    h("p", {}, "No herbicide glove touches this phone: a clear bag, a clean hand, or a helper."),
    (plan ? plan.before : []).map((line) => h("p", {}, line)),
    h("button", { id: "try", class: "outlined wide tall", on: () => say("It works.") || (document.getElementById("try").textContent = "It works with this glove.") }, "Try your glove on this button"),
    h("p", { id: "battery" }),
    h("h2", {}, "End of the day"),
    h("ol", { class: "marks" }, (plan ? plan.after : []).map((line) => h("li", {}, line)))));
  battery();
  return made;
}

async function battery() {
  if (!navigator.getBattery) return;
  const found = await navigator.getBattery();
  const place = document.getElementById("battery");
  if (place) place.textContent = `Battery ${Math.round(found.level * 100)} %: about ${Math.round(found.level * 12)} hours with the screen on (a guess).`;
}

/** Words, and a small picture. */
export function note(done) {
  const text = h("textarea", { id: "note-text", maxlength: "200", rows: "3" });
  const photo = h("input", { id: "photo", type: "file", accept: "image/*", capture: "environment" });
  return h("div", {}, h("h1", {}, "Note"), h("label", { for: "note-text" }, "Words, at most 200 signs"), text,
    h("label", { for: "photo" }, "A photo (made small)"), photo,
    h("button", { id: "keep-note", class: "filled wide", on: () => done(text.value.trim(), photo.files[0]) }, "Keep the note"), 
    h("button", { class: "outlined wide", on: async () => { await work.leave("missed"); dispatchEvent(new CustomEvent("tab", { detail: "work" })); } }, `Leave this stem out${work.current() ? `: ${work.current().n}` : ""}`),
    h("button", { class: "outlined wide", on: async () => { await work.leave("not found"); dispatchEvent(new CustomEvent("tab", { detail: "work" })); } }, "This stem is not there"),
    backToWork());
}

/** Why a stopped treatment was done all the same. */
export function anyway(done) {
  const sheet = s.sheet();
  const text = h("textarea", { id: "why", maxlength: "200", rows: "3" });
  return h("div", {}, h("h1", {}, "Done anyway"), sheet.stopped.map((line) => h("p", { class: "stopped" }, line)),
    h("p", {}, "The label is the law. Write down only what was done."),
    h("label", { for: "why" }, "Why was it done?"), text,
    h("button", { id: "keep-anyway", class: "outlined wide", on: () => (text.value.trim() ? done(text.value.trim()) : say("Write why first.")) }, "Write it down"), backToWork());
}
