//! Whether a variant was lost in silence.

use super::laws;
use super::lexis::{is_light, is_number, is_unknown, never_stutters, plain, senses, terms_over};
use super::marks::marks;
use super::vary::{Change, Variant};
use railhand::grammar::sense::{Cue, Op, Part, Sense, Verb};
use railhand::grammar::{Act, Query, canon};
use railhand::job::{Basis, End};

/// What was made of a line.
#[derive(Clone, Debug)]
pub struct Read {
    /// As typed.
    pub line: String,
    /// The plain phrase; empty where it is none.
    pub readback: String,
    /// The words that took no part, or were taken for others, as named to the user.
    pub named: Vec<String>,
    /// The job changed.
    pub told: bool,
    /// Something was told before this line.
    pub goes_on: bool,
}

/// What a change came to.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// The same reading, and the change means nothing.
    Kept,
    /// The read-back shows it.
    Visible,
    /// The word is named as having no part.
    Named,
    /// A question came back.
    Asked,
    /// It was not taken.
    Refused,
    /// None of these: why.
    Silent(String),
}

fn silent(why: impl Into<String>) -> Verdict {
    Verdict::Silent(why.into())
}

/// Judges a variant that was told or answered against what its line was.
pub fn judge(was: &Read, variant: &Variant, now: &Read) -> Verdict {
    if let Some(broken) = laws::broken(was, variant, now) {
        return silent(broken);
    }
    let same = was.readback == now.readback;
    match &variant.change {
        Change::Insert(at, word) => inserted(was, now, *at, word),
        Change::Double(at) => doubled(was, now, *at),
        Change::Drop(at) => dropped(was, now, *at),
        Change::Swap => {
            if same {
                Verdict::Kept
            } else {
                Verdict::Visible
            }
        }
        Change::Digits if same && (laws::grouped(&now.line) || laws::first_number_taken_back(&now.line)) => {
            Verdict::Kept
        }
        Change::Digits if same => silent("other digits, same reading"),
        Change::Digits => Verdict::Visible,
        Change::Blanks => {
            if same {
                Verdict::Kept
            } else {
                Verdict::Visible
            }
        }
        Change::Case | Change::Marks if same => Verdict::Kept,
        Change::Case | Change::Marks => spelled_out(now),
    }
}

/// Another spelling of the same words may show only where the words are kept as typed: notes.
fn spelled_out(now: &Read) -> Verdict {
    if now.readback.starts_with("note: ") { Verdict::Visible } else { silent("another spelling, another reading") }
}

fn token(line: &str, at: usize) -> &str {
    line.split_whitespace().nth(at).unwrap_or("").trim_end_matches([',', '?', '.', ':', ';'])
}

// --- a word put in -----------------------------------------------------------------------------

fn inserted(was: &Read, now: &Read, at: usize, word: &str) -> Verdict {
    if newly_named(was, now, word) {
        return Verdict::Named;
    }
    if rule_told_apart(was, now) {
        return Verdict::Named;
    }
    if was.readback != now.readback {
        // A light word that broke a pattern is named, and by law no number of the line is lost.
        let seen = shows_more(was, now, word)
            || converts(was, now, at, word)
            || is_number(word) && laws::superseded(&now.line, at)
            || is_light(word) && light_named(was, now, word);
        return if seen { Verdict::Visible } else { silent("another reading that does not show it") };
    }
    // "does it swing away suppose": what is asked tells nothing, supposed or not.
    if now.readback.ends_with('?') && senses(word).contains(&Sense::Verb(Verb::Suppose)) {
        return Verdict::Kept;
    }
    // Taken back by what follows it, or nothing at all: "10 foot 0".
    let idle_number = is_number(word) && (laws::superseded(&now.line, at) || laws::is_zero(word));
    match is_light(word) && !is_number(word) || idle_number || means_nothing_new(now, at, word) {
        true => Verdict::Kept,
        false => silent("a word put in, nothing said of it"),
    }
}

/// An answer that reads out a rule names on the screen each word it took no part of: where that is more
/// than before, the user sees what was not answered.
fn rule_told_apart(was: &Read, now: &Read) -> bool {
    now.readback.starts_with("rule ") && now.named.len() > was.named.len()
}

