//! Any text as a yard's price list: what a row tells is a plain phrase.
#![no_main]

use libfuzzer_sys::fuzz_target;
use railhand::grammar::canon;
use railhand::takeoff::{MOST_ROWS, price_rows};

fuzz_target!(|text: &str| {
    let rows = price_rows(text);
    assert!(rows.len() <= MOST_ROWS);
    for phrase in rows.iter().filter_map(|r| r.phrase.as_ref()) {
        assert!(canon::read(phrase).is_some(), "{phrase:?}");
    }
});
