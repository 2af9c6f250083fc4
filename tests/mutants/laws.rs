//! Laws every reading keeps, whatever was changed in the line.
//!
//! A law a row of the book itself does not keep says nothing about its variants: only what
//! the change broke counts.

use super::judge::Read;
use super::lexis::{is_light, is_number, is_unknown, number_word, plain, senses};
use super::marks::marks;
use super::vary::{Change, Variant};
use railhand::grammar::sense::{Part, Sense, TERMS, Verb};
use railhand::grammar::words::{Kind, Word, words};
use railhand::job::End;

/// The law a variant breaks, in a few words.
pub fn broken(was: &Read, variant: &Variant, now: &Read) -> Option<String> {
    if now.readback.starts_with("note: ") {
        return None;
    }
    lost_number(was, now)
        .or_else(|| turned_round(was, now))
        .or_else(|| denied(was, now))
        .or_else(|| no_longer_supposed(was, variant, now))
        .or_else(|| newly_told(was, variant, now))
        .or_else(|| not_kept(was, now))
        .or_else(|| lost_word(was, variant, now))
}

// --- numbers -----------------------------------------------------------------------------------------

/// Every whole number typed is in the read-back, named, or taken back by what follows it.
fn lost_number(was: &Read, now: &Read) -> Option<String> {
    let old = unseen(was);
    unseen(now).into_iter().find(|n| !old.contains(n)).map(|n| format!("{n} is nowhere in it"))
}

fn unseen(read: &Read) -> Vec<String> {
    let list = words(&read.line);
    let shown = numbers(&read.readback);
    let mut out = Vec::new();
    for at in 0..list.len() {
        let Some(number) = whole_number(&list, at) else { continue };
        let seen = shows(&number, &shown) || read.named.contains(&list[at].text);
        if !seen && !taken_back(&list[at + 1..]) {
            out.push(number);
        }
    }
    out
}

/// The whole number a word is. A decimal, a fraction's numbers (9 3/4 may carry, 8/16 cancels) and
/// "one", which mostly points, are none; a blank may part thousands of millimetres.
fn whole_number(list: &[Word], at: usize) -> Option<String> {
    let word = &list[at];
    match word.kind {
        _ if metric_mixed(list, at) => None,
        Kind::Letters if hyphened(list, at) || before_fraction(list, at) => None,
        Kind::Letters => number_word(&word.text).filter(|n| *n > 1).map(|n| n.to_string()),
        Kind::Digits if word.text.contains('.') || of_fraction(list, at) => None,
        Kind::Digits if thousands(list, at) => Some(format!("{}{}", word.text, list[at + 1].text)),
        Kind::Digits if at > 0 && thousands(list, at - 1) => None,
        Kind::Digits => Some(word.text.clone()),
        _ => None,
    }
}

/// "one-oh-two" is 102 and none of its words.
fn hyphened(list: &[Word], at: usize) -> bool {
    let hyphen = |i: Option<usize>| i.and_then(|i| list.get(i)).is_some_and(|w| w.is("-"));
    hyphen(at.checked_sub(1)) || hyphen(Some(at + 1))
}

/// "3 000 mm": digits in groups of three, parted by a blank (ISO 80000-1; from memory).
fn thousands(list: &[Word], at: usize) -> bool {
    let digits = |i: usize, lengths: std::ops::RangeInclusive<usize>| {
        list.get(i).is_some_and(|w| w.kind == Kind::Digits && lengths.contains(&w.text.len()))
    };
    digits(at, 1..=3) && digits(at + 1, 3..=3) && list.get(at + 2).is_some_and(|w| w.is("mm"))
}

/// True when the line's digits only stand in groups of three.
pub fn grouped(line: &str) -> bool {
    let list = words(line);
    (0..list.len()).any(|at| thousands(&list, at))
}

