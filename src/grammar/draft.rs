//! What a line was read as, before the conversation resolves "it", bare numbers and
//! untold ends.

use super::ask::{Apart, Counted, StrengthAsk};
use super::choice::ChoiceOf;
use super::flight_draft::FlightDraft;
use super::goods::{OrderDraft, TakeoffDraft};
use super::sense::{Side, Spot};
use super::stair_draft::{HungSaid, StairSaid, StairsWhole};
use super::{Query, Talk};
use crate::job::{
    Basis, Blocking, DeckFact, End, Fixing, Foot, HouseEnd, JoistsRun, Mount, Order, PostRole, SlotId, Stage,
    TimberTold, View,
};
use crate::measure::{Lumber, Measure};
use crate::sums::Sum;
use std::ops::Range;

/// One reading of a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// What it says, in order.
    pub clauses: Vec<Clause>,
    /// Opened as a correction ("no, make it", "I meant").
    pub corrects: bool,
    /// Opened with a "no".
    pub denies: bool,
    /// Ends as a correction ("thirteen, I meant"): one if there is something to correct.
    pub trails: bool,
    /// Opened as a what-if.
    pub supposes: bool,
    /// Items that took no part.
    pub left: Vec<Left>,
    /// Words taken for listed ones they are a slip away from.
    pub near: Vec<Range<usize>>,
    /// Words taken for a number they sound like, or for a fraction whose slash was lost.
    pub heard: Vec<Range<usize>>,
    /// How unlikely it is: what was left, what was guessed, how many pieces it took.
    pub cost: u32,
    /// Why it cannot stand, if it cannot.
    pub clash: Option<Clash>,
}

/// Why pieces that each read do not make a reading.
#[derive(Clone, Debug, PartialEq)]
pub enum Clash {
    /// A second value for what has one, with nothing between to say which holds.
    Twice(Range<usize>),
    /// Pieces that each read and do not belong in one line.
    Apart,
}

/// Words that took no part.
#[derive(Clone, Debug, PartialEq)]
pub struct Left {
    /// Which words.
    pub words: Range<usize>,
    /// How much it matters.
    pub weight: Weight,
}

/// How much a word left over matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Filler, links, known noise: passed over.
    Light,
    /// Unknown, away from every measure and cue: named first, then applied.
    Unknown,
    /// Unknown and touching a measure or a cue: asked about.
    Touching,
    /// A number, negation, place, part ...: nothing is told.
    Heavy,
}

