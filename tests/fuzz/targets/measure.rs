//! A measure at every word of a line: never a panic, never past the line's end.
#![no_main]

use libfuzzer_sys::fuzz_target;
use railhand::grammar::measures::measures_at;
use railhand::grammar::words::words;
use railhand::measure::{Meaning, Tape};

fuzz_target!(|line: &str| {
    let words = words(line);
    for at in 0..words.len() {
        for island in measures_at(&words, at) {
            assert!(island.end > at && island.end <= words.len());
            if let Meaning::Length(length, _) = island.measure.meaning {
                assert!(!Tape::SIXTEENTHS.read(length).is_empty());
            }
        }
    }
});
