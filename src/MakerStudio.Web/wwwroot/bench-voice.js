// Says the target of the line aloud where somebody asked for it on this device; silent until then. The browser speaks.
const key = "studio-bench-spoken";
let memory = false;
let last = "";

export const canSpeak = () => "speechSynthesis" in window && "SpeechSynthesisUtterance" in window;

export function isOn() {
  try {
    return localStorage.getItem(key) === "on";
  } catch {
    return memory; // Storage closed by the browser: the choice holds while the page is open.
  }
}

export function turn(on) {
  memory = on;
  last = "";
  try {
    if (on) localStorage.setItem(key, "on");
    else localStorage.removeItem(key);
  } catch {
    // As above.
  }
  if (!on && canSpeak()) speechSynthesis.cancel();
}

/** Says the words once: a sheet fetched anew does not say its line again. The newest words cut off older ones. */
export function speak(words) {
  if (!canSpeak() || !isOn() || words === last) return;
  last = words;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(words);
  said.lang = document.documentElement.lang || "en";
  speechSynthesis.speak(said);
}

/** "DPG. Target 200.0 grams, within 1.0. Lot D 1." Numbers with a point and without groups: that is how voices read them. */
export function targetOf({ name, rest, target, tolerance, lotCode, done }, decimals) {
  if (done) return `${name}. Done.`;
  const say = (mg) => (Number(mg) / 1000).toFixed(decimals);
  // As on the sheet: the last whole step of the scale within the tolerance.
  const step = 10 ** Math.max(0, 3 - decimals);
  const lot = lotCode ? `Lot ${lotCode.replace("-", " ")}.` : "No lot.";
  return `${name}. ${Number(rest) < Number(target) ? "Add" : "Target"} ${say(rest)} grams, within ${say(tolerance - tolerance % step)}. ${lot}`;
}