/// One thing a line says.
#[derive(Clone, Debug, PartialEq)]
pub enum Clause {
    /// Of a run.
    Run(RunDraft),
    /// A length for one slot.
    Slot(SlotId, Measure),
    /// "the rail is 36": a run's length or the height, the words do not say.
    RailIs(Measure),
    /// A post size.
    Post(PostRole, Lumber),
    /// A post size, not said of which posts.
    Lumber {
        /// The size.
        size: Lumber,
        /// The one said to be wrong ("6x6, not 4x4").
        not: Option<Lumber>,
    },
    /// How posts are mounted.
    Mount(Mount),
    /// What holds them.
    Fixing(Fixing),
    /// What stands at the house.
    HouseEnd(HouseEnd),
    /// Whether the guard closes off a pool.
    Pool(bool),
    /// No notch.
    NoNotch,
    /// A fact of the posts' feet.
    Foot(Foot),
    /// A notch so deep in posts of that size, at the deck or up at the rail.
    Notched {
        /// How deep.
        deep: Measure,
        /// The posts' size, where said.
        post: Option<Lumber>,
        /// Up top, for the rail.
        at_rail: bool,
    },
    /// Lumber the rim is of.
    RimOf(Lumber),
    /// Lumber the cap on the posts is of, lying flat.
    CapOf(Lumber),
    /// Figures read to this part of an inch.
    Tape(u8),
    /// The deck's sides, along the house and out, either untold.
    Deck(Option<Measure>, Option<Measure>),
    /// One side of an outline walked: which way, how far; no length for the last one home.
    Walk {
        /// Which way it goes.
        way: Way,
        /// How far.
        length: Option<Measure>,
        /// The side it is on, where said.
        on: Option<Side>,
    },
    /// Stairs off a side of the deck.
    StairsOn {
        /// The side.
        on: Side,
        /// Their width.
        width: Option<Measure>,
        /// Where along it.
        at: Option<Along>,
    },
    /// Where along the run spoken of its stairs are.
    StairsAlong(Along),
    /// Said of stairs, beyond a width and a place.
    Stair(StairSaid),
    /// Several stairs told whole, or one more of them.
    MoreStairs {
        /// Each of them.
        each: Vec<StairsWhole>,
        /// Added to those that stand.
        more: bool,
    },
    /// Said of how a gate's leaf is hung.
    Hung(HungSaid),
    /// A shape named; the walk is still to come.
    Shape,
    /// The baluster line so far outside the decking's edge.
    LineOutside(Measure),
    /// What is told of the joists.
    Joists(JoistDraft),
    /// Blocking at the posts.
    Blocking(Blocking),
    /// From where left and right are told.
    View(View),
    /// No stairs at all on the deck.
    NoStairs,
    /// A fact of the deck as a whole.
    Whole(DeckFact),
    /// "12 by 20, long side on the house": two sizes, and which lies along the house.
    DeckBy(Measure, Lies),
    /// A landing or a deck by itself: how long, how far the other way, and whether a house
    /// stands at one side; `None` where that was not said.
    Alone {
        /// One size, or both as "4x5".
        along: Measure,
        /// The other.
        out: Option<Measure>,
        /// True where no house stands at it.
        free: Option<bool>,
    },
    /// A walkway: how wide, how long.
    Strip {
        /// Its width, or both sizes as "4x18".
        wide: Measure,
        /// Its length.
        long: Option<Measure>,
    },
    /// "rail on the yard side only": the one side of a strip with a guard; both where `None`.
    RailOn(Option<Side>),
    /// A guard on so many sides of the deck; `None` for all of them.
    RailRound(Option<u16>),
    /// "front bumps out 2 ft, 8 ft wide, in the middle".
    Bump(BumpDraft),
    /// "the left corner is clipped at 45, 4 ft".
    Clip(ClipDraft),
    /// The stairs spoken of are let into the deck so deep.
    Recess(Measure),
    /// A size of the deck last spoken of: along, out.
    DeckMore(Option<Measure>, Option<Measure>),
    /// Something to drop.
    Drop(DropDraft),
    /// Two fields change places.
    Swap,
    /// One run like another.
    Same {
        /// The run told, if named.
        what: Option<Side>,
        /// The run it is like, if named.
        like: Option<Side>,
    },
    /// "4 max": a limit, not said of what.
    Most(Measure),
    /// "5 to 6 feet apart": either of two, for one slot.
    Either(SlotId, Measure, Measure),
    /// "20 foot rail with a corner in it": where it falls is not told.
    Bent,
    /// "6 past the stairs": how far a guard goes on beyond a place.
    Past(Measure, End),
    /// The ground at two heights below the deck, at two places.
    TwoGrounds(Measure, Measure),
    /// "make it bigger": by how much is not told.
    HowMuch,
    /// "move the gate": to where is not told.
    Move,
    /// "36 wide" of nothing named.
    Wide(Measure),
    /// "66 posts": lumber whose x went missing, or a count.
    LostX(Lumber),
    /// A height over a gap: to the top, or of a panel standing on the gap.
    HeightOverGap(Measure, Measure),
    /// A post told without its place.
    AddPost,
    /// A bare spot in reply or correction: "I meant right".
    Spot(SpotDraft),
    /// A part said to be fine as it is.
    Fine,
    /// A question about runs: which, if named.
    Ask(AskDraft),
    /// A resolved question.
    Query(Query),
    /// Arithmetic.
    Sum(Sum),
    /// A note, by its words.
    Note(Range<usize>),
    /// Conversation.
    Talk(Talk),
    /// "keep the 14": the length to keep.
    KeepLength(Measure),
    /// "cut it M": a measure to cut to.
    Cut(Measure),
    /// A question about span or strength.
    Strength(StrengthDraft),
    /// The last such question with one thing else.
    StrengthMore(StrengthDraft),
    /// The wood, or how the rail is made up.
    Timber(Vec<TimberTold>),
    /// Something for the parts, the saw or the yard.
    Order(OrderDraft),
    /// A few such things, each told in full.
    Orders(Vec<Order>),
    /// A question about balusters, parts, cuts or cost.
    Takeoff(TakeoffDraft),
    /// Whose rules hold.
    Law(LawDraft),
    /// A question that only engines yet to come can answer.
    NotYet(&'static str),
    /// "why" with words of its own.
    Why(WhyDraft),
    /// A question about stairs or a gate.
    Flight(FlightDraft),
    /// Where posts are wanted or not wanted.
    Choice(ChoiceOf),
    /// "4 steps in the middle": a count with a place, and no width.
    StepsCounted,
    /// "5 posts": so many, on the run spoken of.
    PostsCounted(u16),
    /// "one more bay", "one less post": on the run spoken of.
    BaysMore {
        /// More, or fewer.
        more: bool,
        /// How many.
        by: u16,
        /// On that side, where one is named.
        on: Option<Side>,
    },
    /// "gap 1 1/2": between balusters or under the rail, the words do not say.
    GapOf(Measure),
    /// "bay 2 is 4 ft": a bay's length, which its posts' places make.
    BayIs,
    /// A stage of the work done, or not done after all.
    Done(Stage, bool),
}

/// A "why" with words of its own, as said.
#[derive(Clone, Debug, PartialEq)]
pub enum WhyDraft {
    /// "why not 10 ft".
    NotBay(Measure, Apart),
    /// "why not 2 bays".
    NotBays(u16),
    /// "why a post at 5 ft 2".
    PostAt(Measure),
    /// "why a post there".
    LinePosts,
    /// "why 58", "where'd you get 58 from".
    Figure(Measure),
    /// "why 13 balusters".
    Counted(Counted, u16),
    /// "why can't i notch it".
    Notch,
}

/// A strength question as said.
#[derive(Clone, Debug, PartialEq)]
pub struct StrengthDraft {
    /// All but its measures.
    pub ask: StrengthAsk,
    /// A clear span.
    pub span: Option<Measure>,
    /// The guard's height.
    pub height: Option<Measure>,
    /// The span was said on centre.
    pub on_centre: bool,
}

/// What is told of the joists; any of it may be missing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JoistDraft {
    /// Their spacing on centre.
    pub spacing: Option<Measure>,
    /// Where the first one stands.
    pub first: Option<Measure>,
    /// Which way they run.
    pub way: Option<JoistsRun>,
}