fn light_named(was: &Read, now: &Read, word: &str) -> bool {
    let count = |read: &Read| read.named.iter().filter(|n| *n == word).count();
    count(now) > count(was)
}

/// True when the heavy words of a phrase are named more often than they were.
fn newly_named(was: &Read, now: &Read, phrase: &str) -> bool {
    let count = |read: &Read, word: &str| read.named.iter().filter(|n| *n == word).count();
    let heavy: Vec<String> = plain(phrase).into_iter().filter(|w| !is_light(w) || is_number(w)).collect();
    // "end post stair rail ... the top post": the question says its own posts.
    let said = |w: &String| is_flight_question(&now.readback) && plain(&now.readback).contains(w);
    let named = |w: &&String| count(now, w) > count(was, w);
    heavy.iter().any(|w| named(&w)) && heavy.iter().all(|w| named(&w) || said(w))
}

/// True when the read-back shows the word, its number or its sense, as it did not before.
fn shows_more(was: &Read, now: &Read, word: &str) -> bool {
    let more = |mark: &str| now.readback.matches(mark).count() > was.readback.matches(mark).count();
    let sensed = senses(word).into_iter().flat_map(marks).any(more);
    let text = plain(word);
    let count = |r: &Read| plain(&r.readback).windows(text.len().max(1)).filter(|w| *w == text).count();
    let spelled = !is_number(word) && count(now) > count(was);
    // "do without that": a denial that drops it.
    let dropped = senses(word).contains(&Sense::Not) && more("drop ");
    // "no steps on this one front": the run of that name is the one that shows.
    let side = senses(word).iter().any(|s| matches!(s, Sense::Side(_)));
    let of_a_run = side && now.readback.starts_with("run ") && !was.readback.starts_with("run ");
    sensed
        || of_a_run
        || dropped
        || spelled
        || laws::number_shows_more(was, now, word)
        || unit_shows(was, now, word)
        || corrects(was, now, word)
}

/// A unit put in shows as that unit behind the number it follows.
fn unit_shows(was: &Read, now: &Read, word: &str) -> bool {
    let line = plain(&now.line);
    let letters = |r: &Read| {
        plain(&r.readback).into_iter().filter(|w| w != "mm" && w.chars().all(char::is_alphabetic)).collect::<Vec<_>>()
    };
    let mark = match word {
        "ft" | "feet" | "foot" => "'",
        "inches" | "inch" | "in" => "\"",
        "mm" | "m" | "cm" => " mm",
        _ => return false,
    };
    let ends = |n: &str| is_number(n) || n == "half";
    let numbers: Vec<String> = line.windows(2).filter(|w| w[1] == word && ends(&w[0])).map(|w| w[0].clone()).collect();
    let whole = numbers.iter().any(|n| laws::number_in_unit(n, word, mark, &now.readback));
    // Behind a fraction the number has more words than one: all else is as it was, and the unit is there.
    let fraction = numbers.iter().any(|n| n == "half" || n.contains('/') || line_has_fraction(&now.line, n));
    whole || fraction && now.readback.contains(mark) && letters(was) == letters(now)
}

/// "9 5/8 ft", "3 sixteenths cm": a fraction or a unit that turns the figure into another, all
/// the words of the reading being as they were.
fn converts(was: &Read, now: &Read, at: usize, word: &str) -> bool {
    let unit = |w: &str| senses(w).iter().any(|s| matches!(s, Sense::Unit(_))) || matches!(w, "in" | "ft" | "m");
    let next = now.line.split_whitespace().nth(at + 1).unwrap_or("").trim_end_matches(['.', ',', '?']);
    // "5/8 a foot" is 7 1/2 in.
    let then = now.line.split_whitespace().nth(at + 2).unwrap_or("");
    let fraction = word.contains('/') && (unit(next) || next == "a" && unit(then));
    let letters = |r: &Read| -> Vec<String> {
        plain(&r.readback).into_iter().filter(|w| w != "mm" && w.chars().all(char::is_alphabetic)).collect()
    };
    (unit(word) || fraction) && letters(was) == letters(now)
}

