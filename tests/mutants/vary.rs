//! Variants of a line, by a seeded generator: one small change each.

/// What was done to a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// This word was put in as the variant's word of this place.
    Insert(usize, &'static str),
    /// This word of the line was left out.
    Drop(usize),
    /// This word of the line was said twice.
    Double(usize),
    /// This word of the line and the next changed places.
    Swap,
    /// Digits were parted, or put together with others: another number.
    Digits,
    /// Blanks were put in or taken out around a mark, a dash or a unit: the same number.
    Blanks,
    /// Capitals.
    Case,
    /// Marks, units or signs written another way.
    Marks,
}

/// A line with one change.
#[derive(Clone, Debug)]
pub struct Variant {
    /// The row of the printed table it counts in.
    pub kind: &'static str,
    /// What was done.
    pub change: Change,
    /// The changed line.
    pub line: String,
}

/// Words to put in, by kind. Common practice, no source.
const INSERTS: [(&str, &[&str]); 9] = [
    (
        "insert: trade",
        &[
            "gate",
            "post",
            "posts",
            "corner",
            "house",
            "stairs",
            "stair head",
            "bays",
            "balusters",
            "notch",
            "deck",
            "clear",
            "overall",
            "on centre",
            "left",
            "front",
            "middle",
            "top",
            "high",
            "wide",
            "deep",
            "max",
            "run",
            "end post",
            "inside corner",
            "height",
            "gap",
            "bottom rail",
            "landing",
            "bracket",
            "4x4",
            "6x6",
        ],
    ),
    (
        "insert: trade verb",
        &[
            "drop", "scratch", "add", "use", "undo", "split", "suppose", "plus", "minus", "times", "same", "swap",
            "add up",
        ],
    ),
    (
        "insert: unknown",
        &["frobly", "kumquat", "dachshund", "zorp", "Henderson", "wiggly", "trellis", "umbrella", "tarpaulin"],
    ),
    (
        "insert: number",
        &["7", "3", "40", "2", "11", "5/8", "1 1/2", "19", "five", "150", "6'", "9\"", "-2", "4-5", "0"],
    ),
    ("insert: negation", &["not", "no", "without", "don't", "except", "never", "isn't"]),
    (
        "insert: qualifier",
        &[
            "almost",
            "half of",
            "about",
            "not quite",
            "nearly",
            "twice",
            "at least",
            "only",
            "every other",
            "either",
            "more than",
            "less than",
        ],
    ),
    ("insert: unit", &["ft", "inches", "mm", "feet", "inch", "m", "cm"]),
    ("insert: light", &["please", "the", "and", "a", "ok", "so", "um", "well", "just"]),
    ("insert: order", &["first", "second", "other", "far", "next", "last", "same", "another", "both"]),
];

/// Variants of a line; the same seed gives the same ones.
pub fn variants(line: &str, seed: u64) -> Vec<Variant> {
    let mut dice = Dice(seed ^ 0x9e37_79b9_7f4a_7c15);
    let tokens: Vec<&str> = line.split_whitespace().collect();
    let mut out = Vec::new();
    for (kind, list) in INSERTS {
        out.push(insert(&tokens, kind, dice.pick(list), dice.below(tokens.len() + 1)));
    }
    for at in dice.some(tokens.len(), 4) {
        out.push(drop(&tokens, at));
    }
    for at in dice.some(tokens.len(), 2) {
        out.push(double(&tokens, at));
    }
    for at in dice.some(tokens.len().saturating_sub(1), 3) {
        out.push(swap(&tokens, at));
    }
    out.extend(dice.few(digits(line), 2));
    out.extend(dice.few(blanks(line), 2));
    out.extend(dice.few(case(line), 1));
    out.extend(dice.few(marks(line), 2));
    out.retain(|v| v.line != line && !v.line.trim().is_empty());
    out
}

fn insert(tokens: &[&str], kind: &'static str, word: &'static str, at: usize) -> Variant {
    let mut list = tokens.to_vec();
    list.insert(at, word);
    Variant { kind, change: Change::Insert(at, word), line: list.join(" ") }
}

fn drop(tokens: &[&str], at: usize) -> Variant {
    let mut list = tokens.to_vec();
    list.remove(at);
    Variant { kind: "drop", change: Change::Drop(at), line: list.join(" ") }
}

fn double(tokens: &[&str], at: usize) -> Variant {
    let mut list = tokens.to_vec();
    list.insert(at, tokens[at].trim_end_matches([',', '?', '.', ':', ';']));
    Variant { kind: "double", change: Change::Double(at), line: list.join(" ") }
}

fn swap(tokens: &[&str], at: usize) -> Variant {
    let mut list = tokens.to_vec();
    list.swap(at, at + 1);
    Variant { kind: "swap", change: Change::Swap, line: list.join(" ") }
}

