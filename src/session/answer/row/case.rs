//! One wanted row, judged: its figure, what it is held to, what was told beside what it comes to.

use super::asked::Asked;
use super::compared::{self, Compared};
use super::held::{held, premises};
use super::judged::Judged;
use super::needed::Needed;
use super::{Figs, say, taken, values};
use crate::grammar::ask::Mood;
use crate::job::Job;
use crate::layout::lay_out;
use crate::quantity::{Enough, RowId};
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status};
use crate::rules::{check, find, matter, matter_of};
use crate::solve::{Given, Lacks, Solved};

/// One wanted row, judged: itself and the rows beside it, by every limit they are held to.
pub(super) struct Case {
    pub want: RowId,
    /// What is asked of it.
    mood: Mood,
    /// Its own figure: given, or worked out.
    own: Option<Solved>,
    judged: Vec<Judged>,
    /// What was told of it beside what it comes to.
    compared: Option<Compared>,
    /// A count told that nothing limits, beside what it comes to.
    needed: Option<Needed>,
    /// The first row beside it that no limit holds, as it follows from its figure.
    left: Option<(RowId, Solved)>,
    /// Rows that are held to something and have no figure.
    lacking: Vec<(RowId, Lacks)>,
    /// The premises that are limits, or change one.
    pub limited_by: Vec<RowId>,
    /// The job with the premises.
    laid: Job,
}

impl Case {
    pub fn of(asked: &Asked, want: RowId) -> Case {
        let given = asked.given.get(want);
        // What a line gives and changes at once is judged as it becomes: 36 high, and an inch of tiles laid.
        let becomes = |s: &Solved| s.whole.is_empty() && s.used.contains(&want) && s.used.len() > 1;
        let own = match given.filter(|_| !want.row().is_words()) {
            Some(_) if asked.solve(want).is_ok_and(|s| becomes(&s)) => asked.solve(want),
            Some(fig) => Ok(Solved { used: vec![want], ..Solved::plain(fig.clone()) }),
            None => asked.solve(want),
        };
        let others = match (&own, given) {
            (Ok(solved), None) => asked.premises(want, solved),
            _ => asked.given.clone(),
        };
        let (lacks, own) = match own {
            Ok(solved) => (Lacks::default(), Some(solved)),
            Err(lacks) => (lacks, None),
        };
        let mut case = Case {
            want,
            mood: asked.ask.mood,
            own,
            judged: Vec::new(),
            compared: None,
            needed: None,
            left: None,
            lacking: Vec::new(),
            limited_by: Vec::new(),
            laid: asked.overlaid(),
        };
        for row in std::iter::once(want).chain(want.row().beside.iter().copied()) {
            case.take(asked, row, &others, &lacks);
        }
        let unlimited = want.row().beside.iter().find(|row| held(&case.laid, **row).is_empty());
        let follows = |row: &RowId| Some((*row, case.beside(asked, *row, &others).ok()?));
        case.left = unlimited.filter(|_| case.own.is_some()).and_then(follows);
        // A word on what follows from it goes before one on it: balusters are enough where their gap is.
        if case.judged.iter().all(|j| j.row == want) {
            case.compared = Compared::of(asked, want);
        }
        if case.judged.is_empty() && case.compared.is_none() && want.row().enough == Enough::Holds(want) {
            let own = case.own.as_ref().filter(|_| given.is_none());
            case.compared = own.and_then(|own| Compared::of_stick(asked, own));
            case.limited_by.extend(case.compared.is_some().then_some(RowId::Stock));
        }
        if case.judged.is_empty() && case.compared.is_none() {
            case.needed = case.own.as_ref().and_then(|own| Needed::of(asked, want, own));
        }
        case
    }

    /// Holds one row to its limits.
    fn take(&mut self, asked: &Asked, row: RowId, given: &Given, lacks: &Lacks) {
        let limits = held(&self.laid, row);
        self.limited_by.extend(premises(asked.job, |r| asked.with(asked.job.clone(), r), row, &asked.given));
        if limits.is_empty() {
            return;
        }
        let solved = match (&self.own, row == self.want) {
            (Some(own), true) => Ok(own.clone()),
            (None, true) => Err(lacks.clone()),
            _ => self.beside(asked, row, given),
        };
        match solved {
            Ok(solved) => {
                self.judged.extend(limits.into_iter().map(|held| Judged { row, solved: solved.clone(), held }));
            }
            Err(lacks) => self.lacking.push((row, lacks)),
        }
    }

    /// A row beside the wanted one; where that has a figure, only as it follows from it: a job laid out with three bays is no word on two.
    fn beside(&self, asked: &Asked, row: RowId, given: &Given) -> Result<Solved, Lacks> {
        let solved = crate::provide::ask(row, given, asked.job)?;
        let follows = given.get(self.want).is_none() || solved.used.contains(&self.want);
        // What an engine gives of the whole job is passed over: what lacks is what the premises alone leave open.
        let lacks = || crate::provide::ask(row, given, &Job::default()).err().unwrap_or_default();
        if follows { Ok(solved) } else { Err(lacks()) }
    }

