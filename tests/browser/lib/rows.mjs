// Invented rows for the tests.

const hex = (number) => number.toString(16).padStart(32, "0");
export const WIG = hex(0xa1);
export const OTHER_WIG = hex(0xb2);

/** A row as the app would give it to `add` (its lamport is the store's to allocate). */
export function row(number, more = {}) {
  return {
    id: hex(number), v: 0, log: WIG, done: "2026-11-25T09:30", written: "2026-11-25T09:31:02Z", lamport: 0, by: "",
    body: { kind: "note", v: 0, text: `invented note ${number}` }, ...more,
  };
}

/** What a call of the store answered, or its error thrown. */
export async function ask(page, name, ...given) {
  const { value, error } = await page.evaluate((...all) => window.call(...all), name, ...given);
  if (error) throw new Error(`${name}: ${error.kind}: ${error.message} ${error.detail}`);
  return value;
}

/** The same for a call that must fail: its error. */
export async function error_of(page, name, ...given) {
  const { value, error } = await page.evaluate((...all) => window.call(...all), name, ...given);
  if (!error) throw new Error(`${name} did not fail but answered ${JSON.stringify(value)}`);
  return error;
}

export const ask_json = async (...given) => JSON.parse(await ask(...given));