/// A number of two digits or more parted by a blank; two numbers put together.
fn digits(line: &str) -> Vec<Variant> {
    let chars: Vec<char> = line.chars().collect();
    let digit = |i: usize| chars.get(i).is_some_and(char::is_ascii_digit);
    let mut out = Vec::new();
    for at in 1..chars.len() {
        if digit(at - 1) && digit(at) {
            let text = chars[..at].iter().chain(&[' ']).chain(&chars[at..]).collect();
            out.push(Variant { kind: "part digits", change: Change::Digits, line: text });
        }
        if chars[at] == ' ' && digit(at - 1) && digit(at + 1) {
            let text = chars[..at].iter().chain(&chars[at + 1..]).collect();
            out.push(Variant { kind: "glue digits", change: Change::Digits, line: text });
        }
    }
    out
}

/// Blanks around dashes, marks and units: "14-6" to "14 -6", "12 ft" to "12ft".
fn blanks(line: &str) -> Vec<Variant> {
    let rules: [(&str, &str); 16] = [
        ("-", " -"),
        ("-", "- "),
        ("-", " - "),
        (" ft", "ft"),
        (" foot", "foot"),
        (" inch", "inch"),
        (" mm", "mm"),
        ("mm", " mm"),
        ("'", "' "),
        ("'", " '"),
        ("\"", " \""),
        ("/", " / "),
        ("x", " x "),
        (",", " , "),
        (", ", ","),
        (" ", "  "),
    ];
    rewritten(line, "blanks", &Change::Blanks, &rules)
}

fn marks(line: &str) -> Vec<Variant> {
    let rules: [(&str, &str); 22] = [
        ("'", "\u{2019}"),
        ("'", "\u{2032}"),
        ("\"", "\u{201d}"),
        ("\"", "\u{2033}"),
        ("\"", "''"),
        ("\"", " in"),
        ("\"", " inches"),
        (" ft", "'"),
        (" ft", " foot"),
        (" ft", " feet"),
        (" ft", " ft."),
        (" foot", " feet"),
        (" foot", " ft"),
        (" foot", "'"),
        (" feet", " ft"),
        (" inches", "\""),
        (" inch", "\""),
        ("-", "\u{2013}"),
        ("-", "\u{2011}"),
        ("1/2", "\u{bd}"),
        ("3/4", "\u{be}"),
        ("/", "\u{2044}"),
    ];
    rewritten(line, "marks", &Change::Marks, &rules)
}

/// The line with each rule that fits beside a digit applied at its first such place.
fn rewritten(line: &str, kind: &'static str, change: &Change, rules: &[(&str, &str)]) -> Vec<Variant> {
    let mut out = Vec::new();
    for (from, to) in rules {
        let place = line.match_indices(from).find(|(at, _)| beside_digit(line, *at, from.len()));
        if let Some((at, _)) = place {
            let text = format!("{}{to}{}", &line[..at], &line[at + from.len()..]);
            out.push(Variant { kind, change: change.clone(), line: text });
        }
    }
    out
}

/// True where a digit stands right before, and no letter goes on after.
fn beside_digit(line: &str, at: usize, length: usize) -> bool {
    let before = line[..at].chars().next_back().is_some_and(|c| c.is_ascii_digit());
    let letters = line[at..at + length].ends_with(char::is_alphabetic) && &line[at..at + length] != "x";
    before && !(letters && line[at + length..].starts_with(char::is_alphabetic))
}

fn case(line: &str) -> Vec<Variant> {
    let title = |word: &str| {
        let mut letters = word.chars();
        letters.next().map(|c| c.to_uppercase().chain(letters).collect::<String>()).unwrap_or_default()
    };
    let titled: Vec<String> = line.split(' ').map(title).collect();
    [line.to_uppercase(), line.to_lowercase(), title(line), titled.join(" ")]
        .into_iter()
        .filter(|text| text != line)
        .map(|line| Variant { kind: "case", change: Change::Case, line })
        .collect()
}

/// Splitmix64: small, and the same on every machine.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, n: usize) -> usize {
        let n = u64::try_from(n.max(1)).unwrap_or(1);
        usize::try_from(self.next() % n).unwrap_or(0)
    }

    fn pick<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }

    /// Up to `most` distinct numbers below `n`.
    fn some(&mut self, n: usize, most: usize) -> Vec<usize> {
        self.few((0..n).collect(), most)
    }

    /// Up to `most` of a list.
    fn few<T>(&mut self, mut list: Vec<T>, most: usize) -> Vec<T> {
        let mut out = Vec::new();
        while !list.is_empty() && out.len() < most {
            out.push(list.swap_remove(self.below(list.len())));
        }
        out
    }
}
