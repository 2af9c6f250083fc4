//! Pieces: stretches of items that say one thing. Each piece is a small nom grammar
//! and claims only the words of its own pattern, where they stand.

mod asks;
pub(in crate::grammar) mod atoms;
mod bare;
mod bumps;
mod choices;
mod decks;
mod done;
mod drops;
mod edge;
mod ends;
mod feet;
mod flight;
mod flights;
mod framing;
mod gates;
mod ground;
mod hung;
mod known;
mod law;
mod lengths;
mod noise;
mod notch;
mod notched;
mod order;
mod phrase;
mod settings;
mod stair_moves;
mod stair_sides;
mod strength;
mod takeoff;
mod talk;
mod timber;
mod walks;
mod why;
mod work;

use super::draft::{Clause, GateDraft, Sizing, SpotDraft, StairDraft};
use super::items::Item;
use super::sense::{Part, Sense, Side, Verb};
use crate::job::{Basis, End};
use crate::measure::Measure;
use atoms::{In, Out};
pub use known::Known;

/// What one piece says.
#[derive(Clone, Debug, PartialEq)]
pub enum Say {
    /// Opens a correction that makes something so: "make it".
    Change,
    /// Takes back what came just before: "no wait", "I mean". Hard: a "no" that must
    /// have something to take back.
    Repair {
        /// "no", "scratch that".
        hard: bool,
    },
    /// Opens a what-if.
    Suppose,
    /// The end a run starts from.
    From(End),
    /// The end it goes to.
    To(End),
    /// Both ends.
    Both(End, End),
    /// A place standing alone.
    Lone(End),
    /// An end said to be wrong.
    NotEnd(End),
    /// An end said to be wrong, and what is there instead.
    Instead(End, End),
    /// A place with its "at", of the gate said before it.
    At(SpotDraft),
    /// "that's the left side": a name for the run spoken of.
    Called(Side),
    /// A length, with what it was measured between.
    Length {
        /// The length.
        measure: Measure,
        /// What it was measured between.
        basis: Option<Basis>,
        /// A word for the run stood by it.
        run: bool,
        /// Said of "it".
        it: bool,
    },
    /// A length said to be wrong.
    NotLength(Measure),
    /// So much longer or shorter than it stands.
    Grow(Measure, Sizing),
    /// "36 wide", of the gate or stairs just said.
    Wide(Measure),
    /// What a length was measured between, alone.
    Basis(Basis),
    /// A word for a run, with its number if said.
    RunWord(Option<u32>),
    /// Several runs are coming.
    Runs,
    /// The side a run is called by.
    Name(Side),
    /// A gate, or none.
    Gate(Option<GateDraft>),
    /// Stairs, or none.
    Stairs(Option<StairDraft>),
    /// A bay count; `None` for the fewest.
    Bays(Option<u16>),
    /// Anything that stands by itself.
    Clause(Clause),
    /// A break between things: a comma, "and", "then".
    Break,
    /// Words known to carry nothing here: named as unused.
    Noise,
}

/// A piece: what it says, where it ends, how unlikely it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// One past its last item.
    pub end: usize,
    /// What it says.
    pub say: Say,
    /// Added to the reading's cost.
    pub cost: u32,
}

/// The cost of one plain piece.
pub const PIECE: u32 = 10;

/// The cost of a break: less than leaving the comma over.
const BREAK: u32 = 2;

/// Every piece that starts at an item.
pub fn pieces_at(items: &[Item], at: usize, known: &mut Known<'_>) -> Vec<Piece> {
    // Those beside look over the whole line.
    known.effort().spend(items.len());
    let said = known.or_read(&items[at..]);
    let said = said.iter().filter(|s| !led_to(items, at, &s.say));
    let mut found: Vec<Piece> = said.map(|s| Piece { end: at + s.end, ..s.clone() }).collect();
    let beside = [
        noise::noise(items, at),
        ends::lone(items, at),
        ends::length_between(items, at),
        drops::spot(items, at),
        talk::note(items, at),
        bare::bare(items, at),
        strength::more(items, at),
    ];
    found.extend(beside.into_iter().flatten().map(|(end, say, cost)| Piece { end, say, cost }));
    found
}

/// How many parsers there are.
const fn parsers() -> usize {
    PARSERS.len()
}

/// What one parser makes of the items ahead, whatever stands behind; its end counted from here.
fn read(nth: usize, ahead: In<'_>) -> Option<Piece> {
    let (parser, extra) = PARSERS.get(nth)?;
    let (rest, say) = parser(ahead).ok()?;
    let cost = if say == Say::Break { BREAK } else { PIECE + extra };
    let end = ahead.len() - rest.len();
    (end > 0).then_some(Piece { end, say, cost })
}

