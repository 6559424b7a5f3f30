// The weigh sheet: digits, verdict and drawings at the speed of the thumb, and readings that survive a dead line.
// The server decides everything on record; after each answer the sheet is fetched anew and put in place.
import { grams, milligrams, rule, pour } from "./bench-draw.js";
import * as kept from "./bench-kept.js";
import * as voice from "./bench-voice.js";

const saidAfter = 600;
const tryAgain = 4000;
let typed = "";
let tare = null;
let line = null;
let asking = null;
let sending = false;
let down = false;
let signedOut = false;
let stale = false;
let sayTimer, retryTimer;

const sheet = () => document.getElementById("sheet");
const $ = (selector, of = sheet()) => of?.querySelector(selector);
const $$ = (selector) => [...(sheet()?.querySelectorAll(selector) ?? [])];
const lineOf = (id) => $(`.wline[data-line="${CSS.escape(id ?? "")}"]`);
const draftKey = () => `studio-bench-${sheet().dataset.batch}`;
const mine = () => kept.all().filter((i) => i.person === sheet()?.dataset.person);
const keptOn = (id) => mine().find((i) => i.body.lineId === id);

// ---------- the reading ----------
function draft() {
  try { return JSON.parse(localStorage.getItem(draftKey()) ?? "{}"); } catch { return {}; }
}

function saveDraft() {
  if (!line) return;
  try { localStorage.setItem(draftKey(), JSON.stringify({ ...draft(), [line.dataset.line]: { typed, tare, ...(line.dataset.chosen ? { lot: line.dataset.lot, code: line.dataset.lotCode } : {}) } })); } catch { /* kept while the page is open */ }
}

function forgetDraft(id) {
  try {
    const rest = draft();
    delete rest[id];
    localStorage.setItem(draftKey(), JSON.stringify(rest));
  } catch { /* nothing was kept */ }
}

function net() {
  const mg = milligrams(typed, sheet());
  return mg === null ? null : mg - (tare === null ? 0 : milligrams(tare, sheet()) ?? 0);
}

function press(k) {
  if (!line || line.dataset.done || asking || sending) return;
  const mark = sheet().dataset.mark;
  let next = typed;
  if (k === "back") next = typed.slice(0, -1);
  else if (k === "clear") next = "";
  else if (k === "mark") next = typed.includes(mark) ? typed : (typed || "0") + mark;
  else next = typed === "0" ? k : typed + k;
  if (next !== "" && milligrams(next, sheet()) === null) return;
  typed = next;
  saveDraft();
  show();
}

function verdict(mg) {
  const rest = Number(line.dataset.rest), tol = Number(line.dataset.tol), by = mg - rest;
  const percent = (Math.abs(by) / Number(line.dataset.target) * 100).toFixed(1).replace(".", sheet().dataset.mark);
  const step = 10 ** (3 - Number(sheet().dataset.decimals));
  const amount = `${grams(Math.round(Math.abs(by) / step) * step, sheet())} g`;
  if (Math.abs(by) <= tol) return { is: "in", say: by === 0 ? "on target" : `${amount} ${by < 0 ? "under" : "over"}, ${percent} %` };
  return by < 0 ? { is: "under", say: `${amount} to go` } : { is: "over", say: `${amount} over, +${percent} %` };
}

