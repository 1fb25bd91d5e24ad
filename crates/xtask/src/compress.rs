//! Compressing as a host does: brotli at its best for sizes and serving, gzip for clients that know no better.

use anyhow::Result;
use std::io::Write;

/// The bytes a host sends with `Content-Encoding: br`. Quality runs from 0 to 11.
pub fn brotli(bytes: &[u8], quality: i32) -> Result<Vec<u8>> {
    let parameters = brotli::enc::BrotliEncoderParams { quality, size_hint: bytes.len(), ..Default::default() };
    let mut compressed = Vec::new();
    brotli::BrotliCompress(&mut &bytes[..], &mut compressed, &parameters)?;
    Ok(compressed)
}

/// The bytes a host sends with `Content-Encoding: gzip`.
pub fn gzip(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?)
}

/// Whether a host compresses a file of this name; pictures other than SVG are compressed already.
pub fn is_worthwhile(path: &str) -> bool {
    !matches!(
        path.rsplit('.').next(),
        Some("png" | "jpg" | "jpeg" | "webp" | "avif" | "ico" | "woff2" | "gz" | "br" | "zip")
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    #[test]
    fn compressed_bytes_come_back_unchanged() {
        let text = "glycerin 24.5 %, water q.s. ".repeat(200);
        let small = brotli(text.as_bytes(), 11).unwrap();
        let mut back = Vec::new();
        brotli::BrotliDecompress(&mut &small[..], &mut back).unwrap();
        assert_eq!(back, text.as_bytes());
        assert!(small.len() < text.len() / 20);

        let small = gzip(text.as_bytes()).unwrap();
        let mut back = String::new();
        flate2::read::GzDecoder::new(&small[..]).read_to_string(&mut back).unwrap();
        assert_eq!(back, text);
    }

    #[test]
    fn pictures_are_left_alone() {
        assert!(!is_worthwhile("icons/icon-192.png"));
        assert!(is_worthwhile("icons/icon.svg"));
        assert!(is_worthwhile("v-0123/seam/stillroom_bg.wasm"));
    }
}
