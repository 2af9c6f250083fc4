//! A whole post under the push at its top.

use super::rows::row;
use super::section::Bends;
use super::taken::{Taken, wood_words};
use super::{Answered, Figs, bolt, detail, fig, inches, left, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::StrengthAsk;
use crate::job::{Job, Lie, PostSize};
use crate::measure::Lumber;
use crate::reply::{Line, Reply, Role, Span, Status, StrengthFig};
use crate::strength::post::{arm_to_bolt, modulus_needed, moment, sway, sway_limit};
use crate::strength::section::{Push, Section};
use crate::strength::{Judged, Leg, Refused, Stand, Wood};

/// Posts of one size and push, whole, judged at the deck and at the upper bolt.
struct Case {
    stand: Stand,
    size: Lumber,
    section: Section,
    deck: Bends,
    bolt: Bends,
}

impl Case {
    fn of(stand: Stand, taken: &Taken, to_bolt: &Fig) -> Option<Result<Case, Refused>> {
        let (size, side) = stand.square()?;
        let wood = &taken.inputs.wood;
        let case = || {
            let section = Leg::Whole.section(&side)?;
            let deck = Bends::of(&section, stand.push(), &taken.inputs.height, size, wood)?;
            let bolt = Bends::of(&section, stand.push(), to_bolt, size, wood)?;
            Ok(Case { stand, size, section, deck, bolt })
        };
        Some(case())
    }

    /// "as a corner post, pushed on its diagonal, where it is weakest: ".
    fn whose(&self) -> [Span; 2] {
        [say(self.stand.name()), say(if self.stand.is_corner() { CORNER } else { LINE })]
    }

    fn rows(&self) -> Vec<StrengthFig> {
        let names = if self.stand.is_corner() { CORNER_ROWS } else { LINE_ROWS };
        let judged = [&self.deck.long, &self.deck.short, &self.bolt.long, &self.bolt.short];
        names.into_iter().zip(judged).map(|(what, j)| row(what, j)).collect()
    }
}

const CORNER: &str = ", pushed on its diagonal, where it is weakest: ";
const LINE: &str = ", pushed outward: ";
const LINE_ROWS: [&str; 4] = [
    "post bending at the deck",
    "post bending at the deck, load of ten minutes",
    "post bending at the upper bolt",
    "post bending at the upper bolt, load of ten minutes",
];
const CORNER_ROWS: [&str; 4] = [
    "corner post bending at the deck",
    "corner post bending at the deck, load of ten minutes",
    "corner post bending at the upper bolt",
    "corner post bending at the upper bolt, load of ten minutes",
];

/// Why no post of the job is judged.
pub(super) fn not_judged(stands: &[Stand]) -> Answered {
    let lumber = |s: &Stand| if let PostSize::Lumber(l) = s.size { Some(l) } else { None };
    if let Some(none) = stands.iter().filter_map(lumber).find(|l| l.dressed().is_none()) {
        return Err(Refused::NotLumber(none));
    }
    let says = match stands.iter().all(|s| lumber(s).is_none()) {
        true => "I have design values for sawn lumber only: a sleeve, steel or composite post is its maker's to judge.",
        false => {
            "I judge square posts only: which way round this one stands, and what is cut of it, is for an engineer."
        }
    };
    Ok((Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }, Vec::new()))
}

/// What is said of posts that are passed over.
pub(super) fn passed_over(stands: &[Stand]) -> Option<Line> {
    let says = "Not judged: posts told by their width alone, or not square.";
    stands.iter().any(|s| s.square().is_none()).then(|| detail([say(says)]))
}

/// Whether a whole post's bending stays inside what its wood is allowed; of several the weakest.
pub fn post(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    let tie = bolt::tie(ask, taken)?;
    let arm = &taken.inputs.height;
    let to_bolt = arm_to_bolt(arm, &tie.decking, &tie.edge)?;
    let cases: Result<Vec<Case>, Refused> = taken.stands.iter().filter_map(|s| Case::of(*s, taken, &to_bolt)).collect();
    let mut cases = cases?;
    cases.sort_by_key(|c| std::cmp::Reverse(c.deck.long.ratio.as_q()));
    let Some(worst) = cases.first() else { return not_judged(&taken.stands) };
    let mut reply = Reply::of(Status::Answered);
    // Bolted to the rim it bends most at the bolt: where only that is over, that comes first.
    let at_bolt = worst.bolt.lead() != worst.deck.lead();
    let (place, governs) = if at_bolt {
        (" high, bending at the upper bolt, as a ", &worst.bolt)
    } else {
        (" high, bending at the deck, as a ", &worst.deck)
    };
    let mut first = vec![say(governs.lead()), say("a whole "), Span::Phrase(worst.size.to_string())];
    first.extend([say(" "), inches(arm), say(place)]);
    first.extend(worst.whose());
    first.extend(governs.spans(taken));
    first.push(say("."));
    reply.lines.push(Line::new(Role::Answer, first));
    for case in &cases[1..] {
        let mut spans = vec![say("A "), Span::Phrase(case.size.to_string()), say(" as a ")];
        spans.extend(case.whose());
        spans.extend(case.deck.spans(taken));
        spans.push(say("."));
        reply.lines.push(detail(spans));
    }
    reply.lines.extend(passed_over(&taken.stands));
    let (place, other) = match at_bolt {
        true => ("At the deck it bends less: ", &worst.deck),
        false => ("Bolted to the rim it bends most at the upper bolt: ", &worst.bolt),
    };
    let mut second = vec![say(place)];
    second.extend(other.spans(taken));
    second.push(say("."));
    reply.lines.push(detail(second));
    reply.lines.extend(in_the_other(worst, taken)?);
    reply.lines.push(needs(worst, taken)?);
    let top = sways(worst, taken)?;
    reply.lines.push(sway_line(&top));
    let notched = left::beside(job, ask, taken)?;
    reply.lines.extend(notched.lines);
    reply.lines.push(bolt::line(&tie)?);
    reply.lines.push(taken.line());
    let shown = |corner: bool| cases.iter().find(|c| c.stand.is_corner() == corner);
    reply.values.strength = [shown(false), shown(true)].into_iter().flatten().flat_map(Case::rows).collect();
    reply.values.strength.push(row("movement of the post's top", &top));
    reply.values.strength.push(row("pull on the upper bolt", &bolt::judged(&tie)?));
    reply.values.strength.extend(notched.values.strength);
    let mut figs: Figs = vec![("bending", governs.long.demand.clone())];
    figs.extend(cases[1..].iter().map(|c| (c.stand.name(), c.deck.long.demand.clone())));
    figs.push(("allowed bending", governs.long.capacity.clone()));
    let whose = if worst.stand.is_corner() { ": a corner post on its diagonal." } else { ": pushed outward." };
    let lead = match at_bolt {
        true => "a whole post's bending at the upper bolt is ",
        false => "a whole post's bending at the deck is ",
    };
    reply.findings.extend(governs.over("post-bending-over-allowed", lead, whose));
    reply.findings.extend(notched.findings);
    reply.findings.extend(bolt::finding(&tie)?);
    Ok((reply, figs))
}