function show() {
  const field = $("#reading");
  if (!field || !line) return;
  const mg = net(), done = !!line.dataset.done, waits = keptOn(line.dataset.line);
  if (field.value !== typed) field.value = typed;
  field.readOnly = done || !!asking;
  const v = mg === null || done || mg <= 0 ? null : verdict(mg);
  for (const is of ["in", "under", "over"]) $(`[data-v="${is}"]`).hidden = v?.is !== is;
  let words = v?.say ?? (done ? "This line is done" : tare !== null && mg !== null && mg <= 0 ? "The reading is below the tare" : "Type what the scale shows");
  if (tare !== null && mg !== null && mg > 0) words += `; net ${grams(mg, sheet())} g`;
  $("[data-v-say]").textContent = words;
  const box = $("[data-read]");
  box.classList.toggle("in", v?.is === "in");
  box.classList.toggle("out", v?.is === "over");
  rule($("[data-rule]"), Number(line.dataset.rest) || Number(line.dataset.target), Number(line.dataset.tol), v ? mg : null, sheet());
  const total = Number(sheet().dataset.total), extra = v ? mg : 0;
  for (const vessel of $$("[data-vessel]")) pour(vessel, total, extra, Number(sheet().dataset.full), line.dataset.fill, grams(total + extra, sheet()));
  $("[data-total-shown]").textContent = grams(total + extra, sheet());
  const record = $("[data-record]");
  const can = v !== null && !asking && !sending && !waits;
  record.classList.toggle("off", !can);
  record.classList.toggle("p", can);
  record.setAttribute("aria-disabled", String(!can));
  record.textContent = sending ? "Recording…" : waits ? "Kept here, sent again" : done ? "Done" : mg > 0 ? `Record ${grams(mg, sheet())} g` : "Record, type the reading";
  const tareShown = $("[data-tare-shown]", line);
  if (tareShown) tareShown.textContent = tare === null ? "Tare" : `Tare ${tare} g`;
  clearTimeout(sayTimer);
  if (v) sayTimer = setTimeout(() => { say(`${v.is === "in" ? "In tolerance" : v.is === "over" ? "Over" : "Under"}, ${words.replace(" g", " grams")}`); }, saidAfter);
}

/** A line somebody went to stays in front of them, whatever the partner does, until something is recorded. */
let byHand = null;

function goByHand(id) {
  byHand = id;
  go(id);
}

function go(id) {
  const to = lineOf(id);
  if (!to) return;
  closeAsk();
  for (const l of $$(".wline")) l.hidden = l !== to;
  for (const n of $$("[data-next-of]")) n.hidden = n.dataset.nextOf !== id;
  for (const li of $$(".wl li")) li.toggleAttribute("aria-current", li.dataset.go === id);
  for (const li of $$(".wl li[aria-current]")) li.setAttribute("aria-current", "step");
  line = to;
  const d = draft()[id] ?? {};
  typed = keptOn(id)?.body.text ?? d.typed ?? "";
  tare = d.tare ?? null;
  if (d.lot && d.lot !== line.dataset.lot && document.querySelector(`[data-take="${CSS.escape(d.lot)}"]`)) useLot(d.lot, d.code);
  $("#reading").setAttribute("aria-label", `Reading of ${to.dataset.name}, grams`);
  $("[data-line-no]").textContent = to.dataset.no;
  show();
  sayTarget();
  const waits = keptOn(id);
  if (waits?.asked) ask(waits, waits.asked);
}

function sayTarget() {
  const { name, rest, target, tol, lotCode, done } = line.dataset;
  voice.speak(voice.targetOf({ name, rest, target, tolerance: tol, lotCode, done }, Number(sheet().dataset.decimals)));
}

function step(by) {
  const lines = $$(".wline"), at = lines.indexOf(line) + by;
  if (lines[at]) goByHand(lines[at].dataset.line);
}

function useLot(id, code) {
  line.dataset.lot = id;
  line.dataset.lotCode = code;
  line.dataset.chosen = "1";
  const shown = $("[data-lot-shown]", line);
  if (shown) shown.textContent = code;
  const about = $("[data-lot-about]", line);
  if (about) about.textContent = "chosen by you";
  saveDraft();
}

// ---------- sending ----------
async function record(extra = {}) {
  if (!line || sending || asking || net() === null || net() <= 0) return;
  const item = {
    person: sheet().dataset.person, code: sheet().dataset.code, name: line.dataset.name, at: new Date().toISOString(),
    body: { requestId: kept.newId(), batchId: sheet().dataset.batch, lineId: line.dataset.line, lotId: line.dataset.lot || null, text: typed, tare, ...extra },
  };
  kept.keep(item);
  await send(item);
}

async function send(item) {
  sending = true;
  show();
  const answer = await kept.post("/bench/readings", item.body, sheet().dataset.token);
  sending = false;
  if (answer.kind === "recorded") {
    byHand = null;
    kept.drop(item.body.requestId);
    forgetDraft(item.body.lineId);
    line_up();
    await renew(true);
    const done = answer.value;
    say(done.lineDone ? `${item.name} recorded` : `${item.name} recorded, ${grams(done.remainingMilligrams, sheet())} grams to add`);
    return true;
  }
  if (answer.kind === "down") return lineDown();
  if (answer.kind === "signed-out") { signedOut = true; banner(); show(); return false; }
  if (answer.name === "OldPage") {
    const before = sheet().dataset.token;
    await renew();
    return before !== sheet().dataset.token ? send(item) : lineDown();
  }
  line_up();
  item.asked = answer;
  kept.keep(item);
  if (item.body.batchId === sheet().dataset.batch) {
    if (item.body.lineId !== line?.dataset.line) go(item.body.lineId);
    else ask(item, answer);
  }
  banner();
  return false;
}