/// Which of a deck's two sizes lies along the house.
#[derive(Clone, Debug, PartialEq)]
pub enum Lies {
    /// The longer.
    Longer,
    /// The shorter.
    Shorter,
    /// The one that is this.
    This(Measure),
}

/// A part of a side that stands out from it.
#[derive(Clone, Debug, PartialEq)]
pub struct BumpDraft {
    /// The side.
    pub side: Option<Side>,
    /// How far it stands out.
    pub by: Measure,
    /// How wide it is.
    pub wide: Option<Measure>,
    /// Where along the side.
    pub at: Option<Along>,
}

/// A corner cut off.
#[derive(Clone, Debug, PartialEq)]
pub struct ClipDraft {
    /// On which side of the deck the corner is, where said.
    pub side: Option<Side>,
    /// The angle, in degrees.
    pub degrees: Option<u16>,
    /// How much: of each side, or along the cut.
    pub length: Measure,
}

/// A question about the layout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AskDraft {
    /// All of it.
    Layout(Option<Which>),
    /// The marks from an end named; `None` for the other end.
    MarksFrom(Option<End>),
    /// How many posts.
    Posts(Option<Which>),
    /// How far between.
    Bays(Option<Which>),
    /// How long a run is.
    Length(Option<Which>),
    /// The gap between balusters: of the job, of the opening asked about last, or the rule for it.
    Gaps,
}

/// Which run a question is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Which {
    /// The one called by that side.
    Side(Side),
    /// The one of that number.
    Number(u32),
}

