"use strict";
(() => {
  const all = (selector) => [...document.querySelectorAll(selector)];
  const filters = document.getElementById("filters");
  if (!filters) return;
  const cards = all("#findings-list .card");
  const groups = all("#findings-list .group");
  const seek = document.getElementById("seek");
  const shown = document.getElementById("shown");
  const texts = new Map(cards.map((card) => [card, card.textContent.toLowerCase()]));

  function show() {
    const levels = new Set(all("#filters input[name=level]:checked").map((box) => box.value));
    const words = seek.value.toLowerCase().split(/\s+/).filter(Boolean);
    let count = 0;
    for (const card of cards) {
      const fits = words.every((word) => texts.get(card).includes(word));
      card.hidden = !levels.has(card.dataset.level) || !fits;
      count += card.hidden ? 0 : 1;
    }
    for (const group of groups) {
      group.hidden = !group.querySelector(".card:not([hidden])");
    }
    shown.textContent = `${count} of ${cards.length} shown`;
  }

  function fold(open) {
    for (const details of all("details")) details.open = open;
  }

  function reveal() {
    const card = document.getElementById(location.hash.slice(1))?.closest(".card[hidden]");
    if (!card) return;
    filters.reset();
    show();
    card.scrollIntoView();
  }

  filters.hidden = false;
  filters.addEventListener("input", show);
  filters.addEventListener("submit", (event) => event.preventDefault());
  document.getElementById("unfold").addEventListener("click", () => fold(true));
  document.getElementById("fold").addEventListener("click", () => fold(false));
  window.addEventListener("hashchange", reveal);
  show();
})();
