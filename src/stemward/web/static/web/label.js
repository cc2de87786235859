// Reading a label: shows the marked place, puts the words of the page under the pointer, moves focus to the question.
"use strict";
for (const spot of document.querySelectorAll("rect.spot")) {
  const [left, top, right, bottom] = spot.dataset.box.split(" ").map(Number);
  spot.setAttribute("x", left);
  spot.setAttribute("y", top);
  spot.setAttribute("width", Math.max(0, right - left));
  spot.setAttribute("height", Math.max(0, bottom - top));
}
const paper = document.querySelector(".paper");
const mark = document.querySelector("rect.mark");
if (paper && mark) {
  // The place stands in the middle of what is shown, without moving the page itself.
  const place = mark.getBoundingClientRect();
  const frame = paper.getBoundingClientRect();
  paper.scrollTop += place.top - frame.top - (frame.height - place.height) / 2;
  paper.scrollLeft += place.left - frame.left - 24;
}
// The nod works only once the marked place has been on the screen.
const nod = document.querySelector("button[data-seen]");
const seen = document.querySelectorAll("rect.mark, .crop rect");
if (nod && seen.length && "IntersectionObserver" in window) {
  nod.disabled = true;
  // At least most of one marked line, at the size at which it is shown.
  const watch = new IntersectionObserver((entries) => {
    if (entries.some((entry) => entry.isIntersecting)) {
      nod.disabled = false;
      watch.disconnect();
    }
  }, { threshold: 0.6 });
  for (const one of seen) watch.observe(one);
}
const head = location.hash === "#fact" && document.getElementById("fact");
if (head) head.focus();