/// True when a repair follows, and after it the number that wins.
fn taken_back(rest: &[Word]) -> bool {
    let said: Vec<&str> = rest.iter().map(|w| w.text.as_str()).collect();
    let repair = |s: Sense| matches!(s, Sense::Verb(Verb::Repair | Verb::Change));
    let numbered = |from: usize| {
        said[from..].iter().any(|w| {
            number_word(w).is_some() || matches!(*w, "half" | "quarter") || w.starts_with(|c: char| c.is_ascii_digit())
        })
    };
    let at = |spelling: &[&str]| said.windows(spelling.len()).position(|w| w == spelling).map(|k| k + spelling.len());
    TERMS.iter().filter(|(_, s)| repair(*s)).filter_map(|(spelling, _)| at(spelling)).any(numbered)
}

/// "3 7/8 m": a whole number with a fraction before a metric unit is read back as one number of mm.
fn metric_mixed(list: &[Word], at: usize) -> bool {
    let metric = |w: &Word| matches!(w.text.as_str(), "mm" | "cm" | "m" | "metres" | "meters" | "metre");
    let rest: Vec<&Word> = list[at + 1..].iter().take(5).collect();
    let unit = rest.iter().position(|w| metric(w)).unwrap_or(0);
    let part =
        |w: &&&Word| w.is("/") || w.text.ends_with('s') && before_fraction(list, at + 1) || w.text.ends_with("ths");
    rest[..unit].iter().any(|w| part(&w))
}

/// "three quarters", "nine sixteenths": a fraction's number, which may come out another.
fn before_fraction(list: &[Word], at: usize) -> bool {
    let parts =
        ["half", "halves", "third", "thirds", "quarter", "quarters", "eighth", "eighths", "sixteenth", "sixteenths"];
    list.get(at + 1).is_some_and(|w| parts.contains(&w.text.as_str()))
}

fn of_fraction(list: &[Word], at: usize) -> bool {
    let slash = |i: Option<usize>| i.and_then(|i| list.get(i)).is_some_and(|w| w.is("/"));
    slash(at.checked_sub(1)) || slash(Some(at + 1))
}

/// True for an explicit nothing: `0`, `0"`.
pub fn is_zero(word: &str) -> bool {
    let digits: String = word.chars().filter(char::is_ascii_digit).collect();
    !digits.is_empty() && digits.chars().all(|c| c == '0') && !word.contains('/')
}

/// "3 runs: ...": a count that the runs told say again.
pub fn counts_runs(was: &Read, at: usize, word: &str) -> bool {
    let next = was.line.split_whitespace().nth(at + 1).unwrap_or("").trim_end_matches(':');
    let told = was.readback.matches("run ").count();
    senses(next).contains(&Sense::Part(Part::Runs)) && word.parse() == Ok(told)
}

/// "it's 1 1, no, 11 and a half": whatever the first number was, it was taken back.
pub fn first_number_taken_back(line: &str) -> bool {
    let number = |w: &str| w.starts_with(|c: char| c.is_ascii_digit());
    let last = line.split_whitespace().take_while(|w| !w.trim_end_matches(',').eq("no")).filter(|w| number(w)).count();
    last > 0 && superseded(line, last)
}

/// True for a word of a line behind which something takes it back.
pub fn superseded(line: &str, at: usize) -> bool {
    let rest: Vec<&str> = line.split_whitespace().skip(at + 1).collect();
    taken_back(&words(&rest.join(" ")))
}

fn numbers(text: &str) -> Vec<u128> {
    text.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect()
}

/// A number as it is, in feet and inches, as the feet of a height in inches, or in millimetres for
/// centimetres and metres.
fn shows(number: &str, shown: &[u128]) -> bool {
    let Ok(n) = number.parse::<u128>() else { return true };
    let has = |k: Option<u128>| k.is_some_and(|k| shown.contains(&k));
    has(Some(n))
        || n >= 12 && has(Some(n / 12)) && (n % 12 == 0 || has(Some(n % 12)))
        || shown.iter().any(|k| *k > 12 && (k / 12 == n || k % 12 == n))
        || has(n.checked_mul(10))
        || has(n.checked_mul(1000))
}

