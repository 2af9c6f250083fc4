//! A reading resolved against the conversation: bare numbers get their unit, "it" its
//! run, a gate its end. What can be meant in more than one way branches, and asks.

mod alone;
mod asks;
mod bumps;
mod changes;
mod checks;
mod choices;
mod decks;
mod drops;
mod feet;
mod flight;
mod gates;
mod hung;
mod law;
mod runs;
mod same;
mod settings;
mod stair_sides;
mod stairs;
mod strength;
mod takeoff;
mod walks;
mod ways;
mod why;

pub(super) use walks::house_sides;

use super::state::{Focus, Lack, Session};
use crate::grammar::ask::{Given, TakeoffAsk};
use crate::grammar::draft::{Clause, Reading};
use crate::grammar::sense::Side;
use crate::grammar::stair_draft::StairSaid;
use crate::grammar::{Act, Query, Talk, canon};
use crate::job::{Fact, Impossible, Job, PostRole, RunId, RunPatch, Setting, SlotId};
use checks::{WHERE_IT_TURNS, at_odds, half_told, one_length, one_question, one_thing, tells_whole_run};
use ways::{Ways, first_problem, grow};

/// The most things a line is taken to mean before it is simply not clear.
pub(super) const MOST_CHOICES: usize = 4;

/// What is said of a measure that is no length, where the words of it cannot be pointed at.
pub(super) const NO_LENGTH: &str = "How much? I can't take that as a length.";

/// What a reading does.
#[derive(Clone, Debug)]
pub(super) struct Resolved {
    /// The act; more than one are choices to ask about.
    pub acts: Vec<Act>,
    /// Ask even about one.
    pub ask: bool,
    /// What is spoken of after it.
    pub focus: Focus,
    /// A question told in the same breath as facts.
    pub then: Option<Query>,
}

