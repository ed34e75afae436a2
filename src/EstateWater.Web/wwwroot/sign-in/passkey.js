// Asks a passkey of this phone or computer, to sign in or to make one, and sends its answer with the page's own form.

async function optionsFor(form) {
  const response = await fetch(form.dataset.options, {
    method: "POST",
    credentials: "same-origin",
    redirect: "error",
    headers: { Accept: "application/json", RequestVerificationToken: form.elements.namedItem("__RequestVerificationToken").value },
  });
  if (!response.ok) {
    throw new Error(`The server answered ${response.status}.`);
  }
  return response.json();
}

async function answerOf(form) {
  const options = await optionsFor(form);
  return form.dataset.passkey === "create"
    ? navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
    : navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
}

async function use(form) {
  const problem = form.querySelector("[data-passkey-problem]");
  problem.hidden = true;
  try {
    form.elements.namedItem("credential").value = JSON.stringify(await answerOf(form));
  } catch (error) {
    console.info(`No passkey: ${error}`);
    problem.textContent = problem.dataset.passkeyProblem;
    problem.hidden = false;
    return;
  }
  // Past the listener below: this time the form itself is sent.
  HTMLFormElement.prototype.submit.call(form);
}

if (document.documentElement.dataset.passkeys === "offered") {
  for (const form of document.querySelectorAll("form[data-passkey]")) {
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      use(form);
    });
    delete form.dataset.waits;
  }
}
