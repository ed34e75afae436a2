// Reads a list of { latitude, longitude, midnight } from the file named and writes { noon, rise, set } for each:
// the first culmination after that local midnight, the rise before it and the set after it, as UTC instants; null where there is none.
import { readFileSync } from "node:fs";
import { Body, Observer, SearchHourAngle, SearchRiseSet } from "astronomy-engine";

const halfDayMs = 12 * 3600 * 1000;

function day({ latitude, longitude, midnight }) {
  const place = new Observer(latitude, longitude, 0);
  const noon = SearchHourAngle(Body.Sun, place, 0, new Date(midnight), +1).time.date;
  const rise = SearchRiseSet(Body.Sun, place, +1, new Date(noon.getTime() - halfDayMs), 0.5);
  const set = SearchRiseSet(Body.Sun, place, -1, noon, 0.5);
  return { noon, rise: rise?.date ?? null, set: set?.date ?? null };
}

process.stdout.write(JSON.stringify(JSON.parse(readFileSync(process.argv[2], "utf8")).map(day)));