/// The weakest post in the wood that was not taken.
fn in_the_other(worst: &Case, taken: &Taken) -> Result<Option<Line>, Refused> {
    let Some(wood) = taken.beside() else { return Ok(None) };
    let other = Bends::of(&worst.section, worst.stand.push(), &taken.inputs.height, worst.size, &wood)?;
    let mut spans = vec![say("In "), Span::Phrase(wood_words(&wood)), say(", at the deck: ")];
    spans.extend(other.spans(taken));
    spans.push(say("."));
    Ok(Some(detail(spans)))
}

fn sways(worst: &Case, taken: &Taken) -> Result<Judged, Refused> {
    let arm = &taken.inputs.height;
    let moved = sway(&worst.section, arm, &taken.inputs.wood.stiffness(worst.size)?)?;
    Judged::of(moved, sway_limit(arm)?)
}

fn sway_line(top: &Judged) -> Line {
    detail([
        say("Its top moves "),
        inches(&top.demand),
        say(" of the "),
        inches(&top.capacity),
        say(" published, with its foot held still; on real decks the rim turns and it moves far more."),
    ])
}

/// "It has a section modulus of 5.053 in^3 and needs 8.304; the smallest square post inside: 6x6."
fn needs(worst: &Case, taken: &Taken) -> Result<Line, Refused> {
    let allowed = taken.inputs.wood.bending(worst.size, Lie::Edge)?;
    let needed = modulus_needed(&moment(&taken.inputs.height)?, &allowed)?;
    let push = worst.stand.push();
    let has = worst.section.modulus(push)?;
    let mut spans = vec![say("Its section modulus that way is "), fig(&has), say(", and "), fig(&needed)];
    spans.push(say(" is asked at what its wood is allowed"));
    match smallest(push, &taken.inputs.height, &taken.inputs.wood) {
        Some(size) => spans.extend([
            say("; the smallest square post inside the figures is a "),
            Span::Phrase(size.to_string()),
            say("."),
        ]),
        None => spans.push(say("; no square post to 12 in. is inside the figures.")),
    }
    Ok(detail(spans))
}

/// The smallest square post whose bending at the deck stays inside what the wood is allowed.
fn smallest(push: Push, height: &Fig, wood: &Wood) -> Option<Lumber> {
    let holds = |size: &Lumber| {
        let (side, _) = size.dressed()?;
        let side = Fig::length(side, Why::Table("dressed dry size of the post", size.table()));
        let bends = Bends::of(&Leg::Whole.section(&side).ok()?, push, height, *size, wood).ok()?;
        bends.long.holds().then_some(())
    };
    [4, 6, 8, 10, 12].map(|n| Lumber::by(n, n)).into_iter().find(|size| holds(size).is_some())
}

/// How big a post the job's push asks for, whichever way its posts are pushed.
pub(in crate::session::answer) fn how_big(job: &Job) -> Option<Line> {
    let taken = Taken::of(job, &StrengthAsk::of(crate::grammar::ask::About::Post));
    let corner = taken.stands.iter().any(Stand::is_corner);
    let push = if corner { Push::Any } else { Push::Held };
    let size = smallest(push, &taken.inputs.height, &taken.inputs.wood)?;
    Some(detail([
        say("By arithmetic the smallest square post whose bending at the deck is inside the figures at "),
        inches(&taken.inputs.height),
        say(" is a "),
        Span::Phrase(size.to_string()),
        say(if corner { ", corner posts pushed any way; " } else { ", pushed outward; " }),
        taken.wood_words(),
        say(". A 4x4 is what the published guide shows: ask \"is a 4x4 enough\" for its figures."),
    ]))
}
