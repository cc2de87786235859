// The phone's page: draws, sends, keeps itself on the phone.

import { clock, h, once, press, say, span, whenFree } from "./dom.js";
import * as outbox from "./outbox.js";
import * as pages from "./pages.js";
import { moment } from "./rules.js";
import * as s from "./state.js";
import * as store from "./store.js";
import * as work from "./work.js";

const main = document.getElementById("main");
const TABS = { work: work.draw, list: pages.list, map: pages.map, day: () => pages.day(acts), emergency: pages.emergency, waiting: pages.waiting, note: () => pages.note(keepNote), anyway: () => pages.anyway(keepAnyway) };
const NAMES = { work: "Work", list: "List", map: "Map", waiting: "Waiting" };
let tab = "work";
let sending = false;
let failures = 0;
let failed = "";
let sentAt = null;
let timer = 0;
let idle = Date.now();

function draw() {
  const focused = document.activeElement && document.activeElement.id;
  const page = TABS[tab]();
  main.replaceChildren(...(page.querySelector("h1") ? [] : [h("h1", { class: "quiet" }, NAMES[tab])]), page);
  for (const button of document.querySelectorAll("nav button")) {
    if (button.dataset.tab === tab) button.setAttribute("aria-current", "page");
    else button.removeAttribute("aria-current");
  }
  if (focused && document.getElementById(focused)) document.getElementById(focused).focus({ preventScroll: true });
  drawLine();
  work.tick();
}

function show(name) {
  tab = name;
  draw();
  main.scrollTop = 0;
  scrollTo(0, 0);
}

/** The line of what waits, in words. */
function line() {
  const waiting = s.unsent();
  const refused = s.refused().length;
  const more = refused ? `, ${refused} refused: see Day` : "";
  if (s.state.trouble) return s.state.trouble;
  if (!waiting.length) {
    const sent = s.state.rows.length ? (sentAt ? `All sent ${clock(sentAt)}` : "All sent") : "Nothing to send";
    return `${s.state.word || !s.state.rows.length ? sent : "Kept on this phone"}${more}`;
  }
  const oldest = span(Date.now() - Math.min(...waiting.map((one) => moment(one.row))));
  const why = { "no network": "", busy: "; the notebook is busy", ended: "; the notebook takes nothing more of this phone" }[failed] || "";
  return `${waiting.length} waiting, oldest ${oldest}${more}${why}`;
}

function drawLine() {
  document.getElementById("waiting").textContent = line();
}

const hands = {
  rows: () => s.state.rows,
  settle: s.settle,
  word: () => s.state.word,
  device: () => s.state.settings.device,
  photos: store.photos,
  dropPhoto: store.dropPhoto,
  told: (offS) => { s.state.offS = offS; },
};

/** Send what waits, unless it is being sent. */
async function send() {
  if (sending || !s.state.word) return;
  sending = true;
  clearTimeout(timer);
  try {
    const before = s.unsent().length;
    const found = await outbox.send(hands);
    failed = found.failed;
    if (failed) failures += 1;
    else failures = 0;
    if (before && !s.unsent().length) sentAt = Date.now();
  } finally {
    sending = false;
  }
  if ((failed && failed !== "ended") || s.unsent().length) timer = setTimeout(send, outbox.pauseMs(failures));
  if (tab === "day") whenFree(() => tab === "day" && draw());
  drawLine();
}

/** Soon after a mark, so that several go together. */
function soon() {
  if (failures || sending) return;
  clearTimeout(timer);
  timer = setTimeout(send, 1500);
}

async function fetchPlan() {
  try {
    const answer = await fetch("plan", { headers: { "X-Stemward-Phone": s.state.word }, cache: "no-store" });
    if (!answer.ok) throw new Error(answer.status === 403 ? "The notebook does not know this phone any more. On the computer: Day, Put it on a phone." : "The notebook has no plan ready. Try again in a moment.");
    await s.keepPlan(await answer.json());
    s.state.trouble = "";
    say("The plan is on this phone.");
  } catch (wrong) {
    say(wrong.message);
    if (!s.state.plan) s.state.trouble = wrong.message === "Failed to fetch" ? "No network, and no plan on this phone yet" : wrong.message;
  }
  draw();
}

function save() {
  const whole = { form: "stemward phone rows", device: s.state.settings.device, tract: s.state.plan ? s.state.plan.tract : "", rows: s.state.rows.map((one) => one.row) };
  const link = h("a", { href: URL.createObjectURL(new Blob([JSON.stringify(whole, null, 1)], { type: "application/json" })), download: `marks-${s.written(Date.now()).at.slice(0, 10)}.json` });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  say("The marks are saved as a file. They stay on this phone as well.");
}

async function openFile(file) {
  try {
    await s.keepPlan(JSON.parse(await file.text()));
    s.state.trouble = "";
    say("The plan is on this phone.");
  } catch {
    say("This is no plan for a phone. Nothing was changed.");
    s.state.trouble = "That file is no plan for a phone";
  }
  draw();
}

