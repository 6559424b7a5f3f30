// Asks the device for a passkey, puts its answer into the form and posts it. Forms are hidden where passkeys do not work.
const supported = typeof PublicKeyCredential !== "undefined" && typeof PublicKeyCredential.parseRequestOptionsFromJSON === "function";

async function optionsFor(form) {
  const token = form.querySelector("input[name=__RequestVerificationToken]").value;
  const answer = await fetch(form.dataset.options, { method: "POST", headers: { RequestVerificationToken: token } });
  if (!answer.ok) throw new Error("The studio did not answer. Load the page again.");
  return answer.json();
}

async function ask(form) {
  const options = await optionsFor(form);
  return form.dataset.passkey === "create"
    ? navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
    : navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
}

function why(error) {
  switch (error.name) {
    case "NotAllowedError": return "The device gave no passkey. Nothing was changed; try again or use the passphrase.";
    case "InvalidStateError": return "This device already has a passkey here.";
    default: return `The device gave no passkey: ${error.message}`;
  }
}

for (const form of document.querySelectorAll("form[data-passkey]")) {
  form.hidden = !supported;
  form.addEventListener("submit", async event => {
    const field = form.querySelector("input[name$=Credential]");
    if (field.value) return;
    event.preventDefault();
    const says = form.querySelector("[role=alert]");
    says.textContent = "";
    try {
      field.value = JSON.stringify(await ask(form));
      form.submit();
    } catch (error) {
      says.textContent = why(error);
    }
  });
}
