//! Where posts are wanted and where not: which run, from which end, and whether it works out.

use super::{Branch, Branches, Problem, Resolver};
use crate::grammar::choice::{ChoiceDraft, ChoiceOf, Off};
use crate::grammar::draft::{Mark, RunDraft, Which};
use crate::grammar::sense::Side;
use crate::job::outline::filled;
use crate::job::{Choice, End, EndOf, Fact, Job, KeepOff, Run, RunId, RunPatch, Setting, SlotId, Spot, Thing};
use crate::layout::{Bay, BayKind, Kind, Lack, Layout, lay_out};
use crate::measure::{Length, Measure};
use crate::session::lengths::fits;
use crate::session::targets;

const WHICH_END: &str = "From which end? Say what is there, or the left or the right end.";

impl Resolver<'_> {
    /// A choice, on the run it is of; one branch for each way it may be meant.
    pub(super) fn choice(&self, branch: Branch, said: &ChoiceOf) -> Branches {
        let of_side = by_side(&branch.job, said);
        let said = of_side.as_ref().unwrap_or(said);
        if let ChoiceDraft::Go(m) = &said.choice {
            return self.go(branch, m);
        }
        let runs = self.runs_of(&branch.job, said)?;
        let ask = runs.len() > 1;
        let each = runs.iter().map(|run| self.on_run(&branch, run, &said.choice));
        let (can, cannot): (Vec<_>, Vec<_>) = each.partition(Result::is_ok);
        let all: Vec<Branch> = can.into_iter().flatten().flatten().collect();
        match cannot.into_iter().next() {
            Some(Err(problem)) if all.is_empty() => Err(problem),
            _ => Ok(all.into_iter().map(|b| Branch { ask: b.ask || ask, ..b }).collect()),
        }
    }

    /// The runs a choice may be of: the one named, else the one spoken of where it has the
    /// end that was said, else those that have it.
    fn runs_of(&self, job: &Job, said: &ChoiceOf) -> Result<Vec<Run>, Problem> {
        let job = &filled(job).job;
        let found = match said.on {
            Some(Which::Number(n)) => job.run(RunId(n)),
            Some(Which::Side(s)) => targets::named(job, s),
            None => {
                let focus = targets::focus(self.session, job);
                let fits = |r: &&Run| has(r, &said.choice);
                if let Some(run) = focus.filter(fits) {
                    return Ok(vec![run.clone()]);
                }
                let all: Vec<Run> = job.runs.iter().filter(fits).cloned().collect();
                if !all.is_empty() || focus.is_none() {
                    return if all.is_empty() { Err(no_run()) } else { Ok(all) };
                }
                return Err(Problem::Ask(
                    "No run has what you measure from or keep off. Which run, and from what?",
                    Vec::new(),
                ));
            }
        };
        found
            .cloned()
            .map(|r| vec![r])
            .ok_or(Problem::Ask("There is no such run. Say its number or its name.", Vec::new()))
    }

    fn on_run(&self, branch: &Branch, run: &Run, choice: &ChoiceDraft) -> Branches {
        let one = |choices: Vec<Choice>, ask: bool| Ok(vec![told(branch.clone(), run.id, choices, ask)?]);
        match choice {
            ChoiceDraft::Posts { at, from, gone } => self.posts(branch, run, at, *from, *gone),
            ChoiceDraft::Landed { number, at, from } => {
                let spots = lands_there(&branch.job, run, *number, at, *from)?;
                let ask = spots.len() > 1 || at.about || at.shade.is_some();
                let each = spots.into_iter().map(|s| told(branch.clone(), run.id, vec![Choice::Post(s)], ask));
                super::first_problem(each.collect())
            }
            ChoiceDraft::Middle => match run.length {
                Some(l) => one(vec![Choice::Post(Spot { at: l.length / 2, end: EndOf::From })], false),
                None => {
                    Err(Problem::Ask("That run has no length yet, so it has no middle. How long is it?", Vec::new()))
                }
            },
            ChoiceDraft::Move { which, to, from } => self.moved_post(branch, run, which.as_ref(), to, *from),
            ChoiceDraft::Mirrored(yes) => one(vec![Choice::Mirrored(*yes)], false),
            ChoiceDraft::KeepOff { by, of } => keep_off(branch, run, by, of),
            ChoiceDraft::Between(a, b, from) => between(branch, run, a, b, *from),
            ChoiceDraft::Anywhere => one(vec![Choice::NoKeepOff], false),
            ChoiceDraft::Even => even(branch.clone(), run),
            ChoiceDraft::Go(_) => Ok(vec![branch.clone()]),
        }
    }

    fn posts(&self, branch: &Branch, run: &Run, at: &[Measure], from: Option<Mark>, gone: bool) -> Branches {
        let mut branches = Vec::new();
        if let (Some(Mark::End(End::StairHead)), true) = (from, at_end(run, End::StairHead).is_empty()) {
            return beside_stairs(branch, run, at, gone);
        }
        let ends = ends(run, from)?;
        for end in &ends {
            let marks: Vec<Marks> = at.iter().map(|m| marks_of(m, SlotId::PostAt)).collect::<Result<_, _>>()?;
            // Marks told in one breath are in one unit: the nth way of each goes together.
            let ways = marks.iter().map(|m| m.lengths.len()).max().unwrap_or(1);
            for way in 0..ways {
                let spot = |m: &Marks| Spot { at: m.lengths[way.min(m.lengths.len() - 1)], end: *end };
                let choose = |m: &Marks| if gone { Choice::NoPost(named(run, spot(m))) } else { Choice::Post(spot(m)) };
                let doubt = marks.iter().any(|m| m.doubtful) || ends.len() > 1;
                branches.push(told(branch.clone(), run.id, marks.iter().map(choose).collect(), doubt));
            }
        }
        super::first_problem(branches)
    }

    /// "move the post to 6 ft": the one post told, else the one line post there is.
    fn moved_post(
        &self,
        branch: &Branch,
        run: &Run,
        which: Option<&Measure>,
        to: &Measure,
        from: Option<Mark>,
    ) -> Branches {
        let which = which.map(|m| marks_of(m, SlotId::PostAt)).transpose()?;
        let is = |l: Length| which.as_ref().is_none_or(|w| w.lengths.contains(&l));
        let told_here: Vec<Spot> = run.choices.posts.iter().copied().filter(|p| is(p.at)).collect();
        let gone = match told_here[..] {
            [one] => vec![Choice::NoPost(one)],
            [] if line_posts(&branch.job, run.id, is) == 1 => Vec::new(),
            _ => {
                return Err(Problem::Ask(
                    "Which post? Say the mark it stands at: \"move the post at 5 ft to 6 ft\".",
                    Vec::new(),
                ));
            }
        };
        let ends = ends(run, from)?;
        let marks = marks_of(to, SlotId::PostAt)?;
        let each = marks.lengths.iter().flat_map(|at| ends.iter().map(|end| Spot { at: *at, end: *end }));
        let choices = each.map(|spot| gone.iter().copied().chain([Choice::Post(spot)]).collect());
        let all: Vec<Vec<Choice>> = choices.collect();
        let ask = marks.doubtful || all.len() > 1;
        super::first_problem(all.into_iter().map(|c| told(branch.clone(), run.id, c, ask)).collect())
    }

    /// "what if I go 7 foot": the run's length, or how far apart the posts may stand.
    fn go(&self, branch: Branch, m: &Measure) -> Branches {
        let long = RunDraft { length: Some(m.clone()), it: true, ..RunDraft::default() };
        let long = self.run(branch.clone(), &long);
        // A length no bay can have is the run's, and no doubt about it.
        let apart = fits(m, SlotId::CentreMax, None);
        let apart = apart.lengths.into_iter().filter(|(l, _)| !apart.doubtful && SlotId::CentreMax.takes(*l));
        let apart = apart.map(|(l, _)| branch.clone().with(Fact::Set(Setting::CentreMax(l)))).collect::<Vec<_>>();
        if apart.is_empty() {
            return long;
        }
        let all: Vec<Branch> =
            apart.into_iter().flatten().chain(long.into_iter().flatten()).map(|b| Branch { ask: true, ..b }).collect();
        if all.is_empty() {
            return Err(Problem::Ask("Go that far with what: the run, or the bays?", Vec::new()));
        }
        Ok(all)
    }
}

