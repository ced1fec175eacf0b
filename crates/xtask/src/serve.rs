//! A web server for this machine only: it serves the built folder to a browser here.
//!
//! What it is: static files on the loopback address, with ways to imitate plain hosts for tests.
//! What it is not: something to put on a network; any host serves the release folder.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use anyhow::{Context, Result, anyhow, bail};
use tiny_http::{Header, Method, Request, Response, Server};

use crate::page;
use crate::workspace::Metadata;

/// Records belong to an address with its port, so the port stays the same from day to day.
const PORT: u16 = 8417;
/// An address of its own: on the other one an installed service worker would go on showing the older build.
const DEV_PORT: u16 = 8418;

#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Headers {
    /// Types, and caching as the page would like it.
    Good,
    /// A plain host: types without character sets, a wrong one for wasm, no caching rules.
    Bare,
}

pub struct ServeOptions {
    pub port: Option<u16>,
    pub service_worker: bool,
    /// Serve this folder as it is instead of building.
    pub dir: Option<PathBuf>,
    /// Path under which the folder appears: `/` or `/some/sub/path/`.
    pub prefix: String,
    pub headers: Headers,
}

impl Default for ServeOptions {
    fn default() -> Self {
        Self { port: None, service_worker: true, dir: None, prefix: "/".to_owned(), headers: Headers::Good }
    }
}

/// `/some/sub/path` in any spelling of its slashes.
pub fn parse_prefix(text: &str) -> Result<String> {
    let parts: Vec<&str> = text.split('/').filter(|part| !part.is_empty()).collect();
    let plain =
        |part: &&str| part.chars().all(|c| c.is_ascii_alphanumeric() || "-_.~".contains(c)) && !part.starts_with('.');
    if !parts.iter().all(plain) {
        bail!("--prefix {text:?}: use letters, digits, - _ ~ and . between slashes, as in /some/sub/path");
    }
    Ok(if parts.is_empty() { "/".to_owned() } else { format!("/{}/", parts.join("/")) })
}

/// `cargo xtask serve`: builds unless a folder is given, then serves until stopped.
pub fn run(options: &ServeOptions) -> Result<()> {
    let dir = match &options.dir {
        Some(dir) => dir.canonicalize().with_context(|| format!("--dir {}: no such folder", dir.display()))?,
        None => page::quick(&Metadata::load()?, options.service_worker)?,
    };
    if !dir.join("index.html").is_file() {
        bail!("{} has no index.html: give the folder that `cargo xtask build` or `release` wrote", dir.display());
    }
    let port = options.port.unwrap_or(if options.service_worker { PORT } else { DEV_PORT });
    let server = Server::http(("127.0.0.1", port)).map_err(|error| {
        anyhow!("port {port} cannot be used ({error}): stop what uses it, or give another with --port N")
    })?;
    let address = server.server_addr().to_ip().context("the server has no address")?;
    println!("\nWeftbook is at http://{address}{}  (Ctrl+C stops it)", options.prefix);
    println!("Your records belong to this address: another port starts with an empty book.");
    let server = Arc::new(server);
    let site = Arc::new(Site { dir, prefix: options.prefix.clone(), headers: options.headers });
    // A few hands, so that one slow request does not hold up the others.
    let hands: Vec<_> = (0..4)
        .map(|_| {
            let (server, site) = (Arc::clone(&server), Arc::clone(&site));
            std::thread::spawn(move || {
                for request in server.incoming_requests() {
                    site.answer(request);
                }
            })
        })
        .collect();
    for hand in hands {
        hand.join().map_err(|_| anyhow!("a serving thread stopped unexpectedly"))?;
    }
    Ok(())
}

struct Site {
    dir: PathBuf,
    prefix: String,
    headers: Headers,
}

impl Site {
    fn answer(&self, request: Request) {
        let reply = match request.method() {
            Method::Get | Method::Head => self.look_up(request.url()),
            _ => Reply::text(405, "only GET and HEAD"),
        };
        let mut response = Response::from_data(reply.body).with_status_code(reply.status);
        for (name, value) in &reply.headers {
            if let Ok(header) = Header::from_bytes(*name, value.as_bytes()) {
                response.add_header(header);
            }
        }
        if let Err(error) = request.respond(response) {
            // The browser went away: nothing to do but say so.
            eprintln!("(a reply was not taken: {error})");
        }
    }