/// "corner > stairs 6-4": stairs behind "to" are an end, whatever follows them; and
/// "6' to the right" is a way to go, not a run's name.
fn led_to(items: &[Item], at: usize, say: &Say) -> bool {
    let before = items[..at].iter().rev().find(|i| !matches!(&*i.text, "the" | "a" | "my" | "that"));
    let led = before.is_some_and(|i| matches!(&*i.text, "to" | ">" | "from" | "toward" | "towards"));
    // "make the add stairs 5'": a change and an addition at once.
    let changing = before.is_some_and(|i| i.may_be(Sense::Verb(Verb::Change))) && &*items[at].text == "add";
    // "a free end 5 foot off the house": the run's other end, not how far the deck comes out.
    let run = |i: &Item| i.senses().iter().any(|s| matches!(s, Sense::End(_) | Sense::Part(Part::Run | Part::Guard)));
    let off_house = items[at..]
        .iter()
        .take(3)
        .any(|i| matches!(&*i.text, "off the house" | "off" | "from" | "out from" | "away from"));
    if off_house && items[..at].iter().any(run) && matches!(say, Say::Clause(Clause::Deck(..))) {
        return true;
    }
    led && matches!(say, Say::Stairs(_) | Say::Gate(_) | Say::Name(_))
        || changing && matches!(say, Say::Stairs(_) | Say::Gate(_) | Say::Grow(..))
}

type Parse = for<'a> fn(In<'a>) -> Out<'a, Say>;

