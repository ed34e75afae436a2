// Says when a live page has lost its connection, tries until it is back, and keeps what was typed over a reload.

const RETRY_MS = 4000;
const KEPT = `typed:${location.pathname}`;

const WORDS = {
  show: "The connection is lost. It comes back by itself; what you typed stays.",
  failed: "The connection is lost. Trying again; what you typed stays.",
  rejected: "The connection is back. The page loads anew with what you typed.",
};

const line = document.getElementById("components-reconnect-modal");
const fields = () => [...document.querySelectorAll("main input[id], main select[id], main textarea[id]")];
const isTyped = (field) => !["hidden", "file", "checkbox", "radio"].includes(field.type);

// What each field said when its reader first touched it: what differs later was typed.
const before = new Map();
document.addEventListener("focusin", ({ target }) => target.id && "value" in target && !before.has(target.id) && before.set(target.id, target.value));

// When each field was last changed, and when the connection went. What was changed while it was gone, or so shortly before
// that nobody had noticed yet, may never have arrived: it is told again.
const UNNOTICED_MS = 60000;
const changedAt = new Map();
let lostAt = null;
document.addEventListener("change", ({ target }) => target.id && isTyped(target) && changedAt.set(target.id, Date.now()), true);

function tell(field) {
  field.dispatchEvent(new Event("input", { bubbles: true }));
  field.dispatchEvent(new Event("change", { bubbles: true }));
}

function tellAgain() {
  const missed = fields().filter((field) => changedAt.get(field.id) > lostAt - UNNOTICED_MS);
  lostAt = null;
  missed.forEach(tell);
}

function keepTyped() {
  const typed = fields().filter((field) => isTyped(field) && before.has(field.id) && before.get(field.id) !== field.value);
  sessionStorage.setItem(KEPT, JSON.stringify(typed.map((field) => [field.id, field.value])));
}

function loadAnew() {
  keepTyped();
  location.reload();
}

async function tryAgain() {
  try {
    if (!(await Blazor.reconnect()) && !(await Blazor.resumeCircuit())) {
      loadAnew();
    }
  } catch (error) {
    console.info(`Not connected yet: ${error}`);
    setTimeout(tryAgain, RETRY_MS);
  }
}

line.addEventListener("components-reconnect-state-changed", ({ detail }) => {
  line.textContent = WORDS[detail.state] ?? (detail.state === "hide" ? "" : line.textContent);
  if (detail.state === "show") {
    lostAt ??= Date.now();
  } else if (detail.state === "hide" && lostAt !== null) {
    tellAgain();
  }
  if (detail.state === "failed") {
    setTimeout(tryAgain, RETRY_MS);
  } else if (detail.state === "rejected") {
    loadAnew();
  }
});

/** Puts back what was typed once the page is live: before that, nobody would hear of it. */
function giveBack() {
  const typed = JSON.parse(sessionStorage.getItem(KEPT) ?? "[]");
  const isLive = () => document.querySelector("[data-live='true']") !== null;
  const put = () => {
    sessionStorage.removeItem(KEPT);
    for (const [id, value] of typed) {
      const field = document.getElementById(id);
      if (field && field.value !== value) {
        field.value = value;
        tell(field);
      }
    }
  };
  if (typed.length === 0) {
    return;
  }
  if (isLive()) {
    put();
    return;
  }
  const watch = new MutationObserver(() => {
    if (isLive()) {
      watch.disconnect();
      put();
    }
  });
  watch.observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-live"] });
}

giveBack();
