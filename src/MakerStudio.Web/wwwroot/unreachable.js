// The line to the studio machine is down, or this page went to sleep there. Says so and tries again.
const box = document.getElementById("components-reconnect-modal");

function whenSeenAgain() {
  if (document.visibilityState === "visible") tryAgain();
}

async function tryAgain() {
  document.removeEventListener("visibilitychange", whenSeenAgain);
  try {
    if (await Blazor.reconnect()) return;
    if (await Blazor.resumeCircuit()) box.close();
    else location.reload();
  } catch {
    document.addEventListener("visibilitychange", whenSeenAgain);
  }
}

async function wake() {
  try {
    if (!(await Blazor.resumeCircuit())) location.reload();
  } catch {
    box.classList.replace("components-reconnect-paused", "components-reconnect-resume-failed");
  }
}

box?.addEventListener("components-reconnect-state-changed", (event) => {
  switch (event.detail.state) {
    case "show": if (!box.open) box.showModal(); break;
    case "hide": box.close(); break;
    case "failed": document.addEventListener("visibilitychange", whenSeenAgain); break;
    case "rejected": location.reload(); break;
  }
});
document.getElementById("components-reconnect-button")?.addEventListener("click", tryAgain);
document.getElementById("components-resume-button")?.addEventListener("click", wake);
