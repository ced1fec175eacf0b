// The one switch that says the app is dead, and the gate that keeps everything out of its WebAssembly
// from then on: after a panic its memory is half written, and any further call could write nonsense.

let crashed = false;

export function has_crashed() {
  return crashed;
}

/** Throws the switch. True the first time only. */
export function halt() {
  const first = !crashed;
  crashed = true;
  return first;
}

// What a closed gate answers: the generated code reads some answers as a list and others as a number,
// and this is "no error" and 0 to it.
const NOTHING = Object.freeze([]);

/** The instance's exports behind the gate: timers, promises and event handlers of the old app may still
 *  fire after a crash, but none of them gets in. */
export function gated(exports) {
  const gate = {};
  for (const [name, value] of Object.entries(exports)) {
    gate[name] = typeof value === "function"
      ? (...given) => (crashed ? NOTHING : value(...given))
      : value;
  }
  return gate;
}
