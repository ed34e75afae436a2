// Copies a link that is shown only once. Without script, or where a browser refuses, it is selected to be copied by hand.

const button = document.querySelector("[data-copy]");
const link = document.querySelector("[data-link]");
const said = document.querySelector("[data-copied]");

async function copied() {
  try {
    await navigator.clipboard.writeText(link.value);
    return true;
  } catch {
    return document.execCommand("copy"); // what browsers have where an address is not https
  }
}

button.hidden = false;
button.addEventListener("click", async () => {
  link.focus();
  link.select();
  said.textContent = (await copied()) ? "Copied." : "This browser does not copy: the link is selected, copy it by hand.";
  button.focus();
});
