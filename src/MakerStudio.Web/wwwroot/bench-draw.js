// Numbers and drawings of the weigh sheet. Masses are whole milligrams; nothing here decides, it only shows.
const ns = "http://www.w3.org/2000/svg";

/** "1,234.5" from 1234500 in the sheet's marks, with at least as many decimals as the scale shows. */
export function grams(mg, sheet, least = Number(sheet.dataset.decimals)) {
  const abs = Math.abs(mg);
  const frac = String(abs % 1000).padStart(3, "0");
  const needed = frac.endsWith("00") ? 1 : frac.endsWith("0") ? 2 : 3;
  const whole = String(Math.floor(abs / 1000)).replace(/\B(?=(\d{3})+$)/g, sheet.dataset.group);
  return (mg < 0 ? "−" : "") + whole + sheet.dataset.mark + frac.slice(0, Math.max(needed, least));
}

/** Milligrams typed as grams with one decimal mark, or null. */
export function milligrams(text, sheet) {
  const parts = text.split(sheet.dataset.mark);
  if (parts.length > 2 || !/^\d{0,9}$/.test(parts[0]) || !/^\d{0,3}$/.test(parts[1] ?? "") || text === "" || text === sheet.dataset.mark) return null;
  return Number(parts[0] || "0") * 1000 + Number((parts[1] ?? "").padEnd(3, "0"));
}

function node(name, attributes, text) {
  const it = document.createElementNS(ns, name);
  for (const [key, value] of Object.entries(attributes)) it.setAttribute(key, value);
  if (text !== undefined) it.textContent = text;
  return it;
}

/** The tolerance on a rule with the reading as a meniscus: the same drawing as the server's ToleranceRule. */
export function rule(box, target, tolerance, reading, sheet) {
  const farthest = 12;
  const off = reading === null ? 0 : Math.max(-farthest, Math.min(farthest, (reading - target) / tolerance));
  const near = reading === null || Math.abs(reading - target) <= 2.5 * tolerance;
  const from = Math.min(-3, off - 1), to = Math.max(3, off + 1);
  const at = (steps) => `${Math.max(0, Math.min(100, ((steps - from) / (to - from)) * 100)).toFixed(3)}%`;
  const write = (mg) => grams(mg, sheet, 0).replace(new RegExp(`\\${sheet.dataset.mark}0$`), "");
  // The scale shows whole steps: a limit is named by the last step that still lies within it.
  const step = 10 ** Math.max(0, 3 - Number(sheet.dataset.decimals));
  const low = Math.ceil((target - tolerance) / step) * step, high = Math.floor((target + tolerance) / step) * step;
  const svg = node("svg", { class: "d tol", height: 64, width: "100%", role: "img",
    "aria-label": reading === null ? `Nothing read yet; ${write(low)} to ${write(high)} grams is in tolerance`
      : `Reading ${write(reading)} against ${write(low)} to ${write(high)} grams` });
  svg.append(node("rect", { x: at(-1), y: 8, width: `${(200 / (to - from)).toFixed(3)}%`, height: 24, fill: "var(--leaf-wash)" }));
  svg.append(node("line", { class: "ink", x1: 0, x2: "100%", y1: 32, y2: 32 }));
  for (let tick = Math.ceil(from * 2) / 2; tick <= to; tick += 0.5) {
    svg.append(node("line", { class: "ax", x1: at(tick), x2: at(tick), y1: 32, y2: Number.isInteger(tick) ? 43 : 37 }));
  }
  for (const edge of [-1, 1]) svg.append(node("line", { stroke: "var(--leaf)", "stroke-width": 2.5, x1: at(edge), x2: at(edge), y1: 4, y2: 38 }));
  const word = (steps, text, bold, anchor) => {
    const share = (steps - from) / (to - from);
    svg.append(node("text", { class: bold ? "tb" : "t2", x: at(steps), y: 58, "text-anchor": anchor ?? (share < 0.1 ? "start" : share > 0.9 ? "end" : "middle") }, text));
  };
  if (near) {
    // Long numbers would touch: then only the limits are named, and those lean outwards.
    const length = write(high).length, reach = length > 5 ? 1 : 2;
    const named = { [-1]: low, 1: high };
    for (let n = -reach; n <= reach; n++) {
      word(n, write(named[n] ?? target + n * tolerance), n === 0, length > 6 && n !== 0 ? (n < 0 ? "end" : "start") : undefined);
    }
  } else {
    // Beside a far reading the limits stand on the side that has room.
    word(off > 0 ? -1 : 1, `${write(low)}–${write(high)}`, false, off > 0 ? "start" : "end");
    word(off, write(reading), true);
  }
  if (reading !== null) {
    const cup = node("svg", { x: at(off), y: 20, width: 1, height: 1, overflow: "visible" });
    cup.append(node("path", { class: "cup", d: "M-8 0Q0 19 8 0Z" }), node("path", { class: "ink", d: "M-8 0Q0 19 8 0" }));
    svg.append(cup);
  }
  box.replaceChildren(svg);
}

/** Raises the level in a drawn vessel by what is typed and not yet recorded. */
export function pour(box, total, extra, full, fill, label) {
  const svg = box.querySelector("svg.cyl");
  const group = svg?.querySelector("g[clip-path]");
  if (!group) return;
  const height = svg.viewBox.baseVal.height, slim = height > 600;
  const left = 6, right = slim ? 30 : 107, bottom = height - 8, top = 24;
  const end = Math.max(full, total);
  const y = (mg) => bottom - Math.min(1, mg / end) * (bottom - top);
  group.querySelector(".pour")?.remove();
  if (extra > 0) {
    const high = y(total + extra);
    group.append(node("rect", { class: "pour", x: left, y: high, width: right - left, height: y(total) - high, fill }));
  }
  let surface = svg.querySelector("path.surface") ?? [...svg.querySelectorAll(":scope > path.ink")].find((p) => p.getAttribute("d").includes("Q"));
  if (total + extra <= 0) { surface?.remove(); return; }
  if (!surface) {
    surface = node("path", { class: "ink" });
    svg.append(surface);
  }
  surface.classList.add("surface");
  const words = svg.querySelector("text.tb");
  if (words && label) {
    words.textContent = label;
    words.setAttribute("y", y(total + extra) + 4);
  }
  const level = y(total + extra);
  surface.setAttribute("d", `M${left} ${level - 5}Q${(left + right) / 2} ${level + 5} ${right} ${level - 5}`);
}
