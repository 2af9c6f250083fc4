//! A rail over a bay: sag and bending, down and outward, and the longest bay it reaches over.

use super::rows::{asked_allowed, row};
use super::taken::{Taken, longest_bay};
use super::{Answered, Figs, detail, fig, inches, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::{About, StrengthAsk};
use crate::job::{Job, PostRole, PostSize};
use crate::layout::{clear_max, post_width};
use crate::limits;
use crate::quantity::RowId;
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status};
use crate::solve::{by, limit_length};
use crate::strength::rail::{Bent, Piece, Way, bears, bent, longest_by_sag, longest_by_stress, sheared};
use crate::strength::{Judged, Refused, Wood};

/// A rail judged both ways, under the wood's own load duration and a short one.
pub(super) struct Rail {
    pub down: Bent,
    out: Bent,
    short: [Judged; 2],
}

impl Rail {
    pub(super) fn over(pieces: &[Piece], taken: &Taken, wood: &Wood, span: &Fig) -> Result<Rail, Refused> {
        let at = |wood: &Wood, way| bent(pieces, wood, span, &taken.inputs.height, way);
        let short = wood.under(taken.short().duration);
        let (down, out) = (at(wood, Way::Down)?, at(wood, Way::Out)?);
        let short = [at(&short, Way::Down)?.stress, at(&short, Way::Out)?.stress];
        Ok(Rail { down, out, short })
    }

    fn sags_inside(&self) -> bool {
        self.down.sag.holds() && self.out.sag.holds()
    }

    fn lead(&self) -> &'static str {
        let short = self.short.iter().all(Judged::holds);
        match (self.sags_inside(), short, self.down.stress.holds() && self.out.stress.holds()) {
            (true, true, true) => "Inside the figures, by arithmetic: ",
            (true, true, false) => "It turns on how long the load is taken to stand, by arithmetic: ",
            (true, false, _) => "Over in bending, by arithmetic: ",
            _ => "Over, by arithmetic: ",
        }
    }

    /// "sags 3 3/8" under 200 lb at midspan, 3.37 times the 1" published".
    pub(super) fn sag_spans(&self) -> Vec<Span> {
        let sag = &self.down.sag;
        vec![
            say(" sags "),
            inches(&sag.demand),
            say(" under 200 lb at midspan, "),
            fig(&sag.ratio),
            say(" times the "),
            inches(&sag.capacity),
            say(" published"),
        ]
    }

    fn lines(&self) -> Vec<Line> {
        let bending = |lead, of: &Bent, short: &Judged| {
            let mut spans = vec![say(lead)];
            spans.extend(asked_allowed(&of.stress));
            spans.extend([say("; as a load of ten minutes "), fig(&short.ratio), say(" times.")]);
            detail(spans)
        };
        let sag = &self.out.sag;
        let out = [
            say("Pushed outward it moves "),
            inches(&sag.demand),
            say(" of "),
            inches(&sag.capacity),
            say("; bending "),
            fig(&self.out.stress.ratio),
            say(" times, as a load of ten minutes "),
            fig(&self.short[1].ratio),
            say(" times."),
        ];
        vec![bending("Bending under the weight: ", &self.down, &self.short[0]), detail(out)]
    }

    fn rows(&self) -> Vec<crate::reply::StrengthFig> {
        vec![
            row("rail sag, down", &self.down.sag),
            row("rail movement, outward", &self.out.sag),
            row("rail bending, down", &self.down.stress),
            row("rail bending, outward", &self.out.stress),
            row("rail bending, down, load of ten minutes", &self.short[0]),
            row("rail bending, outward, load of ten minutes", &self.short[1]),
        ]
    }
}

/// The span a question is about: told, else the job's longest bay, else the most clear allowed.
pub(super) fn span(job: &Job, ask: &StrengthAsk) -> Fig {
    let told = ask.span.map(|l| Fig::told(l, "the bay asked about"));
    let most = || clear_max(job).unwrap_or_else(|| Fig::limit(&limits::POST_SPACING));
    told.or_else(|| longest_bay(job)).unwrap_or_else(most)
}