/// "no" before a line that then corrects the run told before it.
fn corrects(was: &Read, now: &Read, word: &str) -> bool {
    let run = |r: &Read| {
        r.readback.strip_prefix("run ").and_then(|t| t.split(':').next()).and_then(|n| n.parse::<u32>().ok())
    };
    let repairs = senses(word).contains(&Sense::Verb(Verb::Repair));
    // "109, no, a quarter": the later number wins.
    let wins = now.line.split_once(&format!(" {word} ")).is_some_and(|(a, b)| is_number(a) && is_number(b));
    repairs && wins || repairs && was.goes_on && run(was).zip(run(now)).is_some_and(|(before, after)| after < before)
}

/// True when a heavy word says again what stands beside it, or what the reading says already.
fn means_nothing_new(now: &Read, at: usize, word: &str) -> bool {
    let tokens: Vec<&str> = now.line.split_whitespace().collect();
    let beside: Vec<&str> =
        [at.checked_sub(1), Some(at + 1)].into_iter().flatten().filter_map(|i| tokens.get(i).copied()).collect();
    stutters(&beside, word)
        || beside.iter().any(|b| b.trim_end_matches(',') == word) && !never_stutters(word)
        || is_run_word(word) && now.readback.contains("run ")
        || completes_a_term(now, at, word)
        || is_post_of_place(&tokens, at, word)
        || unit_shows(now, now, word)
        || opens_a_correction(now, at, word)
        || repairs_again(&tokens, at, word)
        || supposes_already(now, word)
        || says_ends(&tokens, at, word)
        || says_again(&tokens, at, word)
        || colours(&tokens, at, word)
        || belongs(now, word)
        || of_the_question(now, word)
        || senses(word).iter().any(|s| matches!(s, Sense::Verb(Verb::Use | Verb::Put)))
        || senses(word).contains(&Sense::Part(Part::Post))
            && (now.readback.contains("most ") || now.readback.contains("posts: "))
        || senses(word)
            .iter()
            .any(|s| matches!(s, Sense::Basis(_)) && marks(*s).iter().any(|m| now.readback.contains(m)))
}

/// "what if it suppose was 2 bays": a what-if said to be one.
fn supposes_already(now: &Read, word: &str) -> bool {
    now.readback.starts_with("suppose: ") && senses(word).contains(&Sense::Verb(Verb::Suppose))
}

/// "another post at 7 ft": a post at a mark is one more; "2 1/2 not 3 inches": of what is denied.
fn says_ends(tokens: &[&str], at: usize, word: &str) -> bool {
    let behind = |back: usize| at.checked_sub(back).and_then(|b| tokens.get(b)).copied().unwrap_or("");
    let one_more = word == "another" && tokens.get(at + 1).is_some_and(|t| *t == "post");
    one_more || senses(word).iter().any(|s| matches!(s, Sense::Unit(_))) && is_number(behind(1)) && behind(2) == "not"
}

/// "sorry, no, 11-9", "no I mean": a repair by a repair.
fn repairs_again(tokens: &[&str], at: usize, word: &str) -> bool {
    let repair = |w: &str| senses(w).contains(&Sense::Verb(Verb::Repair)) || matches!(w, "mean" | "meant" | "wait");
    let near = tokens.iter().enumerate().filter(|(k, _)| *k != at && k.abs_diff(at) <= 2);
    repair(word) && near.map(|(_, w)| w.trim_end_matches(',')).any(repair)
}

/// "post structural screws on the posts": a part or a dimension the line names anyway. A number, a
/// denial, a place or a side said again elsewhere is another matter.
fn says_again(tokens: &[&str], at: usize, word: &str) -> bool {
    let again = |s: &Sense| matches!(s, Sense::Part(_) | Sense::Cue(_) | Sense::Ask(_));
    let mine: Vec<Sense> = senses(word).into_iter().filter(again).collect();
    let others = tokens.iter().enumerate().filter(|(k, _)| *k != at);
    !never_stutters(word)
        && others.flat_map(|(_, w)| senses(w.trim_end_matches(['.', ',', '?']))).any(|s| mine.contains(&s))
}

/// "the far corner", "four same bays": said of what stands there anyway.
fn colours(tokens: &[&str], at: usize, word: &str) -> bool {
    let after = tokens.iter().skip(at + 1).find(|t| !matches!(**t, "the" | "a" | "an" | "my"));
    let next = after.map(|t| senses(t.split('/').next().unwrap_or(t))).unwrap_or_default();
    let place = next.iter().any(|s| matches!(s, Sense::End(_)));
    place && ["far", "other", "first", "second", "next", "last"].contains(&word)
        || word == "same" && next.contains(&Sense::Part(Part::Bay))
}

