// Readings that were pressed and are not answered yet. Each is written to this browser before it is sent, with its
// request id, and removed once the studio has answered; so it is sent until then and takes effect once.
const key = "studio-bench-readings";
const patience = 8000;

let memory = [];

/** An id for a request; the browser's own maker of ids wants https, which a studio's own network may not have. */
export function newId() {
  const b = crypto.getRandomValues(new Uint8Array(16));
  b[6] = (b[6] & 0x0f) | 0x40;
  b[8] = (b[8] & 0x3f) | 0x80;
  const hex = [...b].map((x) => x.toString(16).padStart(2, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

export function all() {
  try {
    memory = JSON.parse(localStorage.getItem(key) ?? "[]");
  } catch {
    // Storage closed by the browser: readings are then kept as long as the page is open.
  }
  return memory;
}

function write(list) {
  memory = list;
  try {
    localStorage.setItem(key, JSON.stringify(list));
  } catch {
    // As above.
  }
}

export function keep(item) {
  write([...all().filter((i) => i.body.requestId !== item.body.requestId), item]);
}

export function drop(requestId) {
  write(all().filter((i) => i.body.requestId !== requestId));
}

/**
 * Posts once. Returns the studio's answer, or { kind: "down" } when it was not reached, or { kind: "signed-out" }.
 */
export async function post(address, body, token) {
  let response;
  try {
    response = await fetch(address, {
      method: "POST", credentials: "same-origin", redirect: "manual",
      headers: { "Content-Type": "application/json", RequestVerificationToken: token },
      body: JSON.stringify(body), signal: AbortSignal.timeout(patience),
    });
  } catch {
    return { kind: "down" };
  }
  if (response.status === 401 || response.type === "opaqueredirect") return { kind: "signed-out" };
  if (response.status >= 500) return { kind: "down" };
  try {
    const answer = await response.json();
    if (answer.name === "SignedOut") return { kind: "signed-out" };
    return answer;
  } catch {
    return { kind: "down" };
  }
}
