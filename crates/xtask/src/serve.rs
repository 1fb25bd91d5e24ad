//! Serves the built folder on this machine as a careful host would: right types, security headers, compressed bytes,
//! lasting caches for what never changes.

use crate::compress;
use crate::http::{self, Request, Response};
use crate::policy;
use crate::site::hash_of_file;
use crate::workspace::{ending, say};
use anyhow::{Context, Result, bail, ensure};
use std::collections::HashMap;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

/// Where `serve` listens unless told otherwise.
pub const USUAL_PORT: u16 = 8411;
/// How many ports after a taken one are tried.
const PORTS_TRIED: u16 = 20;

/// A folder served at an address of this machine.
pub struct Site {
    folder: PathBuf,
    listener: TcpListener,
    compressed: Compressed,
}

/// Compressed bytes by content hash and encoding: each file is compressed once.
type Compressed = Mutex<HashMap<(String, Encoding), Arc<Vec<u8>>>>;

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Encoding {
    Brotli,
    Gzip,
}

impl Site {
    /// Binds the port asked for, or the next free one.
    pub fn open(folder: &Path, port: u16) -> Result<Self> {
        let folder = folder.canonicalize().with_context(|| format!("{} is not there", folder.display()))?;
        ensure!(folder.join("index.html").is_file(), "{} holds no index.html", folder.display());
        for port in port..=port.saturating_add(PORTS_TRIED) {
            if let Ok(listener) = TcpListener::bind(("127.0.0.1", port)) {
                return Ok(Self { folder, listener, compressed: Mutex::default() });
            }
        }
        bail!("no port from {port} to {} is free", port.saturating_add(PORTS_TRIED))
    }

    /// The address a browser opens.
    pub fn address(&self) -> Result<String> {
        Ok(format!("http://{}/", self.listener.local_addr()?))
    }

    /// Answers requests until the program is ended.
    pub fn serve(self: &Arc<Self>) {
        let site = Arc::clone(self);
        std::thread::spawn(move || site.compress_ahead());
        let site = Arc::clone(self);
        http::answer_all(&self.listener, &Arc::new(move |request: &Request| site.response_to(request)));
    }

    /// Compresses every file as well as can be, while requests are already answered.
    fn compress_ahead(&self) {
        for path in crate::workspace::files_below(&self.folder).unwrap_or_default() {
            if compress::is_worthwhile(&path)
                && let Ok(content) = std::fs::read(self.folder.join(&path))
                && let Ok(small) = compress::brotli(&content, 11)
            {
                self.remember((hash_of_file(&content), Encoding::Brotli), &Arc::new(small));
            }
        }
    }

    fn remember(&self, key: (String, Encoding), bytes: &Arc<Vec<u8>>) {
        if let Ok(mut compressed) = self.compressed.lock() {
            compressed.insert(key, Arc::clone(bytes));
        }
    }

    /// The compressed form of a file. A first request does not wait for the best brotli has to offer.
    fn encode(&self, content: &[u8], hash: &str, encoding: Encoding) -> Result<Arc<Vec<u8>>> {
        let key = (hash.to_owned(), encoding);
        if let Ok(compressed) = self.compressed.lock()
            && let Some(bytes) = compressed.get(&key)
        {
            return Ok(Arc::clone(bytes));
        }
        Ok(Arc::new(match encoding {
            Encoding::Brotli => compress::brotli(content, 5)?,
            Encoding::Gzip => {
                let bytes = Arc::new(compress::gzip(content)?);
                self.remember(key, &bytes);
                return Ok(bytes);
            }
        }))
    }

