//! As much of HTTP/1.1 as serving files on this machine needs: GET and HEAD, lasting connections, a thread for each.
//!
//! A browser opens half a dozen connections at once and keeps them. A pool of threads would let some of them wait until
//! others close; a thread each never does.

use std::io::{BufRead, BufReader, Read, Result, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::Arc;
use std::time::Duration;

/// How long a connection may be silent.
const PATIENCE: Duration = Duration::from_secs(60);
/// The longest head of a request that is read, in bytes.
const LONGEST_HEAD: u64 = 32 * 1024;

/// The head of a request.
#[derive(Debug, Default)]
pub struct Request {
    /// `GET`, `HEAD` or something that is not answered.
    pub method: String,
    /// Path and query, as sent.
    pub target: String,
    /// Names in lower case, with their values.
    headers: Vec<(String, String)>,
    keeps_alive: bool,
}

/// An answer, without its length: that is written when it is sent.
#[derive(Debug)]
pub struct Response {
    /// The status code.
    pub status: u16,
    /// Names and values.
    pub headers: Vec<(&'static str, String)>,
    /// What a GET is sent.
    pub body: Arc<Vec<u8>>,
}

impl Request {
    /// The value of a header, its name given in lower case.
    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(found, _)| found == name).map(|(_, value)| value.as_str())
    }

    /// Reads the next head. `None` when the client has nothing more to say, or nothing that can be understood.
    fn read(connection: &mut impl BufRead) -> Option<Self> {
        let mut connection = connection.take(LONGEST_HEAD);
        let mut next_line = || {
            let mut line = String::new();
            connection.read_line(&mut line).ok()?;
            line.strip_suffix('\n').map(|line| line.trim_end_matches('\r').to_owned())
        };
        let first = next_line()?;
        let mut words = first.split(' ');
        let (method, target, version) = (words.next()?, words.next()?, words.next()?);
        let mut request = Self { method: method.to_owned(), target: target.to_owned(), ..Self::default() };
        loop {
            let line = next_line()?;
            if line.is_empty() {
                break;
            }
            let (name, value) = line.split_once(':')?;
            request.headers.push((name.to_ascii_lowercase(), value.trim().to_owned()));
        }
        let wants_to_close = request.header("connection").is_some_and(|word| word.eq_ignore_ascii_case("close"));
        // A body is never read, so what follows it cannot be understood.
        let has_body = ["content-length", "transfer-encoding"]
            .iter()
            .any(|name| request.header(name).is_some_and(|value| value != "0"));
        request.keeps_alive = version == "HTTP/1.1" && !wants_to_close && !has_body;
        Some(request)
    }
}

impl Response {
    fn write(&self, request: &Request, connection: &mut impl Write) -> Result<()> {
        let reason = match self.status {
            200 => "OK",
            304 => "Not Modified",
            404 => "Not Found",
            405 => "Method Not Allowed",
            _ => "",
        };
        // Head and body go out together, so that neither waits for the other to be acknowledged.
        let mut bytes = Vec::with_capacity(1024 + self.body.len());
        write!(bytes, "HTTP/1.1 {} {reason}\r\n", self.status)?;
        for (name, value) in &self.headers {
            write!(bytes, "{name}: {value}\r\n")?;
        }
        if self.status != 304 {
            write!(bytes, "Content-Length: {}\r\n", self.body.len())?;
        }
        write!(bytes, "Connection: {}\r\n\r\n", if request.keeps_alive { "keep-alive" } else { "close" })?;
        if self.status != 304 && request.method != "HEAD" {
            bytes.extend_from_slice(&self.body);
        }
        connection.write_all(&bytes)?;
        connection.flush()
    }
}

/// Answers every connection until the program ends.
pub fn answer_all<Answer>(listener: &TcpListener, answer: &Arc<Answer>)
where
    Answer: Fn(&Request) -> Response + Send + Sync + 'static,
{
    for connection in listener.incoming().flatten() {
        let answer = Arc::clone(answer);
        // A client that goes away in the middle is no fault of ours.
        std::thread::spawn(move || converse(connection, &*answer));
    }
}

fn converse(mut connection: TcpStream, answer: &dyn Fn(&Request) -> Response) -> Result<()> {
    connection.set_read_timeout(Some(PATIENCE))?;
    connection.set_write_timeout(Some(PATIENCE))?;
    connection.set_nodelay(true)?;
    let mut reader = BufReader::new(connection.try_clone()?);
    while let Some(request) = Request::read(&mut reader) {
        answer(&request).write(&request, &mut connection)?;
        if !request.keeps_alive {
            break;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Option<Request> {
        Request::read(&mut text.as_bytes())
    }

    #[test]
    fn a_head_is_read_and_its_end_found() {
        let mut connection =
            "GET /a?b HTTP/1.1\r\nHost: x\r\nACCEPT-Encoding: br \r\n\r\nGET / HTTP/1.0\r\n\r\n".as_bytes();
        let first = Request::read(&mut connection).unwrap();
        assert_eq!((first.method.as_str(), first.target.as_str()), ("GET", "/a?b"));
        assert_eq!(first.header("accept-encoding"), Some("br"));
        assert!(first.keeps_alive);
        let second = Request::read(&mut connection).unwrap();
        assert!(second.target == "/" && !second.keeps_alive, "HTTP/1.0 closes");
        assert!(Request::read(&mut connection).is_none());
    }

    #[test]
    fn what_is_no_request_ends_the_connection() {
        for text in
            ["", "GET", "GET /\r\n\r\n", "GET / HTTP/1.1\r\nno colon\r\n\r\n", "GET / HTTP/1.1\r\nHost: cut off"]
        {
            assert!(read(text).is_none(), "{text}");
        }
        let endless = format!("GET / HTTP/1.1\r\nX: {}\r\n\r\n", "x".repeat(40_000));
        assert!(read(&endless).is_none(), "a head has a longest length");
        assert!(!read("POST / HTTP/1.1\r\nContent-Length: 3\r\n\r\nabc").unwrap().keeps_alive);
    }
}