fn stutters(beside: &[&str], word: &str) -> bool {
    let mine = senses(word);
    let shared = |s: &Sense| {
        matches!(s, Sense::End(_) | Sense::Part(_) | Sense::Side(_) | Sense::Basis(_) | Sense::Cue(_))
            && mine.contains(s)
    };
    !never_stutters(word) && beside.iter().any(|b| senses(b).iter().any(shared))
}

fn is_run_word(word: &str) -> bool {
    senses(word).iter().any(|s| matches!(s, Sense::Part(Part::Run | Part::Guard)))
}

/// "house" + "wall": a listed term whose sense the read-back shows.
fn completes_a_term(now: &Read, at: usize, word: &str) -> bool {
    let line = plain(&now.line);
    let before: String = now.line.split_whitespace().take(at).collect::<Vec<_>>().join(" ");
    let from = plain(&before).len();
    let shown = |s: Sense| marks(s).iter().any(|m| now.readback.contains(m));
    let to = from + plain(word).len().max(1) - 1;
    terms_over(&line, from, to).iter().any(|t| t.length > plain(word).len() && t.sense.is_heavy() && shown(t.sense))
}

/// "house post", "stair head post": a place and the post that stands there.
fn is_post_of_place(tokens: &[&str], at: usize, word: &str) -> bool {
    let place = at
        .checked_sub(1)
        .and_then(|b| tokens.get(b))
        .is_some_and(|t| senses(t).iter().any(|s| matches!(s, Sense::End(_))));
    place && matches!(word, "post" | "newel" | "column")
}

/// "no" in front of what was a correction already: "no, make it ..."
fn opens_a_correction(now: &Read, at: usize, word: &str) -> bool {
    let next = now.line.split_whitespace().nth(at + 1).unwrap_or("");
    let correcting = senses(next).iter().any(|s| matches!(s, Sense::Verb(Verb::Change | Verb::Repair)))
        || matches!(next, "make" | "it" | "its" | "it's" | "that's" | "I" | "better" | "sorry," | "actually" | "no");
    // "no, second run ends at the house": of what was told before.
    let put_right = now.readback.starts_with("run ") || now.readback.starts_with("deck: ");
    word == "no" && at == 0 && now.goes_on && (correcting || put_right)
}

/// A question about stairs or a gate: its read-back is the question in full.
fn is_flight_question(readback: &str) -> bool {
    matches!(canon::read(readback), Some(Act::Query(Query::Flight(_))))
}

/// A word such a question says anyway, or a part of the stairs in a question about them.
fn of_the_question(now: &Read, word: &str) -> bool {
    let stairs = |s: &Sense| matches!(s, Sense::Part(Part::Stairs | Part::Riser | Part::Rail | Part::Guard));
    let said = plain(&now.readback);
    let says = plain(word).iter().all(|w| said.contains(w)) && !never_stutters(word);
    is_flight_question(&now.readback) && (says || now.readback.contains("stair") && senses(word).iter().any(stairs))
}

/// What the whole layout shows anyway; "add up" before a sum that adds.
fn belongs(now: &Read, word: &str) -> bool {
    let layout = |s: &Sense| matches!(s, Sense::Part(Part::Post | Part::Run | Part::Guard | Part::Layout));
    let adds = |s: &Sense| matches!(s, Sense::Op(Op::Add | Op::Total));
    let counted = |s: &Sense| matches!(s, Sense::Part(_) | Sense::Parts(_));
    let sum = ["sum: ", "pieces: ", "sticks: "].iter().any(|lead| now.readback.starts_with(lead));
    // "five posts at 11 5/8": what is counted is no part of the arithmetic.
    let says_it = match word {
        "high" => now.readback.starts_with("height: "),
        // "within 18 in. of it", "within 18 in. clear of it".
        "clear" => now.readback.contains("no post within "),
        _ => false,
    };
    says_it
        || sum && senses(word).iter().any(counted)
        || now.readback.starts_with("layout") && senses(word).iter().any(layout)
        || now.readback.starts_with("sum: ") && now.readback.contains(" + ") && senses(word).iter().any(adds)
}

