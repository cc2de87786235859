// Small helps that pages do without: says when the server has stopped, Ctrl-Z outside fields, dusk by the system.
"use strict";
const gone = document.getElementById("gone");
let missed = 0;

async function look() {
  try {
    const answer = await fetch("/alive", { cache: "no-store" });
    missed = answer.ok ? 0 : missed + 1;
  } catch {
    missed += 1;
  }
  // One missed sign can be a sleeping laptop; two are a stopped server.
  if (gone) gone.hidden = missed < 2;
  setTimeout(look, missed ? 2000 : 15000);
}

function inField(target) {
  return target.closest && target.closest("input, select, textarea, [contenteditable], .sheet, .land");
}

document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey || inField(event.target)) return;
  const key = event.key.toLowerCase();
  const name = key === "z" && !event.shiftKey ? "undo" : key === "y" || (key === "z" && event.shiftKey) ? "redo" : "";
  const form = name && document.getElementById(name);
  if (form) {
    event.preventDefault();
    form.requestSubmit();
  }
});

// A form sent twice by a double click would only be answered twice; the button says that it is on its way.
document.addEventListener("submit", (event) => {
  for (const button of event.target.querySelectorAll("button[type=submit], button:not([type])")) {
    setTimeout(() => { button.disabled = true; }, 0);
    setTimeout(() => { button.disabled = false; }, 4000);
  }
});

// Work of more than a moment shows how far it has come, under the button that started it.
document.addEventListener("submit", (event) => {
  const form = event.target;
  if (!form.dataset.far && !form.dataset.wait) return;
  const bar = document.createElement("progress");
  const words = document.createElement("p");
  words.setAttribute("role", "status");
  const said = form.dataset.farWords || form.dataset.wait;
  words.textContent = said + " …";
  bar.setAttribute("aria-label", said);
  form.append(words, bar);
  if (!form.dataset.far) return;
  const address = form.dataset.far + "?of=" + encodeURIComponent(form.elements.command.value);
  setInterval(async () => {
    try {
      const far = await (await fetch(address, { cache: "no-store" })).json();
      if (far.words) words.textContent = far.words;
      if (far.of) {
        bar.max = far.of;
        bar.value = far.done;
      }
    } catch { /* the answer itself is on its way */ }
  }, 300);
});

// A page that is still worked out asks again; a refresh by the page itself could not be paused by its reader.
if (document.querySelector("[data-look-again]")) setTimeout(() => location.reload(), 1000);
if (gone) setTimeout(look, 15000);
