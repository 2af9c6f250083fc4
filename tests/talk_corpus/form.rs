//! The text form of the corpus: blocks parted by an empty line, meaning lines, and `>` lines that say them.

use num_rational::Ratio;

/// A signed exact number.
pub type Q = Ratio<i128>;

/// What a meaning line may do.
pub const ACTS: [&str; 17] = [
    "tell", "ask", "judge", "suppose", "rule", "why", "sum", "drop", "note", "undo", "keep", "leave", "talk", "list",
    "unclear", "foreign", "bad",
];

/// A value as it is written.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Inches.
    Length(Q),
    /// A count, a price, degrees.
    Number(Q),
    /// "4x4".
    Lumber,
    /// A change to what stands: "+2\"", "*0.5".
    Relative,
    /// Words: a place, a choice.
    Words,
    /// Nothing at all, or named without a value.
    Bare,
}

/// One fact: the row's name, without what stands in front of it, and its value.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    pub row: String,
    pub value: Value,
}

/// The meaning of one line of talk.
#[derive(Clone, Debug)]
pub struct Meaning {
    pub act: String,
    pub wants: Vec<String>,
    pub facts: Vec<Said>,
}

/// A meaning and the ways of saying it.
#[derive(Clone, Debug)]
pub struct Block {
    /// Its first meaning line and its file, for a fault to name.
    pub name: String,
    /// The meaning lines as written.
    pub written: Vec<String>,
    pub meanings: Vec<Meaning>,
    /// Each way of saying it, parted into its lines.
    pub says: Vec<Vec<String>>,
    /// True where it says that its lines may mean something else.
    pub ambiguous: bool,
}

/// "3", "1 1/2", "3/8", "2.35".
pub fn number(text: &str) -> Option<Q> {
    let part = |s: &str| match s.split_once('/') {
        Some((n, d)) => Some(Q::new(n.parse().ok()?, d.parse().ok().filter(|d: &i128| *d > 0)?)),
        None => decimal(s),
    };
    match text.split_once(' ') {
        Some((whole, rest)) if rest.contains('/') => Some(Q::from_integer(whole.parse().ok()?) + part(rest)?),
        Some(_) => None,
        None => part(text),
    }
}

fn decimal(s: &str) -> Option<Q> {
    if !s.starts_with(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let (whole, part) = s.split_once('.').unwrap_or((s, ""));
    let scale = 10_i128.checked_pow(u32::try_from(part.len()).ok()?)?;
    let tail = if part.is_empty() { 0 } else { part.parse::<i128>().ok()? };
    Some(Q::from_integer(whole.parse().ok()?) + Q::new(tail, scale))
}

/// `58"`, `12'-6"`.
fn length(text: &str) -> Option<Q> {
    let inches = text.strip_suffix('"')?;
    match inches.split_once("'-") {
        Some((feet, rest)) => Some(number(feet)? * 12 + number(rest)?),
        None => number(inches),
    }
}

fn lumber(text: &str) -> bool {
    text.split_once('x').is_some_and(|(a, b)| number(a).is_some() && (b.is_empty() || number(b).is_some()))
}

/// The value written so, or why it is none.
pub fn value(text: &str) -> Result<Value, String> {
    let plain = |t: &str| length(t).map(Value::Length).or_else(|| number(t).map(Value::Number));
    if let Some(rest) = text.strip_prefix(['+', '-', '*']) {
        return plain(rest).map(|_| Value::Relative).ok_or(format!("{text} is no change"));
    }
    match text {
        "none" | "true" => Ok(Value::Bare),
        _ if lumber(text) => Ok(Value::Lumber),
        _ if text.starts_with(|c: char| c.is_alphabetic()) => Ok(Value::Words),
        _ => plain(text).ok_or(format!("{text:?} is no value")),
    }
}

/// A row's name without what stands in front of it: "run#2.run-length" is a run's length.
pub fn bare(row: &str) -> &str {
    row.rsplit_once('.').map_or(row, |(_, name)| name)
}

fn meaning(line: &str) -> Result<Meaning, String> {
    let (head, facts) = line.split_once('|').ok_or(format!("{line:?} has no bar"))?;
    let (act, wants) = head.trim().split_once(' ').unwrap_or((head.trim(), ""));
    let parts = |text: &str, by: char| -> Vec<String> {
        text.split(by).map(str::trim).filter(|s| !s.is_empty()).map(str::to_owned).collect()
    };
    let fact = |text: &String| {
        let (row, said) = text.split_once(' ').ok_or(format!("{text:?} has no value"))?;
        Ok(Said { row: bare(row).to_owned(), value: value(said)? })
    };
    let facts = parts(facts, ';').iter().map(fact).collect::<Result<_, String>>()?;
    let wants = parts(wants, ',').iter().map(|w| bare(w).to_owned()).collect();
    Ok(Meaning { act: act.to_owned(), wants, facts })
}

/// One block, or what is wrong with how it is written.
pub fn block(file: &str, text: &str) -> Result<Block, String> {
    let lines = || text.lines().map(str::trim).filter(|l| !l.is_empty());
    let written: Vec<String> = lines().filter(|l| !l.starts_with(['#', '>'])).map(str::to_owned).collect();
    let name = format!("{file}: {}", written.first().map_or("no meaning", String::as_str));
    let says: Vec<Vec<String>> = lines()
        .filter_map(|l| l.strip_prefix('>'))
        .map(|l| l.split(" || ").map(|s| s.trim().to_owned()).collect())
        .collect();
    let meanings =
        written.iter().map(|l| meaning(l)).collect::<Result<Vec<_>, _>>().map_err(|why| format!("{name}: {why}"))?;
    if meanings.is_empty() || says.is_empty() {
        return Err(format!("{name}: a block is a meaning and a way of saying it"));
    }
    match says.iter().find(|s| s.len() != meanings.len()) {
        Some(odd) => Err(format!("{name}: {} lines in {odd:?}", odd.len())),
        None => Ok(Block { name, written, meanings, says, ambiguous: lines().any(|l| l == "# ambiguous") }),
    }
}
