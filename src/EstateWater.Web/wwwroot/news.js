// Listens for changes of the data while the page is looked at; a hidden page holds no connection.
const line = document.querySelector("[data-news]");
const shown = Number(line.dataset.version);
let stream = null;

function say(what) {
  const link = document.createElement("a");
  link.href = location.href;
  link.textContent = "Show it";
  line.replaceChildren(what + " ", link);
}

function listen() {
  if (document.hidden) {
    stream?.close();
    stream = null;
  } else if (!stream) {
    stream = new EventSource("/news");
    stream.addEventListener("news", (event) => {
      const news = JSON.parse(event.data);
      if (news.version > shown) say(news.what);
    });
  }
}

document.addEventListener("visibilitychange", listen);
addEventListener("pagehide", () => stream?.close());
listen();
