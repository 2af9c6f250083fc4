//! Answers about stairs, their guard and handrail, and gates.

mod gate;
mod guard;
mod handrail;
mod infill;
mod known;
mod limits;
mod rise;
mod say;
mod trouble;

use super::Figs;
use crate::grammar::ask::{FlightAsk, FlightWhat, Given};
use crate::job::{Fact, Job};
use crate::reply::{Line, Reply, Role};
use known::Known;
use trouble::{Trouble, clash_spans, said};

/// An answer, or why there is none.
type Answer = Result<(Reply, Figs), Trouble>;

/// The answer to a question about a flight or a gate.
pub(in crate::session) fn flight(job: &Job, ask: &FlightAsk) -> (Reply, Figs) {
    let answered = Known::of(job, &ask.given).and_then(|known| answered(&known, ask.what));
    answered.unwrap_or_else(|trouble| (said(&trouble), Vec::new()))
}

fn answered(known: &Known, what: FlightWhat) -> Answer {
    use FlightWhat::{
        BalusterLength, Balusters, Brace, Check, Gap, GateHeight, GatePosts, Grip, Handrail, HandrailEnds,
        HandrailHeight, HandrailSpace, Landing, LatchHeight, Leaf, LeafBalusters, Lift, OneFlight, OpenRisers, Pool,
        PostHeights, Posts, RailLength, Rake, Rise, Run, StairRailHeight, Steps, Swing, TopPost, TopPostPlace,
        Triangle, Wide, WidthLeft,
    };
    match what {
        Steps => rise::steps(known),
        Rise => rise::total(known),
        Run => rise::run(known),
        Rake => rise::rake(known),
        Check => rise::check(known),
        Landing => rise::landing(known),
        Gap => infill::gap(known),
        BalusterLength => infill::length(known),
        RailLength => guard::rail_length(known),
        Posts => guard::posts(known),
        PostHeights => guard::heights(known),
        TopPost => guard::top_post(known),
        Balusters => infill::balusters(known),
        Triangle => infill::triangle(known),
        Handrail => handrail::needed(known),
        HandrailHeight => handrail::height(known),
        HandrailEnds => handrail::ends(known),
        Grip => handrail::grip(known),
        WidthLeft => handrail::width_left(known),
        Leaf => gate::leaf(known),
        LeafBalusters => gate::balusters(known),
        Brace => gate::brace(known),
        Swing => gate::swing(known),
        Wide => gate::wide(known),
        GatePosts => gate::posts(known),
        Pool => gate::pool(known),
        GateHeight => gate::height(known),
        LatchHeight => gate::latch(known),
        OpenRisers => limits::open_risers(known),
        OneFlight => limits::one_flight(known),
        Lift => infill::lift(known),
        StairRailHeight => handrail::stair_rail(known),
        TopPostPlace => guard::top_post_place(known),
        HandrailSpace => handrail::space(known),
    }
}

/// What in a job's stairs or gates disagrees, said: nothing is told that makes them so.
pub(in crate::session) fn disagrees(job: &Job) -> Option<Line> {
    let nothing = Given::default();
    let known = Known::of(job, &nothing).ok();
    // A riser and a tread alone may be a ladder already.
    let steep = |known: &Known| known.rake().err();
    let trouble = known.and_then(|known| known.flight().err().filter(Trouble::is_a_clash).or_else(|| steep(&known)));
    match trouble {
        Some(Trouble::Unready(crate::stairs::Unready::Clash(clash))) => {
            Some(Line::new(Role::Answer, clash_spans(&clash)))
        }
        _ => gate::disagrees(job),
    }
}

/// What facts of the stairs come to, where one was told: the risers, the rise, the slope.
pub(in crate::session) fn made(job: &Job, facts: &[Fact]) -> Option<Line> {
    let of_a_flight = facts.iter().any(|f| matches!(f, Fact::Flight(_)));
    let nothing = Given::default();
    let known = Known::of(job, &nothing).ok().filter(|_| of_a_flight)?;
    let flight = known.flight().ok().filter(|_| !known.rise_from_ground())?;
    Some(rise::in_a_line(&flight))
}