/// "30 inches from the corner on the left", where no run goes by that name: from its left end.
fn by_side(job: &Job, said: &ChoiceOf) -> Option<ChoiceOf> {
    let Some(Which::Side(side @ (Side::Left | Side::Right))) = said.on else { return None };
    if targets::named(job, side).is_some() {
        return None;
    }
    match &said.choice {
        ChoiceDraft::Posts { at, gone, .. } => {
            let choice = ChoiceDraft::Posts { at: at.clone(), from: Some(Mark::Side(side)), gone: *gone };
            Some(ChoiceOf { choice, on: None })
        }
        _ => None,
    }
}

fn no_run() -> Problem {
    Problem::Ask(
        "No run has been told yet for posts to stand in. Say how long it is and what it goes between.",
        Vec::new(),
    )
}

/// True where the run has what the choice measures from or keeps off.
fn has(run: &Run, choice: &ChoiceDraft) -> bool {
    let end = |mark: &Option<Mark>| match mark {
        Some(Mark::End(End::StairHead)) => targets::has_stair_head(run),
        Some(Mark::End(end)) => !at_end(run, *end).is_empty(),
        _ => true,
    };
    match choice {
        ChoiceDraft::Posts { from, .. } | ChoiceDraft::Move { from, .. } | ChoiceDraft::Landed { from, .. } => {
            end(from)
        }
        ChoiceDraft::Between(_, _, mark) => end(mark),
        ChoiceDraft::KeepOff { of: Off::End(mark), .. } => end(&Some(*mark)),
        ChoiceDraft::KeepOff { of: Off::At(_, mark), .. } => end(mark),
        ChoiceDraft::KeepOff { of: Off::Ends(e), .. } => !at_end(run, *e).is_empty(),
        ChoiceDraft::KeepOff { of: Off::Stairs, .. } => targets::has_stair_head(run),
        ChoiceDraft::KeepOff { of: Off::Gate, .. } => run.gate.is_some(),
        _ => true,
    }
}

