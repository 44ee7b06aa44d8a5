"use strict";
// Copies a value and remembers ticks. Where scripts do not run, values can be read and ticked all the same.
(function () {
  const table = document.querySelector(".typed");
  const told = document.querySelector(".shown");
  const place = "paperbark typed " + table.dataset.place;
  const rows = Array.from(table.tBodies[0].rows);
  const ticks = rows.map((row) => row.querySelector("input"));

  function show(words) {
    rows.forEach((row, i) => row.classList.toggle("done", ticks[i].checked));
    told.textContent = words + ticks.filter((tick) => tick.checked).length + " of " + ticks.length + " typed.";
  }

  // A browser may keep nothing for a page opened from a folder; then a reload forgets the ticks.
  function remember() {
    try {
      localStorage.setItem(place, JSON.stringify(ticks.map((tick) => tick.checked)));
    } catch (notAllowed) {
      return;
    }
  }

  function recall() {
    try {
      const kept = JSON.parse(localStorage.getItem(place)) || [];
      ticks.forEach((tick, i) => { tick.checked = kept[i] === true; });
    } catch (notAllowed) {
      ticks.forEach((tick) => { tick.checked = false; });
    }
  }

  // The older way, for browsers that keep the newer one from pages of a folder.
  function copySelected(value) {
    const range = document.createRange();
    range.selectNodeContents(value);
    const selection = window.getSelection();
    selection.removeAllRanges();
    selection.addRange(range);
    return document.execCommand("copy");
  }

  async function copy(row) {
    const value = row.querySelector(".value");
    let done = false;
    try {
      await navigator.clipboard.writeText(value.textContent);
      done = true;
    } catch (notAllowed) {
      done = copySelected(value);
    }
    const heading = row.querySelector("th").textContent;
    show(done ? "Copied: " + heading + ". " : "Select the text and copy it yourself: " + heading + ". ");
  }

  rows.forEach((row, i) => {
    ticks[i].addEventListener("change", () => { show(""); remember(); });
    const button = row.querySelector("button");
    if (button) {
      button.hidden = false;
      button.addEventListener("click", () => copy(row));
    }
  });
  recall();
  show("");
})();