/// Why a reading cannot be taken as it is.
#[derive(Clone, Debug)]
pub(super) enum Problem {
    /// A fact that cannot be.
    Impossible(Impossible),
    /// Something must be asked; choices may be empty.
    Ask(&'static str, Vec<Act>),
    /// One measure is lacking: the next line may give it.
    Lacks(&'static str, Lack),
    /// A measure that is no length stands where a length is wanted: "out 38s".
    NoLength,
    /// It cannot be taken.
    Refuse(&'static str),
    /// The reading does not fit the talk; said only where nothing else reads.
    Unfit(&'static str),
}

/// One way a line may be meant, so far.
#[derive(Clone, Debug)]
pub(super) struct Branch {
    pub job: Job,
    pub facts: Vec<Fact>,
    pub focus: Focus,
    pub ask: bool,
}

impl Branch {
    /// The branch with one fact more.
    pub fn with(mut self, fact: Fact) -> Result<Branch, Problem> {
        self.job = self.job.with(&fact).map_err(Problem::Impossible)?;
        self.facts.push(fact);
        Ok(self)
    }
}

impl Branch {
    /// The branch with a fact that says all there is to say of a run's stairs or gate: it
    /// stands in place of what the same line said of them before.
    pub fn instead(mut self, id: RunId, patch: RunPatch) -> Result<Branch, Problem> {
        for fact in &mut self.facts {
            let Fact::Run(run, before) = fact else { continue };
            if *run == id {
                before.stairs = before.stairs.take().filter(|_| patch.stairs.is_none());
                before.gate = before.gate.take().filter(|_| patch.gate.is_none());
            }
        }
        let empty = |f: &Fact| matches!(f, Fact::Run(run, p) if *run == id && p.is_empty());
        let known = self.job.run(id).is_some();
        self.facts.retain(|f| !(known && empty(f)));
        self.with(Fact::Run(id, patch))
    }
}

/// The branches a clause makes of one.
type Branches = Result<Vec<Branch>, Problem>;

/// Resolves a reading, or says why it cannot be taken.
pub(super) fn resolve(session: &Session, reading: &Reading) -> Result<Resolved, Problem> {
    let standing = !session.job.runs.is_empty() || session.talk.focus.slot.is_some();
    let resolver = Resolver {
        session,
        corrects: reading.corrects || reading.supposes || reading.trails && standing && !tells_whole_run(reading),
        infill: of_infill(session, reading),
        sides: reading.clauses.contains(&Clause::Shape) || walks::goes_round(reading),
        runs: reading.clauses.iter().filter(|c| matches!(c, Clause::Run(_))).count(),
        ends: reading.clauses.iter().any(|c| matches!(c, Clause::Run(r) if r.from.is_some() || r.to.is_some())),
        asks: reading.clauses.iter().any(is_question),
        placed: reading.clauses.iter().any(|c| matches!(c, Clause::Stair(StairSaid::Place(..)))),
        walks: reading.clauses.iter().filter(|c| matches!(c, Clause::Walk { .. })).count(),
        framing: reading
            .clauses
            .iter()
            .any(|c| matches!(c, Clause::Joists(_) | Clause::Blocking(_) | Clause::Alone { .. })),
        rails: decks::rails(reading),
        strips: reading.clauses.iter().any(|c| matches!(c, Clause::Strip { .. })),
    };
    one_thing(reading)?;
    if resolver.sides && one_length(reading) {
        return Err(Problem::Ask(WHERE_IT_TURNS, Vec::new()));
    }
    let start = Branch { job: session.job.clone(), facts: Vec::new(), focus: session.talk.focus.clone(), ask: false };
    let mut start = resolver.supposed(start, reading)?;
    // "no 3 inches under", with nothing told to say no to: a denial as like as a repair.
    let untold = |c: &Clause| {
        let deck = matches!(c, Clause::Deck(..) | Clause::DeckBy(..) | Clause::DeckMore(..));
        deck && session.job.deck_along.is_none() && session.job.deck_out.is_none()
    };
    let nothing_told = session.job == Job::default() || reading.clauses.iter().any(untold);
    let doubted = reading.denies && nothing_told;
    if let Some(alone) = resolver.alone(reading)? {
        return Ok(Resolved { ask: alone.ask || doubted, ..alone });
    }
    start.ask |= doubted;
    let mut ways = Ways::one(start);
    let mut then = None;
    // A size for all posts wipes the sizes by role, so it goes first: "corners 6x6, the rest 4x4".
    let by_role = reading.clauses.iter().any(|c| matches!(c, Clause::Post(role, _) if *role != PostRole::All));
    let for_all =
        |c: &&Clause| by_role && matches!(c, Clause::Post(PostRole::All, _) | Clause::Lumber { not: None, .. });
    let (first, rest): (Vec<&Clause>, Vec<&Clause>) = reading.clauses.iter().partition(for_all);
    let mut swapped = false;
    for clause in first.into_iter().chain(rest) {
        match clause {
            // "I said that backwards, swap them": one swap, said twice.
            Clause::Swap if swapped => {}
            Clause::Ask(_) if matches!(then, Some(Query::Notch(_))) => {
                return Err(Problem::Ask("One question at a time, please.", Vec::new()));
            }
            Clause::Ask(ask) => then = Some(resolver.asked(*ask, &ways.first().job)?),
            // Of a foot and of something else in one line: one answer would go unsaid.
            Clause::Query(query) if two_questions(then.as_ref(), query) => {
                return Err(Problem::Ask("One question at a time, please.", Vec::new()));
            }
            Clause::Query(query) => then = Some(query.clone()),
            Clause::Takeoff(draft) => match resolver.takeoff(draft, &ways.first().job)?.as_slice() {
                [ask] => then = Some(Query::Takeoff(*ask)),
                _ => return Err(Problem::Ask("One thing at a time: tell me the one, then ask the other.", Vec::new())),
            },
            Clause::Flight(draft) => then = Some(resolver.asked_flight(draft, &ways.first().job)?),
            Clause::Talk(Talk::Hello | Talk::Thanks) => {}
            clause => {
                swapped |= matches!(clause, Clause::Swap);
                ways = ways.grow(|b| resolver.clause(b, clause))?;
            }
        }
    }
    one_question(&ways.first().facts, then.as_ref())?;
    resolver.finish(ways, then, reading)
}

/// True for two questions, one of them of a foot.
fn two_questions(then: Option<&Query>, query: &Query) -> bool {
    let of_foot = |q: &Query| matches!(q, Query::Notch(_));
    then.is_some_and(|first| first != query && (of_foot(first) || of_foot(query)))
}

fn is_question(c: &Clause) -> bool {
    use Clause::{Ask, Flight, Query, Takeoff};
    matches!(c, Ask(_) | Query(_) | Flight(_) | Takeoff(_))
}

/// The act as its plain phrase says it: a length worked out with a root in it ("clip the corner 4 ft") is told to
/// the sixteenth, so that what is chosen is what is read.
fn as_written(act: Act) -> Act {
    canon::read(&canon::write(&act)).unwrap_or(act)
}

/// Facts of the same run told in one line, as one fact.
fn joined(facts: Vec<Fact>) -> Vec<Fact> {
    let mut out: Vec<Fact> = Vec::new();
    for fact in facts {
        match (out.last_mut(), fact) {
            (Some(Fact::Run(id, patch)), Fact::Run(also, more)) if *id == also => patch.take(more),
            (_, fact) => out.push(fact),
        }
    }
    out
}

pub(super) struct Resolver<'a> {
    pub session: &'a Session,
    pub corrects: bool,
    /// Balusters or gaps are what is spoken of.
    pub infill: bool,
    /// The runs told are the sides of an outline: "wraparound: ...".
    pub sides: bool,
    /// How many runs the line tells.
    pub runs: usize,
    /// An end of a run is told in the same line.
    pub ends: bool,
    /// Something is asked in the same line.
    pub asks: bool,
    /// Stairs are placed in the same line.
    pub placed: bool,
    /// How many sides of a walk the line tells.
    pub walks: usize,
    /// The framing, or a deck by itself, is told in the same line.
    pub framing: bool,
    /// The sides of a strip told to have a guard: one, by name or not, or both.
    pub rails: Option<Option<Side>>,
    /// A strip of deck is told in the same line.
    pub strips: bool,
}

fn of_infill(session: &Session, reading: &Reading) -> bool {
    let infill = |s: SlotId| matches!(s, SlotId::BalusterWidth | SlotId::GapMax | SlotId::GapUnder);
    let here = reading.clauses.iter().any(|c| matches!(c, Clause::Slot(s, _) if infill(*s)));
    here || session.talk.focus.slot.is_some_and(infill)
}

impl Resolver<'_> {
    /// What a what-if starts from: what was supposed before, if it builds on that.
    fn supposed(&self, mut start: Branch, reading: &Reading) -> Result<Branch, Problem> {
        if reading.supposes {
            for fact in &self.session.talk.supposed {
                start = start.with(fact.clone())?;
            }
        }
        Ok(start)
    }

    fn finish(&self, ways: Ways, then: Option<Query>, reading: &Reading) -> Result<Resolved, Problem> {
        let ask = ways.len() > 1 || ways.iter().any(|b| b.ask);
        let first = ways.first();
        let focus = first.focus.clone();
        if first.facts.is_empty() {
            let Some(query) = then else { return Err(Problem::Ask("Nothing in that changes the job.", Vec::new())) };
            return Ok(Resolved { acts: vec![Act::Query(query)], ask: false, focus, then: None });
        }
        // The read-back of what is told has no room for figures a question gives of its own.
        let of_gaps = |q: &Query| matches!(q, Query::Takeoff(TakeoffAsk::Gap(_) | TakeoffAsk::GapUnder(_)));
        if then.as_ref().is_some_and(of_gaps)
            || matches!(&then, Some(Query::Flight(ask)) if ask.given != Given::default())
        {
            return Err(Problem::Ask("Tell me that in one line and ask in the next, please.", Vec::new()));
        }
        // "how many posts at 5 foot max": a limit said inside a question is a what-if.
        let in_question = then.is_some()
            && first
                .facts
                .iter()
                .all(|f| matches!(f, Fact::Set(Setting::ClearMax(_) | Setting::CentreMax(_) | Setting::Post(..))));
        if ways.iter().all(|b| at_odds(&b.facts)) {
            return Err(Problem::Ask("You give one thing two figures there. Which one holds?", Vec::new()));
        }
        let branches: Vec<Branch> = ways.into_vec().into_iter().filter(|b| !at_odds(&b.facts)).collect();
        let ask = ask || branches.iter().any(|b| half_told(&self.session.job, &b.facts));
        let supposes = reading.supposes || in_question;
        let act = |b: Branch| {
            let facts = joined(b.facts);
            as_written(if supposes { Act::Suppose(facts) } else { Act::Tell(facts) })
        };
        let mut acts: Vec<Act> = Vec::new();
        for branch in branches {
            let act = act(branch);
            if !acts.contains(&act) {
                acts.push(act);
            }
        }
        if acts.len() > MOST_CHOICES {
            return Err(Problem::Ask("That can be meant in too many ways: say it one piece at a time.", Vec::new()));
        }
        Ok(Resolved { acts, ask, focus, then })
    }

    fn clause(&self, branch: Branch, clause: &Clause) -> Branches {
        match clause {
            Clause::Run(draft) => self.run(branch, draft),
            Clause::Drop(drop) => self.drop(branch, *drop).map(|b| vec![b]),
            Clause::Swap => self.swap(branch).map(|b| vec![b]),
            Clause::Same { what, like } => self.same(branch, *what, *like),
            Clause::Spot(spot) => self.spot(branch, *spot),
            Clause::AddPost => Err(Problem::Ask(
                "Where does the post go? Say its mark (\"post at 7 ft from the house\"), or a bay count (\"3 bays\") and the posts are spread evenly.",
                Vec::new(),
            )),
            Clause::Note(_)
            | Clause::Fine
            | Clause::Talk(_)
            | Clause::Ask(_)
            | Clause::Query(_)
            | Clause::Flight(_) => Ok(vec![branch]),
            Clause::Sum(_) => Err(Problem::Ask("A sum on its own line, please: it never changes the job.", Vec::new())),
            Clause::Cut(_) | Clause::KeepLength(_) => Err(Problem::Ask("What is that length of?", Vec::new())),
            Clause::Shape => Ok(vec![branch]),
            Clause::Why(_) => Err(Problem::Ask("A question why on its own line, please.", Vec::new())),
            Clause::Strength(_) | Clause::StrengthMore(_) => {
                Err(Problem::Ask("A question about strength on its own line, please.", Vec::new()))
            }
            Clause::Order(draft) => self.order(branch, draft),
            Clause::Orders(orders) => {
                let told = orders.iter().try_fold(branch, |b, order| b.with(Fact::Order(order.clone())));
                told.map(|b| vec![b])
            }
            Clause::Takeoff(_) => Ok(vec![branch]),
            Clause::NotYet(what) => Err(Problem::Refuse(what)),
            Clause::RailIs(m) => self.rail_is(branch, m),
            Clause::Most(m) => self.most(branch, m),
            Clause::StairsOn { on, width, at } => self.stairs_on(branch, *on, width.as_ref(), at.as_ref()),
            Clause::Stair(said) => self.stair_said(branch, said),
            Clause::MoreStairs { each, more } => self.more_stairs(branch, each, *more),
            Clause::Hung(said) => self.hung(branch, said),
            Clause::StairsAlong(at) => self.stairs_along(branch, at),
            Clause::Walk { way, length, on } => self.walk(branch, *way, length.as_ref(), *on),
            Clause::DeckMore(along, out) => self.deck_more(branch, along.as_ref(), out.as_ref()),
            Clause::Whole(fact) => self.whole(branch, *fact),
            Clause::NoStairs => Ok(vec![branch.with(Fact::NoStairs)?]),
            Clause::LineOutside(m) => self.line_outside(branch, m),
            Clause::Joists(draft) => self.joists(branch, draft),
            Clause::DeckBy(sides, lies) => self.deck_by(branch, sides, lies),
            Clause::Alone { along, out, free } => self.alone_deck(branch, along, out.as_ref(), *free),
            Clause::Strip { wide, long } => self.strip(branch, wide, long.as_ref()),
            Clause::Law(draft) => law::law(branch, draft),
            Clause::RailOn(_) => self.rail_on(branch),
            Clause::RailRound(sides) => self.rail_round(branch, *sides),
            Clause::Bump(draft) => self.bump(branch, draft),
            Clause::Clip(draft) => self.clip(branch, draft),
            Clause::Recess(m) => self.recess(branch, m),
            Clause::Either(slot, a, b) => self.either(branch, *slot, a, b),
            Clause::Lumber { size, not } => self.lumber(branch, *size, *not),
            Clause::Wide(m) => self.wide(branch, m),
            Clause::Move => Err(self.moved(&branch)),
            Clause::Past(m, end) => Err(self.past(&branch, m, *end)),
            Clause::HowMuch => Err(Problem::Ask("By how much, or to what length?", Vec::new())),
            Clause::TwoGrounds(a, b) => Err(law::two_grounds(a, b)),
            Clause::Bent => Err(Problem::Ask(WHERE_IT_TURNS, Vec::new())),
            Clause::PostsCounted(n) => Err(self.posts_counted(&branch, *n)),
            Clause::BaysMore { more, by, on } => self.bays_more(branch, *more, *by, *on),
            Clause::GapOf(m) => self.gap_of(branch, m),
            Clause::BayIs => Err(Problem::Ask(
                "A bay is what its posts leave: say where one stands (\"post 3 at 8 ft from the house\"), or how many bays.",
                Vec::new(),
            )),
            Clause::StepsCounted => Err(Problem::Ask(
                "Is that so many steps, or so many feet wide? Tell the stairs by width and place, \"stairs 4 ft wide in the middle of the front\"; then the flight by its risers, \"4 risers 7 1/2 on 10\".",
                Vec::new(),
            )),
            Clause::Done(stage, done) => Ok(vec![branch.with(Fact::Done(*stage, *done))?]),
            Clause::Choice(choice) => self.choice(branch, choice),
            Clause::LostX(lumber) => self.lost_x(branch, *lumber),
            Clause::HeightOverGap(h, g) => self.height_over_gap(branch, h, g),
            setting => self.setting(branch, setting),
        }
    }
}