function lineDown() {
  down = true;
  banner();
  const next = $$(".wline").find((l) => !l.dataset.done && !keptOn(l.dataset.line));
  if (next) go(next.dataset.line);
  else show();
  clearTimeout(retryTimer);
  retryTimer = setTimeout(resend, tryAgain);
  return false;
}

function line_up() {
  down = signedOut = false;
  banner();
}

async function resend() {
  clearTimeout(retryTimer);
  if (sending || asking) return;
  const item = mine().find((i) => !i.asked);
  if (!item) { if (down) await renew(); return; }
  if (await send(item)) await resend();
}

function banner() {
  const box = $("[data-kept]");
  if (!box) return;
  const refused = $("#reading") ? null : mine().find((i) => i.asked && i.body.batchId === sheet().dataset.batch);
  const waiting = mine().filter((i) => !i.asked);
  box.hidden = !(down || signedOut || refused) && waiting.length === 0 || sending;
  if (refused && !down && !signedOut) {
    $("[data-kept-fact]").textContent = `${refused.body.text} g of ${refused.name} was not recorded.`;
    const drop = Object.assign(document.createElement("button"), { type: "button", className: "lnk", textContent: "Drop this reading" });
    drop.addEventListener("click", () => { kept.drop(refused.body.requestId); banner(); });
    $("[data-kept-say]").replaceChildren(`${refused.asked.happened} ${refused.asked.toDo ?? ""} It is still kept on this phone. `, drop);
    return;
  }
  const last = waiting.at(-1);
  const clock = last && new Date(last.at).toLocaleTimeString(sheet().dataset.culture, { hour: "2-digit", minute: "2-digit", timeZone: sheet().dataset.zone });
  const count = waiting.length === 0 ? "" : `Readings are still kept on this phone: ${waiting.length}, last at ${clock}.`;
  $("[data-kept-fact]").textContent = signedOut ? "You are signed out." : down ? "The studio machine cannot be reached." : count;
  const say = $("[data-kept-say]");
  say.textContent = signedOut || down ? `${count} ` : "";
  if (signedOut) {
    const link = Object.assign(document.createElement("a"), { href: `/sign-in?returnUrl=${encodeURIComponent(location.pathname)}`, textContent: "Sign in again" });
    say.append(link, "; they are then sent.");
  } else if (down) say.append(waiting.length ? "They are sent again until it answers." : "What is recorded is kept there.");
}

// ---------- questions in place of the keys ----------
function closeAsk() {
  asking = null;
  const box = $("[data-ask]");
  if (!box) return;
  box.hidden = true;
  box.replaceChildren();
  $("[data-pad]").hidden = false;
  $("[data-record]").hidden = false;
}

function el(name, css, text) {
  const it = document.createElement(name);
  if (css) it.className = css;
  if (text) it.textContent = text;
  return it;
}

function ask(item, answer) {
  asking = item;
  const box = $("[data-ask]");
  $("[data-pad]").hidden = true;
  $("[data-record]").hidden = true;
  box.hidden = false;
  box.replaceChildren();
  if (answer.name !== "OverTolerance") {
    const note = el("div", answer.kind === "question" ? "note warn" : "note bad");
    note.setAttribute("role", "alert");
    note.append($("template[data-mark-icon]")?.content.cloneNode(true) ?? el("span"));
    const words = el("div");
    words.append(el("b", "", answer.happened), el("p", "", [answer.kept, answer.toDo].filter(Boolean).join(" ")));
    note.append(words);
    box.append(note);
  }
  for (const choice of answer.answers ?? []) box.append(choiceOf(item, choice));
  const again = el("button", "btn", answer.kind === "question" ? "Read the scale again" : "Back to the reading");
  again.type = "button";
  again.dataset.again = "";
  box.append(again);
  show();
  box.querySelector("button")?.focus({ preventScroll: true });
  say(answer.happened);
}

