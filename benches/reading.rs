//! What reading one line costs: short, long and hopeless ones, and how it grows.
//!
//! `cargo bench --bench reading`

use divan::Bencher;
use railhand::grammar::kinds::kinds;
use railhand::grammar::reading::readings;
use railhand::grammar::words::words;
use railhand::session::{Session, peek, step};

fn main() {
    divan::main();
}

const SHORT: &str = "14-6 house to corner";
const USUAL: &str = "run 10 ft between corner and stair head, gate at top";
const LONG: &str = "left side house to corner 9-8, front corner to stairs 6-4, stairs 4-0, stairs to corner 6-4, \
                    right corner to house 9-8, 4x4 posts, 6 foot on centre max, 36 to the top of the cap";
const GARBAGE: &str = "qwop 14 zig the 3/8 on of not wimmel 4x4 ' \" and blorft 12-13-14 to to to gate?? 7 no";

#[divan::bench(args = [SHORT, USUAL, LONG, GARBAGE])]
fn read(bencher: Bencher, line: &str) {
    let words = words(line);
    bencher.bench(|| readings(&words, &[]));
}

#[divan::bench(args = [SHORT, USUAL, LONG, GARBAGE])]
fn answer(bencher: Bencher, line: &str) {
    let session = Session::new();
    bencher.bench(|| step(&session, line));
}

/// So many facts in one line.
#[divan::bench(args = [1, 2, 4, 8, 16])]
fn read_facts(bencher: Bencher, facts: usize) {
    let words = words(&vec!["run 10 ft corner to corner"; facts].join(", "));
    bencher.bench(|| readings(&words, &[]));
}

/// What a keystroke costs: the line cut by kind, and what it would be heard as. The long line has 200 letters.
const TYPED: [&str; 4] = [
    SHORT,
    USUAL,
    "12-6 house to corner, 36 in gate at the far end, 3 bays",
    "left side house to corner 9-8, front corner to stairs 6-4, stairs 4-0, stairs to corner 6-4, right corner to house \
     9-8, 4x4 posts, 6 foot on centre max, 36 to the top of the cap, gap under 3",
];

#[divan::bench(args = TYPED)]
fn highlight(bencher: Bencher, line: &str) {
    bencher.bench(|| kinds(line, &[]));
}

#[divan::bench(args = TYPED)]
fn hint(bencher: Bencher, line: &str) {
    let session = Session::new();
    bencher.bench(|| peek(&session, line));
}
