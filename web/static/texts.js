// Texts that must come out the same everywhere: a row's stable text, base64 and SHA-256.

function by_code_point(a, b) {
  // Not `<`: that compares UTF-16 units, and the core sorts by UTF-8 bytes, which is by code point.
  const left = Array.from(a, (c) => c.codePointAt(0));
  const right = Array.from(b, (c) => c.codePointAt(0));
  for (let i = 0; i < left.length && i < right.length; i += 1) {
    if (left[i] !== right[i]) return left[i] - right[i];
  }
  return left.length - right.length;
}

/** Compact JSON with the keys of every object in code point order: equal values give equal texts. */
export function stable(value) {
  if (Array.isArray(value)) return `[${value.map(stable).join(",")}]`;
  if (value !== null && typeof value === "object") {
    const keys = Object.keys(value).filter((key) => value[key] !== undefined).sort(by_code_point);
    return `{${keys.map((key) => `${JSON.stringify(key)}:${stable(value[key])}`).join(",")}}`;
  }
  return JSON.stringify(value);
}

// A multiple of three, so that the pieces' texts can be joined; small enough to spread as arguments.
const PIECE = 24_576;

/** Bytes as base64 (RFC 4648, with padding). */
export function base64(bytes) {
  const pieces = [];
  for (let start = 0; start < bytes.length; start += PIECE) {
    pieces.push(btoa(String.fromCharCode(...bytes.subarray(start, start + PIECE))));
  }
  return pieces.join("");
}

/** SHA-256 of bytes in lower-case hex, or null where the page has no `crypto.subtle` (a plain http address). */
export async function sha256(bytes) {
  if (!globalThis.crypto?.subtle) return null;
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