/// The ends of the run that are this; any corner will do for "the corner" where none is.
fn at_end(run: &Run, end: End) -> Vec<EndOf> {
    let both = [(run.from, EndOf::From), (run.to, EndOf::To)];
    let exactly: Vec<EndOf> = both.iter().filter(|(e, _)| *e == Some(end)).map(|(_, of)| *of).collect();
    if !exactly.is_empty() || end != End::Corner {
        return exactly;
    }
    both.iter().filter(|(e, _)| e.is_some_and(End::is_corner)).map(|(_, of)| *of).collect()
}

/// The ends a mark may be from; without one, the end the tape hooks on.
fn ends(run: &Run, from: Option<Mark>) -> Result<Vec<EndOf>, Problem> {
    match from {
        None => Ok(vec![EndOf::From]),
        Some(Mark::Side(Side::Left)) => Ok(vec![EndOf::From]),
        Some(Mark::Side(Side::Right)) => Ok(vec![EndOf::To]),
        Some(Mark::Side(_)) => Err(Problem::Ask(WHICH_END, Vec::new())),
        Some(Mark::End(end)) => match at_end(run, end) {
            none if none.is_empty() => Err(Problem::Ask(WHICH_END, Vec::new())),
            found => Ok(found),
        },
    }
}

/// "2 ft from the stairs" in a run: on either side of its stair opening.
fn beside_stairs(branch: &Branch, run: &Run, marks: &[Measure], gone: bool) -> Branches {
    let layout = lay_out(&branch.job);
    let placed = layout.runs.iter().find(|r| r.id == run.id).and_then(|r| r.result.as_ref().ok());
    let ([m], Some(placed)) = (marks, placed) else { return Err(Problem::Ask(WHICH_END, Vec::new())) };
    let stairs = |b: &&Bay| matches!(b.kind, BayKind::Stairs | BayKind::GatedStairs);
    let mut all = Vec::new();
    for by in marks_of(m, SlotId::PostAt)?.lengths {
        for opening in placed.bays.iter().filter(stairs) {
            let start = opening.start - placed.lead;
            let places = [start - by, start + opening.clear_length() + by];
            all.extend(places.into_iter().filter(|l| l.is_positive()).map(|at| Spot { at, end: EndOf::From }));
        }
    }
    let choose = |spot| if gone { Choice::NoPost(named(run, spot)) } else { Choice::Post(spot) };
    super::first_problem(all.into_iter().map(|s| told(branch.clone(), run.id, vec![choose(s)], true)).collect())
}

