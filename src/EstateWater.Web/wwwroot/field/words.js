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

/** A moment as people say it: 14:02. */
export const clock = (iso) => new Date(iso).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });

/** A number as the reader writes it: 12,5. */
export const told = (number) => String(number).replace(".", source.dataset.point);