function choiceOf(item, choice) {
  const wrap = el("div", "chw");
  const button = el("button", "ch");
  button.type = "button";
  button.dataset.answer = choice.key;
  button.append(el("b", "", choice.title));
  if (choice.text) button.append(el("p", "", choice.text));
  wrap.append(button);
  button.addEventListener("click", () => {
    if (!choice.needsReason) return answered(item, choice, null);
    if (wrap.querySelector("form")) return;
    const form = el("form", "why");
    const field = el("div", "fld"), label = el("label", "", "Reason, for the record"), ves = el("div", "ves"), input = el("input");
    input.id = `why-${choice.key}`;
    label.htmlFor = input.id;
    input.required = true;
    input.maxLength = 400;
    input.autocomplete = "off";
    ves.append(input);
    field.append(label, ves);
    form.append(field, el("button", "btn p", choice.title));
    form.addEventListener("submit", (e) => {
      e.preventDefault();
      if (input.value.trim()) answered(item, choice, input.value.trim());
    });
    wrap.append(form);
    input.focus();
  });
  return wrap;
}

async function answered(item, choice, reason) {
  const body = item.body;
  if (reason) body.reason = body.reason ? `${body.reason}; ${reason}` : reason;
  switch (choice.key) {
    case "suggested": body.milligrams = choice.milligrams; break;
    case "as-typed": body.asTyped = true; break;
    case "correct": body.over = "Correct"; break;
    case "accept": body.over = "Accept"; break;
    case "other-lot": body.lotId = choice.lotId; break;
    case "receipt-to-follow": body.receiptToFollow = true; break;
    case "out-of-order": body.outOfOrder = true; break;
    case "smaller":
      // The line is weighed again to its new target; the reading goes only once the batch is smaller.
      if (await act("smaller", { totalMilligrams: choice.milligrams }, null, () => kept.drop(body.requestId))) forgetDraft(body.lineId);
      return;
    case "take-over":
      if (!(await act("take-over", {}, null, () => { delete item.asked; kept.keep(item); }))) return;
      break;
  }
  delete item.asked;
  kept.keep(item);
  closeAsk();
  await send(item);
}

function readAgain() {
  const item = asking;
  if (!item) return;
  kept.drop(item.body.requestId);
  typed = item.body.text;
  saveDraft();
  closeAsk();
  banner();
  show();
  $("#reading")?.focus({ preventScroll: true });
  if (stale) renew();
}

// ---------- other acts ----------
const actIds = new Map();

async function act(name, fields, errors, whenDone) {
  // The same press sent twice keeps its id; another body gets another.
  const print = JSON.stringify([name, fields]);
  if (!actIds.has(print)) actIds.set(print, kept.newId());
  const body = { requestId: actIds.get(print), batchId: sheet().dataset.batch, ...fields };
  const answer = await kept.post(`/bench/acts/${name}`, body, sheet().dataset.token);
  if (answer.kind === "recorded") {
    actIds.delete(print);
    whenDone?.();
    closeAsk();
    await renew();
    return true;
  }
  const words = answer.kind === "down" ? "The studio machine cannot be reached. Nothing was changed; press again."
    : answer.kind === "signed-out" ? "You are signed out. Sign in again in another tab, then press again."
    : [answer.happened, answer.kept, answer.toDo].filter(Boolean).join(" ");
  if (errors) { errors.hidden = false; errors.textContent = words; }
  else {
    $("[data-ask] .acterr")?.remove();
    $("[data-ask]")?.prepend(el("p", "st err acterr", words));
    say(words);
  }
  return false;
}

function fieldsOf(form) {
  const data = new FormData(form);
  switch (form.dataset.act) {
    case "reverse": return { weighingId: form.dataset.weighing, reason: data.get("reason") };
    case "finish-under": return { lineId: form.dataset.line, reason: data.get("reason") };
    case "last-addition": {
      const room = String(data.get("room") ?? "").trim().replace("−", "-").replace(",", ".");
      if (room !== "" && !/^-?\d+(\.\d)?$/.test(room)) return "Give the room in °C with at most one decimal, such as 18.5.";
      return { stirredConfirmed: data.get("stirred") === "on", place: data.get("place") || null, roomCelsius: room === "" ? null : Number(room) };
    }
    default: return {};
  }
}