/// Where along a side, as said.
#[derive(Clone, Debug, PartialEq)]
pub enum Along {
    /// In the middle.
    Middle,
    /// Tight to the end that is this.
    AtEnd(End),
    /// So far from an end.
    Off(Measure, Mark),
    /// Tight to the left or right end.
    AtSide(Side),
    /// Not said.
    Untold,
}

/// An end of a side, by what is there or by its side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Mark {
    /// The end that is this.
    End(End),
    /// The left or right end.
    Side(Side),
}

/// Which way a side of an outline goes, seen standing at the house looking out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Straight out from the house: the first side.
    Start,
    /// Out, away from the house.
    Out,
    /// Across to the right.
    Right,
    /// Back toward the house.
    In,
    /// Across to the left.
    Left,
    /// "right 10'": to that side, where no run goes by that name.
    Side {
        /// To the right.
        right: bool,
    },
    /// A turn from the side before, walking.
    Turn {
        /// To the right.
        right: bool,
        /// By so many degrees.
        degrees: u16,
    },
}

/// Whose rules hold, before bare numbers get their unit.
#[derive(Clone, Debug, PartialEq)]
pub enum LawDraft {
    /// An edition of the IRC.
    Edition(crate::limits::Edition),
    /// A place.
    Place(&'static crate::limits::Place),
    /// What the building department asks.
    Local(crate::job::Local, Measure),
}

/// What to drop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DropDraft {
    /// The gate.
    Gate,
    /// The stairs.
    Stairs,
    /// A run by its side.
    Side(Side),
    /// A run by its number.
    Run(u32),
    /// The line posts.
    LinePosts,
    /// The last note, or one by number.
    Note(Option<u32>),
    /// The run spoken of.
    It,
    /// A run, not said which.
    SomeRun,
    /// The run told last.
    Last,
}

/// A spot along a run, as said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SpotDraft {
    /// A listed spot.
    Spot(Spot),
    /// On one side.
    Side(Side),
    /// At the end that is this.
    End(End),
}

/// A run as said: any of it may be missing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RunDraft {
    /// Said as a new one ("a 10 ft run").
    pub run_word: bool,
    /// Said as "it".
    pub it: bool,
    /// Said as "run 2".
    pub number: Option<u32>,
    /// The side it is called by.
    pub name: Option<Side>,
    /// Its length.
    pub length: Option<Measure>,
    /// A length said to be wrong ("not 12").
    pub not: Option<Measure>,
    /// An end said to be wrong ("not the corner").
    pub not_end: Option<End>,
    /// So much longer, or shorter, than it stands.
    pub grow: Option<(Measure, Sizing)>,
    /// What the length was measured between.
    pub basis: Option<Basis>,
    /// The end it starts from.
    pub from: Option<End>,
    /// The end it goes to.
    pub to: Option<End>,
    /// Ends read from a place said alone ("house, 14-6, corner").
    pub lone: bool,
    /// A gate: `Some(None)` for none.
    pub gate: Option<Option<GateDraft>>,
    /// Stairs: `Some(None)` for none.
    pub stairs: Option<Option<StairDraft>>,
    /// A bay count: `Some(None)` for the fewest again.
    pub bays: Option<Option<u16>>,
    /// The words it was read from.
    pub words: Range<usize>,
}

/// Which way a length changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sizing {
    /// Longer.
    Longer,
    /// Shorter.
    Shorter,
}

/// A gate as said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct GateDraft {
    /// Its width.
    pub width: Option<Measure>,
    /// Where it hangs.
    pub at: Option<SpotDraft>,
}

/// Stairs as said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StairDraft {
    /// Their width.
    pub width: Option<Measure>,
    /// Where they are.
    pub at: Option<StairSpot>,
}

/// Where stairs are, as said.
#[derive(Clone, Debug, PartialEq)]
pub enum StairSpot {
    /// In the middle of the run.
    Middle,
    /// So far from the left or right end.
    Off(Measure, Side),
    /// At a spot or side.
    At(SpotDraft),
    /// Between two runs.
    Between,
}
