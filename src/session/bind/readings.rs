//! The likeliest readings of a line by the learned scores: what it does, what it wants, the row of each item, judged together.

use super::value::{corners_cut, row_of};
use crate::grammar::items::likeliest as likeliest_items;
use crate::grammar::scores::{How, Is, Item, Line, NONE, Scores, Shape, Token};
use crate::grammar::sense::{Sense, Verb};
use crate::grammar::words::words;
use crate::quantity::{Owner, RowId};
use std::ops::Range;

/// One reading, and the logarithm of its probability.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Reading<'a> {
    /// What the line does.
    pub act: &'a str,
    /// What it wants: rows, topics or lists.
    pub wants: Vec<&'a str>,
    /// The rows its items fill, in the order of the line; an item without a row is left out.
    pub filled: Vec<Filled<'a>>,
    /// The natural logarithm of its probability.
    pub log: f32,
}

/// An item and the row it fills.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Filled<'a> {
    /// The item's first token.
    pub at: usize,
    /// Its word, where it is no figure.
    pub word: Option<&'a str>,
    /// The row; `None` for a label that is no row of the table.
    pub row: Option<RowId>,
    /// How it fills it.
    pub how: How<'a>,
}

/// How many acts, wants of an act, and rows of a figure and of a word are looked at.
const ACTS: usize = 3;
const WANTS: usize = 3;
const ROWS: usize = 6;
const WORD_ROWS: usize = 2;

/// How many readings of one act and want are kept while they grow, and of all in the end.
const BEAM: usize = 12;
const MOST: usize = 48;

/// A label so much less likely than the best is not looked at; a figure's row may be less likely yet.
const FAR: f32 = 3.5;
const FAR_FIGURE: f32 = 6.0;

/// What a figure without a row costs: who says one means something by it. A logarithm of odds.
const UNBOUND: f32 = -2.0;

/// Acts whose figures are rows; those of a sum, a note or a rule are not.
const FIGURES: &[&str] = &["ask", "drop", "judge", "suppose", "tell"];

/// The most items in a line that is looked at.
const ITEMS: usize = 60;

/// The likeliest readings, best first; `asked` where there is a question the line may go on from.
pub(super) fn likeliest<'a>(scores: &'a Scores, line: &'a Line, asked: bool) -> Vec<Reading<'a>> {
    if line.items.len() > ITEMS {
        return Vec::new();
    }
    let mut all = Vec::new();
    for (act, act_log) in near(scores.score_act(line), ACTS, FAR) {
        for (want, want_log) in near(scores.score_want(line, act), WANTS, FAR) {
            // Only behind another question may one want nothing of its own.
            if want == NONE && !asked && matches!(act, "ask" | "judge" | "suppose") {
                continue;
            }
            let more = near(scores.score_more(line, act, want), 2, FAR).into_iter();
            let wants = |more: &'a str| [want, more].into_iter().filter(|w| *w != NONE).collect();
            let log = act_log + want_log;
            let start =
                |(more, l): (&'a str, f32)| Reading { act, wants: wants(more), filled: Vec::new(), log: log + l };
            let mut beam: Vec<Reading<'a>> = more.map(start).collect();
            for item in &line.items {
                let ways = of_item(scores, line, item, (act, want));
                if let [(_, log)] = &ways[..]
                    && ways[0].0.is_empty()
                {
                    beam.iter_mut().for_each(|r| r.log += log);
                    continue;
                }
                beam = beam.iter().flat_map(|r| ways.iter().map(|(f, log)| with(r, f, *log))).collect();
                best_first(&mut beam, BEAM);
            }
            all.extend(beam);
        }
    }
    best_first(&mut all, MOST);
    all
}

/// The ways an item may be taken: the rows it fills, and the logarithm of the odds.
fn of_item<'a>(
    scores: &'a Scores,
    line: &'a Line,
    item: &'a Item,
    (act, want): (&'a str, &'a str),
) -> Vec<(Vec<Filled<'a>>, f32)> {
    let (most, far, without) = match item.is_value() {
        true if is_weak(line, item) || !FIGURES.contains(&act) => (ROWS, FAR_FIGURE, 0.0),
        true => (ROWS, FAR_FIGURE, UNBOUND),
        false => (WORD_ROWS, FAR, 0.0),
    };
    let mut ways = Vec::new();
    for (label, log) in near(scores.score_row(line, item.at, act, want), most, far) {
        if label == NONE {
            ways.push((Vec::new(), log + without));
            continue;
        }
        let how = scores.score_how(line, item.at, act, label).into_iter().next();
        let (how, sure) = how.map_or((How::Set, 0.0), |(how, log)| (How::of(how), log));
        let filled = label.split('+').map(|row| Filled { at: item.at, word: item.word(), row: row_of(row), how });
        ways.push((filled.collect(), log + sure));
    }
    ways
}

/// True for a "one" in words, which more often stands for a thing than counts it, and for a word that only counts: "both", "a pair".
fn is_weak(line: &Line, item: &Item) -> bool {
    is_one(line, item) || shape(line, item.at) == Some(Shape::Word)
}

/// True for a "one" in words.
fn is_one(line: &Line, item: &Item) -> bool {
    matches!(shape(line, item.at), Some(Shape::Spoken | Shape::Word)) && size(line, item.at) == Some(1.0)
}