// ---------- the sheet, fetched anew ----------
/** @param gentle When somebody began to answer or opened a dialog meanwhile, the sheet waits until they are done. */
async function renew(gentle = false) {
  let page;
  try {
    const response = await fetch(location.pathname, { credentials: "same-origin", redirect: "manual", headers: { Accept: "text/html" } });
    if (response.type === "opaqueredirect" || response.status === 401) { signedOut = true; banner(); return; }
    if (!response.ok) return;
    page = new DOMParser().parseFromString(await response.text(), "text/html").getElementById("sheet");
  } catch {
    down = true;
    banner();
    return;
  }
  if (!page || !sheet()) return;
  if (gentle && busy()) {
    stale = true;
    return;
  }
  const here = line?.dataset.line, wasDone = here && page.querySelector(`.wline[data-line="${CSS.escape(here)}"]`)?.dataset.done;
  stale = false;
  sheet().replaceWith(document.importNode(page, true));
  down = signedOut = false;
  begin(here && (here === byHand || (!wasDone && keptOn(here))) ? here : null);
}

/** The live region lies outside of what is replaced, or it would not be heard. */
function say(words) {
  const said = document.getElementById("said");
  if (said) said.textContent = words;
}

const busy = () => sending || asking || document.querySelector("dialog[open]") !== null;

/** What somebody is answering or typing in a dialog is not taken from under their hands. */
function freshen() {
  if (busy()) stale = true;
  else renew(true);
}

function begin(prefer) {
  if (!sheet()) return;
  asking = null;
  line = null;
  const asked = mine().find((i) => i.asked && i.body.batchId === sheet().dataset.batch && lineOf(i.body.lineId));
  if ($("#reading")) {
    go(asked?.body.lineId ?? prefer ?? (lineOf(sheet().dataset.current) ?? $(".wline"))?.dataset.line);
    if (matchMedia("(pointer: fine)").matches && !document.querySelector("dialog[open]")) $("#reading").focus({ preventScroll: true });
  }
  else if ($(".wend")) voice.speak("All lines are in.");
  const row = $("[data-speak-row]");
  if (row && voice.canSpeak()) {
    row.hidden = false;
    $("[data-speak]").checked = voice.isOn();
  }
  banner();
}

// ---------- hands ----------
document.addEventListener("change", (e) => {
  if (!e.target.matches?.("[data-speak]")) return;
  voice.turn(e.target.checked);
  if (e.target.checked && line) sayTarget();
});

document.addEventListener("pointerdown", (e) => {
  // Keys act on touch, not on release, so that quick thumbs are never too quick.
  const key = e.target.closest?.("[data-key]");
  if (!key || e.button !== 0) return;
  e.preventDefault();
  key.dataset.touched = "1";
  press(key.dataset.key);
});

document.addEventListener("click", (e) => {
  const at = (selector) => e.target.closest?.(selector);
  const key = at("[data-key]");
  if (key) {
    // A click without a touch is a keyboard's or a reader's.
    if (key.dataset.touched) delete key.dataset.touched;
    else press(key.dataset.key);
  } else if (at("[data-record]")) record();
  else if (at("[data-again]")) readAgain();
  else if (at(".wl [data-go]")) goByHand(at("[data-go]").dataset.go);
  else if (at("[data-open]")) openDialog(at("[data-open]").dataset.open);
  else if (at("[data-take]")) {
    const lot = at("[data-take]");
    if (lot.dataset.of !== line.dataset.line) go(lot.dataset.of);
    useLot(lot.dataset.take, lot.dataset.code);
    lot.closest("dialog").close();
  } else if (at("[data-follow]")) {
    at("dialog").close();
    follow();
  } else if (at("[data-no-tare]")) {
    tare = null;
    at("dialog").close();
    saveDraft();
    show();
  }
});

function openDialog(id) {
  const box = document.getElementById(id);
  if (id === "tare") $("#tare-g").value = tare ?? "";
  box?.showModal();
}

function follow() {
  const words = { happened: `Receipt of ${line.dataset.name} to follow.`, kept: "The reading is taken at the last cost until its delivery is here.", toDo: "", kind: "question", name: "Follow" };
  if (net() === null || net() <= 0) { say("Type the reading first"); return; }
  const item = { person: sheet().dataset.person, code: sheet().dataset.code, name: line.dataset.name, at: new Date().toISOString(),
    body: { requestId: kept.newId(), batchId: sheet().dataset.batch, lineId: line.dataset.line, lotId: line.dataset.lot || null, text: typed, tare } };
  ask(item, { ...words, answers: [{ key: "receipt-to-follow", title: `Take ${grams(net(), sheet())} g, receipt to follow`, text: "", needsReason: true }] });
}

