// While past outlooks are held against the readings, says how far the work is, and offers the answer once it is there.
const line = document.querySelector("[data-look-back]");
const done = document.querySelector("[data-look-back-done]");
const everyMs = 2000;

function offer(words) {
  line.textContent = "";
  const link = document.createElement("a");
  link.href = location.href;
  link.textContent = "Show it";
  done.replaceChildren(words + " ", link);
}

async function ask() {
  if (document.hidden) return;
  try {
    const answer = await fetch("/accuracy/progress", { cache: "no-store" });
    const progress = await answer.json();
    if (!progress.working) {
      clearInterval(timer);
      offer(progress.words);
    } else {
      line.textContent = progress.words;
    }
  } catch {
    line.textContent = "The server does not answer. Still trying.";
  }
}

const timer = setInterval(ask, everyMs);
