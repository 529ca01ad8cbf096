/** A small file server for the built page: strict content policy, no request elsewhere, nothing outside its folder. */
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize, sep } from "node:path";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".wav": "audio/wav",
  ".mp3": "audio/mpeg",
  ".webm": "audio/webm",
  ".bin": "application/octet-stream",
};

export const POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

const fileIn = (folder, url) => {
  const path = normalize(decodeURIComponent(new URL(url, "http://localhost").pathname));
  const full = join(folder, path.endsWith(sep) || path.endsWith("/") ? `${path}index.html` : path);
  return full.startsWith(folder + sep) ? full : null;
};

const answer = (folder, request, response) => {
  let full = null;
  try {
    full = fileIn(folder, request.url ?? "/");
    const { size } = statSync(full);
    response.writeHead(200, {
      "content-type": TYPES[extname(full)] ?? "application/octet-stream",
      "content-length": size,
      "content-security-policy": POLICY,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cache-control": full.includes(`${sep}assets${sep}`) ? "public, max-age=31536000, immutable" : "no-cache",
    });
    if (request.method === "HEAD") response.end();
    else createReadStream(full).pipe(response);
  } catch {
    response.writeHead(404, { "content-type": "text/plain; charset=utf-8" });
    response.end("Not here.\n");
  }
};

/**
 * Serves a folder on this machine's own address only.
 * @param {string} folder @param {number} firstPort the next free one from here is taken
 * @returns {Promise<{server: import("node:http").Server, port: number}>}
 */
export function serve(folder, firstPort) {
  return new Promise((resolve, reject) => {
    const server = createServer((request, response) => answer(normalize(folder), request, response));
    let port = firstPort;
    server.on("error", (error) => {
      if (error.code === "EADDRINUSE" && port < firstPort + 50) server.listen(++port, "127.0.0.1");
      else reject(error);
    });
    server.on("listening", () => resolve({ server, port }));
    server.listen(port, "127.0.0.1");
  });
}
