//! A reading that asks, judges or supposes, as a question of rows.

use super::About;
use super::changed::{as_sum, settle};
use super::mood::{asks_for_a_word, asks_of_need, mood, mood_of_need};
use super::premises::{placed, premises};
use super::readings::Reading;
use super::value::{OF_ONE_SIZE, Premise, row_of, ways};
use crate::figure::{Fig, Value, Why};
use crate::grammar::ask::{Mood, RowAsk};
use crate::grammar::scores::{How, Line};
use crate::grammar::{Act, Query};
use crate::job::Job;
use crate::limits::Sense;
use crate::provide;
use crate::quantity::{Alike, Kind, RowId};
use crate::session::answer::{of_both, settled};
use crate::solve::{Given, Lacks, Solved, hangs_on};

/// Of which of several what follows is asked: "8s or 10s, which wastes less" is what each gives, and leaves.
const BY_WHAT_FOLLOWS: &[(RowId, RowId)] = &[(RowId::Stock, RowId::PerStick)];

/// A way to take a reading, and what it costs beyond the reading's own probability.
#[derive(Debug)]
pub(super) struct Way {
    /// A logarithm of odds.
    pub cost: f32,
    /// What it does.
    pub act: Act,
    /// What the answer comes to: two ways that come to one figure are one.
    pub fig: Option<Value>,
    /// How many values have no part in it.
    pub unbound: usize,
    /// It is offered at most: what has no part in it, or which of several was meant, would change it.
    pub doubtful: bool,
    /// It would only say what is still needed.
    pub lacks: bool,
    /// Nobody gave or told the figure.
    pub by_default: bool,
    /// How many premises have no part in it.
    pub unused: usize,
    /// A price said has no part in it.
    pub idle_price: bool,
    /// The rows given several times that it takes all together.
    pub whole: Vec<RowId>,
}

impl Way {
    /// A way that is no question of rows.
    pub(super) fn plain(cost: f32, act: Act) -> Way {
        Way {
            cost,
            act,
            fig: None,
            unbound: 0,
            doubtful: false,
            lacks: false,
            by_default: false,
            unused: 0,
            idle_price: false,
            whole: Vec::new(),
        }
    }
}

/// What a premise no derivation uses, a row taken by default, an answer that still lacks something, and leaning on
/// the last question cost: logarithms of odds.
const UNUSED: f32 = -2.0;
const DEFAULT: f32 = -0.4;
const LACKING: f32 = -3.0;
const LEANING: f32 = -0.3;

/// Topics of the corpus that a row and its limit answer where there is a figure to judge: what is given, and what it is judged as. The first
/// of a topic stands for it where none of them is given.
const JUDGED: &[(&str, RowId, RowId)] = &[
    ("guard-needed", RowId::Drop, RowId::Drop),
    ("guard-height", RowId::HeightTop, RowId::HeightTop),
    ("guard-height", RowId::StairHeight, RowId::StairHeight),
    ("gap-limit", RowId::Gap, RowId::Gap),
    ("gap-limit", RowId::EndGap, RowId::EndGap),
    ("gap-limit", RowId::GapUnder, RowId::GapUnder),
    ("gap-limit", RowId::PostOffWall, RowId::PostOffWall),
    ("pool", RowId::GapUnder, RowId::GapUnder),
    ("bay-limit", RowId::BayCentre, RowId::BayCentre),
    ("bay-limit", RowId::BayClear, RowId::BayClear),
    ("stairs-rise", RowId::Rise, RowId::Rise),
    ("stairs-rise", RowId::Risers, RowId::Rise),
    ("stairs-tread", RowId::Tread, RowId::Tread),
    ("stair-guard-height", RowId::StairHeight, RowId::StairHeight),
    ("handrail", RowId::Risers, RowId::HandrailRisers),
    ("handrail", RowId::Treads, RowId::HandrailRisers),
    ("handrail", RowId::HandrailHeight, RowId::HandrailHeight),
    ("handrail", RowId::HandrailWidth, RowId::HandrailWidth),
    ("handrail", RowId::HandrailSpace, RowId::HandrailSpace),
    ("bolts", RowId::BoltsPerPost, RowId::BoltsPerPost),
    ("bolts", RowId::Bolt, RowId::Bolt),
    ("bolts", RowId::BoltsApart, RowId::BoltsApart),
    ("notch-allowed", RowId::NotchDepth, RowId::NotchDepth),
    ("strength", RowId::NotchDepth, RowId::LegCarries),
    ("open-riser", RowId::OpenRiser, RowId::OpenRiser),
    ("triangle", RowId::TriangleBall, RowId::TriangleBall),
];