fn line_has_fraction(line: &str, number: &str) -> bool {
    line.contains(&format!("/{number}"))
        || line.contains(&format!("\u{2044}{number}"))
        || number.ends_with("ths")
        || number == "quarter"
}

// --- a word said twice ---------------------------------------------------------------------------

fn doubled(was: &Read, now: &Read, at: usize) -> Verdict {
    let word = token(&was.line, at);
    if newly_named(was, now, word) {
        return Verdict::Named;
    }
    if rule_told_apart(was, now) {
        return Verdict::Named;
    }
    // "9 9, no, 9-2": both were taken back.
    if is_number(word) && laws::superseded(&now.line, at + 1) {
        return Verdict::Kept;
    }
    match (was.readback == now.readback, never_stutters(word)) {
        (true, true) => silent("said twice, read once"),
        (true, false) => Verdict::Kept,
        (false, _) if shows_more(was, now, word) => Verdict::Visible,
        (false, _) => silent("said twice, another reading that does not show it"),
    }
}

/// A list of the job as it stands, with no figure of its own: the answer says what it is of.
fn asks_for_a_list(was: &Read) -> bool {
    ["cuts?", "buy?", "parts?", "cost?", "splits?", "balusters?"].contains(&was.readback.as_str())
}

// --- a word left out -------------------------------------------------------------------------------

fn dropped(was: &Read, now: &Read, at: usize) -> Verdict {
    if was.readback != now.readback {
        return Verdict::Visible;
    }
    let word = token(&was.line, at);
    let unneeded = plain(word).is_empty()
        || is_light(word) && !is_number(word)
        || is_unknown(word)
        || plain(word).iter().all(|w| was.named.contains(w))
        || (was.readback.starts_with("rule ") || asks_for_a_list(was)) && !senses(word).contains(&Sense::Not)
        || is_flight_question(&was.readback) && !is_number(word) && !senses(word).contains(&Sense::Not)
        || is_number(word) && (laws::superseded(&was.line, at) || laws::is_zero(word))
        || laws::counts_runs(was, at, word)
        || word == "one" // "the front one": it points
        || matches!(word, "another" | "1st" | "each" | "away" | "end") // said by what stands beside them
        || takes_back_still(was, at, word)
        || place_still_said(was, now, at, word)
        || word == "nothing" && is_number(token(&was.line, 0)) // "nine foot nothing": and no inches
        // Only corner posts are held back, so either word says which.
        || now.readback.starts_with("hold-back:") && matches!(word, "corner" | "posts")
        || inferred(was, now, at, word);
    if unneeded { Verdict::Kept } else { silent("a word left out, nothing changed") }
}

/// True when the reading says by itself what the word said, so that the user sees it.
fn inferred(was: &Read, now: &Read, at: usize, word: &str) -> bool {
    let before: String = was.line.split_whitespace().take(at).collect::<Vec<_>>().join(" ");
    let from = plain(&before).len();
    let over = terms_over(&plain(&was.line), from, from + plain(word).len().max(1) - 1);
    let whole: Vec<Sense> = over.into_iter().map(|t| t.sense).collect();
    let shown = |s: &Sense| marks(*s).iter().any(|m| now.readback.contains(m));
    // Part of a longer term that what is left still says ("stair" for "stair head"), or that says nothing.
    let still = |s: &Sense| laws::says(&now.line, *s) && shown(s);
    if whole.iter().any(|s| still(s) || matches!(s, Sense::Fill | Sense::Link)) {
        return true;
    }
    // The rest of the term is named: "ends at a free".
    let named = |w: &&str| now.named.iter().filter(|n| n == w).count() > was.named.iter().filter(|n| n == w).count();
    let rest: Vec<&str> = now.line.split_whitespace().skip(at.saturating_sub(1)).take(2).collect();
    if !whole.is_empty() && rest.iter().any(|w| !is_light(w) && named(w)) {
        return true;
    }
    let mine = senses(word);
    let filled = |s: &Sense| carries(*s) || may_be_inferred(*s) && shown(s) || goes_without_saying(now, *s, shown(s));
    // "no, it ends at the house", "no wait": said of what was said before.
    let opens = at == 0 && was.line.split_whitespace().next() == Some("no,");
    let denies = mine.contains(&Sense::Not) && !opens && !whole.contains(&Sense::Verb(Verb::Repair));
    !is_number(word) && !denies && mine.iter().chain(&whole).any(filled)
}

