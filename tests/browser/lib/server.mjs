// A static server of our own that can also be a poor one: under a sub-path, without a single header,
// with the wrong type for WebAssembly, stopped in the middle. It serves a Map from relative path to
// bytes, or a folder.

import { createServer } from "node:http";
import { readFile, stat } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { extname, join, normalize, sep } from "node:path";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

/** A folder as a source. */
export function folder(directory) {
  return async (path) => {
    const full = join(directory, normalize(path));
    if (full !== directory && !full.startsWith(directory + sep)) return null;
    const found = await stat(full).catch(() => null);
    return found?.isFile() ? readFile(full) : null;
  };
}

/** A Map (or plain object) from relative path to text or bytes as a source. */
export function files(entries) {
  const map = entries instanceof Map ? entries : new Map(Object.entries(entries));
  return async (path) => (map.has(path) ? Buffer.from(map.get(path)) : null);
}

/** The really built folder: WEFTBOOK_DIST, else dist/ of this checkout. */
export async function built_folder() {
  const directory = process.env.WEFTBOOK_DIST ?? fileURLToPath(new URL("../../../dist", import.meta.url));
  if (!(await stat(join(directory, "index.html")).catch(() => null))) {
    throw new Error(`${directory} has no index.html: run "cargo xtask build --release" first, or set WEFTBOOK_DIST`);
  }
  return folder(directory);
}

/** `prefix`: "/some/path/"; `headers`: "right", "none" (no content type at all, but for the pages and
 *  scripts, which a browser refuses without one) or "wrong-wasm"; `redirect_index`: index.html answers
 *  with a redirect to its folder, as some hosts do. */
export async function serve(source, { prefix = "/", headers = "right", redirect_index = false } = {}) {
  const server = createServer();
  const requests = [];
  let current = source;
  let port = 0;

  server.on("request", async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://any").pathname);
    requests.push(path);
    if (!path.startsWith(prefix)) return void response.writeHead(404).end("outside the prefix");
    let inner = path.slice(prefix.length);
    if (redirect_index && inner === "index.html") return void response.writeHead(307, { location: prefix }).end();
    if (inner === "" || inner.endsWith("/")) inner += "index.html";
    const body = await current(inner);
    if (body === null) return void response.writeHead(404, { "content-type": "text/plain" }).end("not found");
    const extension = extname(inner);
    const type = TYPES[extension] ?? "application/octet-stream";
    if (headers === "right") response.writeHead(200, { "content-type": type, "cache-control": "no-cache" });
    else if (headers === "wrong-wasm") response.writeHead(200, { "content-type": extension === ".wasm" ? "text/plain" : type });
    else response.writeHead(200, [".html", ".js", ".css"].includes(extension) ? { "content-type": type } : {});
    response.end(body);
  });

  const listen = () => new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => {
      port = server.address().port;
      resolve();
    });
  });
  await listen();

  return {
    get url() { return `http://127.0.0.1:${port}${prefix}`; },
    requests,
    swap(next) { current = next; },
    start: listen,
    stop: () => new Promise((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    }),
  };
}