/// Every piece's grammar, with what it costs beyond the plain.
const PARSERS: &[(Parse, u32)] = &[
    (done::done, 0),
    (ends::between, 0),
    (ends::from_to, 0),
    (ends::at_both_ends, 0),
    (ends::both_ends_at, 0),
    (ends::one_and_other, 0),
    (ends::ends_are, 0),
    (ends::not_end, 0),
    (ends::really, 0),
    (ends::starts, 1),
    (ends::stops, 1),
    (ends::on_a_side, 0),
    (ends::spot_is, 0),
    (ends::already_set, 0),
    (lengths::run_is, 0),
    (lengths::posts_counted, 1),
    (lengths::bays_more, 0),
    (lengths::bay_is, 0),
    (lengths::run_of, 0),
    (lengths::bare, 2),
    (lengths::it_is, 2),
    (lengths::length_is, 0),
    (lengths::basis_first, 1),
    (lengths::basis_alone, 4),
    (lengths::run_number, 0),
    (lengths::nth_run, 0),
    (lengths::grow, 0),
    (lengths::how_much, 0),
    (lengths::past, 0),
    (lengths::bent, 0),
    (lengths::wide, 3),
    (lengths::run_word_alone, 5),
    (lengths::runs_alone, 3),
    (lengths::name, 1),
    (lengths::called, 0),
    (lengths::along_side, 0),
    (lengths::not_length, 0),
    (lengths::did_i_say, 0),
    (lengths::bays, 0),
    (lengths::fewest_bays, 0),
    (gates::gate, 0),
    (gates::moved, 0),
    (gates::at, 2),
    (gates::no_gate, 0),
    (gates::gate_question, 0),
    (gates::fine, 0),
    (gates::counted_steps, 0),
    (gates::stairs, 0),
    (gates::no_stairs, 0),
    (settings::post_of, 0),
    (settings::of_post, 0),
    (settings::lumber_alone, 4),
    (settings::post_width, 0),
    (settings::most_apart, 0),
    (settings::either, 0),
    (settings::every, 0),
    (settings::height, 0),
    (settings::rail_is, 1),
    (settings::gap_under, 0),
    (settings::baluster, 0),
    (settings::gap_max, 0),
    (settings::gap_of, 3),
    (settings::mount, 0),
    (settings::fixing, 0),
    (settings::notch, 0),
    (settings::grade, 0),
    (settings::house_end, 0),
    (decks::three_sides, 0),
    (decks::deck, 0),
    (decks::deck_alone, 6),
    (settings::tape, 0),
    (settings::lost_x, 0),
    (settings::height_over_gap, 0),
    (drops::drop_it, 0),
    (drops::swap, 0),
    (drops::same, 0),
    (drops::add_post, 0),
    (asks::marks_from, 0),
    (asks::layout, 0),
    (asks::figure, 0),
    (asks::how_many, 0),
    (asks::how_far, 0),
    (asks::how_long, 0),
    (asks::beside, 0),
    (asks::actual, 0),
    (asks::why, 0),
    (why::not_so, 0),
    (why::post, 0),
    (why::figure, 0),
    (why::counted, 0),
    (why::notch, 0),
    (asks::told, 0),
    (stair_sides::stairs_on, 0),
    (stair_sides::stairs_along, 0),
    (walks::walk, 3),
    (walks::home, 0),
    (walks::shape, 0),
    (decks::deck_more, 4),
    (talk::opener, 0),
    (talk::talk, 1),
    (talk::keep_length, 0),
    (talk::cut, 0),
    (talk::stop, 0),
    (talk::put, 2),
    (flight::ask, 5),
    (flight::total_rise, 0),
    (flight::total_run, 0),
    (flight::nosing, 0),
    (flight::rail, 0),
    (flight::pitch, 0),
    (flight::between, 0),
    (flight::head, 0),
    (flight::landing, 0),
    (flight::fall, 0),
    (flight::two_grounds, 0),
    (hung::pool, 0),
    (flights::measured, 0),
    (flights::measured_behind, 2),
    (flights::hole, 0),
    (flights::were, 1),
    (flights::recess, 0),
    (flights::risers, 0),
    (flights::rise, 0),
    (flights::count_of, 4),
    (flights::risers_bare, 2),
    (flights::tread, 0),
    (flights::open, 0),
    (flights::newels, 0),
    (flights::lands, 0),
    (flights::down_to, 0),
    (stair_moves::flip, 0),
    (stair_moves::slide, 0),
    (stair_moves::moved, 1),
    (stair_moves::several, 0),
    (stair_moves::both_ends, 0),
    (stair_moves::another, 0),
    (stair_moves::one_and_one, 0),
    (stair_moves::head_at, 1),
    (stair_moves::stand, 4),
    (hung::hung, 0),
    (decks::deck_by, 0),
    (decks::alone, 0),
    (decks::whole, 0),
    (decks::no_stairs_at_all, 0),
    (decks::view, 0),
    (decks::strip, 0),
    (decks::rail_on, 1),
    (decks::rail_round, 0),
    (edge::overhang, 0),
    (edge::skirt, 0),
    (edge::rim, 0),
    (edge::line, 0),
    (edge::hold_back, 0),
    (framing::joists, 0),
    (framing::blocking, 0),
    (walks::by_side, 16),
    (bumps::bump, 0),
    (bumps::clip, 0),
    (bumps::recess, 0),
    (choices::post_at, 0),
    (choices::no_post, 0),
    (choices::landed, 0),
    (choices::moved, 0),
    (choices::mirrored, 0),
    (choices::keep_off, 0),
    (choices::back_to_even, 0),
    (choices::go, 0),
    (strength::question, 3),
    (timber::species, 0),
    (timber::grade, 1),
    (timber::service, 0),
    (timber::rail_of, 0),
    (timber::rail_lies, 0),
    (timber::cap, 0),
    (takeoff::infill, 0),
    (takeoff::on_centre, 0),
    (takeoff::gap_ok, 0),
    (takeoff::cuts, 0),
    (takeoff::buy, 0),
    (takeoff::parts, 0),
    (takeoff::parts_for, 0),
    (takeoff::cost, 0),
    (takeoff::cut_length, 0),
    (takeoff::cut_short, 0),
    (takeoff::splits, 0),
    (takeoff::by_object, 0),
    (takeoff::how_many_in_all, 0),
    (takeoff::dried, 0),
    (law::edition, 0),
    (law::place, 0),
    (law::local, 0),
    (law::asked, 0),
    (work::help_with, 0),
    (work::work, 0),
    (ground::drops_to, 0),
    (takeoff::routed, 0),
    (takeoff::measured, 0),
    (order::kerf, 0),
    (order::percent, 0),
    (order::price, 0),
    (order::labour, 0),
    (order::sold, 0),
    (order::on_hand, 0),
    (order::bays, 0),
    (order::spares, 0),
    (order::member_is, 0),
    (order::balusters_at, 0),
    (order::cut_at, 0),
    (order::bracket, 0),
    (order::start_with, 0),
    (notch::cut, 0),
    (notch::length, 0),
    (notch::steps, 0),
    (notch::draw, 0),
    (notch::bolts, 0),
    (notch::same, 0),
    (notch::tall, 0),
    (notch::may, 0),
    (notched::left, 0),
    (notched::old, 0),
    (feet::decking, 0),
    (feet::rim, 0),
    (feet::cap, 0),
    (feet::above, 0),
    (feet::top_at, 0),
    (feet::blade, 0),
    (feet::bolt, 0),
    (feet::nosing, 0),
    (feet::turned, 0),
    (feet::anyway, 0),
    (feet::notched, 0),
    (feet::no_notch, 0),
    (feet::flat_to_rim, 0),
];