/// True when a number put in is in the read-back as it was not before.
pub fn number_shows_more(was: &Read, now: &Read, word: &str) -> bool {
    let (old, new) = (numbers(&was.readback), numbers(&now.readback));
    let count = |list: &[u128], n: u128| list.iter().filter(|k| **k == n).count();
    let more = |n: u128| count(&new, n) > count(&old, n);
    let said = said_number(word);
    // "6 foot 7 off the ground" is 79 in.
    let as_inches = |n: u128| new.iter().any(|k| *k > 12 && *k % 12 == n && !old.contains(k));
    !said.is_empty()
        && said.iter().all(|n| more(*n) || as_inches(*n) || *n > 12 && more(*n / 12) && (*n % 12 == 0 || more(*n % 12)))
}

fn said_number(word: &str) -> Vec<u128> {
    number_word(word).map_or_else(|| numbers(word), |n| vec![n])
}

/// True when this number stands in the read-back with this unit.
pub fn number_in_unit(number: &str, unit: &str, mark: &str, readback: &str) -> bool {
    let Some(n) = said_number(number).first().copied() else { return false };
    let n = match unit {
        "m" => n.saturating_mul(1000),
        "cm" => n.saturating_mul(10),
        _ => n,
    };
    let split = format!("{}'-{}\"", n / 12, n % 12);
    let spelled = |text: &str| {
        readback.match_indices(text).any(|(at, _)| !readback[..at].ends_with(|c: char| c.is_ascii_digit()))
    };
    spelled(&format!("{n}{mark}"))
        || mark == "\"" && (spelled(&split) || spelled(&format!("{n} ")) || spelled(&format!("-{n}")))
}

// --- ends ------------------------------------------------------------------------------------------------

/// "to the corner" is no from-end.
fn turned_round(was: &Read, now: &Read) -> Option<String> {
    let turned = |r: &Read| {
        let (from, to) = ends(&r.readback)?;
        let says = |lead: &[&str], end: &str| leads_to(&r.line, lead, end);
        let (tos, froms) = (["to", "til", "till", "into"], ["from", "frm"]);
        let wrong = from != to && (says(&tos, &from) && !says(&tos, &to) || says(&froms, &to) && !says(&froms, &from));
        wrong.then(|| "the ends are turned round".to_owned())
    };
    if turned(was).is_some() { None } else { turned(now) }
}

fn ends(readback: &str) -> Option<(String, String)> {
    let from = readback.split("from ").nth(1)?.split([',', ';']).next()?;
    let to = readback.split(", to ").nth(1)?.split([',', ';']).next()?;
    Some((from.to_owned(), to.to_owned()))
}

/// True when one of these words leads straight to this place.
fn leads_to(line: &str, leads: &[&str], end: &str) -> bool {
    let list: Vec<String> = words(line).into_iter().map(|w| w.text).collect();
    let articles = ["the", "a", "an"];
    (0..list.len()).filter(|i| leads.contains(&list[*i].as_str())).any(|i| {
        let from = (i + 1..list.len()).find(|k| !articles.contains(&list[*k].as_str())).unwrap_or(list.len());
        place_at(&list[from..]).is_some_and(|e| e.name() == end)
    })
}

fn place_at(list: &[String]) -> Option<End> {
    let spelled = |s: &[&str]| list.len() >= s.len() && s.iter().zip(list).all(|(a, b)| a == b);
    let of = |s: &Sense| if let Sense::End(e) = s { Some(*e) } else { None };
    TERMS
        .iter()
        .filter(|(s, _)| spelled(s))
        .filter_map(|(s, sense)| Some((s.len(), of(sense)?)))
        .max_by_key(|(n, _)| *n)
        .map(|(_, e)| e)
}

/// True when some word or term of the line may mean this.
pub fn says(line: &str, sense: Sense) -> bool {
    let list = plain(line);
    let spelled = |s: &[&str]| list.windows(s.len()).any(|w| w.iter().map(String::as_str).eq(s.iter().copied()));
    TERMS.iter().any(|(s, means)| *means == sense && spelled(s))
}

// --- denials -----------------------------------------------------------------------------------------------