    fn response_to(&self, request: &Request) -> Response {
        if !matches!(request.method.as_str(), "GET" | "HEAD") {
            let mut response = plain(405, "only GET and HEAD are answered here");
            response.headers.push(("Allow", "GET, HEAD".to_owned()));
            return response;
        }
        let found = file_named(&request.target).and_then(|path| self.read(&path).map(|content| (path, content)));
        let Some((path, content)) = found else {
            return plain(404, "there is no such file");
        };
        let hash = hash_of_file(&content);
        let tag = format!("\"{}\"", &hash[..32]);
        let mut headers = vec![
            ("Content-Type", media_type(&path).to_owned()),
            ("Cache-Control", cache_rule(&path).to_owned()),
            ("Vary", "Accept-Encoding".to_owned()),
            ("ETag", tag.clone()),
        ];
        if request.header("if-none-match").is_some_and(|tags| tags.contains(&tag)) {
            // What it says of the file counts from then on, so it says the same as the file did.
            let mut response = respond(304, Arc::default(), headers);
            say_policy(&path, &content, &mut response);
            open_to_other_sites(&path, &mut response);
            return response;
        }
        let encoding = if compress::is_worthwhile(&path) {
            best_encoding(request.header("accept-encoding").unwrap_or_default())
        } else {
            None
        };
        let body = match encoding.map(|encoding| (encoding, self.encode(&content, &hash, encoding))) {
            Some((encoding, Ok(bytes))) => {
                let name = if encoding == Encoding::Brotli { "br" } else { "gzip" };
                headers.push(("Content-Encoding", name.to_owned()));
                bytes
            }
            _ => Arc::new(content.clone()),
        };
        let mut response = respond(200, body, headers);
        say_policy(&path, &content, &mut response);
        open_to_other_sites(&path, &mut response);
        response
    }

    /// Reads a file of the folder; a link that leads out of it is not followed.
    fn read(&self, path: &str) -> Option<Vec<u8>> {
        let place = self.folder.join(path).canonicalize().ok()?;
        if !place.starts_with(&self.folder) || !place.is_file() {
            return None;
        }
        std::fs::read(place).ok()
    }
}

/// A page is sent with the policy that stands in it: two that differ would both count.
fn say_policy(path: &str, content: &[u8], response: &mut Response) {
    if ending(path) != "html" {
        return;
    }
    for (name, value) in &mut response.headers {
        if *name == "Content-Security-Policy" {
            *value = policy::header_of(&String::from_utf8_lossy(content));
        }
    }
}

/// What an embedded formula needs on another site: its scripts and the seam may be fetched from there, and one page may
/// be framed there. Nothing of a maker is in any of them.
fn open_to_other_sites(path: &str, response: &mut Response) {
    if !(path.starts_with("v-") || path.starts_with("embed/")) {
        return;
    }
    response.headers.push(("Access-Control-Allow-Origin", "*".to_owned()));
    for (name, value) in &mut response.headers {
        match *name {
            "Cross-Origin-Resource-Policy" => "cross-origin".clone_into(value),
            "Content-Security-Policy" if path == "embed/frame.html" => *value = policy::header_of_frame(),
            _ => {}
        }
    }
}

/// Serves a folder and says where.
pub fn serve(folder: &Path, port: u16) -> Result<()> {
    let site = Arc::new(Site::open(folder, port)?);
    println!("{}", site.address()?);
    say("serving; end with Ctrl-C");
    site.serve();
    Ok(())
}

/// The file a request asks for, as a path inside the folder. `None` for whatever could lead out of it.
fn file_named(url: &str) -> Option<String> {
    let path = url.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = percent_decoded(path)?;
    if path.is_empty() {
        return Some("index.html".to_owned());
    }
    let harmless = |name: &str| {
        !name.is_empty() && !name.starts_with('.') && !name.contains(['\\', ':']) && !name.contains(char::is_control)
    };
    path.split('/').all(harmless).then_some(path)
}

fn percent_decoded(text: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.as_bytes();
    while let Some((&first, tail)) = rest.split_first() {
        rest = tail;
        if first == b'%' {
            let digits = std::str::from_utf8(tail.get(..2)?).ok()?;
            if !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
                return None;
            }
            bytes.push(u8::from_str_radix(digits, 16).ok()?);
            rest = &tail[2..];
        } else {
            bytes.push(first);
        }
    }
    String::from_utf8(bytes).ok()
}

fn media_type(path: &str) -> &'static str {
    match ending(path) {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "webmanifest" => "application/manifest+json",
        "json" => "application/json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "webp" => "image/webp",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// What lies in a folder named after its content never changes; everything else is asked for again.
fn cache_rule(path: &str) -> &'static str {
    let is_named_after_content = path
        .strip_prefix("v-")
        .and_then(|rest| rest.split_once('/'))
        .is_some_and(|(hash, _)| hash.len() == 12 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()));
    if is_named_after_content { "public, max-age=31536000, immutable" } else { "no-cache" }
}

