//! A price list on the disk, told to the talk row by row.

use super::out::Trouble;
use super::talk::Talk;
use crate::reply::{safe, wrap};
use crate::takeoff::{MOST_ROWS, price_rows};
use std::fs::File;
use std::io::{self, Read as _};
use std::path::Path;

/// The most bytes read of a price list.
const MOST_BYTES: u64 = 1 << 20;

/// The most lines named that tell no price; the rest are counted.
const MOST_NAMED: usize = 10;

/// Tells the talk the prices of a list, as one paste, and says in rows how many it took. A row
/// that tells none is named by its line and never shown: a list may hold anything.
///
/// # Errors
/// The list cannot be read, or is larger than one may be.
pub(super) fn tell(talk: &mut Talk, list: &Path, width: usize) -> Result<String, Trouble> {
    let name = safe(&list.to_string_lossy());
    let text = read(list).map_err(|why| Trouble::Prices(name.clone(), why))?;
    let rows = price_rows(&text);
    let before = talk.begin_paste();
    let left: Vec<u64> =
        rows.iter().filter(|r| !r.phrase.as_ref().is_some_and(|p| talk.tell(p))).map(|r| r.line).collect();
    talk.end_paste(before);
    let says = says(&name, rows.len(), &left);
    Ok(says.iter().map(|row| wrap("", row, 2, width) + "\n").collect())
}

fn read(list: &Path) -> io::Result<String> {
    let file = File::open(list)?;
    if !file.metadata()?.is_file() {
        return Err(io::Error::other("not a plain file"));
    }
    let mut bytes = Vec::new();
    file.take(MOST_BYTES + 1).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(io::Error::other("larger than a price list may be (1 MiB)"));
    }
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

fn says(name: &str, rows: usize, left: &[u64]) -> Vec<String> {
    let taken = rows - left.len();
    let mut says = vec![format!("{name}: {taken} {} taken.", if taken == 1 { "price" } else { "prices" })];
    if !left.is_empty() {
        let named: Vec<String> = left.iter().take(MOST_NAMED).map(u64::to_string).collect();
        let more = left.len().saturating_sub(MOST_NAMED);
        let more = if more > 0 { format!(" and {more} more") } else { String::new() };
        says.push(format!(
            "{name}: nothing taken from line {}{more}: a row is a stick and its price, 2x4x8,7.98.",
            named.join(", ")
        ));
    }
    if rows == MOST_ROWS {
        says.push(format!("{name}: {MOST_ROWS} rows are as many as I read; what follows them is not told."));
    }
    says
}