/// "no gate" puts no gate up.
fn denied(was: &Read, now: &Read) -> Option<String> {
    let denies = |r: &Read| {
        let list = words(&r.line);
        let no = |w: &Word| matches!(w.text.as_str(), "no" | "not" | "without");
        let part =
            |p: Part, w: &Word| TERMS.iter().any(|(s, sense)| *sense == Sense::Part(p) && *s == [w.text.as_str()]);
        let said = |p: Part| {
            list.windows(2).any(|w| no(&w[0]) && part(p, &w[1]))
                || list
                    .windows(3)
                    .any(|w| no(&w[0]) && matches!(w[1].text.as_str(), "a" | "any" | "the") && part(p, &w[2]))
        };
        let has = |text: &str| r.readback.contains(text);
        let gate = said(Part::Gate) && has("gate at ") && !has("no gate");
        let stairs = said(Part::Stairs) && has("stairs ") && has("wide") && !has("no stairs");
        let notch = said(Part::Notch) && has("deep");
        gate || stairs || notch
    };
    (denies(now) && !denies(was)).then(|| "a denial read as a yes".to_owned())
}

// --- what-ifs --------------------------------------------------------------------------------------------------

/// A what-if changes the job only when its own words are gone.
fn no_longer_supposed(was: &Read, variant: &Variant, now: &Read) -> Option<String> {
    let whole = !matches!(variant.change, Change::Drop(_) | Change::Swap);
    let told = was.readback.starts_with("suppose: ") && now.told;
    (whole && told).then(|| "a what-if was told".to_owned())
}

/// What was an answer is told only when a word that tells was put in.
fn newly_told(was: &Read, variant: &Variant, now: &Read) -> Option<String> {
    let tells = match variant.change {
        Change::Insert(_, word) => !is_light(word) && !is_unknown(word) && !is_number(word),
        Change::Drop(_) | Change::Swap => true,
        _ => false,
    };
    // A telling of what stands already changes nothing; it is a telling all the same.
    let answer = was.readback.ends_with('?') || was.readback.starts_with("sum: ");
    (!tells && answer && !was.told && now.told && was.readback != now.readback)
        .then(|| "an answer became a telling".to_owned())
}

/// "keep it" keeps what was supposed, or nothing is told.
fn not_kept(was: &Read, now: &Read) -> Option<String> {
    let keeps = |r: &Read| says(&r.line, Sense::Verb(Verb::Keep)) && r.told;
    (keeps(was) && keeps(now) && !now.readback.contains(&was.readback)).then(|| "what was to be kept is not".to_owned())
}

// --- words -------------------------------------------------------------------------------------------------------

/// A word of the line that the read-back had is still there, or named, when nothing was left out.
fn lost_word(was: &Read, variant: &Variant, now: &Read) -> Option<String> {
    // A rule read out is told by its id; the words it took no part of are named on the screen.
    let ruled = [was, now].iter().any(|r| r.readback.starts_with("rule "));
    if matches!(variant.change, Change::Drop(_)) || ruled {
        return None;
    }
    let (old, new, typed) = (plain(&was.readback), plain(&now.readback), plain(&was.line));
    let letters = |w: &String| w.len() > 3 && w.chars().all(char::is_alphabetic);
    // "stair" is in "stairs"; "under" may be the gap under or the most a gap may be.
    let still = |w: &String| new.iter().any(|n| n.starts_with(w.as_str()));
    // "inches" shows as its mark.
    let unit = |w: &String| senses(w).iter().any(|s| matches!(s, Sense::Unit(_))) && now.readback.contains('"');
    let meant = |w: &String| senses(w).into_iter().flat_map(marks).any(|m| now.readback.contains(m));
    // "measured" leads a basis told without a length, and goes when a length comes.
    let gone = |w: &&String| {
        *w != "measured" && typed.contains(w) && !still(w) && !meant(w) && !unit(w) && !now.named.contains(w)
    };
    let word = old.iter().filter(|w| letters(w)).find(gone)?;
    Some(format!("{word:?} is gone from it"))
}
