// Photos: picked or taken, drawn upright on a canvas of at most 1600 px (which leaves position and every other
// mark of the camera behind), hashed, kept by their hash with a thumbnail. The demo's stay in this page's memory.

import { get_blob, put_blob } from "./store.js";

const LONGEST = 1600;
const THUMB = 320;
const held = new Map();
const addresses = new Map();

function refuse(message, detail) {
  return Object.assign(new Error(message), { kind: "photo", detail: String(detail ?? "") });
}

export function pick() {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = "image/*";
    input.addEventListener("cancel", () => resolve(null));
    input.addEventListener("change", () => resolve(input.files?.[0] ?? null));
    input.click();
  });
}

async function drawn(bitmap, longest) {
  const share = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * share));
  canvas.height = Math.max(1, Math.round(bitmap.height * share));
  const context = canvas.getContext("2d");
  // A picture with holes in it stands on white, as it would on paper.
  context.fillStyle = "#fff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", 0.85));
  if (!blob) throw refuse("This browser could not make the photo smaller. Try another photo.");
  return new Uint8Array(await blob.arrayBuffer());
}

async function digest(bytes) {
  if (!crypto.subtle) throw refuse("This address is not a safe one (https or this computer), and here the browser does not let photos be hashed. Open Weftbook from a safe address.");
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Lets the person take or choose a photo; resolves to its hash, or null when they choose none. `keep` puts
 *  it into the store, else it lives as long as the page. To be called from a click. */
export async function take_photo(keep) {
  const file = await pick();
  return file ? keep_photo(file, keep) : null;
}

/** Makes a photo small and upright and keeps it; resolves to its hash. */
export async function keep_photo(file, keep) {
  let bitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch (cause) {
    throw refuse(`${file.name ?? "This file"} is no picture that this browser can read. Choose a photo in JPEG or PNG.`, cause);
  }
  try {
    const [bytes, thumb] = [await drawn(bitmap, LONGEST), await drawn(bitmap, THUMB)];
    const hash = await digest(bytes);
    if (!keep) held.set(hash, { bytes, thumb, type: "image/jpeg" });
    else if ((await put_blob(hash, bytes, thumb, "image/jpeg")) === "forgotten") {
      throw refuse("This photo was forgotten here for good. Take another one.");
    }
    return hash;
  } finally {
    bitmap.close();
  }
}

/** Keeps a photo that came with a file, as it is: its bytes, in base64, must be a picture and have this hash. */
export async function put_photo(hash, data, keep) {
  const bytes = Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
  if ((await digest(bytes)) !== hash) throw refuse("A photo was damaged on its way. Ask for it again.");
  let bitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes], { type: "image/jpeg" }));
  } catch (cause) {
    throw refuse("What came as a photo is no picture that this browser can read.", cause);
  }
  try {
    const thumb = await drawn(bitmap, THUMB);
    if (!keep) held.set(hash, { bytes, thumb, type: "image/jpeg" });
    else if ((await put_blob(hash, bytes, thumb, "image/jpeg")) === "forgotten") {
      throw refuse("A photo in this slip was forgotten here for good.");
    }
  } finally {
    bitmap.close();
  }
}

/** An address to show a photo by, or null where it is missing here. */
export async function photo_address(hash, large) {
  const name = `${hash}${large ? "+" : ""}`;
  if (!addresses.has(name)) {
    const row = held.get(hash) ?? (await get_blob(hash));
    if (!row) return null;
    addresses.set(name, URL.createObjectURL(new Blob([large ? row.bytes : row.thumb], { type: row.type })));
  }
  return addresses.get(name);
}

/** The photo as a `data:` address that a file can carry, or null where it is missing here. */
export async function photo_data(hash) {
  const row = held.get(hash) ?? (await get_blob(hash));
  if (!row || !/^image\/(jpeg|png|webp)$/.test(row.type)) return null;
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener("load", () => resolve(reader.result));
    reader.addEventListener("error", () => reject(reader.error));
    reader.readAsDataURL(new Blob([row.bytes], { type: row.type }));
  });
}
