//! A reading resolved against the conversation: bare numbers get their unit, "it" its
//! run, a gate its end. What can be meant in more than one way branches, and asks.

mod gates;
mod same;
mod settings;
mod stair_sides;
mod walks;

use super::lengths::{Fits, fits, told};
use super::state::{Focus, Lack, Session};
use super::targets::{self, Target, target};
use crate::grammar::draft::{AskDraft, Clause, DropDraft, Reading, RunDraft, SpotDraft, Which};
use crate::grammar::sense::{Foreign, Side};
use crate::grammar::{Act, Query, Talk};
use crate::job::{Basis, Fact, Flank, Impossible, Job, PostRole, RunId, RunPatch, Setting, SlotId};
use crate::measure::{Length, Meaning, Measure, Said};

/// The most things a line is taken to mean before it is simply not clear.
pub(super) const MOST_CHOICES: usize = 4;

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
    /// It cannot be taken.
    Refuse(&'static str),
    /// Not this trade's, or nobody's here to promise.
    NotMine(Foreign),
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

/// The branches a clause makes of one.
type Branches = Result<Vec<Branch>, Problem>;

/// Resolves a reading, or says why it cannot be taken.
pub(super) fn resolve(session: &Session, reading: &Reading) -> Result<Resolved, Problem> {
    let resolver =
        Resolver { session, corrects: reading.corrects || reading.supposes, infill: of_infill(session, reading), sides: reading.clauses.contains(&Clause::Shape) };
    if let Some(alone) = resolver.alone(reading)? {
        return Ok(alone);
    }
    let start = Branch { job: session.job.clone(), facts: Vec::new(), focus: session.talk.focus.clone(), ask: false };
    let start = resolver.supposed(start, reading)?;
    let mut branches = vec![start];
    let mut then = None;
    // A size for all posts wipes the sizes by role, so it goes first: "corners 6x6, the rest 4x4".
    let by_role = reading.clauses.iter().any(|c| matches!(c, Clause::Post(role, _) if *role != PostRole::All));
    let for_all = |c: &&Clause| by_role && matches!(c, Clause::Post(PostRole::All, _));
    let (first, rest): (Vec<&Clause>, Vec<&Clause>) = reading.clauses.iter().partition(for_all);
    for clause in first.into_iter().chain(rest) {
        match clause {
            Clause::Ask(ask) => then = Some(resolver.asked(*ask, &branches[0].job)?),
            Clause::Query(query) => then = Some(query.clone()),
            Clause::Talk(Talk::Hello) => {}
            clause => branches = grow(branches, |b| resolver.clause(b, clause))?,
        }
    }
    resolver.finish(branches, then, reading)
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

/// Grows every branch; those that cannot be are cut, unless none is left.
fn grow(branches: Vec<Branch>, step: impl Fn(Branch) -> Branches) -> Branches {
    let mut grown = Vec::new();
    let mut problem = None;
    for branch in branches {
        match step(branch) {
            Ok(more) => grown.extend(more),
            Err(p) => problem = problem.or(Some(p)),
        }
    }
    match problem {
        Some(p) if grown.is_empty() => Err(p),
        _ if grown.len() > MOST_CHOICES * 2 => {
            Err(Problem::Ask("That can be meant in too many ways: say it one piece at a time.", Vec::new()))
        }
        _ => Ok(grown),
    }
}

pub(super) struct Resolver<'a> {
    pub session: &'a Session,
    pub corrects: bool,
    /// Balusters or gaps are what is spoken of.
    pub infill: bool,
    /// The runs told are the sides of an outline: "wraparound: ...".
    pub sides: bool,
}

fn of_infill(session: &Session, reading: &Reading) -> bool {
    let infill = |s: SlotId| matches!(s, SlotId::BalusterWidth | SlotId::GapMax | SlotId::GapUnder);
    let here = reading.clauses.iter().any(|c| matches!(c, Clause::Slot(s, _) if infill(*s)));
    here || session.talk.focus.slot.is_some_and(infill)
}

impl Resolver<'_> {
    /// Lines that are one thing and no fact: sums, measures, conversation.
    fn alone(&self, reading: &Reading) -> Result<Option<Resolved>, Problem> {
        let answered = |act| {
            let focus = self.session.talk.focus.clone();
            Ok(Some(Resolved { acts: vec![act], ask: false, focus, then: None }))
        };
        let clauses: Vec<&Clause> = reading.clauses.iter().filter(|c| !matches!(c, Clause::Fine)).collect();
        match clauses[..] {
            [] => Err(Problem::Ask(
                if reading.corrects { "Change what, to what?" } else { "Nothing in that I can use." },
                Vec::new(),
            )),
            [Clause::Sum(sum)] => answered(Act::Sum(sum.clone())),
            [Clause::Query(query)] => answered(Act::Query(query.clone())),
            [Clause::Talk(talk)] => answered(Act::Talk(*talk)),
            [Clause::Ask(ask)] => answered(Act::Query(self.asked(*ask, &self.session.job)?)),
            [Clause::Alone(m) | Clause::Cut(m)] => self.measured(m).map(Some),
            [Clause::Run(draft)] if self.only_a_measure(draft, reading) => self.measure_alone(draft).map(Some),
            [Clause::Shape] => Err(Problem::Ask("Walk me round it, starting at the house on the left: so far out, so far across, so far back, then home.", Vec::new())),
            [Clause::KeepLength(m)] => self.keep(m).map(Some),
            _ => Ok(None),
        }
    }

    /// A length and perhaps its basis, that fills no slot of any run.
    fn only_a_measure(&self, draft: &RunDraft, reading: &Reading) -> bool {
        let bare =
            RunDraft { length: None, basis: None, it: false, words: 0..0, ..draft.clone() } == RunDraft::default();
        let focus = targets::focus(self.session, &self.session.job);
        let fills = focus.is_some_and(|r| r.length.is_none());
        let changes = (reading.corrects || reading.supposes || draft.it)
            && (focus.is_some() || self.session.talk.focus.slot.is_some());
        bare && draft.length.is_some() && !fills && !changes
    }

    fn measure_alone(&self, draft: &RunDraft) -> Result<Resolved, Problem> {
        let Some(m) = &draft.length else { return Err(Problem::Refuse("There is no length in that.")) };
        if !self.corrects {
            return self.measured(m);
        }
        let new = RunDraft { run_word: true, ..draft.clone() };
        let start = Branch { job: self.session.job.clone(), facts: Vec::new(), focus: Focus::default(), ask: true };
        let acts = self.run(start, &new)?.into_iter().map(|b| Act::Tell(b.facts)).collect();
        Err(Problem::Ask("No run has been told yet, so there is nothing to change. A new run?", acts))
    }

    /// A measure said alone: read back.
    fn measured(&self, m: &Measure) -> Result<Resolved, Problem> {
        if let Meaning::Lumber(l) = m.meaning {
            return Ok(self.says(vec![Act::Query(Query::Actual(l))], false));
        }
        let fits = match &m.meaning {
            Meaning::Bare(n) if !n.fraction && n.value <= 60.into() => {
                let lengths =
                    [Length::from_q(n.value * num_rational::Ratio::from_integer(12)), Length::from_q(n.value)];
                Fits { lengths: lengths.into_iter().flatten().map(|l| (l, Said::Feet)).collect(), doubtful: true }
            }
            // Said alone a length has no slot to be absurd in.
            Meaning::Length(l, said) => Fits { lengths: vec![(*l, *said)], doubtful: false },
            Meaning::Bare(n) => Fits {
                lengths: Length::from_q(n.value).map(|l| (l, Said::Inches)).into_iter().collect(),
                doubtful: false,
            },
            _ => fits(m, SlotId::RunLength, None),
        };
        let acts = fits
            .lengths
            .iter()
            .map(|(length, _)| Act::Query(Query::Measure { length: *length, shade: m.shade, about: m.about }));
        let acts: Vec<Act> = acts.collect();
        if acts.is_empty() {
            return Err(Problem::Ask("What is that a measure of?", Vec::new()));
        }
        Ok(self.says(acts, fits.doubtful))
    }

    fn says(&self, acts: Vec<Act>, ask: bool) -> Resolved {
        Resolved { acts, ask, focus: self.session.talk.focus.clone(), then: None }
    }

    /// "keep the 14": nothing changes when that is what stands.
    fn keep(&self, m: &Measure) -> Result<Resolved, Problem> {
        let stands = targets::focus(self.session, &self.session.job).and_then(|r| r.length);
        let said = fits(m, SlotId::RunLength, self.session.talk.focus.said);
        if said.lengths.iter().any(|(l, _)| stands.is_some_and(|t| t.length == *l)) {
            return Ok(self.says(vec![Act::Talk(Talk::Leave)], false));
        }
        Err(Problem::Ask("That is not what stands. Say the run and its length.", Vec::new()))
    }

    /// What a what-if starts from: what was supposed before, if it builds on that.
    fn supposed(&self, mut start: Branch, reading: &Reading) -> Result<Branch, Problem> {
        if reading.supposes {
            for fact in &self.session.talk.supposed {
                start = start.with(fact.clone())?;
            }
        }
        Ok(start)
    }

    fn asked(&self, ask: AskDraft, job: &Job) -> Result<Query, Problem> {
        let run = |which: Option<Which>| match which {
            None => Ok(None),
            Some(Which::Number(n)) => match job.run(RunId(n)) {
                Some(run) => Ok(Some(run.id)),
                None => Err(Problem::Ask("There is no run of that number. Which run?", Vec::new())),
            },
            Some(Which::Side(s)) => match targets::named(job, s) {
                Some(run) => Ok(Some(run.id)),
                None if s == Side::Left || s == Side::Right => Ok(targets::focus(self.session, job).map(|r| r.id)),
                None => Err(Problem::Ask("No run goes by that name. Which run?", Vec::new())),
            },
        };
        Ok(match ask {
            AskDraft::Layout(s) => Query::Layout(run(s)?),
            AskDraft::Posts(s) => Query::Posts(run(s)?),
            AskDraft::Bays(s) => Query::Bays(run(s)?),
            AskDraft::Length(Some(Which::Side(s))) if self.flank(job, s).is_some() => match self.flank(job, s) {
                Some((id, flank)) => Query::Flank(id, flank),
                None => return Err(Problem::Refuse("There are no stairs in that run.")),
            },
            AskDraft::Length(s) => match run(s)?.or_else(|| targets::focus(self.session, job).map(|r| r.id)) {
                Some(id) => Query::RunLength(id),
                None => return Err(Problem::Ask("No run has been told yet. How long is what?", Vec::new())),
            },
        })
    }

    /// "what's left on the right": of the stairs in the run spoken of, unless a run goes
    /// by that name.
    fn flank(&self, job: &Job, side: Side) -> Option<(RunId, Flank)> {
        let run =
            targets::focus(self.session, job).filter(|r| r.stairs.is_some() && targets::named(job, side).is_none())?;
        match side {
            Side::Left => Some((run.id, Flank::Left)),
            Side::Right => Some((run.id, Flank::Right)),
            _ => None,
        }
    }

    fn finish(&self, branches: Vec<Branch>, then: Option<Query>, reading: &Reading) -> Result<Resolved, Problem> {
        let ask = branches.len() > 1 || branches.iter().any(|b| b.ask);
        let focus = branches[0].focus.clone();
        if branches[0].facts.is_empty() {
            let Some(query) = then else { return Err(Problem::Ask("Nothing in that changes the job.", Vec::new())) };
            return Ok(Resolved { acts: vec![Act::Query(query)], ask: false, focus, then: None });
        }
        // "how many posts at 5 foot max": a limit said inside a question is a what-if.
        let in_question = then.is_some()
            && branches[0].facts.iter().all(|f| matches!(f, Fact::Set(Setting::ClearMax(_) | Setting::CentreMax(_))));
        let supposes = reading.supposes || in_question;
        let act = |b: Branch| {
            let facts = joined(b.facts);
            if supposes { Act::Suppose(facts) } else { Act::Tell(facts) }
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
                "Where does the post go? Say a bay count (\"3 bays\") and the posts are spread evenly; a post at a spot of your own is not something I place yet.",
                Vec::new(),
            )),
            Clause::Note(_) | Clause::Fine | Clause::Talk(_) | Clause::Ask(_) | Clause::Query(_) => Ok(vec![branch]),
            Clause::Sum(_) => Err(Problem::Ask("A sum on its own line, please: it never changes the job.", Vec::new())),
            Clause::Alone(_) | Clause::Cut(_) | Clause::KeepLength(_) => {
                Err(Problem::Ask("What is that length of?", Vec::new()))
            }
            Clause::Shape => Ok(vec![branch]),
            Clause::NotMine(foreign) => Err(Problem::NotMine(*foreign)),
            Clause::NotYet(what) => Err(Problem::Refuse(what)),
            Clause::RailIs(m) => self.rail_is(branch, m),
            Clause::Most(m) => self.most(branch, m),
            Clause::StairsOn { on, width, at } => self.stairs_on(branch, *on, width.as_ref(), at.as_ref()),
            Clause::StairsAlong(at) => self.stairs_along(branch, at),
            Clause::Walk { way, length, on } => self.walk(branch, *way, length.as_ref(), *on),
            Clause::DeckMore(along, out) => self.deck_more(branch, along.as_ref(), out.as_ref()),
            Clause::LostX(lumber) => self.lost_x(branch, *lumber),
            Clause::HeightOverGap(h, g) => self.height_over_gap(branch, h, g),
            setting => self.setting(branch, setting),
        }
    }

    // --- runs ------------------------------------------------------------------------------------

    fn run(&self, branch: Branch, draft: &RunDraft) -> Branches {
        let only_stairs =
            draft.stairs.is_some() && RunDraft { stairs: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        if only_stairs && let Some(branches) = self.stairs_alone(&branch, draft)? {
            return Ok(branches);
        }
        if let Some(side) = self.other_side(&branch.job, draft) {
            return self.spot(branch, SpotDraft::Side(side));
        }
        if self.corrects
            && let Some(branches) = self.setting_again(&branch, draft)?
        {
            return Ok(branches);
        }
        let (id, new) = match target(self.session, &branch.job, draft, self.corrects) {
            Target::Old(id) => (id, false),
            Target::New(id) => (id, true),
            Target::Missing => {
                return Err(Problem::Ask(
                    "No run has been told that this can change. Which run, how long, between what?",
                    Vec::new(),
                ));
            }
            Target::Which => return Err(Problem::Ask("Which run? Say its number or its name.", Vec::new())),
        };
        if self.sides && draft.length.is_none() && draft.name.is_none() {
            // "house at both ends": the walk starts and ends there as it is.
            return Ok(vec![branch]);
        }
        // In an outline the ends follow from the walk.
        let walked = RunDraft { from: None, to: None, ..draft.clone() };
        let draft = if self.sides { &walked } else { draft };
        let named = self.side_named(&branch.job, draft)?;
        let draft = named.as_ref().unwrap_or(draft);
        let mut branches = self.lengths(branch, id, draft, new)?;
        branches = grow(branches, |b| self.stairs(b, id, draft))?;
        grow(branches, |b| self.gate(b, id, draft))
    }

    /// Name, ends, length and bays: one branch for each length it may be.
    fn lengths(&self, mut branch: Branch, id: RunId, draft: &RunDraft, new: bool) -> Branches {
        let mut patch = RunPatch {
            name: draft.name.map(|s| s.name().to_owned()).filter(|n| branch.job.named(n).is_none()),
            from: draft.from,
            to: draft.to,
            bays: draft.bays,
            basis: draft.basis,
            turn: (self.sides || new && walks::walks_on(&branch.job, draft)).then(|| walks::next_side(&branch.job)),
            ..RunPatch::default()
        };
        if let Some(n) = self.bays_again(draft, new) {
            return Ok(vec![branch.with(Fact::Run(id, RunPatch { bays: Some(Some(n)), ..RunPatch::default() }))?]);
        }
        branch.focus =
            Focus { run: Some(id), said: branch.focus.said, deck: false, bays: draft.bays.is_some(), slot: None };
        self.check_not(&branch.job, id, draft)?;
        let Some(m) = &draft.length else {
            return if patch.is_empty() && !new {
                Ok(vec![branch])
            } else {
                Ok(vec![branch.with(Fact::Run(id, patch))?])
            };
        };
        let inherit = if new { None } else { branch.focus.said };
        let said = fits(m, SlotId::RunLength, inherit);
        if said.lengths.is_empty() {
            return Err(Problem::Ask("How long is the run? I can't take that as a length.", Vec::new()));
        }
        let stands = branch.job.run(id).and_then(|r| r.basis);
        // A side of the outline is measured along the decking's edge unless told otherwise.
        let side = patch.turn.is_some() || branch.job.run(id).is_some_and(|r| r.turn.is_some());
        patch.basis = draft.basis.or(stands).or(Some(if side { Basis::Edge } else { Basis::Overall }));
        let one = |(l, unit): &(Length, Said)| {
            let mut b = branch.clone();
            b.focus.said = Some(*unit);
            b.ask |= said.doubtful;
            b.with(Fact::Run(id, RunPatch { length: Some(told(m, *l)), ..patch.clone() }))
        };
        let mut out = Vec::new();
        let mut problem = None;
        for length in &said.lengths {
            match one(length) {
                Ok(b) => out.push(b),
                Err(p) => problem = problem.or(Some(p)),
            }
        }
        match problem {
            Some(p) if out.is_empty() => Err(p),
            _ => Ok(out),
        }
    }

    /// "I meant right": a side alone, and the run spoken of has a gate.
    fn other_side(&self, job: &Job, draft: &RunDraft) -> Option<Side> {
        let alone = RunDraft { name: None, words: 0..0, ..draft.clone() } == RunDraft::default();
        let gated = targets::focus(self.session, job).is_some_and(|r| r.gate.is_some());
        draft.name.filter(|s| self.corrects && alone && gated && matches!(s, Side::Left | Side::Right))
    }

    /// "make it four" after "3 bays": a bare whole number, and bays were spoken of last.
    fn bays_again(&self, draft: &RunDraft, new: bool) -> Option<u16> {
        let Meaning::Bare(n) = draft.length.as_ref()?.meaning else { return None };
        let counts = n.value.is_integer() && !n.fraction && n.value <= 20.into() && draft.basis.is_none();
        let speaks = !new
            && self.corrects
            && self.session.talk.focus.bays
            && !draft.run_word
            && draft.from.is_none()
            && draft.to.is_none();
        if counts && speaks { u16::try_from(n.value.to_integer()).ok() } else { None }
    }

    /// "not 12": it must be what stands, or the wrong run was meant.
    fn check_not(&self, job: &Job, id: RunId, draft: &RunDraft) -> Result<(), Problem> {
        let Some(not) = &draft.not else { return Ok(()) };
        let stands = job.run(id).and_then(|r| r.length);
        let said = fits(not, SlotId::RunLength, self.session.talk.focus.said);
        let also = fits(not, SlotId::RunLength, None);
        let matches = said.lengths.iter().chain(&also.lengths).any(|(l, _)| stands.is_some_and(|t| t.length == *l));
        if !matches {
            return Err(Problem::Ask("No run I'm speaking of has that length. Which run, and what is it?", Vec::new()));
        }
        if draft.length.is_none() {
            return Err(Problem::Ask("Not that: what is it then?", Vec::new()));
        }
        Ok(())
    }

    // --- dropping and swapping ---------------------------------------------------------------------

    fn drop(&self, branch: Branch, drop: DropDraft) -> Result<Branch, Problem> {
        let job = &branch.job;
        let focus = targets::focus(self.session, job).map(|r| r.id);
        let fact = match drop {
            DropDraft::Gate => self.drop_gate(job)?,
            DropDraft::Stairs => match job.runs.iter().find(|r| r.stairs.is_some()) {
                Some(run) => Fact::Run(run.id, RunPatch { stairs: Some(None), ..RunPatch::default() }),
                None => return Err(Problem::Refuse("There are no stairs to drop.")),
            },
            DropDraft::LinePosts => match focus {
                Some(id) => Fact::Run(id, RunPatch { bays: Some(Some(1)), ..RunPatch::default() }),
                None => return Err(Problem::Refuse("No run has been told yet, so there are no line posts to drop.")),
            },
            DropDraft::Side(side) => match targets::named(job, side) {
                Some(run) => Fact::DropRun(run.id),
                None => return Err(Problem::Refuse("No run goes by that name, so nothing was dropped.")),
            },
            DropDraft::Run(n) => Fact::DropRun(RunId(n)),
            DropDraft::It => {
                Fact::DropRun(focus.ok_or(Problem::Refuse("Nothing has been told yet, so there is nothing to drop."))?)
            }
            DropDraft::Note(n) => {
                let last = job.notes.last().map(|note| note.id);
                Fact::DropNote(n.or(last).ok_or(Problem::Refuse("There are no notes to drop."))?)
            }
        };
        branch.with(fact)
    }

    fn drop_gate(&self, job: &Job) -> Result<Fact, Problem> {
        let gone = |id| Fact::Run(id, RunPatch { gate: Some(None), ..RunPatch::default() });
        let focus = targets::focus(self.session, job).filter(|r| r.gate.is_some());
        let gated: Vec<_> = job.runs.iter().filter(|r| r.gate.is_some()).collect();
        match (focus, &gated[..]) {
            (Some(run), _) => Ok(gone(run.id)),
            (None, [one]) => Ok(gone(one.id)),
            (None, []) => Err(Problem::Refuse("There is no gate to drop.")),
            (None, many) => {
                Err(Problem::Ask("Which gate?", many.iter().map(|r| Act::Tell(vec![gone(r.id)])).collect()))
            }
        }
    }

    fn swap(&self, branch: Branch) -> Result<Branch, Problem> {
        if branch.focus.deck
            && let (Some(along), Some(out)) = (branch.job.deck_along, branch.job.deck_out)
        {
            return branch.with(Fact::DeckAlong(out))?.with(Fact::DeckOut(along));
        }
        let Some(run) = targets::focus(self.session, &branch.job).cloned() else {
            return Err(Problem::Ask("Swap what? Nothing has been told yet that has two sides.", Vec::new()));
        };
        let (Some(from), Some(to)) = (run.from, run.to) else {
            return Err(Problem::Ask("Swap what? The run's two ends have not both been told.", Vec::new()));
        };
        let patch = RunPatch { from: Some(to), to: Some(from), gate: gates::flipped(&run), ..RunPatch::default() };
        branch.with(Fact::Run(run.id, patch))
    }
}
