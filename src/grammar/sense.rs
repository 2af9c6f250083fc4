//! What a word may mean: the senses of the lexicon in `grammar/words.toml`.

use super::draft::Way;
use crate::job::{Basis, End, Fixing, JoistsRun, Mount, Species, View};

/// One sense of a word or of a few words that belong together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// A place a run can end at.
    End(End),
    /// Two of a place: "corners", "walls".
    Ends(End),
    /// A part of the guard or deck.
    Part(Part),
    /// A side of the deck; also a run's name.
    Side(Side),
    /// A spot along a run.
    Spot(Spot),
    /// Clear, on centre, out to out.
    Basis(Basis),
    /// A dimension or limit word: "high", "apart", "max".
    Cue(Cue),
    /// Something to do: change, drop, keep, suppose.
    Verb(Verb),
    /// Arithmetic.
    Op(Op),
    /// The start of a question.
    Ask(Ask),
    /// A cue of a question about span or strength.
    Strong(Strong),
    /// A wood.
    Wood(Species),
    /// How posts are mounted.
    Mount(Mount),
    /// What holds them.
    Fixing(Fixing),
    /// A unit, asked for or left over.
    Unit(Unit),
    /// "not", "no", "without", "except": never skipped.
    Not,
    /// "almost", "half of": changes what it touches; never skipped.
    Qualifier,
    /// A word of another trade or of no trade here.
    Foreign(Foreign),
    /// Which way a side of an outline goes.
    Way(Way),
    /// A deck's shape.
    Shape,
    /// Standing by itself, against no house.
    Free,
    /// Which way joists run.
    Joists(JoistsRun),
    /// From where left and right are told.
    View(View),
    /// Parts of an inch a tape is read to.
    Parts(u8),
    /// "the first one", "second run": a run by its number.
    Nth(u32),
    /// What a question may be about: the id of a limit.
    Topic(&'static str),
    /// "because", "cause", "since": the rest is a reason.
    Reason,
    /// A link: "and", "the", "of".
    Link,
    /// Filler: "please", "ok", "umm".
    Fill,
    /// A sound: "um", "well"; never a part of anything.
    Hum,
}

/// Parts of a guard and of the deck under it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// run, section, stretch
    Run,
    /// several runs
    Runs,
    /// guard, railing
    Guard,
    /// rail alone: may be the guard or a member
    Rail,
    /// the top rail or cap
    TopRail,
    /// the bottom rail
    BottomRail,
    /// handrail: often meant for the whole guard
    Handrail,
    /// post
    Post,
    /// a corner post
    CornerPost,
    /// line posts
    LinePost,
    /// every other post
    Rest,
    /// an end post
    EndPost,
    /// a gate post
    GatePost,
    /// a sleeve over a post
    Sleeve,
    /// baluster
    Baluster,
    /// bay
    Bay,
    /// gate
    Gate,
    /// stairs
    Stairs,
    /// landing
    Landing,
    /// deck
    Deck,
    /// opening: gap, bay, stair or gate by its size
    Opening,
    /// gap
    Gap,
    /// notch
    Notch,
    /// rim
    Rim,
    /// end of a run
    End,
    /// bracket at the wall
    Bracket,
    /// a corner walked round
    Corner,
    /// joists, decking and other framing
    Framing,
    /// risers
    Riser,
    /// the rise, the hole, the stringers: other parts of a stair
    StairPart,
    /// a gate's leaf, its hinges and latch
    Leaf,
    /// joists
    Joist,
    /// the decking's boards
    Decking,
    /// blocking between joists
    Blocking,
    /// the trim board over the rim
    Skirt,
    /// the edge of the decking
    Edge,
    /// a strip of deck: a walkway, a balcony
    Strip,
    /// the line balusters and posts stand on
    Line,
    /// the whole layout
    Layout,
    /// a note
    Note,
}

