// Sends a form with a file and hands back what the studio said. Nothing is cleared unless it was kept.
export async function send(form, mostBytes) {
  const file = form.querySelector("input[type=file]");
  if (file.files.length === 0) return refused("No file is chosen.", "Choose one and send it again.");
  if (file.files[0].size > mostBytes) return refused(`This file is larger than ${mostBytes / 1048576} MB.`, "Save it smaller, or send the part that matters.");
  try {
    const body = new FormData(form);
    const token = body.get("__RequestVerificationToken") ?? "";
    const answer = await fetch(form.action, { method: "POST", body, headers: { RequestVerificationToken: token } });
    if (!(answer.headers.get("content-type") ?? "").includes("json")) {
      return refused("The studio machine did not take the file.", "Open the page again, sign in if asked, and send it once more.");
    }
    const said = await answer.json();
    if (said.done) file.value = "";
    return said;
  } catch {
    return refused("The line to the studio machine is down, or the file cannot be read.", "Press again; it is kept once, however often you press.");
  }
}

function refused(happened, toDo) {
  return { done: false, happened, kept: "Nothing was kept; the form stays as it is.", toDo };
}