    pub fn solved(&self) -> impl Iterator<Item = &Solved> {
        let compared = self.compared.iter().map(|c| &c.worked);
        self.own.iter().chain(self.judged.iter().map(|j| &j.solved)).chain(compared)
    }

    /// The row whose count is what is needed.
    pub fn needed(&self) -> Option<RowId> {
        self.needed.as_ref().map(|n| n.of)
    }

    pub fn figs(&self) -> Figs {
        let own = self.own.iter().map(|s| (self.want.row().name, s.fig.clone()));
        own.chain(self.judged.first().map(|j| ("limit", j.held.most.clone()))).collect()
    }

    pub fn answer(&self, told: &Job, asked: &Asked, reply: &mut Reply) {
        let fails = self.judged.iter().find(|j| !j.held.known || !j.keeps());
        let word = self.compared.as_ref().filter(|c| !c.is_enough() || (fails.is_none() && c.says_more()));
        if let Some(compared) = word.or(self.compared.as_ref().filter(|_| self.judged.is_empty())) {
            return self.beside_the_rest(compared, reply);
        }
        if let Some(needed) = &self.needed {
            needed.answer(self.mood, reply);
            return self.put(reply);
        }
        match (fails, self.lacking.first()) {
            (Some(judged), _) => self.verdict(told, judged, reply),
            (None, None) if self.leaves_open(asked) => {
                let rows = compared::lacking(asked, self.want).map(|(needed, lacks)| asked.needs(needed, &lacks));
                reply.lines.push(say::lacking(self.want, &rows.unwrap_or_default()));
            }
            (None, Some((row, lacks))) => match self.found(told) {
                Some(finding) => self.by_rule(finding, reply),
                None => reply.lines.push(self.question(asked, *row, lacks)),
            },
            (None, None) => match self.tightest() {
                Some(judged) => self.verdict(told, judged, reply),
                None => self.without_limit(told, asked, reply),
            },
        }
    }

    fn question(&self, asked: &Asked, row: RowId, lacks: &Lacks) -> Line {
        let alone = Asked { job: &Job::default(), ask: asked.ask, given: asked.given.clone() };
        let rows = if self.own.is_some() { alone.needs(row, lacks) } else { asked.needs(row, lacks) };
        match self.own.is_none() && (row == self.want || asked.follows(row, self.want)) {
            true => say::to_judge(self.want, if row == self.want { &rows } else { &[] }),
            false => say::lacking(row, &rows),
        }
    }

    /// True where what was told of it is held beside what it comes to, and must be just that.
    pub fn is_beside_the_rest(&self) -> bool {
        self.compared.as_ref().is_some_and(|c| !c.says_more())
    }

    /// True where the word on it is no.
    pub fn fails(&self) -> bool {
        self.judged.iter().any(|j| !j.held.known || !j.keeps())
            || self.compared.as_ref().is_some_and(|c| !c.is_enough())
            || self.needed.as_ref().is_some_and(|n| !n.is_enough())
    }

    /// Of limits that are all kept, the one there is least room to.
    pub fn tightest(&self) -> Option<&Judged> {
        let row = self.judged.first()?.row;
        self.judged.iter().filter(|j| j.row == row).min_by_key(|j| j.room())
    }

    /// True where a premise that nothing was judged by may bear on whether what was told is enough: then it is no yes.
    fn leaves_open(&self, asked: &Asked) -> bool {
        let part = |row: &RowId| self.own.as_ref().is_some_and(|own| own.used.contains(row));
        let bears = |row: &RowId| *row != self.want && !self.limited_by.contains(row) && !part(row);
        let alone = self.judged.iter().all(|j| j.row == self.want);
        let matters = self.want.row().enough != Enough::Just && asked.given.get(self.want).is_some();
        matters && alone && self.compared.is_none() && asked.given.rows().any(|row| bears(&row))
    }

    fn verdict(&self, told: &Job, judged: &Judged, reply: &mut Reply) {
        reply.status = Status::Answered;
        let same = |own: &&Solved| own.fig.value() == judged.solved.fig.value();
        let with =
            self.own.as_ref().filter(|own| judged.row != self.want && !same(own)).map(|own| (self.want, &own.fig));
        let mut line = judged.line(self.mood, with);
        if let Some(past) = judged.past().filter(|_| self.mood == Mood::Fault) {
            line.spans.extend([Span::Say(" That is "), say::fig(&past), Span::Say(" past it.")]);
            reply.values.more.push(("past_limit", past));
        }
        reply.lines.push(line);
        reply.findings.extend(judged.finding(told, &self.laid));
        // A size is no figure: where it passes, every figure it was judged by is said, and that is its working.
        let passes = self.own.is_none() && judged.held.known && judged.keeps();
        let others: Vec<Line> =
            self.judged.iter().filter(|j| passes && j.row != judged.row).map(Judged::aside).collect();
        reply.lines.extend(judged.more(&self.laid));
        reply.lines.extend(say::working(&judged.solved.fig).filter(|_| others.is_empty()));
        reply.lines.extend(others);
        let values = &mut reply.values;
        values.result = values.result.take().or_else(|| Some(judged.solved.fig.clone()));
        if judged.row == RowId::Drop {
            values.guard_needed = Some(!judged.keeps());
        }
        if values.more.iter().all(|(name, _)| *name != "limit") {
            values.more.push(("limit", judged.held.most.clone()));
        }
        self.put(reply);
    }

