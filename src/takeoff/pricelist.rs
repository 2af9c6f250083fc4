//! A yard's price list, as comma-separated values (RFC 4180), made into price phrases.
//!
//! A row is a stick and what one costs, `2x4x8,7.98`, or a size, a length in whole feet and
//! the price, `2x4,8,7.98`. A first row of names says which column is which.

use rust_decimal::Decimal;

/// The most rows read of a list.
pub const MOST_ROWS: usize = 2_000;

/// One row of a price list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceRow {
    /// Its line in the file, from 1.
    pub line: u64,
    /// The phrase that tells the price, "price: 2x4x8 at 7.98"; `None` where the row names no
    /// stick or no price.
    pub phrase: Option<String>,
}

/// Which column holds what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Columns {
    stick: usize,
    /// `None` where the stick says its length itself.
    length: Option<usize>,
    price: usize,
}

/// Names a first row may give its columns.
const STICK: [&str; 4] = ["stick", "size", "item", "lumber"];
const LENGTH: [&str; 3] = ["length", "feet", "ft"];
const PRICE: [&str; 3] = ["price", "each", "cost"];

/// The rows of a list in their order, empty ones and the row of names left out.
pub fn price_rows(text: &str) -> Vec<PriceRow> {
    let text = text.trim_start_matches('\u{feff}');
    let mut reader =
        csv::ReaderBuilder::new().has_headers(false).flexible(true).trim(csv::Trim::All).from_reader(text.as_bytes());
    let records: Vec<csv::StringRecord> = reader.records().filter_map(Result::ok).take(MOST_ROWS).collect();
    let named = records.first().and_then(named);
    let rows = records.iter().skip(usize::from(named.is_some()));
    let rows = rows.filter(|r| r.iter().any(|cell| !cell.is_empty()));
    rows.map(|r| PriceRow { line: line(text, r), phrase: phrase(r, named.unwrap_or(by_place(r))) }).collect()
}

/// The line a row stands on, from 1: its place is counted from the end of the row before, so
/// empty lines between are skipped.
fn line(text: &str, record: &csv::StringRecord) -> u64 {
    let at = record.position().and_then(|p| usize::try_from(p.byte()).ok()).unwrap_or(0);
    let empty = text.as_bytes().iter().skip(at).take_while(|b| matches!(b, b'\r' | b'\n')).count();
    1 + text.bytes().take(at + empty).filter(|b| *b == b'\n').count() as u64
}

/// The columns by their names, where the row names a stick and a price.
fn named(record: &csv::StringRecord) -> Option<Columns> {
    let find = |names: &[&str]| record.iter().position(|cell| names.contains(&cell.to_ascii_lowercase().as_str()));
    Some(Columns { stick: find(&STICK)?, length: find(&LENGTH), price: find(&PRICE)? })
}

/// The columns by their places.
fn by_place(record: &csv::StringRecord) -> Columns {
    match record.len() {
        0..=2 => Columns { stick: 0, length: None, price: 1 },
        _ => Columns { stick: 0, length: Some(1), price: 2 },
    }
}

/// The phrase of a row. Its figures go into it as written, whole or not at all.
fn phrase(record: &csv::StringRecord, at: Columns) -> Option<String> {
    let cell = |n: usize| record.get(n).map(plain);
    let stick = match at.length {
        Some(n) => format!("{}x{}", cell(at.stick)?, feet(&cell(n)?)?),
        None => cell(at.stick)?,
    };
    let price = cell(at.price)?;
    let price = Decimal::from_str_exact(price.strip_prefix('$').unwrap_or(&price)).ok()?.normalize();
    let phrase = format!("price: {stick} at {price}");
    crate::grammar::canon::read(&phrase).map(|_| phrase)
}

/// A cell in small letters, without spaces.
fn plain(cell: &str) -> String {
    let cell = cell.to_lowercase().replace('\u{d7}', "x");
    cell.chars().filter(|c| !c.is_whitespace()).collect()
}

/// Whole feet, with or without their mark.
fn feet(cell: &str) -> Option<&str> {
    let digits = ["'", "feet", "foot", "ft."].iter().find_map(|mark| cell.strip_suffix(mark));
    let digits = digits.or_else(|| cell.strip_suffix("ft")).unwrap_or(cell);
    digits.bytes().all(|b| b.is_ascii_digit()).then_some(digits)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn phrases(text: &str) -> Vec<(u64, Option<String>)> {
        price_rows(text).into_iter().map(|r| (r.line, r.phrase)).collect()
    }

    #[test]
    fn a_row_tells_a_price_or_is_named() {
        type Row<'a> = (&'a str, &'a [(u64, Option<&'a str>)]);
        let rows: [Row; 9] = [
            ("2x4x8,7.98\n", &[(1, Some("price: 2x4x8 at 7.98"))]),
            (
                "2X4x8 , $7.98\r\n\r\n4x4x10,21\r\n",
                &[(1, Some("price: 2x4x8 at 7.98")), (3, Some("price: 4x4x10 at 21"))],
            ),
            ("\u{feff}price,size,length\n7.98,2 x 4,8 ft\n", &[(2, Some("price: 2x4x8 at 7.98"))]),
            ("2x6,12',\"14.20\"\n", &[(1, Some("price: 2x6x12 at 14.2"))]),
            ("2x4x8,call us\n2x4x8\ndeck screws,31.00\n", &[(1, None), (2, None), (3, None)]),
            // A price with a comma for thousands is not guessed at.
            ("2x4x8,\"1,200\"\n", &[(1, None)]),
            ("2x4,92 5/8,4.10\n", &[(1, None)]),
            ("=2x4x8,7.98\n2x4x8,-7.98\n2x4x8,7.98; undo\n", &[(1, None), (2, None), (3, None)]),
            ("", &[]),
        ];
        for (text, want) in rows {
            let want: Vec<_> = want.iter().map(|(n, p)| (*n, p.map(str::to_owned))).collect();
            assert_eq!(phrases(text), want, "{text:?}");
        }
    }

    #[test]
    fn a_list_is_read_only_so_far() {
        assert_eq!(price_rows(&"2x4x8,1\n".repeat(MOST_ROWS + 5)).len(), MOST_ROWS);
    }
}