fn with<'a>(reading: &Reading<'a>, filled: &[Filled<'a>], log: f32) -> Reading<'a> {
    let filled = reading.filled.iter().chain(filled).copied().collect();
    Reading { filled, log: reading.log + log, ..reading.clone() }
}

fn best_first(readings: &mut Vec<Reading<'_>>, most: usize) {
    readings.sort_by(|a, b| b.log.total_cmp(&a.log));
    readings.truncate(most);
}

/// The first few labels that are not far behind the first.
fn near(labels: Vec<(&str, f32)>, most: usize, far: f32) -> Vec<(&str, f32)> {
    let best = labels.first().map_or(0.0, |l| l.1);
    labels.into_iter().take(most).filter(|l| l.1 > best - far).collect()
}

impl Reading<'_> {
    /// The figures of the line that fill no row.
    pub(super) fn strays<'l>(&'l self, line: &'l Line) -> impl Iterator<Item = &'l Item> {
        self.without_row(line).filter(|i| !is_weak(line, i))
    }

    /// The figures that fill no row and are not said already by what does: in a question "at both ends" and "a foot" say nothing more.
    pub(super) fn unsaid<'l>(&'l self, line: &'l Line) -> impl Iterator<Item = &'l Item> {
        let said = |i: &&Item| {
            let of_two = self.is_two_by_nature(line, i.at);
            let corners = || {
                let leg = self.filled.iter().any(|f| f.row == Some(RowId::CornerLeg));
                leg && corners_cut(line).is_some_and(|(at, _)| at == i.at)
            };
            corners() || is_one(line, i) || self.is_of_rate(line, i.at) || of_two || self.is_said_again(line, i.at)
        };
        self.without_row(line).filter(move |i| !said(i))
    }

    fn without_row<'l>(&'l self, line: &'l Line) -> impl Iterator<Item = &'l Item> {
        let figures = line.items.iter().filter(|i| i.is == Is::Value);
        figures.filter(|i| self.filled.iter().all(|f| f.at != i.at))
    }

    /// True for the foot of "38 a foot", where 38 fills a row that is so much of each foot.
    fn is_of_rate(&self, line: &Line, at: usize) -> bool {
        let foot = shape(line, at) == Some(Shape::Feet) && size(line, at) == Some(12.0);
        let near = |f: &Filled<'_>| f.at < at && f.at + 3 > at;
        foot && self.filled.iter().any(|f| near(f) && f.row.is_some_and(|r| A_FOOT.contains(&r)))
    }

    /// True for a figure that fills a row where it is said another time, as a length or a size: "a 24 ft front; 24 is out to out". One that
    /// is taken back has a figure in its stead behind it.
    fn is_said_again(&self, line: &Line, at: usize) -> bool {
        let value = |at: usize| line.tokens.get(at).and_then(|t| t.value.as_ref());
        let Some(said) = value(at) else { return false };
        let fills = |f: &&Filled<'_>| f.row.is_some() && f.how == How::Set && f.at != at;
        let mut others = self.filled.iter().filter(fills);
        let same = |f: &Filled<'_>| value(f.at).is_some_and(|v| v.readings.iter().any(|r| said.readings.contains(r)));
        let still = at.checked_sub(1).and_then(|i| line.tokens.get(i)).is_some_and(|t| t.stem == "still");
        let measures = said.size() > 4.0 || said.lumber().is_some() || still;
        let alike = |f: &Filled<'_>| value(f.at).is_some_and(|v| v.shape == said.shape);
        let anew = |f: &Filled<'_>| f.at > at && alike(f) && takes_back(line, at..f.at);
        others.any(|f| measures && same(f) || anew(f))
    }

    /// True for the "both" of what is two of its own: a bay's ends, a bay's rails. What adds up may be more by it.
    fn is_two_by_nature(&self, line: &Line, at: usize) -> bool {
        let noun = line.tokens.get(at + 1).is_some_and(|t| TWO.contains(&t.stem.as_str()));
        let adds_up = |want: &&str| row_of(want).is_none_or(|r| matches!(r.row().owner, Owner::Guard | Owner::Order));
        noun && shape(line, at) == Some(Shape::Word) && size(line, at) == Some(2.0) && !self.wants.iter().any(adds_up)
    }
}

/// True where the words between two figures, a few at most, take the first one back: "rails out of 12s, no, the yard has 16s".
fn takes_back(line: &Line, between: Range<usize>) -> bool {
    const FEW: usize = 8;
    // A "no" before a thing denies the thing: "60 clear, no cap, 12 pickets".
    const BEHIND_NO: &[&str] = &[",", "the", "it", "its", "wait", "sorry", "just", "make", "that", "i"];
    let tokens = line.tokens.get(between.start + 1..=between.end).unwrap_or_default();
    let word = |t: &Token| t.word.as_deref().is_some_and(is_taking_back);
    let denies = |pair: &[Token]| {
        let no = matches!(pair[0].word.as_deref(), Some("no" | "nope" | "nah"));
        no && pair[1].value.is_none() && !BEHIND_NO.contains(&pair[1].stem.as_str())
    };
    tokens.len() <= FEW && tokens.windows(2).any(|pair| word(&pair[0]) && !denies(pair))
}

/// True where one of the words takes back what stands before it, by the lexicon.
pub(super) fn is_taking_back(text: &str) -> bool {
    let words = words(text);
    let items = likeliest_items(&words, &[]);
    items.iter().any(|item| item.senses().iter().any(|s| matches!(s, Sense::Verb(Verb::Repair))))
}

/// Rows of so much to a foot.
const A_FOOT: &[RowId] =
    &[RowId::PricePerFoot, RowId::FallRate, RowId::DeckFall, RowId::PerFoot, RowId::WeightFoot, RowId::LineLoad];

/// Stems of what is two by nature.
const TWO: &[&str] = &["end", "rail", "face"];

fn shape(line: &Line, at: usize) -> Option<Shape> {
    line.tokens.get(at)?.value.as_ref().map(|v| v.shape)
}

fn size(line: &Line, at: usize) -> Option<f64> {
    line.tokens.get(at)?.value.as_ref().map(|v| v.size())
}