    /// What was told beside what it comes to; limits it keeps besides are not said.
    fn beside_the_rest(&self, compared: &Compared, reply: &mut Reply) {
        reply.status = Status::Answered;
        reply.lines.push(compared.line(self.mood));
        reply.lines.extend(say::working(&compared.worked.fig));
        reply.values.result = reply.values.result.take().or_else(|| Some(compared.worked.fig.clone()));
        reply.values.more.extend(compared.values());
        self.put(reply);
        values::put_working(reply, &compared.worked.fig, 4);
    }

    fn put(&self, reply: &mut Reply) {
        let own = self.own.iter().map(|s| (self.want, &s.fig));
        let all: Vec<_> = own.chain(self.judged.iter().map(|j| (j.row, &j.solved.fig))).collect();
        all.iter().for_each(|(row, fig)| values::put_row(reply, *row, fig));
        self.left.iter().for_each(|(row, solved)| values::put_row(reply, *row, &solved.fig));
        all.iter().for_each(|(_, fig)| values::put_working(reply, fig, 4));
    }

    /// What a rule found, in its own words.
    fn by_rule(&self, finding: Finding, reply: &mut Reply) {
        let stops = finding.level == Level::Stop;
        let lead = Span::Say(if stops { say::opens(self.mood, false) } else { "Check: " });
        let source = [Span::Say(" ("), Span::Say(finding.source), Span::Say(")")];
        let spans = std::iter::once(lead).chain(finding.spans.clone()).chain(source);
        reply.lines.push(Line::new(Role::Answer, spans));
        reply.status = Status::Answered;
        reply.findings.push(finding);
        self.put(reply);
        // What is never left out beside it, but for what has a limit of its own.
        if let Some((row, solved)) = &self.left {
            let spans = say::beside(*row, &solved.fig).into_iter().chain([Span::Say(".")]);
            reply.lines.push(Line::new(Role::Detail, spans));
            values::put_row(reply, *row, &solved.fig);
        }
    }

    /// No figure of it is held to a limit: what the rules find in it, else that none is held.
    fn without_limit(&self, told: &Job, asked: &Asked, reply: &mut Reply) {
        if let Some(finding) = self.found(told) {
            return self.by_rule(finding, reply);
        }
        let Some(own) = &self.own else {
            let lacks = asked.solve(self.want).err().unwrap_or_default();
            return reply.lines.push(match self.want.row().is_words() {
                true => Line::new(
                    Role::Question,
                    [Span::Say("I hold no check on "), Span::Say(self.want.said()), Span::Say(".")],
                ),
                false => self.question(asked, self.want, &lacks),
            });
        };
        if let Some((needed, lacks)) = compared::lacking(asked, self.want) {
            return reply.lines.push(say::lacking(self.want, &asked.needs(needed, &lacks)));
        }
        let mut spans = say::sentence(self.want, &own.fig, true);
        let limit = self.want.row().limit;
        spans.push(Span::Say(if limit.is_some() {
            ": no limit I hold bites here."
        } else {
            ": no rule I know limits it."
        }));
        reply.lines.push(Line::new(Role::Answer, spans));
        reply.lines.extend(limit.map(|l| Line::new(Role::Detail, [Span::Say(l.says), Span::Say(taken::stop(l))])));
        reply.lines.extend(say::working(&own.fig));
        reply.values.result = reply.values.result.take().or_else(|| Some(own.fig.clone()));
        reply.status = Status::Answered;
        self.put(reply);
    }

    /// The gravest thing the rules find with what is given and tried on, of the row's own matter; of a choice or a size, which is held to no
    /// figure, what was not there without it.
    fn found(&self, told: &Job) -> Option<Finding> {
        let before = check(told, &lay_out(told));
        let about = self.want.row().limit.map(matter_of);
        let on_it = |f: &Finding| find(f.rule).is_some_and(|r| Some(matter(r)) == about);
        let new = |f: &Finding| on_it(f) || (self.want.row().is_words() && !before.contains(f));
        check(&self.laid, &lay_out(&self.laid)).into_iter().find(|f| f.level != Level::Note && new(f))
    }
}