/// Topics a row answers where a word is given: how strong posts are in that wood.
const BY_WORD: &[(&str, RowId, RowId)] = &[("strength", RowId::Species, RowId::PostRatio)];

/// Gaps of other names: one of them given alone is the gap that is spoken of.
const GAPS: &[RowId] = &[RowId::EndGap, RowId::GapUnder, RowId::PostOffWall, RowId::CornerGap, RowId::GateUnder];

/// The row a want is judged as; for a topic, by what is given.
fn judged_as(want: &str, reading: &Reading<'_>) -> Option<(RowId, bool)> {
    let word = |row: RowId| reading.filled.iter().any(|f| f.row == Some(row) && f.how == How::Set && f.word.is_some());
    if let Some((.., row)) = BY_WORD.iter().find(|(topic, said, _)| *topic == want && word(*said)) {
        return Some((*row, false));
    }
    let values = || reading.filled.iter().filter(|f| f.how == How::Set && f.word.is_none()).filter_map(|f| f.row);
    let of_topic = || JUDGED.iter().filter(|(topic, ..)| *topic == want);
    let given = of_topic().find(|(_, given, _)| values().any(|row| row == *given));
    if let Some((.., row)) = given.or_else(|| of_topic().next()) {
        return Some((*row, true));
    }
    let row = row_of(want)?;
    let mut of_gaps = values().filter(|r| *r != row);
    let gap = match (row, of_gaps.next(), of_gaps.next()) {
        (RowId::Gap, Some(other), None) if reading.act == "judge" && GAPS.contains(&other) => other,
        _ => row,
    };
    Some((gap, false))
}

/// What a reading wants, and whether a word on it.
struct Wanted {
    rows: Vec<RowId>,
    mood: Mood,
    /// A topic stands for the row: without a figure it is a rule that is asked.
    by_topic: bool,
    /// It goes on from the last question.
    goes_on: bool,
}

impl Wanted {
    /// `None` where it wants what is no row.
    fn of(about: &About<'_>, reading: &Reading<'_>) -> Option<Wanted> {
        let (mut rows, mut by_topic) = (Vec::new(), false);
        for want in &reading.wants {
            // "do I need a guard here" judges a row: how high it is.
            let (row, topic) = judged_as(want, reading)?;
            by_topic |= topic;
            rows.push(row);
        }
        // "How come 11 won't do" asks for a word on 11, and a what-if may ask for one on what comes of it.
        let told =
            |row: &RowId| reading.filled.iter().filter(|f| f.row == Some(*row) && f.how == How::Set).count() == 1;
        let of_figure = reading.act == "why" && rows.iter().any(told);
        let of_what_if = reading.act == "suppose" && asks_for_a_word(about.line);
        if rows.is_empty() && of_what_if {
            rows = limited(reading);
        }
        // "What's left, and how much weaker" asks for figures.
        let by_figure = reading.act == "suppose" && reading.wants.len() > 1 && !of_what_if;
        let judges = by_topic && !by_figure || reading.act == "judge" || of_figure || of_what_if;
        let goes_on = reading.act == "suppose" || reading.wants.is_empty();
        if rows.is_empty() {
            rows = about.wanted_again(reading).or_else(|| about.what_follows(reading))?;
        }
        for row in &mut rows {
            let said = reading.filled.iter().filter(|f| f.row == Some(*row)).count();
            let follows = BY_WHAT_FOLLOWS.iter().find(|(of, _)| of == row && said > 1);
            *row = follows.map_or(*row, |(_, by)| *by);
        }
        let of_need = rows.iter().any(|row| asks_for_something(*row));
        let judges = judges || reading.act == "suppose" && of_need && asks_of_need(about.line);
        // "and with 12?" behind a word asks for another.
        let again = about.asked.filter(|a| goes_on && a.mood.judges() && rows.iter().all(|r| a.wants.contains(r)));
        let mood = match again {
            _ if judges && of_need => mood_of_need(about.line),
            _ if judges => mood(about.line),
            Some(last) => last.mood,
            None => Mood::Figure,
        };
        Some(Wanted { rows, mood, by_topic, goes_on })
    }
}