document.addEventListener("submit", async (e) => {
  const form = e.target;
  if (form.matches("[data-act]")) {
    e.preventDefault();
    const errors = form.querySelector("[data-act-err]") ?? form.closest("dialog")?.querySelector("[data-act-err]");
    const fields = fieldsOf(form);
    if (typeof fields === "string") { errors.hidden = false; errors.textContent = fields; return; }
    const dialog = form.closest("dialog");
    if (await act(form.dataset.act, fields, errors)) dialog?.close();
  } else if (form.matches("[data-tare]")) {
    e.preventDefault();
    const text = form.tare.value.trim();
    const mg = milligrams(text, sheet());
    const err = form.querySelector("[data-tare-err]");
    err.hidden = mg !== null;
    if (mg === null) { err.textContent = `Give the tare in grams, such as 332${sheet().dataset.mark}4.`; return; }
    tare = mg === 0 ? null : text;
    form.closest("dialog").close();
    saveDraft();
    show();
  } else if (form.matches("[data-scan]")) {
    e.preventDefault();
    const code = form.code.value.trim().toUpperCase();
    const lot = [...document.querySelectorAll(`[data-take][data-of="${CSS.escape(form.dataset.scan)}"]`)].find((b) => b.dataset.code.toUpperCase() === code);
    const err = form.querySelector("[data-scan-err]");
    if (lot) { form.code.value = ""; err.hidden = true; lot.click(); return; }
    const elsewhere = document.querySelector(`[data-take][data-code="${CSS.escape(code)}"]`);
    const not = [...form.closest("dialog").querySelectorAll(".ch.not")].find((b) => b.querySelector("b").textContent.toUpperCase() === code);
    err.hidden = false;
    err.textContent = not ? `${code} may not be used: ${not.querySelector(".st").textContent.trim()}.`
      : elsewhere ? `${code} holds ${lineOf(elsewhere.dataset.of)?.dataset.name}. This line is ${lineOf(form.dataset.scan)?.dataset.name}.`
      : `${code} is no lot of ${lineOf(form.dataset.scan)?.dataset.name} with anything left.`;
  }
});

document.addEventListener("close", () => { if (stale) freshen(); }, true);

document.addEventListener("input", (e) => {
  if (e.target.id !== "reading") return;
  const mark = sheet().dataset.mark;
  const text = e.target.value.replace(mark === "," ? /\./g : /,/g, mark).replace(/\s/g, "");
  if (text === "" || milligrams(text, sheet()) !== null || text === mark) typed = text === mark ? `0${mark}` : text;
  saveDraft();
  show();
});

document.addEventListener("keydown", (e) => {
  if (!$("#reading") || document.querySelector("dialog[open]") || e.isComposing) return;
  if (e.altKey && (e.key === "ArrowUp" || e.key === "ArrowDown")) {
    e.preventDefault();
    step(e.key === "ArrowUp" ? -1 : 1);
    return;
  }
  if (e.ctrlKey || e.metaKey || e.altKey) return;
  const inReading = e.target.id === "reading";
  if (!inReading && e.target.closest?.("input, textarea, select, button, a")) return;
  if (e.key === "Enter") { e.preventDefault(); record(); return; }
  if (inReading) return;
  if (/^\d$/.test(e.key)) press(e.key);
  else if (e.key === "." || e.key === ",") press("mark");
  else if (e.key === "Backspace") press("back");
  else if (e.key === "Delete") press("clear");
});

// ---------- staying awake, hearing the partner ----------
async function stayAwake() {
  if (document.visibilityState !== "visible" || !sheet()) return;
  try { await navigator.wakeLock?.request("screen"); } catch { /* the browser decides */ }
}

document.addEventListener("visibilitychange", () => {
  stayAwake();
  if (document.visibilityState === "visible") resend();
});
addEventListener("online", resend);
addEventListener("offline", () => { down = true; banner(); });

if (sheet()) {
  const news = new EventSource(`/bench/${encodeURIComponent(sheet().dataset.code)}/news`);
  let opened = false;
  news.addEventListener("open", () => {
    if (opened || down) resend();
    opened = true;
  });
  news.addEventListener("changed", freshen);
  news.addEventListener("error", () => { down = true; banner(); });
  addEventListener("pagehide", () => news.close());
  begin();
  stayAwake();
  resend();
}