/// "12' no scratch that 13'", "no not 12": one of two words that deny or take back goes.
fn takes_back_still(was: &Read, at: usize, word: &str) -> bool {
    let denies = |w: &str| {
        let w = w.trim_end_matches([',', '.', '?']);
        senses(w).iter().any(|s| matches!(s, Sense::Not | Sense::Verb(Verb::Repair | Verb::Drop)))
            || matches!(w, "no" | "not")
    };
    let tokens: Vec<&str> = was.line.split_whitespace().collect();
    let others = tokens.iter().enumerate().filter(|(k, _)| *k != at && k.abs_diff(at) <= 2);
    // A line that opens on "no" corrects what was told before, with the word or without.
    denies(word) && (others.map(|(_, w)| *w).any(denies) || at == 0 && was.goes_on)
}

/// "corner to wall, sorry, corner to stairs": the place is said once more before, and read.
fn place_still_said(was: &Read, now: &Read, at: usize, word: &str) -> bool {
    let places: Vec<Sense> = senses(word).into_iter().filter(|s| matches!(s, Sense::End(_))).collect();
    let others = was.line.split_whitespace().enumerate().filter(|(k, _)| *k != at);
    let again = others.flat_map(|(_, w)| senses(w.trim_end_matches(','))).any(|s| places.contains(&s));
    again && places.iter().flat_map(|s| marks(*s)).any(|m| now.readback.contains(m))
}

/// What one kind of reading has by default, and its read-back says.
fn goes_without_saying(now: &Read, sense: Sense, shown: bool) -> bool {
    let has = |text: &str| now.readback.contains(text);
    let sum = ["sum: ", "pieces: ", "sticks: ", "diagonal: "].iter().any(|lead| now.readback.starts_with(lead));
    match sense {
        // "gate at the stairs": a gate hangs at the stair head when no place is told.
        Sense::End(End::StairHead) => has("gate at the ") && !has("stair"),
        // "go back to the fewest bays" undoes nothing.
        Sense::Verb(Verb::Undo) => !shown,
        Sense::Basis(Basis::Centre) => has("most on centre"),
        // "the deck runs 22 foot": here a verb.
        Sense::Part(Part::Runs) => has("deck:"),
        // "sits on a concrete pad", "on a pad".
        Sense::Foreign(_) => has("lands on a slab"),
        // "stair opening", "max bay", "don't notch the posts".
        Sense::Part(Part::Opening) => has("stairs ") || sum,
        Sense::Part(Part::Bay) => has("most ") || sum,
        Sense::Part(Part::Post) => has("notch:") || sum,
        // "move the gate to the middle".
        Sense::Verb(Verb::Move) => has("gate "),
        // "in the middle of the front": the run spoken of goes by that name.
        Sense::Side(_) if now.goes_on && has("run 1: ") => true,
        // "when i say left i mean facing the house".
        Sense::Side(_) if has("left and right: ") => true,
        // What is counted or measured is no part of the arithmetic.
        Sense::Part(_) | Sense::Op(Op::Ways) | Sense::Cue(Cue::Square) => sum,

        // A question says which run it answered for, and changes nothing.
        Sense::Side(_) => has(" of run ") && now.readback.ends_with('?'),
        _ => false,
    }
}

/// Words that bring a fact in and add nothing to it: the read-back has the fact in full.
fn carries(sense: Sense) -> bool {
    use Verb::{Change, Cut, Goes, Hello, Put, Repair, Same, Starts, Stops, Thanks, Use};
    matches!(
        sense,
        Sense::Unit(_)
            | Sense::Ask(_)
            | Sense::Reason
            | Sense::Verb(Change | Cut | Goes | Hello | Thanks | Put | Repair | Same | Starts | Stops | Use)
    )
}

/// Senses a read-back may fill in, as defaults that are said: a place, a side or a number never.
fn may_be_inferred(sense: Sense) -> bool {
    use Verb::{Help, Keep, Leave, Note, Suppose};
    matches!(
        sense,
        Sense::Part(_)
            | Sense::Basis(Basis::Overall)
            | Sense::Spot(_)
            | Sense::Cue(_)
            | Sense::Op(_)
            | Sense::Parts(_)
            | Sense::Verb(Help | Keep | Leave | Note | Suppose)
    )
}
