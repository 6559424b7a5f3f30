// Runs before the first paint: puts the chosen theme on <html>. "system" follows the machine.
(() => {
  "use strict";
  const key = "studio-theme";
  const root = document.documentElement;
  const machine = matchMedia("(prefers-color-scheme: dark)");

  function choice() {
    try {
      const kept = localStorage.getItem(key);
      return kept === "light" || kept === "dark" ? kept : "system";
    } catch {
      return "system";
    }
  }

  function apply() {
    const chosen = choice();
    const theme = chosen === "system" ? (machine.matches ? "dark" : "light") : chosen;
    if (root.dataset.theme !== theme) root.dataset.theme = theme;
    for (const key of document.querySelectorAll("[data-theme-choice]")) {
      key.setAttribute("aria-pressed", String(key.dataset.themeChoice === chosen));
    }
  }

  apply();
  machine.addEventListener("change", apply);
  addEventListener("storage", apply);
  document.addEventListener("DOMContentLoaded", apply);
  // A page swapped in by navigation comes without our mark on <html>, and with a menu that does not know the choice.
  new MutationObserver(apply).observe(root, { attributes: true, attributeFilter: ["data-theme"] });
  document.addEventListener("toggle", apply, true);
  document.addEventListener("click", (event) => {
    const key = event.target.closest?.("[data-theme-choice]");
    if (!key) return;
    try {
      if (key.dataset.themeChoice === "system") localStorage.removeItem("studio-theme");
      else localStorage.setItem("studio-theme", key.dataset.themeChoice);
    } catch {
      root.dataset.theme = key.dataset.themeChoice;
      return;
    }
    apply();
  });
})();
