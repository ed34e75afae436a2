// The page's words in the reader's language, as the server wrote them.

const source = document.getElementById("field-words");
const words = JSON.parse(source.dataset.words);

/** The reader's language: en, es. */
export const language = source.dataset.language;

/** The text of a name with its values in place. A name that the page does not know is a mistake of ours. */
export function say(name, ...values) {
  if (!(name in words)) {
    throw new Error(`The page has no words for "${name}".`);
  }
  return words[name].replace(/\{(\d)\}/g, (_, place) => String(values[place]));
}

/** A clock time as the reader writes it: 14:02, 2:02 PM. time: with 24 hours. */
export function toldClock(time) {
  const [hours, minutes] = time.split(":").map(Number);
  return source.dataset.hours === "12" ? `${hours % 12 || 12}:${String(minutes).padStart(2, "0")} ${hours < 12 ? "AM" : "PM"}` : time;
}

/** A moment as people say it: 14:02. */
export const clock = (iso) => toldClock(new Date(iso).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" }));

/** A number as the reader writes it: 12,5. */
export const told = (number) => String(number).replace(".", source.dataset.point);