impl About<'_> {
    /// "and with 14?" wants what the last question wanted; where that is what is supposed now, what stands beside it.
    fn wanted_again(&self, reading: &Reading<'_>) -> Option<Vec<RowId>> {
        let last = self.asked?;
        // A word on balusters goes on as a word on as many as are supposed now.
        let supposed = |row: &RowId| !last.mood.judges() && reading.filled.iter().any(|f| f.row == Some(*row));
        let again: Vec<RowId> = last.wants.iter().copied().filter(|w| !supposed(w)).collect();
        if !again.is_empty() {
            return Some(again);
        }
        let beside = last.wants.iter().flat_map(|w| w.row().beside).copied().find(|row| !supposed(row));
        beside.map(|row| vec![row])
    }

    /// What is supposed anew without a question before it wants what is never said without it: of balusters more or fewer the gap.
    fn what_follows(&self, reading: &Reading<'_>) -> Option<Vec<RowId>> {
        // Decking's size is how thick it is.
        let measured = |row: RowId| if row == RowId::DeckingSize { RowId::Decking } else { row };
        let rows: Vec<RowId> = reading.filled.iter().filter_map(|f| f.row.map(measured)).collect();
        let changes = |row: &RowId| {
            let of_it = reading.filled.iter().filter(|f| f.row.map(measured) == Some(*row));
            of_it.clone().any(|f| matches!(f.how, How::Add | How::Less)) || of_it.count() > 1
        };
        let anew = |row: &&RowId| !row.row().is_words() && (changes(row) || self.job.told(**row).is_some());
        // A run's bays are told with it.
        let tells = |row: &&RowId| **row == RowId::BayCount && self.job.runs.iter().any(|r| r.bays.is_some());
        let changed = rows.iter().find(|row| anew(row) || tells(row)).filter(|_| reading.act == "suppose")?;
        // "Makes a 9 1/4 notch with 1 in. boards; with 1 1/2 boards?" wants the notch.
        let once = |row: &&RowId| rows.iter().filter(|r| r == row).count() == 1 && !row.row().is_words();
        if let Some(row) = rows.iter().filter(once).find(|row| hangs_on(**row, *changed)) {
            return Some(vec![*row]);
        }
        // A size has nothing beside it: then it is what is beside the rest of what is given.
        let beside = std::iter::once(changed).chain(&rows).flat_map(|r| r.row().beside);
        beside.copied().find(|row| !rows.contains(row)).map(|row| vec![row])
    }
}

/// True for a row whose limit asks for a guard or a handrail.
fn asks_for_something(row: RowId) -> bool {
    row.row().limits().any(|(_, sense)| matches!(sense, Sense::Over | Sense::From))
}

/// What a line gives that is held to a limit, itself or what stands beside it, last said: that is what a word is asked on where nothing is wanted by its name.
fn limited(reading: &Reading<'_>) -> Vec<RowId> {
    let given = reading.filled.iter().rev().filter(|f| f.word.is_none() && f.how == How::Set).filter_map(|f| f.row);
    let held = |row: &RowId| row.row().limit.is_some();
    given.filter(|row| !row.row().is_words() && (held(row) || row.row().beside.iter().any(held))).take(1).collect()
}

