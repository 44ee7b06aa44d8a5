"use strict";
// Chooses among the jobs of this page. Where scripts do not run, all of them are shown.
(function () {
  const form = document.querySelector("form.choose");
  const told = document.querySelector(".shown");
  const place = "paperbark " + location.pathname;
  const parts = Array.from(document.querySelectorAll("[data-job]"));
  const rows = parts.filter((part) => part.tagName === "TR");
  const texts = new Map(rows.map((row) => [row.id, ""]));
  for (const part of parts) {
    const anchor = part.dataset.job;
    if (texts.has(anchor)) {
      const own = part.querySelector(".findings") || part;
      texts.set(anchor, texts.get(anchor) + " " + own.textContent.toLowerCase());
    }
  }

  function chosen() {
    return Object.fromEntries(["words", "status", "crew", "day"].map((name) => [name, form.elements[name].value]));
  }

  function fits(row, choice, words) {
    return ["status", "crew", "day"].every((name) => choice[name] === "" || row.dataset[name] === choice[name])
      && words.every((word) => texts.get(row.id).includes(word));
  }

  function show() {
    const choice = chosen();
    const words = choice.words.toLowerCase().split(/\s+/).filter((word) => word !== "");
    const fitting = new Set(rows.filter((row) => fits(row, choice, words)).map((row) => row.id));
    for (const part of parts) {
      part.hidden = !part.dataset.job.split(" ").some((anchor) => fitting.has(anchor));
    }
    told.textContent = fitting.size === rows.length
      ? "" : fitting.size + " of " + rows.length + " jobs shown; totals and dates are of all.";
  }

  // A browser may keep nothing for a page opened from a folder; then a reload shows all jobs.
  function remember() {
    try {
      sessionStorage.setItem(place, JSON.stringify(chosen()));
    } catch (notAllowed) {
      return;
    }
  }

  function recall() {
    try {
      const kept = JSON.parse(sessionStorage.getItem(place)) || {};
      for (const [name, value] of Object.entries(kept)) {
        form.elements[name].value = value;
        if (form.elements[name].selectedIndex === -1) {
          form.elements[name].value = "";
        }
      }
    } catch (notAllowed) {
      form.reset();
    }
  }

  function choose() {
    show();
    remember();
  }

  // A link may lead to a job that was not chosen.
  function reveal(anchor) {
    const target = document.getElementById(anchor);
    if (target && target.closest("[hidden]")) {
      form.reset();
      choose();
      target.scrollIntoView();
    }
  }

  form.addEventListener("input", choose);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(choose));
  window.addEventListener("hashchange", () => reveal(location.hash.slice(1)));
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    if (link) {
      reveal(link.hash.slice(1));
    }
  });
  recall();
  show();
  form.hidden = rows.length < 2;
})();