/// The encoding to send, given what the client accepts.
fn best_encoding(accepted: &str) -> Option<Encoding> {
    let accepts = |name: &str| {
        accepted.split(',').any(|offer| {
            let mut parts = offer.split(';').map(str::trim);
            let refused = |part: &str| {
                part.strip_prefix("q=")
                    .and_then(|weight| weight.parse::<f32>().ok())
                    .is_some_and(|weight| weight <= 0.0)
            };
            parts.next() == Some(name) && !parts.any(refused)
        })
    };
    if accepts("br") { Some(Encoding::Brotli) } else { accepts("gzip").then_some(Encoding::Gzip) }
}

fn respond(status: u16, body: Arc<Vec<u8>>, mut headers: Vec<(&'static str, String)>) -> Response {
    headers.push(("Content-Security-Policy", policy::header()));
    headers.extend(
        [
            ("X-Content-Type-Options", "nosniff"),
            ("Referrer-Policy", "no-referrer"),
            ("Permissions-Policy", "camera=(), microphone=(), geolocation=(), payment=(), usb=(), browsing-topics=()"),
            ("Cross-Origin-Opener-Policy", "same-origin"),
            ("Cross-Origin-Embedder-Policy", "require-corp"),
            ("Cross-Origin-Resource-Policy", "same-origin"),
        ]
        .map(|(name, value)| (name, value.to_owned())),
    );
    Response { status, headers, body }
}

fn plain(status: u16, sentence: &str) -> Response {
    let headers =
        vec![("Content-Type", "text/plain; charset=utf-8".to_owned()), ("Cache-Control", "no-store".to_owned())];
    respond(status, Arc::new(sentence.as_bytes().to_vec()), headers)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::{Read, Write};
    use std::net::TcpStream;

    #[test]
    fn nothing_outside_the_folder_can_be_named() {
        for url in [
            "/../Cargo.toml",
            "/v-0/../../Cargo.toml",
            "/%2e%2e/Cargo.toml",
            "/..%2fCargo.toml",
            "/%2e%2e%5cCargo.toml",
            "/..\\Cargo.toml",
            "//etc/passwd",
            "/c:/windows",
            "/.git/config",
            "/a/./b",
            "/a%00.html",
            "/%zz",
            "/%+1",
            "/%f",
            "relative",
            "",
        ] {
            assert_eq!(file_named(url), None, "{url}");
        }
        assert_eq!(file_named("/").as_deref(), Some("index.html"));
        assert_eq!(file_named("/?from=link#f=1").as_deref(), Some("index.html"));
        assert_eq!(file_named("/v-0/a%20b.js").as_deref(), Some("v-0/a b.js"));
    }

    #[test]
    fn types_caches_and_encodings_are_right() {
        assert_eq!(media_type("v-0/seam/stillroom_bg.wasm"), "application/wasm");
        assert_eq!(media_type("sw.js"), "text/javascript; charset=utf-8");
        assert_eq!(media_type("manifest.webmanifest"), "application/manifest+json");
        assert_eq!(media_type("LICENSE"), "application/octet-stream");
        assert!(cache_rule("v-0123456789ab/main.js").contains("immutable"));
        for path in ["index.html", "sw.js", "v-0123456789ab", "v-shelf/main.js"] {
            assert_eq!(cache_rule(path), "no-cache");
        }
        assert_eq!(best_encoding("gzip, deflate, br"), Some(Encoding::Brotli));
        assert_eq!(best_encoding("gzip;q=0.5, br;q=0"), Some(Encoding::Gzip));
        assert_eq!(best_encoding("identity"), None);
    }

    /// Sends one request and returns the head and the body of the answer.
    fn ask(address: &str, request: &str) -> (String, Vec<u8>) {
        let host = address.trim_start_matches("http://").trim_end_matches('/');
        let mut stream = TcpStream::connect(host).unwrap();
        write!(stream, "{request}\r\nHost: {host}\r\nConnection: close\r\n\r\n").unwrap();
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).unwrap();
        let end = answer.windows(4).position(|window| window == b"\r\n\r\n").unwrap();
        (String::from_utf8(answer[..end].to_vec()).unwrap(), answer[end + 4..].to_vec())
    }

    #[test]
    fn a_browser_gets_what_it_asks_for_and_no_more() {
        let outside = std::env::temp_dir().join(format!("stillroom-serve-{}", std::process::id()));
        let folder = outside.join("dist");
        std::fs::create_dir_all(folder.join("v-0123456789ab")).unwrap();
        std::fs::write(outside.join("secret.txt"), "secret").unwrap();
        std::fs::write(folder.join("index.html"), "<p>page ".repeat(50)).unwrap();
        std::fs::write(folder.join("v-0123456789ab/seam.wasm"), b"\0asm").unwrap();
        #[cfg(unix)]
        std::os::unix::fs::symlink(outside.join("secret.txt"), folder.join("link.txt")).unwrap();

        let site = Arc::new(Site::open(&folder, 18411).unwrap());
        let address = site.address().unwrap();
        let serving = Arc::clone(&site);
        std::thread::spawn(move || serving.serve());

        let (head, body) = ask(&address, "GET /#x HTTP/1.1");
        assert!(head.starts_with("HTTP/1.1 200") && body == "<p>page ".repeat(50).as_bytes(), "{head}");
        assert!(head.contains("default-src 'none'") && head.contains("frame-ancestors 'self'"));
        assert!(head.contains("nosniff") && head.contains("require-corp") && head.contains("no-referrer"));
        let tag = head.lines().find_map(|line| line.strip_prefix("ETag: ")).unwrap().to_owned();

        let (head, body) = ask(&address, "GET / HTTP/1.1\r\nAccept-Encoding: br");
        assert!(head.contains("Content-Encoding: br") && body.len() < 60, "{head}");
        let (head, body) = ask(&address, &format!("GET / HTTP/1.1\r\nIf-None-Match: {tag}"));
        assert!(head.starts_with("HTTP/1.1 304") && body.is_empty(), "{head}");
        // What other sites may do with a file, they may when it is looked at again.
        std::fs::create_dir_all(folder.join("embed")).unwrap();
        std::fs::write(folder.join("embed/frame.html"), "<p>framed").unwrap();
        let (head, _) = ask(&address, "GET /embed/frame.html HTTP/1.1");
        let tag = head.lines().find_map(|line| line.strip_prefix("ETag: ")).unwrap().to_owned();
        let (again, _) = ask(&address, &format!("GET /embed/frame.html HTTP/1.1\r\nIf-None-Match: {tag}"));
        for head in [head, again] {
            assert!(head.contains("frame-ancestors *") && head.contains("Policy: cross-origin"), "{head}");
        }
        let (head, body) = ask(&address, "HEAD / HTTP/1.1");
        assert!(head.starts_with("HTTP/1.1 200") && body.is_empty(), "{head}");
        let (head, body) = ask(&address, "GET /v-0123456789ab/seam.wasm HTTP/1.1");
        assert!(head.contains("application/wasm") && head.contains("immutable") && body == b"\0asm");

        for path in ["/../secret.txt", "/%2e%2e/secret.txt", "/link.txt", "/v-0123456789ab", "/none.js"] {
            let (head, body) = ask(&address, &format!("GET {path} HTTP/1.1"));
            assert!(head.starts_with("HTTP/1.1 404") && !body.windows(6).any(|part| part == b"secret"), "{path}");
        }
        assert!(ask(&address, "DELETE / HTTP/1.1").0.starts_with("HTTP/1.1 405"));

        // Connections that are kept open, as a browser does, hold up nobody.
        let host = address.trim_start_matches("http://").trim_end_matches('/');
        let mut kept: Vec<_> = (0..32).map(|_| TcpStream::connect(host).unwrap()).collect();
        for visit in 0..2 {
            for connection in &mut kept {
                write!(connection, "GET /v-0123456789ab/seam.wasm HTTP/1.1\r\nHost: {host}\r\n\r\n").unwrap();
            }
            for connection in &mut kept {
                connection.set_read_timeout(Some(std::time::Duration::from_secs(20))).unwrap();
                let mut answer = vec![0; 4096];
                let mut length = 0;
                while !answer[..length].ends_with(b"\0asm") {
                    let read = connection.read(&mut answer[length..]).unwrap();
                    assert!(read > 0, "a kept connection was closed at visit {visit}");
                    length += read;
                }
            }
        }
        std::fs::remove_dir_all(outside).unwrap();
    }
}
