// Keyboard of the shell: / find · g then a letter · n new · ? list · Esc leaves. Single letters are off while a
// field has focus, and can be switched off in the menu under the initials.
const key = "studio-single-keys";
const chordMilliseconds = 1500;
let chordUntil = 0;

function singleKeysOn() {
  try {
    return localStorage.getItem(key) !== "off";
  } catch {
    return true;
  }
}

function show() {
  for (const box of document.querySelectorAll("[data-single-keys]")) box.checked = singleKeysOn();
}

function inField(target) {
  return target instanceof Element
    && target.closest("input, textarea, select, [contenteditable]:not([contenteditable=false]), [role=textbox]") !== null;
}

function questionOpen() {
  return document.querySelector("dialog[open], .mud-dialog") !== null;
}

function press(selector) {
  const found = document.querySelector(selector);
  if (!found) return false;
  found.click();
  return true;
}

function focusFind() {
  const field = [...document.querySelectorAll("[data-find]")].find((f) => f.offsetParent !== null);
  if (field) {
    field.focus();
    field.select();
    return true;
  }
  return press("[data-scan]");
}

function act(pressed) {
  const now = performance.now();
  if (now < chordUntil) {
    chordUntil = 0;
    return press(`[data-room-key="${CSS.escape(pressed.toLowerCase())}"]`);
  }
  switch (pressed) {
    case "/": return focusFind();
    case "?": {
      const list = document.getElementById("key-list");
      list?.showPopover?.();
      return list !== null;
    }
    case "g": chordUntil = now + chordMilliseconds; return true;
    case "n": return press("[data-key-new]");
    default: return false;
  }
}

document.addEventListener("keydown", (event) => {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
  if (event.target instanceof Element && event.target.matches("[role=combobox][aria-expanded=true]")) {
    // An open list of suggestions takes these keys itself; Enter must not send the form around it.
    if (["Enter", "ArrowDown", "ArrowUp"].includes(event.key)) event.preventDefault();
    return;
  }
  if (event.key === "Escape") {
    // An open menu or question closes itself first; a field is left before the page is.
    if (document.querySelector(":popover-open") || questionOpen()) return;
    if (inField(event.target)) event.target.blur();
    else if (press("[data-key-leave]")) event.preventDefault();
    return;
  }
  if (inField(event.target) || questionOpen() || !singleKeysOn()) return;
  if (act(event.key)) event.preventDefault();
});

document.addEventListener("change", (event) => {
  if (!(event.target instanceof Element) || !event.target.matches("[data-single-keys]")) return;
  try {
    localStorage.setItem(key, event.target.checked ? "on" : "off");
  } catch {
    // Storage closed by the browser: the switch then holds for nothing, so it springs back.
    show();
  }
});

document.addEventListener("click", (event) => {
  const link = event.target instanceof Element ? event.target.closest("[popover] a[href]") : null;
  link?.closest("[popover]")?.hidePopover();
});

document.addEventListener("toggle", show, true);
show();

// The router follows the way past the rooms without moving the focus; the next Tab would go back to them.
document.addEventListener("click", (event) => {
  if (event.target.closest?.(".skip")) document.getElementById("main")?.focus();
});