/** A photo as a small JPEG. */
async function small(file) {
  const whole = await createImageBitmap(file);
  const scale = Math.min(1, 1280 / Math.max(whole.width, whole.height));
  const paper = new OffscreenCanvas(Math.round(whole.width * scale), Math.round(whole.height * scale));
  paper.getContext("2d").drawImage(whole, 0, 0, paper.width, paper.height);
  for (const quality of [0.7, 0.5, 0.3, 0.15]) {
    const made = await paper.convertToBlob({ type: "image/jpeg", quality });
    if (made.size <= 290000) return made;
  }
  throw new Error("too large");
}

async function keepNote(text, file) {
  const stem = work.current();
  const sheet = s.sheet();
  const body = { what: file ? "photo" : "note", text, patch: sheet ? sheet.patch : "", rows: stem ? { [stem.id]: 1 } : {} };
  if (!text && !file) return say("Write some words or take a photo.");
  if (file) {
    try {
      const blob = await small(file);
      const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", await blob.arrayBuffer()));
      body.photo = [...bytes].map((one) => one.toString(16).padStart(2, "0")).join("");
      await store.putPhoto(body.photo, blob);
    } catch {
      return say("This photo cannot be read. Keep the words alone, or take another.");
    }
  }
  await s.add("noted", body);
  say("Noted.");
  soon();
  show("work");
}

async function keepAnyway(why) {
  await work.treated(why);
  show("work");
}

const pouch = document.getElementById("pouch");
const behind = (is) => { for (const part of document.querySelectorAll("header, nav, main")) part.inert = is; };
let firstAt = 0;
function openPouch() {
  pouch.hidden = false;
  behind(true);
  document.body.classList.add("in-pouch");
  tickPouch();
}
function closePouch() {
  pouch.hidden = true;
  behind(false);
  document.body.classList.remove("in-pouch");
  idle = Date.now();
  draw();
}
function tickPouch() {
  const found = work.running();
  const stem = work.current();
  document.getElementById("pouch-number").textContent = found ? String(found.wait.n) : stem ? String(stem.n) : "";
  document.getElementById("pouch-clock").textContent = found ? found.text : clock(Date.now());
}
press(document.getElementById("wake-first"), () => { firstAt = Date.now(); });
press(document.getElementById("wake-second"), () => { if (Date.now() - firstAt < 5000) closePouch(); });

const acts = { send, save, fetchPlan, pouch: openPouch, line };

function listen() {
  for (const button of document.querySelectorAll("nav button")) press(button, () => show(button.dataset.tab));
  press(document.getElementById("emergency"), () => { show("emergency"); pages.locate(() => tab === "emergency" && draw()); });
  press(document.getElementById("waiting"), () => show("day"));
  for (const name of ["note", "anyway", "waiting"]) addEventListener(name, () => show(name));
  addEventListener("tab", (event) => show(event.detail));
  addEventListener("drawn", () => { draw(); soon(); });
  work.onChange(() => { draw(); soon(); });
  main.addEventListener("change", (event) => { if (event.target.id === "plan-file" && event.target.files[0]) openFile(event.target.files[0]); });
  document.addEventListener("keydown", (event) => {
    idle = Date.now();
    const onNothing = !document.activeElement || document.activeElement === document.body || document.activeElement === main || ["cut", "treated"].includes(document.activeElement.id);
    if (tab !== "work" || event.repeat || !onNothing || !["Enter", " ", "PageDown", "ArrowRight", "AudioVolumeUp"].includes(event.key)) return;
    if (document.activeElement && ["cut", "treated"].includes(document.activeElement.id) && ["Enter", " "].includes(event.key)) return;
    event.preventDefault();
    work.clicker();
  });
  addEventListener("pointerdown", () => { idle = Date.now(); });
  addEventListener("online", () => { failures = 0; send(); });
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") { failures = 0; send(); draw(); } });
  setInterval(() => {
    const runs = work.tick();
    if (!pouch.hidden) tickPouch();
    else if (!runs && tab === "work" && s.state.plan && Date.now() - idle > 60000) openPouch();
    drawLine();
  }, 1000);
}

/** Keep the page on the phone, and its database from being thrown away. */
async function settleIn() {
  if (!("serviceWorker" in navigator) || !isSecureContext) {
    s.state.trouble = "This address is not https: the page cannot be kept for use without a signal";
    return;
  }
  try {
    await navigator.serviceWorker.register("sw.js");
    if (navigator.storage && navigator.storage.persist) await navigator.storage.persist();
  } catch {
    s.state.trouble = "The page cannot be kept on this phone for use without a signal";
  }
}

async function start() {
  try {
    await s.load();
  } catch {
    main.replaceChildren(h("p", {}, "This phone cannot keep anything (a private window?). Use paper, or another browser."));
    return;
  }
  document.documentElement.className = s.state.settings.theme;
  const word = new URLSearchParams(location.hash.slice(1)).get("join");
  if (word) {
    await s.keepWord(word);
    history.replaceState(null, "", location.pathname);
  }
  listen();
  await settleIn();
  if (s.state.word && (word || !s.state.plan)) await fetchPlan();
  if (!s.state.settings.asked && s.state.plan) {
    await s.set({ asked: true });
    tab = "day";
  }
  draw();
  document.body.dataset.ready = "yes";
  once("send at start", send);
}

start();