/// The questions a reading may be.
pub(super) fn asked(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Vec<Way> {
    let unsaid = reading.unsaid(line).count();
    if let Some(sum) = as_sum(about, line, reading).filter(|_| reading.act != "judge") {
        return vec![Way { unbound: unsaid, doubtful: unsaid > 0, ..Way::plain(0.0, Act::Sum(sum)) }];
    }
    if let Some(why) = why_so(about, line, reading) {
        return vec![why];
    }
    let Some(wanted) = Wanted::of(about, reading) else { return Vec::new() };
    let Some(mut all) = premises(about, line, reading) else { return Vec::new() };
    all.iter_mut().for_each(|(_, given)| settle(reading, wanted.mood.judges(), given));
    let placed = placed(about, line, reading).map(|taken| (0.0, taken));
    let either = either(line, reading);
    let ways = all.into_iter().chain(placed).filter_map(|(cost, taken)| question(about, &wanted, taken, cost));
    // "16 or 18 ft of guard" is no 34 ft of it.
    // Nor is a figure that a price or most of what was given has no part in what was asked: "4 to the foot at 1.80, or cable at 11 a foot".
    let in_doubt = |w: &Way| {
        let evened = |row: &RowId| wanted.rows.contains(row);
        let several = w.whole.iter().any(|row| reading.act == "suppose" && !evened(row) || either.contains(row));
        several || w.idle_price || w.unused > 1 && 2 * w.unused > given(&w.act)
    };
    // What nobody gave or told is neither judged nor an answer to a topic.
    let judged = |w: &Way| !wanted.mood.judges() || !w.by_default;
    let ways = ways.filter(|w| judged(w) && !(wanted.by_topic && w.lacks)).map(|w| Way {
        unbound: unsaid + usize::from(in_doubt(&w)),
        doubtful: in_doubt(&w),
        ..w
    });
    ways.chain(judged_again(about, reading)).collect()
}

/// "why 8 3/4" behind the answer that said so asks for its reasons, and no word on the figure.
fn why_so(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    let ([want], [said]) = (&reading.wants[..], &reading.filled[..]) else { return None };
    let row = row_of(want).filter(|row| said.row == Some(*row) && reading.act == "why" && about.answered)?;
    let answer = about.figure.map(Value::Length);
    let same = |(_, premise): &(f32, Premise)| matches!(premise, Premise::Row(r, v) if *r == row && Some(*v) == answer);
    ways(row, line, said.at).iter().any(same).then_some(())?;
    // What the job gives by itself is said again with what it follows from.
    let again = provide::ask(row, &Given::default(), about.job).is_ok_and(|s| Some(s.fig.value()) == answer);
    let query = if again { Query::Row(RowAsk::figure(row, Vec::new())) } else { Query::Why };
    Some(Way::plain(0.0, Act::Query(query)))
}

/// How many rows a question gives.
fn given(act: &Act) -> usize {
    if let Act::Query(Query::Row(ask)) = act { Given::of(ask.given.iter().copied()).rows().count() } else { 0 }
}

/// The rows of which one value or another is meant, or one in another's stead.
fn either(line: &Line, reading: &Reading<'_>) -> Vec<RowId> {
    const PARTS: &[&str] = &["or", "than", "instead", "versus", "v", "vs", "not", "no"];
    let twice = |row: &RowId| {
        let mut all = reading.filled.iter().filter(|f| f.row == Some(*row)).map(|f| f.at);
        let first = all.next()?;
        let between = line.tokens.get(first..all.next_back()?)?;
        between.iter().any(|t| PARTS.contains(&t.stem.as_str())).then_some(*row)
    };
    reading.filled.iter().filter_map(|f| twice(&f.row?)).collect()
}

/// "is that legal?" behind a figure: a word on what was asked last.
fn judged_again(about: &About<'_>, reading: &Reading<'_>) -> Option<Way> {
    let last = about.asked.filter(|_| reading.act == "judge" && reading.filled.is_empty())?;
    solved(about, RowAsk { mood: mood(about.line), ..last.clone() }, 0.0).filter(|w| !w.lacks && !w.by_default)
}

/// A change of mind about what the last question gave: it is asked again.
pub(super) fn asked_again(about: &About<'_>, line: &Line, reading: &Reading<'_>) -> Option<Way> {
    let last = about.asked?;
    let of_it = |row: RowId| last.given.iter().any(|(r, _)| *r == row) && about.job.told(row).is_none();
    let all = !reading.filled.is_empty() && reading.filled.iter().all(|f| f.row.is_some_and(of_it));
    let wanted = Wanted { rows: last.wants.clone(), mood: last.mood, by_topic: false, goes_on: true };
    let (cost, taken) = premises(about, line, reading).filter(|_| all)?.into_iter().next()?;
    question(about, &wanted, taken, cost).filter(|w| !w.lacks)
}

fn question(about: &About<'_>, wanted: &Wanted, premises: Vec<Premise>, cost: f32) -> Option<Way> {
    let (mut given, mut supposed) = (Vec::new(), Vec::new());
    for premise in premises {
        match premise {
            Premise::Row(row, value) => given.push((row, value)),
            Premise::Fact(fact) => supposed.push(fact),
        }
    }
    let mut ask = RowAsk { wants: wanted.rows.clone(), mood: wanted.mood, given, supposed };
    beside_told(about, &mut ask);
    let lean = || leaning(about, ask.clone()).and_then(|ask| solved(about, ask, cost + LEANING)).filter(|w| !w.lacks);
    // "what if the cap is thicker" is about what was asked before, with all that was given for it.
    let again = wanted.goes_on && about.asked.is_some_and(|a| a.wants.iter().any(|w| wanted.rows.contains(w)));
    if let Some(way) = again.then(lean).flatten() {
        return Some(way);
    }
    // What was given for the next question comes before any default.
    if about.asked.is_some_and(|a| a.wants.is_empty())
        && let Some(way) = held(about, &ask, cost)
    {
        return Some(way);
    }
    let plain = solved(about, ask.clone(), cost).map(|way| fuller(about, &ask, way, cost));
    if plain.as_ref().is_some_and(|w| !w.lacks) {
        return plain;
    }
    lean().or(plain)
}

/// Of what is held to others of its flight, one that differs is judged beside the one told before.
fn beside_told(about: &About<'_>, ask: &mut RowAsk) {
    let ([want], true) = (&ask.wants[..], ask.mood.judges()) else { return };
    let given = || ask.given.iter().filter(|(row, _)| row == want);
    let before = about.asked.filter(|last| last.wants.is_empty());
    let held = before.and_then(|last| last.given.iter().find(|(row, _)| row == want)).map(|(_, value)| *value);
    let told = held.or_else(|| Some(about.job.told(*want)?.value()));
    let within = matches!(want.row().alike, Alike::Within(_));
    if let (Some(told), true, [(row, now)]) = (told, within, &given().collect::<Vec<_>>()[..])
        && told != *now
    {
        ask.given.insert(0, (*row, told));
    }
}

/// A question that says none of what was told for the next one, with what has a part in it.
pub(super) fn with_held(about: &About<'_>, ask: &RowAsk) -> Option<RowAsk> {
    let last = about.asked.filter(|last| last.wants.is_empty())?;
    let said = last.given.iter().any(|premise| ask.given.contains(premise));
    let supposed = last.supposed.iter().any(|fact| ask.supposed.contains(fact));
    let way = held(about, ask, 0.0).filter(|_| !said && !supposed)?;
    if let Act::Query(Query::Row(ask)) = way.act { Some(ask) } else { None }
}

/// The question with those of the premises given before that have a part in it.
fn held(about: &About<'_>, ask: &RowAsk, cost: f32) -> Option<Way> {
    let mut all = leaning(about, ask.clone())?;
    let job = about.job.with_all(&all.supposed).ok()?;
    let want = *all.wants.first()?;
    // A count the answer lays into the run has a part where the figure moves with it.
    let (laid, rest) = settled(job.clone(), &all);
    let given = Given::of(rest.given.iter().copied());
    let solved_all = provide::ask(want, &given, &laid).ok()?;
    let moves = provide::ask(want, &given, &job).map_or(true, |s| s.fig.value() != solved_all.fig.value());
    let said = |row: RowId| ask.given.iter().any(|(r, _)| *r == row);
    let counts = |row: RowId| moves && rest.given.iter().all(|(r, _)| *r != row);
    all.given.retain(|(row, _)| said(*row) || solved_all.used.contains(row) || counts(*row));
    let leans = all.given.len() > ask.given.len() || all.supposed.len() > ask.supposed.len();
    solved(about, all, cost).filter(|w| leans && !w.lacks)
}

/// Where a premise has no part in the row wanted, what stands beside it may be what was meant: "how many in all" of four bays.
fn fuller(about: &About<'_>, ask: &RowAsk, way: Way, cost: f32) -> Way {
    let [want] = ask.wants[..] else { return way };
    if way.unused == 0 || way.lacks {
        return way;
    }
    let beside = |row: &RowId| RowAsk { wants: vec![*row, want], ..ask.clone() };
    let ways = want.row().beside.iter().filter_map(|row| solved(about, beside(row), cost));
    ways.filter(|w| !w.lacks && w.unused < way.unused).min_by_key(|w| w.unused).unwrap_or(way)
}

/// The question with what the last one gave, where this one does not say it anew.
fn leaning(about: &About<'_>, ask: RowAsk) -> Option<RowAsk> {
    let last = about.asked?;
    let new = |row: &RowId| ask.given.iter().all(|(r, _)| r != row) && !ask.wants.contains(row);
    let before: Vec<(RowId, Value)> = last.given.iter().filter(|(row, _)| new(row)).copied().collect();
    let supposed = last.supposed.iter().chain(&ask.supposed).cloned().collect();
    (!before.is_empty() || !last.supposed.is_empty()).then(|| RowAsk {
        given: before.into_iter().chain(ask.given).collect(),
        supposed,
        ..ask
    })
}

/// A row by what is given; where that lacks something, by the run with what is given laid into it, as the answer takes it. With it the
/// premises it is worked from, and whether some were laid.
fn worked(want: RowId, ask: &RowAsk, given: Given, job: Job) -> (Given, Result<Solved, Lacks>, bool) {
    let plain = provide::ask(want, &given, &job);
    let (laid, rest) = settled(job, ask);
    // Two figures that differ are an answer too.
    if let (Err(_), Some([left, _])) = (&plain, of_both(&laid, &rest)) {
        return (Given::of(rest.given.iter().copied()), Ok(Solved::plain(left)), true);
    }
    if plain.is_ok() || rest.given.len() == ask.given.len() {
        return (given, plain, false);
    }
    let given = Given::of(rest.given.iter().copied());
    let worked = provide::ask(want, &given, &laid);
    (given, worked, true)
}

/// True for a figure that is worked out from told figures alone, one at least.
fn rests_on_what_was_told(fig: &Fig) -> bool {
    fn told(fig: &Fig) -> bool {
        match fig.why() {
            Why::Told(_) => true,
            Why::Formula(_, from) => !from.is_empty() && from.iter().all(|(_, input)| told(input)),
            _ => false,
        }
    }
    fn any(fig: &Fig) -> bool {
        match fig.why() {
            Why::Formula(_, from) => from.iter().any(|(_, input)| any(input)),
            _ => fig.as_q() > num_rational::Ratio::from_integer(0),
        }
    }
    matches!(fig.why(), Why::Formula(..)) && told(fig) && any(fig)
}

/// What the question comes to.
fn solved(about: &About<'_>, mut ask: RowAsk, cost: f32) -> Option<Way> {
    let given = Given::of(ask.given.iter().copied());
    // What is given is not asked, but as it becomes when something else is said anew, or as it comes out of the rest: "28 3/4 now, and with
    // 2 below for 3?", "there are 9 in it, what does it take?".
    let asks_itself = ask.mood == Mood::Figure && ask.wants.iter().any(|w| given.get(*w).is_some());
    let job = about.job.with_all(&ask.supposed).ok()?;
    let want = *ask.wants.first()?;
    let judged = ask.mood.judges().then(|| given.get(want)).flatten().map(|f| f.value());
    let (mut by_default, mut unused, mut idle_price, mut whole) = (false, 0, false, Vec::new());
    let (given, worked, laid) = worked(want, &ask, given, job);
    let (fig, more) = match (judged, worked) {
        (Some(value), _) => (Some(value), 0.5 * UNUSED * (given.rows().count() as f32 - 1.0)),
        (None, Ok(solved)) => {
            let odd = if want.holds(solved.fig.value()) { 0.0 } else { LACKING };
            let idle = solved.used.is_empty() && !laid;
            // The rule itself has a word on the deck's height where that is told.
            let by_rule = want == RowId::Drop && about.job.told(RowId::Grade).is_some();
            let told = about.job.told(want).is_some() || !by_rule && rests_on_what_was_told(&solved.fig);
            by_default = solved.defaults.contains(&want) || idle && !told;
            if asks_itself && solved.used.iter().all(|row| *row == want) && !solved.whole.contains(&want) {
                return None;
            }
            // How long the posts were told says nothing of how long they are on another mount.
            let stood = || about.job.told(want).is_some_and(|told| told.value() == solved.fig.value());
            let anew = || solved.used.iter().any(|row| *row != want);
            if ask.mood == Mood::Figure && !ask.supposed.is_empty() && !anew() && stood() {
                return None;
            }
            let used = |row: RowId| solved.used.contains(&row);
            let said_by = |row: RowId| OF_ONE_SIZE.iter().any(|(a, b)| *a == row && used(*b) || *b == row && used(*a));
            ask.given.retain(|(row, _)| used(*row) || !said_by(*row));
            whole = solved.whole.clone();
            idle_price = solved.unused(&given).iter().any(|row| row.row().kind == Kind::Money);
            unused = solved.unused(&given).into_iter().filter(|row| !said_by(*row)).count();
            (Some(solved.fig.value()), unused as f32 * UNUSED + solved.defaults.len() as f32 * DEFAULT + odd)
        }
        (None, Err(_)) => (None, LACKING),
    };
    Some(Way {
        cost: cost + more,
        act: Act::Query(Query::Row(ask)),
        fig,
        unbound: 0,
        doubtful: false,
        lacks: fig.is_none(),
        by_default,
        unused,
        idle_price,
        whole,
    })
}
