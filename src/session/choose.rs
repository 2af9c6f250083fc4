//! One reading out of many, or a question.

use super::resolve::{MOST_CHOICES, Problem, Resolved, resolve};
use super::state::{Lack, Pending, Session};
use crate::grammar::Act;
use crate::grammar::choice::{ChoiceDraft, Off};
use crate::grammar::draft::{Clash, Clause, Reading, RunDraft, StairDraft, Weight};
use crate::grammar::items::{Is, Item, likeliest};
use crate::grammar::reading::readings;
use crate::grammar::sense::{Foreign, Sense};
use crate::grammar::words::Word;
use crate::job::Job;
use crate::measure::{Meaning, Measure};
use std::ops::Range;

/// What a line comes to.
#[derive(Debug)]
pub(super) enum Choice {
    /// One act.
    Do {
        /// What to do.
        resolved: Resolved,
        /// The reading it came from; `None` for an answer to a question.
        reading: Option<Reading>,
    },
    /// A question with choices.
    Which {
        /// What each choice does.
        acts: Vec<Act>,
        /// The reading they came from.
        reading: Reading,
    },
    /// Words that cannot be placed; perhaps what the line would say without them.
    Unplaced {
        /// The words.
        words: Range<usize>,
        /// What the rest would do.
        without: Vec<Act>,
    },
    /// The reading cannot be taken.
    Problem(Problem, Reading),
    /// A question about a rule.
    Topic(&'static crate::limits::Limit, Vec<Range<usize>>),
    /// "why ..." of the layout given, with words of its own.
    WhySo(Range<usize>),
    /// A question with figures in it that are not worked out here, and the rule it touches.
    NotWorked(&'static crate::limits::Limit, Range<usize>),
    /// Not this trade's.
    NotMine(Foreign),
    /// A question for which there is no answer here.
    NoAnswer(Range<usize>),
    /// A number no length can be: why.
    Absurd(&'static str),
    /// Words of the trade, and nothing made of them.
    Unread(Range<usize>),
    /// Filler alone.
    Idle(Range<usize>),
    /// More than one line should hold.
    Tangled,
    /// Nothing in it reads.
    Nothing,
}

/// How much dearer a second reading may be and still be asked about.
const CLOSE: u32 = 2;

/// Chooses what a line means.
pub(super) fn choose(session: &Session, words: &[Word]) -> Choice {
    if let Some(resolved) = pending(session, words) {
        return Choice::Do { resolved, reading: None };
    }
    if let Some(query) = super::topics::of_rules(words) {
        let (acts, focus) = (vec![Act::Query(query)], session.talk.focus.clone());
        return Choice::Do { resolved: Resolved { acts, ask: false, focus, then: None }, reading: None };
    }
    let names = super::targets::names(session);
    let Ok(mut all) = readings(words, &names) else { return Choice::Tangled };
    if builds_on(session, words) {
        all.iter_mut().filter(|r| tells(r)).for_each(|r| r.supposes = true);
    }
    for r in &all {
        tracing::trace!(cost = r.cost, clash = ?r.clash, left = ?r.left, clauses = ?r.clauses, "reading");
    }
    let items = likeliest(words, &names);
    if let Some(choice) = rule_asked(words, &all, &items) {
        return choice;
    }
    if let Some(foreign) = foreign(&all, &items) {
        return Choice::NotMine(foreign);
    }
    let Some(best) = all.first() else { return Choice::Nothing };
    let tried = try_all(session, &all);
    match pick(tried, best) {
        Some(Choice::Do { resolved, reading: Some(reading) }) => asked_beside(words, resolved, reading),
        Some(choice) => choice,
        None => unread(session, words, &all, &items),
    }
}

/// Words left over that ask something ("..., is that short") keep a line from telling anything.
fn asked_beside(words: &[Word], resolved: Resolved, reading: Reading) -> Choice {
    let tells = resolved.acts.iter().any(|a| matches!(a, Act::Tell(_)));
    let left = |n: usize| reading.left.iter().any(|l| l.words.contains(&n));
    let verb = |n: usize| {
        matches!(words[n].text.as_str(), "is" | "are" | "am" | "does" | "do" | "will" | "can" | "would" | "could")
    };
    let of_what = |n: usize| {
        let near = words.iter().skip(n + 1).take(2);
        near.into_iter().any(|w| matches!(w.text.as_str(), "that" | "it" | "this" | "they" | "i" | "we" | "those"))
    };
    let asks = (0..words.len()).find(|n| left(*n) && left(*n + 1) && verb(*n) && of_what(*n));
    if let Some(at) = opens_unread(words, &left).filter(|_| tells) {
        return Choice::Unplaced { words: at..at + 1, without: resolved.acts };
    }
    match asks.filter(|_| tells) {
        Some(at) => Choice::Unplaced { words: at..words.len(), without: resolved.acts },
        None => Choice::Do { resolved, reading: Some(reading) },
    }
}

/// True for a line that opens as a question whose opening no clause took in: "does it swing onto the
/// stairs" tells nothing of the swing.
fn opens_unread(words: &[Word], left: &impl Fn(usize) -> bool) -> Option<usize> {
    let joins = |w: &Word| matches!(w.text.as_str(), "and" | "so" | "ok" | "but" | "," | "now" | "then");
    let at = words.iter().position(|w| !joins(w))?;
    let of_what = words.get(at + 1).is_some_and(|w| {
        matches!(w.text.as_str(), "it" | "the" | "that" | "this" | "they" | "i" | "we" | "my" | "those" | "these")
    });
    let asks = match words[at].text.as_str() {
        "does" | "did" | "is" | "are" | "was" | "will" | "should" | "must" | "which" | "has" => true,
        // "do a 10 ft run" asks for it to be done.
        "do" => of_what,
        _ => false,
    };
    (asks && left(at)).then_some(at)
}

/// True for "and with 6x6s" behind a what-if: it goes on supposing, and tells nothing.
fn builds_on(session: &Session, words: &[Word]) -> bool {
    let joins = |w: &Word| matches!(w.text.as_str(), "and" | "or" | "plus");
    (!session.talk.supposed.is_empty() || session.talk.filling.is_some()) && words.first().is_some_and(joins)
}

/// True for a reading of facts, with no question and no talk in it.
fn tells(reading: &Reading) -> bool {
    use Clause::{Ask, Flight, Note, Query, Strength, Sum, Takeoff, Talk, Why};
    let other = |c: &Clause| {
        matches!(c, Ask(_) | Flight(_) | Note(_) | Query(_) | Strength(_) | Sum(_) | Takeoff(_) | Talk(_) | Why(_))
    };
    !reading.clauses.iter().any(other)
}

/// The readings that stand and resolve, cheapest first; and the first problem met.
struct Tried {
    stands: Vec<(Reading, Resolved)>,
    problem: Option<(Problem, Reading)>,
}

fn try_all(session: &Session, all: &[Reading]) -> Tried {
    let mut tried = Tried { stands: Vec::new(), problem: None };
    let mut unfit = None;
    // A dearer reading that leaves less out does not outrank a cheaper one that must ask.
    let ceiling = all.iter().find(|r| blocked(r).is_some() && r.clash.is_none()).map_or(u32::MAX, |r| r.cost);
    for reading in
        all.iter().filter(|r| r.clash.is_none() && blocked(r).is_none() && r.cost <= ceiling && says_something(r))
    {
        match resolve(session, reading) {
            Ok(resolved) => tried.stands.push((reading.clone(), resolved)),
            // What does not fit the talk gives way to any other reading and any other problem.
            Err(problem @ Problem::Unfit(_)) => {
                unfit.get_or_insert((problem, reading.clone()));
            }
            Err(problem) => {
                tried.problem.get_or_insert((problem, reading.clone()));
            }
        }
        if tried.stands.len() >= MOST_CHOICES {
            break;
        }
    }
    if tried.stands.is_empty() {
        tried.problem = tried.problem.or(unfit);
    }
    tried
}

fn says_something(reading: &Reading) -> bool {
    !reading.clauses.is_empty() || reading.corrects && reading.left.iter().all(|l| l.weight == Weight::Light)
}

/// The words that keep a reading from being taken.
pub(super) fn blocked(reading: &Reading) -> Option<Range<usize>> {
    let by = |w: Weight| reading.left.iter().find(|l| l.weight == w).map(|l| l.words.clone());
    by(Weight::Heavy).or_else(|| by(Weight::Touching))
}

fn pick(tried: Tried, best: &Reading) -> Option<Choice> {
    let mut stands = tried.stands.into_iter();
    let Some((reading, resolved)) = stands.next() else {
        return tried.problem.map(|(p, r)| Choice::Problem(p, r));
    };
    // A problem with a reading that uses the words better is the answer, not a poorer reading.
    if let Some((problem, r)) = tried.problem
        && r.cost + CLOSE < reading.cost
        && r.cost <= best.cost + CLOSE
    {
        return Some(Choice::Problem(problem, r));
    }
    let mut acts = resolved.acts.clone();
    for (_, also) in stands.filter(|(r, _)| r.cost <= reading.cost + CLOSE) {
        for act in also.acts {
            if !acts.contains(&act) && acts.len() < MOST_CHOICES {
                acts.push(act);
            }
        }
    }
    if acts.len() > 1 || resolved.ask || makes_run_of_figure(&reading) {
        return Some(Choice::Which { acts, reading });
    }
    Some(Choice::Do { resolved, reading: Some(reading) })
}

/// True where a number without a unit, an end or a name would be one more run beside a deck: "..., rail 36" may be its height.
fn makes_run_of_figure(reading: &Reading) -> bool {
    let deck = reading.clauses.iter().any(|c| matches!(c, Clause::Deck(..) | Clause::DeckBy(..)));
    let bare = |r: &RunDraft| {
        let figure = r.length.as_ref().is_some_and(|m| matches!(m.meaning, Meaning::Bare(_)));
        let only = RunDraft { run_word: false, length: None, words: 0..0, ..r.clone() } == RunDraft::default();
        figure && only
    };
    deck && reading.clauses.iter().any(|c| matches!(c, Clause::Run(r) if bare(r)))
}

/// A question about a rule by words of its own, where no reading takes in the whole line, or
/// all that do would tell the job what was only asked.
fn rule_asked(words: &[Word], all: &[Reading], items: &[Item]) -> Option<Choice> {
    use super::topics;
    // "lags ok for the posts?": as much as "are lags ok".
    let ok = |w: &Word| matches!(w.text.as_str(), "ok" | "okay" | "legal" | "allowed");
    let opens = topics::opens(words) || words.last().is_some_and(|w| w.is("?")) && words.iter().any(ok);
    let asks = opens || topics::asks(items) || topics::either_or(items) || topics::stuck_with(words);
    let answered = |r: &Reading| reads_all(r) && !(opens && tells_only(r));
    let figured = topics::asks_why(items) && items.iter().any(|i| matches!(i.is, Is::Measure(_)));
    if !asks || figured || own_figures(items) || all.iter().any(answered) {
        return None;
    }
    // "how many bolts per post": the rule itself counts them; no other does.
    let limit = topics::asked(words).filter(|l| !topics::counts(items) || l.id == "through-bolts")?;
    Some(Choice::Topic(limit, topics::beside(limit, words, items)))
}

/// True for a reading of facts that a question is unlikely to tell.
fn tells_only(reading: &Reading) -> bool {
    let told = |c: &Clause| matches!(c, Clause::Run(_) | Clause::Fixing(_) | Clause::HouseEnd(_) | Clause::Fine);
    reading.clauses.iter().all(told)
}

/// A line none of whose readings can be taken.
fn unread(session: &Session, words: &[Word], all: &[Reading], items: &[Item]) -> Choice {
    if let Some(says) = super::absurd::absurd(words) {
        return Choice::Absurd(says);
    }
    let limit = super::topics::topic(words, items);
    // "why" with a figure is about that figure: no other reason answers it.
    let figured = super::topics::asks_why(items) && items.iter().any(|i| matches!(i.is, Is::Measure(_)));
    let limit = limit.filter(|_| !figured);
    if !figured && super::topics::asks_why(items) && (limit.is_none() || super::topics::of_the_answer(words)) {
        return Choice::WhySo(0..words.len());
    }
    if let Some(limit) = limit {
        let said = items
            .iter()
            .filter(|i| !super::topics::belongs(i, limit) || super::topics::again(i, words))
            .map(|i| i.words.clone())
            .collect();
        // A question with figures of its own wants them worked out, not a rule read to it.
        return if own_figures(items) || super::topics::counts(items) {
            Choice::NotWorked(limit, 0..words.len())
        } else {
            Choice::Topic(limit, said)
        };
    }
    // What makes no run and holds another trade's word is that trade's.
    let tells = all.first().is_some_and(|r| r.clauses.iter().any(|c| matches!(c, Clause::Run(r) if r.from.is_some())));
    if let Some(foreign) = items.iter().find_map(alien).filter(|_| !tells) {
        return Choice::NotMine(foreign);
    }
    let whole = items.first().zip(items.last()).map_or(0..0, |(a, b)| a.words.start..b.words.end);
    if super::topics::asks(items) && items.iter().any(is_content) {
        return Choice::NoAnswer(whole);
    }
    if let Some(Clash::Twice(words)) = all.iter().find_map(|r| r.clash.clone().filter(|_| blocked(r).is_none())) {
        return Choice::Unplaced { words, without: Vec::new() };
    }
    let reads = |r: &&Reading| !r.clauses.is_empty();
    let Some(best) = all.iter().find(reads) else {
        let at = stuck(all).unwrap_or(whole.clone());
        return match items {
            _ if items.iter().any(is_content) => Choice::Unread(at),
            _ if items.iter().any(|i| i.is_light() && i.text.contains(char::is_alphanumeric))
                && items.iter().all(|i| i.is_light() || i.is_sep()) =>
            {
                Choice::Idle(at)
            }
            _ => Choice::Nothing,
        };
    };
    let words = blocked(best).unwrap_or(whole);
    let without = resolve(session, best).map(|r| r.acts).unwrap_or_default();
    Choice::Unplaced { words, without }
}

/// True when the line holds a figure that is not the rule's own ("why 4 inches").
fn own_figures(items: &[Item]) -> bool {
    let ruled = |m: &Measure| {
        let inches = match m.meaning {
            Meaning::Bare(n) => n.value,
            Meaning::Length(l, _) => l.q(),
            _ => return false,
        };
        crate::limits::LIMITS.iter().any(|l| l.unit == "in" && inches == i128::from(l.value).into())
    };
    items.iter().any(|i| matches!(&i.is, Is::Measure(m) if !ruled(m) && !matches!(m.meaning, Meaning::Lumber(_))))
}

/// True where a reading says something and leaves nothing of weight out.
fn reads_all(reading: &Reading) -> bool {
    !reading.clauses.is_empty() && blocked(reading).is_none() && reading.clash.is_none()
}

fn alien(item: &Item) -> Option<Foreign> {
    item.senses().iter().find_map(|s| if let Sense::Foreign(f) = s { Some(*f) } else { None })
}

fn stuck(all: &[Reading]) -> Option<Range<usize>> {
    all.first().and_then(blocked)
}

/// True for an item that carries something of the trade or a number.
fn is_content(item: &Item) -> bool {
    matches!(item.is, Is::Measure(_) | Is::Unread) || matches!(item.is, Is::Term(_)) && !item.is_light()
}

/// The foreign matter a line is about: a foreign word its best reading leaves over,
/// unless it stands in noise behind something that reads.
fn foreign(all: &[Reading], items: &[Item]) -> Option<Foreign> {
    let best = all.first()?;
    // A door is not built here; what stands off one is.
    let door =
        |c: &Clause| matches!(c, Clause::Choice(c) if matches!(c.choice, ChoiceDraft::KeepOff { of: Off::Door, .. }));
    if best.clauses.iter().any(|c| matches!(c, Clause::Note(_)) || door(c)) {
        return None;
    }
    let in_noise = |item: &Item| {
        let noise = best
            .left
            .iter()
            .any(|l| l.weight == Weight::Unknown && l.words.contains(&item.words.start) && l.words.len() > 1);
        noise && !best.clauses.is_empty() && blocked(best).is_none()
    };
    // "sales tax is 6 percent": what a piece reads is of the trade.
    let read = |item: &Item| reads_all(best) && !best.left.iter().any(|l| l.words.contains(&item.words.start));
    items.iter().filter(|i| !in_noise(i) && !read(i)).find_map(alien)
}

// --- answers to a question -------------------------------------------------------------------

/// The line as the answer to the question that is open.
pub(super) fn pending(session: &Session, words: &[Word]) -> Option<Resolved> {
    let open = session.talk.pending.as_ref()?;
    if let Some(act) = numbered(&open.choices, words).or_else(|| described(&open.choices, words)) {
        let focus = focus_of(session, &act);
        return Some(Resolved { acts: vec![act], ask: false, focus, then: None });
    }
    let (reading, lack) = open.lacks.as_ref()?;
    lacking(session, reading, *lack, words)
}

/// What is spoken of after a choice was taken.
fn focus_of(session: &Session, act: &Act) -> super::state::Focus {
    let mut focus = session.talk.focus.clone();
    if let Act::Tell(facts) | Act::TellWith(facts, _) | Act::Suppose(facts) = act {
        focus.run = facts
            .iter()
            .rev()
            .find_map(|f| if let crate::job::Fact::Run(id, _) = f { Some(*id) } else { None })
            .or(focus.run);
    }
    focus
}

const ORDINALS: [&[&str]; MOST_CHOICES] = [
    &["1", "one", "first", "1st", "a"],
    &["2", "two", "second", "2nd", "b"],
    &["3", "three", "third", "3rd", "c"],
    &["4", "four", "fourth", "4th", "d"],
];

fn numbered(choices: &[Act], words: &[Word]) -> Option<Act> {
    let idle = ["the", "number", "option", "choice", "one", ".", ",", ")", "#", "please", "yes", "make", "it", "no"];
    let joined: String = words.iter().map(|w| w.text.as_str()).collect::<Vec<_>>().join(" ");
    let said: Vec<&str> = joined.split(' ').filter(|w| !w.is_empty()).collect();
    let telling: Vec<&&str> = said.iter().filter(|w| !idle.contains(w)).collect();
    if choices.len() == 1
        && matches!(said.first(), Some(&("yes" | "yep" | "yeah" | "yup" | "ok" | "right" | "correct" | "y")))
        && telling.len() <= 1
    {
        return choices.first().cloned();
    }
    // "no, the second" chooses; "2 no" takes it back.
    if said.iter().skip(1).any(|w| *w == "no") {
        return None;
    }
    let pick = match telling[..] {
        [one] => Some(*one),
        [] if said.last() == Some(&"one") => Some("one"),
        [digit, suffix] if ["st", "nd", "rd", "th"].contains(suffix) => Some(*digit),
        _ => None,
    }?;
    let at = ORDINALS.iter().position(|names| names.contains(&pick))?;
    choices.get(at).cloned()
}

/// Words that fit exactly one choice's phrase: "feet", "the height", "at the to-end".
fn described(choices: &[Act], words: &[Word]) -> Option<Act> {
    let idle =
        ["the", "a", "it", "its", "is", "s", "i", "meant", "mean", "at", "in", "of", ".", ",", "that", "one", "'s"];
    let said: Vec<&str> = words.iter().map(|w| w.text.as_str()).filter(|w| !idle.contains(w)).collect();
    if said.is_empty() || said.len() > 4 {
        return None;
    }
    if let [unit] = said[..]
        && let Some(act) = by_unit(choices, unit)
    {
        return Some(act);
    }
    let phrase = |act: &Act| crate::grammar::canon::write(act).replace([',', ';', ':', '-'], " ");
    let synonyms = |word: &str| match word {
        "length" | "long" | "run" => vec!["run".to_owned()],
        "high" | "tall" => vec!["height".to_owned()],
        w => vec![w.to_owned()],
    };
    let fits = |act: &&Act| {
        let text = phrase(act);
        let parts: Vec<&str> = text.split_whitespace().collect();
        said.iter().all(|w| synonyms(w).iter().any(|s| parts.contains(&s.as_str())))
    };
    let fitting: Vec<&Act> = choices.iter().filter(fits).collect();
    match fitting[..] {
        [one] if choices.len() > 1 => Some(one.clone()),
        _ => None,
    }
}

/// "feet" or "inches": the greater or the lesser of two lengths.
fn by_unit(choices: &[Act], unit: &str) -> Option<Act> {
    let lengths: Option<Vec<_>> = choices.iter().map(act_length).collect();
    let lengths = lengths.filter(|l| l.len() == 2 && l[0] != l[1])?;
    let first_greater = lengths[0] > lengths[1];
    match unit {
        "feet" | "foot" | "ft" | "'" => choices.get(usize::from(!first_greater)).cloned(),
        "inches" | "inch" | "in" | "\"" => choices.get(usize::from(first_greater)).cloned(),
        _ => None,
    }
}

fn act_length(act: &Act) -> Option<crate::measure::Length> {
    use crate::grammar::Query;
    use crate::job::{Fact, Setting};
    match act {
        Act::Query(Query::Measure { length, .. }) => Some(*length),
        Act::Tell(facts) | Act::Suppose(facts) => match facts.first()? {
            Fact::Run(_, p) => p.length.map(|t| t.length).or(p.gate.flatten().and_then(|g| g.width)),
            Fact::StairWidth(l) | Fact::DeckAlong(l) | Fact::DeckOut(l) => Some(*l),
            Fact::Set(Setting::ClearMax(l) | Setting::CentreMax(l) | Setting::HeightTop(l)) => Some(*l),
            _ => None,
        },
        _ => None,
    }
}

/// A bare measure that gives an earlier reading what it lacked.
fn lacking(session: &Session, reading: &Reading, lack: Lack, words: &[Word]) -> Option<Resolved> {
    let given = readings(words, &super::targets::names(session))
        .ok()?
        .into_iter()
        .find(|r| blocked(r).is_none() && r.clash.is_none())?;
    let [Clause::Run(draft)] = &given.clauses[..] else { return None };
    let only = RunDraft { length: None, it: false, basis: None, words: 0..0, ..draft.clone() } == RunDraft::default();
    let width = draft.length.clone().filter(|_| only)?;
    let mut filled = reading.clone();
    for clause in &mut filled.clauses {
        match (clause, lack) {
            (Clause::Run(RunDraft { stairs: Some(Some(stairs)), .. }), Lack::StairWidth) => {
                *stairs = StairDraft { width: Some(width.clone()), ..stairs.clone() };
            }
            (Clause::StairsOn { width: lacked, .. }, Lack::StairWidth) => *lacked = Some(width.clone()),
            _ => {}
        }
    }
    resolve(session, &filled).ok().filter(|r| r.acts.len() == 1 && !r.ask)
}

/// The open question a choice leaves behind.
pub(super) fn opened(acts: &[Act]) -> Option<Pending> {
    (!acts.is_empty()).then(|| Pending { choices: acts.to_vec(), lacks: None, likely: None })
}

/// True when an act leaves the job as it is.
pub(super) fn changes_nothing(job: &Job, act: &Act) -> bool {
    match act {
        Act::Tell(facts) | Act::TellWith(facts, _) => job.with_all(facts).is_ok_and(|j| j == *job),
        _ => true,
    }
}