/// Sides of a deck. Also what runs get called.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// the front
    Front,
    /// the back
    Back,
    /// the left
    Left,
    /// the right
    Right,
    /// the north side
    North,
    /// the south side
    South,
    /// the east side
    East,
    /// the west side
    West,
    /// the side toward the yard
    Yard,
    /// the side toward the water
    Pool,
    /// the side toward the street
    Street,
    /// some side, not named
    Side,
    /// the other side
    Other,
    /// the long one
    Longest,
    /// the short one
    Shortest,
    /// a run called so by the builder: "the creek side"
    Named(Name),
}

/// A run's own name, as typed: a few words.
pub type Name = arrayvec::ArrayString<32>;

impl Side {
    /// The name a run gets from it.
    pub fn name(&self) -> &str {
        match self {
            Side::Front => "front",
            Side::Back => "back",
            Side::Left => "left",
            Side::Right => "right",
            Side::North => "north",
            Side::South => "south",
            Side::East => "east",
            Side::West => "west",
            Side::Yard => "yard side",
            Side::Pool => "pool side",
            Side::Street => "street side",
            Side::Side => "side",
            Side::Other => "other side",
            Side::Longest => "the long one",
            Side::Shortest => "the short one",
            Side::Named(name) => name,
        }
    }
}

/// Spots along a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// the middle
    Middle,
    /// the top: of the stairs
    Top,
    /// the bottom: of the stairs
    Bottom,
    /// an end, not said which
    End,
    /// both ends
    BothEnds,
    /// the far end: the to-end
    Far,
    /// the near end: the from-end
    Near,
    /// the other end: not the one spoken of
    Other,
}

/// Dimension and limit words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cue {
    /// long
    Long,
    /// wide
    Wide,
    /// high, tall, height
    High,
    /// deep
    Deep,
    /// out from the house
    Out,
    /// along the house
    Along,
    /// apart, spacing
    Apart,
    /// every so much
    Every,
    /// at most
    Most,
    /// at least
    Least,
    /// under the bottom rail
    Under,
    /// above the ground
    Above,
    /// outside width
    Square,
    /// already standing
    Already,
    /// overhang
    Overhang,
}

/// Things to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verb {
    /// make it, call it, change it to
    Change,
    /// no wait, sorry, I meant: what follows replaces
    Repair,
    /// drop, scratch, lose
    Drop,
    /// add, put, hang
    Put,
    /// use, go with
    Use,
    /// keep it, do that
    Keep,
    /// leave it, never mind
    Leave,
    /// what if, suppose
    Suppose,
    /// undo
    Undo,
    /// redo
    Redo,
    /// swap
    Swap,
    /// note
    Note,
    /// runs, goes, starts
    Goes,
    /// stops, ends, dies
    Stops,
    /// begins, picks up
    Starts,
    /// matches, same as
    Same,
    /// hello, thanks
    Hello,
    /// thanks, call it a day
    Thanks,
    /// help
    Help,
    /// cut, mark
    Cut,
    /// jogs
    Jog,
    /// move, shift
    Move,
    /// name, label
    Name,
    /// begins another deck
    NewDeck,
    /// begins everything again
    StartOver,
    /// bumps out
    Bump,
    /// clips a corner
    Clip,
    /// held back from a corner
    HoldBack,
    /// let into the deck
    LetIn,
}

/// Arithmetic words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Op {
    /// plus
    Plus,
    /// add A and B
    Add,
    /// minus, less
    Less,
    /// take A off B
    Take,
    /// A off B, A from B
    Off,
    /// times
    Times,
    /// divided by
    Over,
    /// split, divide A by / into B
    Split,
    /// into
    Into,
    /// ways, spaces, parts
    Ways,
    /// half
    Half,
    /// third
    Third,
    /// quarter
    Quarter,
    /// doubled
    Double,
    /// tripled
    Triple,
    /// halved
    Halved,
    /// middle of
    Middle,
    /// diagonal
    Diagonal,
    /// total
    Total,
    /// bigger
    Bigger,
    /// smaller
    Smaller,
    /// difference between
    Difference,
    /// convert
    Convert,
    /// come out of
    OutOf,
    /// a stick of stock
    Stick,
    /// pieces
    Pieces,
}

