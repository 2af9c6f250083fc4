//! Lines from the outside, in bounded memory.

use std::borrow::Cow;
use std::io::{self, BufRead, BufReader, Read};

/// The bytes of a line that are kept; the rest is read and let go. Far over what the
/// reader takes, so a line cut here is refused as too long, never half understood.
pub(super) const MOST: usize = 64 * 1024;

/// Lines of a stream.
pub(super) struct Lines<R> {
    from: BufReader<R>,
    first: bool,
}

impl<R: Read> Lines<R> {
    /// The lines of `from`.
    pub(super) fn new(from: R) -> Lines<R> {
        Lines { from: BufReader::new(from), first: true }
    }

    /// True where the next line is here already and reading it will not wait.
    pub(super) fn holds_a_line(&self) -> bool {
        self.from.buffer().contains(&b'\n')
    }

    /// The next line without its break, or `None` at the end. Bytes that are no UTF-8
    /// come as U+FFFD.
    ///
    /// # Errors
    /// What the stream could not read.
    pub(super) fn next_line(&mut self) -> io::Result<Option<String>> {
        let Some(bytes) = self.next_bytes()? else { return Ok(None) };
        let text = String::from_utf8_lossy(bytes.strip_suffix(b"\r").unwrap_or(&bytes)).into_owned();
        // The mark some editors put at the head of a file is not typed by anyone.
        let marked = std::mem::take(&mut self.first);
        let text = if marked { text.trim_start_matches('\u{feff}').to_owned() } else { text };
        Ok(Some(text))
    }

    fn next_bytes(&mut self) -> io::Result<Option<Vec<u8>>> {
        let mut line = Vec::new();
        let mut any = false;
        loop {
            let chunk = match self.from.fill_buf() {
                Err(e) if e.kind() == io::ErrorKind::Interrupted => continue,
                chunk => chunk?,
            };
            if chunk.is_empty() {
                return Ok(any.then_some(line));
            }
            any = true;
            let end = chunk.iter().position(|b| *b == b'\n');
            let part = &chunk[..end.unwrap_or(chunk.len())];
            line.extend_from_slice(&part[..part.len().min(MOST - line.len())]);
            let used = end.map_or(chunk.len(), |n| n + 1);
            self.from.consume(used);
            if end.is_some() {
                return Ok(Some(line));
            }
        }
    }
}

/// A pasted text's lines, each within [`MOST`]. An empty text is one empty line; a break
/// at the end starts no further line.
pub(super) fn split(text: &str) -> impl Iterator<Item = Cow<'_, str>> {
    let text = text.strip_suffix('\n').unwrap_or(text);
    text.split('\n').map(|line| {
        let line = line.strip_suffix('\r').unwrap_or(line);
        Cow::Borrowed(&line[..line.floor_char_boundary(MOST)])
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(bytes: &[u8]) -> Vec<String> {
        let mut lines = Lines::new(bytes);
        std::iter::from_fn(|| lines.next_line().expect("memory is read without fail")).collect()
    }

    #[test]
    fn lines_come_without_their_breaks() {
        let rows: [(&[u8], &[&str]); 7] = [
            (b"", &[]),
            (b"\n", &[""]),
            (b"a\nb", &["a", "b"]),
            (b"a\r\n\r\nb\r\n", &["a", "", "b"]),
            (b"a\n\n", &["a", ""]),
            (b"\xef\xbb\xbfa\n\xef\xbb\xbfb", &["a", "\u{feff}b"]),
            (b"10\xff ft\x00", &["10\u{fffd} ft\0"]),
        ];
        for (bytes, want) in rows {
            assert_eq!(all(bytes), want, "{bytes:?}");
        }
    }

    #[test]
    fn a_long_line_is_cut_and_the_next_is_whole() {
        let mut bytes = vec![b'x'; 3 * MOST];
        bytes.extend_from_slice(b"\nnext");
        let lines = all(&bytes);
        assert_eq!(lines.iter().map(String::len).collect::<Vec<_>>(), [MOST, 4]);
        assert_eq!(lines[1], "next");
    }

    /// An endless line must not be stored: the stream here would fill the memory.
    #[test]
    fn an_endless_line_is_read_in_bounded_memory() {
        let endless = io::repeat(b'x').take(1 << 26).chain(&b"\nnext\n"[..]);
        let mut lines = Lines::new(endless);
        let first = lines.next_line().expect("read").expect("a line");
        assert_eq!((first.len(), first.capacity() <= 2 * MOST), (MOST, true));
        assert_eq!(lines.next_line().expect("read").as_deref(), Some("next"));
    }

    #[test]
    fn a_paste_is_split_and_each_part_bounded() {
        let long = "é".repeat(MOST);
        let rows: [(&str, Vec<usize>); 5] = [
            ("", vec![0]),
            ("a\nbb", vec![1, 2]),
            ("a\r\n\nbb\n", vec![1, 0, 2]),
            ("\n", vec![0]),
            (&long, vec![MOST]),
        ];
        for (text, want) in rows {
            assert_eq!(split(text).map(|l| l.len()).collect::<Vec<_>>(), want);
        }
    }
}
