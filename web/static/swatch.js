// A colour off a photo: the photo is drawn into the page, nowhere kept, and each touch tells the mean of a small square.

import { pick } from "./photo.js";

const LONGEST = 1200;
const HALF = 4;

/** Lets the person choose a photo and draws it into an element; `tapped(red, green, blue)` hears of each touch. Resolves to
 *  whether there is a photo. To be called from a click. */
export async function tap_photo(host, tapped) {
  const file = await pick();
  const place = document.getElementById(host);
  if (!file || !place) return false;
  let bitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    return false;
  }
  const share = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * share));
  canvas.height = Math.max(1, Math.round(bitmap.height * share));
  const context = canvas.getContext("2d", { willReadFrequently: true });
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  canvas.addEventListener("click", (event) => {
    const box = canvas.getBoundingClientRect();
    const at = (from, size, whole) => Math.min(Math.max(Math.round((from / size) * whole) - HALF, 0), Math.max(whole - 2 * HALF, 0));
    const x = at(event.clientX - box.left, box.width, canvas.width);
    const y = at(event.clientY - box.top, box.height, canvas.height);
    const { data } = context.getImageData(x, y, Math.min(2 * HALF, canvas.width), Math.min(2 * HALF, canvas.height));
    const sum = [0, 0, 0];
    for (let index = 0; index < data.length; index += 4) for (let band = 0; band < 3; band += 1) sum[band] += data[index + band];
    tapped(...sum.map((band) => Math.round((band * 4) / data.length)));
  });
  place.replaceChildren(canvas);
  return true;
}