/// The start of a question.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// how many
    HowMany,
    /// how far
    HowFar,
    /// how long
    HowLong,
    /// how wide
    HowWide,
    /// how high
    HowHigh,
    /// how much
    HowMuch,
    /// what, what is
    What,
    /// where
    Where,
    /// which
    Which,
    /// why
    Why,
    /// says who
    SaysWho,
    /// can I, is it ok, do I need
    May,
    /// show me
    Show,
    /// what have I told you
    Told,
    /// actually, in real life
    Actual,
}

/// What a question about span and strength turns on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strong {
    /// sag, bounce, flex
    Sag,
    /// strong enough, hold
    Hold,
    /// get away with, let me
    Allow,
    /// stretch
    Stretch,
    /// the longest span
    Longest,
    /// stiffer
    Stiffer,
    /// what is left of a notched post
    Left,
    /// the upper bolt, the hold-down
    Bolt,
    /// laid on top of
    OnTop,
    /// laid flat
    Flat,
    /// on edge
    Edge,
    /// the cap
    Cap,
    /// bigger posts
    BigPosts,
    /// the 200 lb push
    Load,
    /// a load stands ten minutes
    TenMinutes,
    /// a load stands ten years
    TenYears,
    /// wet in service
    Wet,
    /// dry in service
    Dry,
    /// incised
    Incised,
    /// the wood, the lumber
    Stuff,
    /// safe
    Safe,
    /// a wood or stuff without design values here
    OtherWood,
}

/// Units said alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// inches
    Inches,
    /// feet
    Feet,
    /// millimetres
    Millimetres,
    /// centimetres
    Centimetres,
    /// metres
    Metres,
}

/// What is not this trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foreign {
    /// other work on a house: roofing, concrete, wiring, fences
    Trade,
    /// signing off, stamping, certifying
    SignOff,
    /// price, pay, weather, small talk
    Else,
}

impl Sense {
    /// True for a word that must not be left over in silence: with it unread
    /// nothing is told.
    pub fn is_heavy(self) -> bool {
        !matches!(self, Sense::Link | Sense::Fill | Sense::Hum | Sense::Reason | Sense::Topic(_))
    }
}

/// A row of a table of spellings: its words, and what they are.
pub(super) type Row<T> = (&'static [&'static str], T);

/// The rows of a table whose first word is this one, longest first; `from` says where the
/// rows of each first byte begin.
pub(super) fn spelled_from<T>(table: &'static [Row<T>], from: &[usize; 257], first: &str) -> &'static [Row<T>] {
    let near = beginning_as(table, from, first);
    let start = near.partition_point(|row| row.0[0] < first);
    let end = start + near[start..].partition_point(|row| row.0[0] == first);
    &near[start..end]
}

/// The rows whose first byte is the word's.
fn beginning_as<T>(table: &'static [Row<T>], from: &[usize; 257], word: &str) -> &'static [Row<T>] {
    word.as_bytes().first().map_or(&[], |b| &table[from[usize::from(*b)]..from[usize::from(*b) + 1]])
}

/// The spellings of the lexicon that begin with the word's first byte.
pub(super) fn terms_beginning_as(word: &str) -> &'static [Row<Sense>] {
    beginning_as(TERMS, &TERMS_FROM, word)
}

/// The spellings of the lexicon whose first word is this one, longest first.
pub(super) fn terms_from(first: &str) -> &'static [Row<Sense>] {
    spelled_from(TERMS, &TERMS_FROM, first)
}

include!(concat!(env!("OUT_DIR"), "/words.rs"));