/// A post said to be in already: where it may stand, of the line posts of the layout and not far from
/// its mark. "58" is read in the unit that puts it there.
fn lands_there(job: &Job, run: &Run, number: u16, at: &Measure, from: Option<Mark>) -> Result<Vec<Spot>, Problem> {
    let layout = lay_out(job);
    let placed = layout.runs.iter().find(|r| r.id == run.id).and_then(|r| r.result.as_ref().ok());
    let Some(placed) = placed else {
        return Err(Problem::Ask("That run is not laid out yet: tell its length and its ends first.", Vec::new()));
    };
    let Some(post) = usize::from(number).checked_sub(1).and_then(|n| placed.posts.get(n)) else {
        return Err(Problem::Ask("The run has no post of that number. Which mark does it stand at?", Vec::new()));
    };
    if matches!(post.kind, Kind::Fixed(_)) {
        return Err(Problem::Ask(
            "That post is an end of the run or of an opening: tell how long the run, or how wide the opening, is now.",
            Vec::new(),
        ));
    }
    let whole = placed.length.as_length().unwrap_or(Length::ZERO);
    let mark = post.at.as_length().unwrap_or(Length::ZERO);
    let near = |s: &Spot| {
        let mark = if s.end == EndOf::To { whole - mark } else { mark };
        s.at < mark + Length::inches(24) && mark < s.at + Length::inches(24)
    };
    let ends = ends(run, from)?;
    let lengths = marks_of(at, SlotId::PostAt)?.lengths;
    let all = lengths.iter().flat_map(|at| ends.iter().map(|end| Spot { at: *at, end: *end }));
    let spots: Vec<Spot> = all.filter(near).collect();
    if spots.is_empty() {
        return Err(Problem::Ask(
            "That is more than 2 ft off that post's mark. Is it that post, and from that end?",
            Vec::new(),
        ));
    }
    Ok(spots)
}

struct Marks {
    lengths: Vec<Length>,
    doubtful: bool,
}

/// The lengths a mark may be. A shade or an "about" has no place in it, so it is asked.
fn marks_of(m: &Measure, slot: SlotId) -> Result<Marks, Problem> {
    let said = fits(m, slot, None);
    if said.lengths.is_empty() {
        return Err(Problem::Ask("How far is that? I can't take it as a length.", Vec::new()));
    }
    let doubtful = said.doubtful || said.lengths.len() > 1 || m.shade.is_some() || m.about;
    Ok(Marks { lengths: said.lengths.into_iter().map(|(l, _)| l).collect(), doubtful })
}

/// The told post meant by a mark, whichever end it was told from.
fn named(run: &Run, spot: Spot) -> Spot {
    let same = |p: &&Spot| **p == spot;
    let by_mark = |p: &&Spot| p.at == spot.at;
    let posts = &run.choices.posts;
    *posts.iter().find(same).or_else(|| posts.iter().find(by_mark)).unwrap_or(&spot)
}

/// How many line posts of the run as it stands have that mark.
fn line_posts(job: &Job, id: RunId, is: impl Fn(Length) -> bool) -> usize {
    let layout = lay_out(job);
    let placed = layout.runs.iter().filter(|r| r.id == id).filter_map(|r| r.result.as_ref().ok());
    let posts = placed.flat_map(|p| &p.posts).filter(|p| p.kind == Kind::Line);
    posts.filter_map(|p| p.at.as_length()).filter(|l| is(*l) || is(layout.tape.round(*l))).count()
}