/// How a rail does over a bay, beside what stands.
pub fn bay(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    let span = span(job, ask);
    let rail = Rail::over(&taken.inputs.pieces, taken, &taken.inputs.wood, &span)?;
    let mut reply = Reply::of(Status::Answered);
    let mut first = vec![say(rail.lead()), say("at "), fig(&span), say(" clear a "), taken.rail_words()];
    first.extend(rail.sag_spans());
    first.push(say("."));
    reply.lines.extend(keeps_to_spacing(job, ask, &span));
    reply.lines.push(Line::new(Role::Answer, first));
    reply.lines.extend(rail.lines());
    let ends = ends(taken)?;
    reply.lines.push(ends_line(&ends));
    let longest = longest_line(taken, &mut reply)?;
    reply.lines.push(longest);
    if ask.post.is_some() {
        let says =
            "Bigger posts do nothing for the rail: it spans from post to post. They only shorten its clear span.";
        reply.lines.push(detail([say(says)]));
    }
    reply.lines.extend(as_it_stands(job, ask, taken));
    reply.lines.extend(taken.rail_lines());
    reply.lines.push(taken.line());
    reply.lines.extend(in_the_other(taken, &span));
    reply.findings.extend(too_far_apart(job, ask, &span));
    reply.findings.extend(sags_over(&rail));
    reply.values.strength = rail.rows().into_iter().chain(ends.iter().map(|(what, j)| row(what, j))).collect();
    let figs: Figs = vec![
        ("sag", rail.down.sag.demand.clone()),
        ("most sag", rail.down.sag.capacity.clone()),
        ("bending", rail.down.stress.demand.clone()),
        ("allowed bending", rail.down.stress.capacity.clone()),
    ];
    reply.values.more.extend([("span", span), ("sag", rail.down.sag.demand)]);
    Ok((reply, figs))
}

/// The rail at its ends: shear beside the post and, where its posts are square lumber, bearing on one.
fn ends(taken: &Taken) -> Result<Vec<(&'static str, Judged)>, Refused> {
    let inputs = &taken.inputs;
    let mut all = vec![("rail shear at the post", sheared(&inputs.pieces, &inputs.wood)?)];
    let sides = taken.stands.iter().filter_map(|s| s.square()).map(|(_, side)| side);
    if let Some(side) = sides.min_by_key(Fig::as_length) {
        all.push(("rail bearing on half a post", bears(&inputs.pieces, &inputs.wood, &side)?));
    }
    Ok(all)
}