    fn look_up(&self, url: &str) -> Reply {
        let path = url.split(['?', '#']).next().unwrap_or("/");
        if format!("{path}/") == self.prefix {
            let mut reply = Reply::text(301, "moved");
            reply.headers.push(("Location", self.prefix.clone()));
            return reply;
        }
        let Some(path) = path.strip_prefix(&self.prefix).and_then(safe_path) else {
            return Reply::text(404, "not here");
        };
        let name = if path.is_empty() { "index.html" } else { path };
        match std::fs::read(self.dir.join(name)) {
            Ok(body) => Reply { status: 200, headers: headers(name, self.headers), body },
            Err(_) => Reply::text(404, "not here"),
        }
    }
}

struct Reply {
    status: u16,
    headers: Vec<(&'static str, String)>,
    body: Vec<u8>,
}

impl Reply {
    fn text(status: u16, text: &str) -> Self {
        Self { status, headers: vec![("Content-Type", "text/plain".to_owned())], body: text.as_bytes().to_vec() }
    }
}

/// Only plain names below the folder; the build makes no others.
fn safe_path(path: &str) -> Option<&str> {
    let plain = |part: &str| {
        !part.starts_with('.') && part.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | '_'))
    };
    (path.is_empty() || path.split('/').all(|part| !part.is_empty() && plain(part))).then_some(path)
}

fn headers(name: &str, kind: Headers) -> Vec<(&'static str, String)> {
    let ending = Path::new(name).extension().and_then(|ending| ending.to_str()).unwrap_or("");
    let media = match ending {
        "html" => "text/html",
        "js" => "text/javascript",
        "css" => "text/css",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "wasm" => "application/wasm",
        "txt" => "text/plain",
        _ => "application/octet-stream",
    };
    if kind == Headers::Bare {
        let media = if matches!(ending, "wasm" | "webmanifest") { "application/octet-stream" } else { media };
        return vec![("Content-Type", media.to_owned())];
    }
    let media = if media.starts_with("text/") { format!("{media}; charset=utf-8") } else { media.to_owned() };
    // The name of an app folder follows its content, so it never grows old; all else is asked for anew.
    let caching = if name.starts_with("app-") { "public, max-age=31536000, immutable" } else { "no-cache" };
    vec![
        ("Content-Type", media),
        ("Cache-Control", caching.to_owned()),
        ("X-Content-Type-Options", "nosniff".to_owned()),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prefixes_are_read_or_refused() {
        for (text, prefix) in [("", "/"), ("/", "/"), ("a/b", "/a/b/"), ("/a/b/", "/a/b/")] {
            assert_eq!(parse_prefix(text).unwrap(), prefix);
        }
        assert!(parse_prefix("/a/../b").is_err());
        assert!(parse_prefix("/a b").is_err());
    }

    #[test]
    fn nothing_outside_the_folder_is_served() {
        for path in ["../x", "a/../../x", ".git/config", "a//b", "%2e%2e/x", "a\\b", "/etc/passwd"] {
            assert_eq!(safe_path(path), None, "{path}");
        }
        assert_eq!(safe_path("app-1/boot.js"), Some("app-1/boot.js"));
    }

    #[test]
    fn types_are_right_or_wrong_on_purpose() {
        let media = |name, kind| headers(name, kind)[0].1.clone();
        assert_eq!(media("a.wasm", Headers::Good), "application/wasm");
        assert_eq!(media("a.wasm", Headers::Bare), "application/octet-stream");
        assert_eq!(media("a.js", Headers::Good), "text/javascript; charset=utf-8");
        assert_eq!(headers("index.html", Headers::Bare).len(), 1);
    }

    #[test]
    fn the_prefix_is_the_only_way_in() {
        let site = Site { dir: PathBuf::from("nowhere"), prefix: "/a/".to_owned(), headers: Headers::Good };
        assert_eq!(site.look_up("/a").status, 301);
        assert_eq!(site.look_up("/").status, 404);
        assert_eq!(site.look_up("/a/none.js?x").status, 404);
    }
}