fn keep_off(branch: &Branch, run: &Run, by: &Measure, of: &Off) -> Branches {
    let by = marks_of(by, SlotId::KeepOff)?;
    let mut doubtful = by.doubtful;
    // Each way it may be meant, and all the things of one way.
    let things: Vec<Vec<Thing>> = match of {
        Off::Stairs => vec![vec![Thing::Stairs]],
        Off::Gate => vec![vec![Thing::Gate]],
        Off::End(mark) => ends(run, Some(*mark))?.into_iter().map(|e| vec![Thing::End(e)]).collect(),
        Off::Ends(end) => vec![at_end(run, *end).into_iter().map(Thing::End).collect()],
        Off::At(m, mark) => {
            let at = marks_of(m, SlotId::PostAt)?;
            doubtful |= at.doubtful;
            let ends = ends(run, *mark)?;
            let spots = at.lengths.iter().flat_map(|l| ends.iter().map(|e| Spot { at: *l, end: *e }));
            spots.map(|s| vec![Thing::Spot(s)]).collect()
        }
        Off::Door => {
            let says = "Where along the run is the door? Say it so: \"no post within 18 in. of 6 ft from the house\".";
            return Err(Problem::Ask(says, Vec::new()));
        }
    };
    let ask = doubtful || things.len() > 1;
    let each = by.lengths.iter().flat_map(|by| {
        things.iter().map(|all| all.iter().map(|of| Choice::KeepOff(KeepOff { by: *by, of: *of })).collect())
    });
    let all: Vec<Vec<Choice>> = each.collect();
    super::first_problem(all.into_iter().map(|c| told(branch.clone(), run.id, c, ask)).collect())
}

/// "no post between 4 and 6 ft": off the middle of the two by half of what lies between.
fn between(branch: &Branch, run: &Run, a: &Measure, b: &Measure, from: Option<Mark>) -> Branches {
    let (a, b) = (marks_of(a, SlotId::PostAt)?, marks_of(b, SlotId::PostAt)?);
    let ends = ends(run, from)?;
    let ask = a.doubtful || b.doubtful || ends.len() > 1;
    let mut all = Vec::new();
    for end in ends {
        for (a, b) in a.lengths.iter().zip(&b.lengths).filter(|(a, b)| a < b) {
            let at = Spot { at: (*a + *b) / 2, end };
            let keep = KeepOff { by: (*b - *a) / 2, of: Thing::Spot(at) };
            all.push(told(branch.clone(), run.id, vec![Choice::KeepOff(keep)], ask));
        }
    }
    if all.is_empty() {
        return Err(Problem::Ask("From where to where? Say the two marks, the nearer first.", Vec::new()));
    }
    super::first_problem(all)
}

/// Plain even bays: told posts, a mirror and a bay count go; what posts keep off stays.
fn even(branch: Branch, run: &Run) -> Branches {
    let posts = (!run.choices.posts.is_empty()).then_some(Choice::NoPosts);
    let mirror = run.choices.mirrored.then_some(Choice::Mirrored(false));
    let choices: Vec<Choice> = posts.into_iter().chain(mirror).collect();
    if choices.is_empty() && run.bays.is_none() {
        return Err(Problem::Refuse("The bays are even as they stand: nothing was changed."));
    }
    let patch = RunPatch { bays: run.bays.map(|_| None), choices, ..RunPatch::default() };
    Ok(vec![branch.with(Fact::Run(run.id, patch))?])
}

/// The branch with these choices, where they work out.
fn told(mut branch: Branch, id: RunId, choices: Vec<Choice>, ask: bool) -> Result<Branch, Problem> {
    let before = lacks(&lay_out(&branch.job), id);
    branch.focus.run = Some(id);
    branch.focus.slot = None;
    let branch = branch.with(Fact::Run(id, RunPatch { choices, ..RunPatch::default() }))?;
    let after = lacks(&lay_out(&branch.job), id);
    match after.into_iter().find(|lack| !before.contains(lack)).and_then(wrong) {
        Some(says) => Err(Problem::Ask(says, Vec::new())),
        None => Ok(Branch { ask: branch.ask || ask, ..branch }),
    }
}

fn lacks(layout: &Layout, id: RunId) -> Vec<Lack> {
    layout.runs.iter().filter(|r| r.id == id).filter_map(|r| r.result.as_ref().err()).flatten().copied().collect()
}

fn wrong(lack: Lack) -> Option<&'static str> {
    match lack {
        Lack::PostPlace => {
            Some("A post can't stand there: an opening or another post is in the way. Where does it go?")
        }
        Lack::KeepOff => {
            Some("No posts can keep that far off and pass no limit, so nothing was changed. Keep off less?")
        }
        Lack::Mirror => Some(
            "That can't be mirrored: there is more than one opening, or no room for a post's mirror image. Nothing was changed.",
        ),
        Lack::BaySplit => Some(
            "A bay count is told on that run, and I can't tell how it is shared on both sides of the post. Say \"fewest bays\" first, or the count again.",
        ),
        Lack::Room => Some("There is no room for a post there. Where does it go?"),
        _ => None,
    }
}