/// "At its ends, the load beside a post: rail shear at the post 57 psi asked, 116 psi allowed: 0.49 times."
fn ends_line(ends: &[(&'static str, Judged)]) -> Line {
    let mut spans = vec![say("At its ends: ")];
    for (k, (what, judged)) in ends.iter().enumerate() {
        spans.extend([say(if k == 0 { "" } else { "; " }), say(what), say(" ")]);
        spans.extend(asked_allowed(judged));
    }
    spans.push(say("."));
    detail(spans)
}

/// "Longest bay for this rail: 4'-4" by sag ...", its figures put with the values.
fn longest_line(taken: &Taken, reply: &mut Reply) -> Result<Line, Refused> {
    let by = |wood: &Wood| longest_by_stress(&taken.inputs.pieces, wood, &taken.inputs.height);
    let sag = longest_by_sag(&taken.inputs.pieces, &taken.inputs.wood, &taken.inputs.height)?;
    let (long, short) = (by(&taken.inputs.wood)?, by(&taken.short())?);
    let mut spans = vec![say("Longest bay for it: ")];
    let mut reach = |name: &'static str, f: Option<Fig>, what: &'static str| {
        match &f {
            Some(f) => spans.push(fig(f)),
            None => spans.push(say("under a foot")),
        }
        spans.push(say(what));
        reply.values.more.extend(f.map(|f| (name, f)));
    };
    reach("longest_by_sag", sag, " clear by sag; ");
    reach("longest_by_bending", long, " by bending, ");
    reach("longest_by_bending_ten_minutes", short, " as a load of ten minutes.");
    Ok(detail(spans))
}

/// What stands now, where the question is about something else.
fn as_it_stands(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Option<Line> {
    let asks_other = ask.span.is_some() || ask.rail.is_some() || ask.lie.is_some() || ask.cap.is_some();
    let now = longest_bay(job).filter(|_| asks_other)?;
    let stands = Taken::of(job, &StrengthAsk::of(ask.about));
    let rail = Rail::over(&stands.inputs.pieces, taken, &stands.inputs.wood, &now).ok()?;
    let mut spans = vec![say("As it stands: at "), fig(&now), say(" clear a "), stands.rail_words()];
    spans.extend(rail.sag_spans());
    spans.push(say("."));
    Some(detail(spans))
}

/// The wood that was not taken, beside the one that was.
fn in_the_other(taken: &Taken, span: &Fig) -> Option<Line> {
    let wood = taken.beside()?;
    let rail = Rail::over(&taken.inputs.pieces, taken, &wood, span).ok()?;
    let mut spans = vec![say("In "), Span::Phrase(super::taken::wood_words(&wood)), say(", it")];
    spans.extend(rail.sag_spans());
    spans.extend([say("; bending "), fig(&rail.down.stress.ratio), say(" times.")]);
    Some(detail(spans))
}

/// How far apart a bay's posts stand, centre to centre.
fn apart(job: &Job, ask: &StrengthAsk, span: &Fig) -> Option<Fig> {
    let asked = ask.post.and_then(|l| PostSize::Lumber(l).width().map(|wide| (wide, l.table())));
    let post = match asked {
        Some((wide, table)) => Fig::length(wide, Why::Table("dressed dry width of the post asked about", table)),
        None => post_width(&job.settings, &[PostRole::Line]),
    };
    by(RowId::BayCentre, &[(RowId::BayClear, span), (RowId::PostWidth, &post)])
}

/// Where a bay asked about keeps to the published post spacing: that comes first, and then its rail.
fn keeps_to_spacing(job: &Job, ask: &StrengthAsk, span: &Fig) -> Option<Line> {
    let centre = apart(job, ask, span).filter(|_| ask.about == About::Reach && ask.span.is_some())?;
    let spans = [
        fig(&centre),
        say(" on centre keeps to the published "),
        fig(&Fig::limit(&limits::POST_SPACING)),
        say("; its rail is the question."),
    ];
    (centre.as_length()? <= limit_length(job, &limits::POST_SPACING)).then(|| Line::new(Role::Answer, spans))
}

/// A span wider than the published post spacing leaves.
fn too_far_apart(job: &Job, ask: &StrengthAsk, span: &Fig) -> Option<Finding> {
    let centre = apart(job, ask, span)?;
    let over = centre.as_length()? > limit_length(job, &limits::POST_SPACING);
    let spans = vec![
        fig(span),
        say(" clear is "),
        fig(&centre),
        say(" on centre, over the published "),
        fig(&Fig::limit(&limits::POST_SPACING)),
        say("."),
    ];
    let rule = "post-spacing-over-published";
    over.then_some(Finding { rule, level: Level::Stop, spans, source: limits::POST_SPACING.source })
}

/// A sag over the published figure.
fn sags_over(rail: &Rail) -> Option<Finding> {
    let spans = vec![
        say("the rail sags "),
        fig(&rail.down.sag.ratio),
        say(" times what is published for guards; the figure was written for metal ones, and the IRC gives none."),
    ];
    let found =
        Finding { rule: "rail-sag-over-published", level: Level::Check, spans, source: limits::RAIL_SAG.source };
    (!rail.down.sag.holds()).then_some(found)
}

/// The longest bay a rail reaches over.
pub fn longest(taken: &Taken) -> Answered {
    let mut reply = Reply::of(Status::Answered);
    let sag = longest_by_sag(&taken.inputs.pieces, &taken.inputs.wood, &taken.inputs.height)?;
    let line = longest_line(taken, &mut reply)?;
    let mut first = vec![say("By arithmetic a "), taken.rail_words(), say(" reaches ")];
    match &sag {
        Some(f) => first.extend([fig(f), say(" clear before it sags past the published figure.")]),
        None => first.push(say("not even a foot before it sags past the published figure.")),
    }
    reply.lines.push(Line::new(Role::Answer, first));
    reply.lines.push(line);
    let published = [
        say("Whatever the rail, posts stand no more than "),
        fig(&Fig::limit(&limits::POST_SPACING)),
        say(" apart on centre by the published guide, less where told."),
    ];
    reply.lines.push(detail(published));
    reply.lines.extend(taken.rail_lines());
    reply.lines.push(taken.line());
    let figs: Figs = sag.into_iter().map(|f| ("longest bay by sag", f)).collect();
    Ok((reply, figs))
}
