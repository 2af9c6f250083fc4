//! The table: one row for each quantity, by what it belongs to.
//!
//! A row reads: what it is called, the least and most taken (whole inches or whole units), the words it goes by, how it is asked, what is
//! usual (sixteenths; common practice, no source), the unit of a bare number, the limit it is held to, the rows said beside it, what is
//! taken where nobody told it, its plain phrase, its JSON name.

use super::row::{Alike, Default, Enough, Kind, Owner, Row};
use crate::limits as l;
use crate::limits::Sense;

macro_rules! rows {
    ($($id:ident: $row:expr,)+) => {
        /// A quantity: one row of the table.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[allow(missing_docs, reason = "each row says what it is")]
        pub enum RowId { $($id),+ }

        /// Every quantity, in the order of their ids.
        pub static ROWS: &[Row] = &[$(Row { id: RowId::$id, ..$row }),+];
    };
}

use Default::{Limit, Thick, Wide};
use Enough::{Holds, Reached};
use Owner::{Baluster, Bay, Deck, Foot, Gate, Ground, Guard, Law, Order, Post, Rail, Run, Stairs, Wood};

const fn length(owner: Owner, name: &'static str, lo: i64, hi: i64) -> Row {
    Row::length(owner, name, lo, hi)
}

const fn count(owner: Owner, name: &'static str, lo: i64, hi: i64) -> Row {
    Row::count(owner, name, lo, hi)
}

const fn choice(owner: Owner, name: &'static str) -> Row {
    Row::choice(owner, name)
}

const fn of(owner: Owner, kind: Kind, name: &'static str) -> Row {
    Row::new(owner, kind, name)
}

rows! {
    // ---- the guard, the ground below it, and whose rules hold
    HeightTop: length(Guard, "height to the top", 12, 96).nouns("guard, rail, railing").asks("how high, how tall").usual(480, 784)
        .held_to(&l::GUARD_HEIGHT).else_taken(Limit(&l::GUARD_HEIGHT)).plain("height: {} to the top").json("height_top").enough(Reached),
    GapUnder: length(Guard, "gap under", 0, 24).nouns("toe space, sweep space").usual(16, 64)
        .held_to(&l::LEVEL_GAP).plain("gap under: {}").json("gap_under"),
    GuardTotal: length(Guard, "guard in all", 1, 24000).nouns("railing, perimeter").asks("how much").feet(36, 61),
    TopUp: length(Guard, "top of the guard above ground", 12, 1300).nouns("top of the rail").asks("how high"),
    Spot: of(Guard, Kind::Place, "place spoken of").nouns("on, at, along").asks("where"),
    Unit: choice(Guard, "unit of the figures").nouns("inches, feet, mm").asks("in what"),
    Drop: length(Ground, "drop within 36 in. of the edge", 0, 1200).nouns("drop, fall-off").asks("how high, how deep")
        .held_to(&l::GUARD_TRIGGER).json("drop"),
    Grade: length(Ground, "height above ground", 0, 1200).nouns("deck, grade, ground, yard").asks("how high, how far up").usual(320, 2400)
        .plain("above ground: {}").json("grade").beside(&[RowId::Drop]),
    GradeFar: length(Ground, "height above ground at the far end", 0, 1200).nouns("at the front, at the low end").asks("how high"),
    RimTopUp: length(Ground, "top of the rim above ground", 0, 1200).nouns("top of the rim").asks("how high"),
    RimBottomUp: length(Ground, "bottom of the rim above ground", 0, 1200).nouns("bottom of the rim").asks("how high"),
    Fall: length(Ground, "fall of the ground", 0, 240).or_nothing().nouns("slope, drop, pitch").asks("how far").usual(8, 640).json("fall"),
    FallOver: length(Ground, "distance the ground falls over", 1, 1200).nouns("run").json("fall_over"),
    FallRate: length(Ground, "fall of the ground in a foot", 0, 24).nouns("slope, pitch").usual(1, 64),
    FallWithin: length(Ground, "fall of the ground within 36 in. of the edge", 0, 240),
    Pool: choice(Law, "pool").nouns("pool, hot tub").plain("pool: {}").json("pool"),
    Edition: choice(Law, "code edition").nouns("code, irc").asks("which").plain("code: {} IRC").json("code"),
    Place: choice(Law, "place").nouns("state, county, city").asks("where").plain("place: {}").json("place"),
    LocalHeight: length(Law, "height the department asks", 12, 96).plain("department asks: height {}").json("height"),
    LocalGap: length(Law, "gap the department asks", 0, 12).plain("department asks: gaps under {}").json("gap"),
    LocalDrop: length(Law, "drop the department asks", 0, 1200).plain("department asks: drop over {}").json("drop"),
    Occupancy: choice(Law, "use of the building").nouns("house, rental, restaurant").asks("what"),

    // ---- runs and bays
    RunLength: length(Run, "run", 4, 2400).nouns("run, side, stretch, length of rail").feet(36, 61).usual(384, 7680).json("length").enough(Holds(RowId::RunLength)),
    RunOverall: length(Run, "run, out to out", 4, 2400).nouns("overall, outside to outside, end to end").feet(36, 61).usual(384, 7680).enough(Holds(RowId::RunOverall)).behind("out to out"),
    RunClear: length(Run, "run, clear between its end posts", 4, 2400).nouns("inside, between the corner posts").feet(36, 61).usual(384, 7680).enough(Holds(RowId::RunClear)).behind("clear between the end posts"),
    RunCentre: length(Run, "run, center to center of its end posts", 4, 2400).nouns("center to center").feet(36, 61).usual(384, 7680).enough(Holds(RowId::RunCentre)).behind("center to center of the end posts"),
    RunFrom: of(Run, Kind::Place, "start of the run").nouns("from, starts, off").asks("where").json("from"),
    RunTo: of(Run, Kind::Place, "end of the run").nouns("to, ends, stops").asks("where").json("to"),
    RunName: of(Run, Kind::Text, "name of the run").nouns("called").asks("which").json("name"),
    Guarded: choice(Run, "guard on the run or none").nouns("guarded, open, no rail").asks("which"),
    RunBasis: choice(Run, "basis of the run's length").asks("measured how").json("basis"),
    Turn: of(Run, Kind::Angle, "turn at the corner").nouns("angle, corner").asks("how sharp"),
    Inside: of(Run, Kind::Angle, "angle inside the corner").nouns("inside angle").asks("what angle"),
    Miter: of(Run, Kind::Angle, "miter at the corner").nouns("miter, bevel").asks("what angle"),
    CornersCut: count(Run, "clipped corners", 1, 12).nouns("clipped corners"),
    CutCorner: length(Run, "clipped corner's length", 4, 240).nouns("clip, cut corner").feet(12, 18),
    CornerLeg: length(Run, "leg of the clipped corner", 4, 240).nouns("leg, each way, back").asks("how far back").feet(12, 18),
    Flank: length(Run, "guard beside the stairs or the gate", 0, 2400).nouns("beside, left over, either side, what remains").asks("how much").feet(36, 61),
    Offset: length(Run, "distance along the run", 0, 2400).nouns("from the corner, in").asks("how far").feet(36, 61).json("at"),
    OffsetFrom: of(Run, Kind::Place, "end the distance is from").nouns("from, off").asks("from where"),
    BayCount: count(Bay, "bays", 1, 200).nouns("bay, section, panel, span").usual(16, 160).json("bays").beside(&[RowId::BayClear, RowId::BayCentre, RowId::PostCount]),
    BayClear: length(Bay, "bay", 4, 240).nouns("opening, clear, between posts, section").asks("how wide, how long").feet(12, 18).usual(320, 1200).json("clear").beside(&[RowId::BayCentre]),
    BayCentre: length(Bay, "bay, on center", 4, 240).nouns("spacing, post spacing, on center").asks("how far apart").feet(12, 18).usual(376, 1536)
        .held_to(&l::POST_SPACING).json("centre").beside(&[RowId::BayClear]).behind("on center"),
    ClearMax: length(Bay, "most clear", 12, 144).nouns("most between posts, longest opening").feet(12, 18).usual(480, 1536)
        .plain("most clear: {}").json("clear_max"),
    CentreMax: length(Bay, "most on center", 12, 144).nouns("widest spacing, post limit").asks("how far apart").feet(12, 18).usual(640, 1536)
        .else_taken(Limit(&l::POST_SPACING)).held_to(&l::POST_SPACING).plain("most on centre: {}").json("oc_max"),
    BaysTold: count(Bay, "bays told alone", 1, 200),
    LastBay: length(Bay, "bay that is left", 0, 240).nouns("last bay, what is left over").asks("how wide").feet(12, 18),
    EndBays: length(Bay, "bay left at each end", 0, 240).nouns("end bays").asks("how wide").feet(12, 18),
    BayLonger: length(Bay, "bay the post moved away from", 0, 240).nouns("longer bay").asks("how wide").feet(12, 18),
    BayShorter: length(Bay, "bay the post moved into", 0, 240).nouns("shorter bay").asks("how wide").feet(12, 18),
    RunMost: length(Run, "longest run, out to out", 4, 2400).nouns("longest, most").asks("how long").feet(36, 61),

    // ---- posts
    PostSize: of(Post, Kind::Lumber, "post size").nouns("posts, uprights").asks("what size").plain("posts: {}").json("post").beside(&[RowId::PostRatio, RowId::PostWidth]),
    PostWidth: length(Post, "post width", 1, 24).nouns("post, sleeve, newel, column").asks("how wide, how thick").usual(40, 100)
        .else_taken(Wide(&l::POST_SIZE)).held_to(&l::POST_SIZE).plain("posts: {} wide").json("post_width"),
    CornerPostWidth: length(Post, "corner post width", 1, 24).asks("how wide").else_taken(Wide(&l::POST_SIZE)).plain("corner posts: {} wide"),
    EndPostWidth: length(Post, "end post width", 1, 24).asks("how wide").else_taken(Wide(&l::POST_SIZE)).plain("end posts: {} wide"),
    GatePostWidth: length(Post, "gate post width", 1, 24).asks("how wide").else_taken(Wide(&l::POST_SIZE)).plain("gate posts: {} wide"),
    StairPostWidth: length(Post, "stair post width", 1, 24).asks("how wide").else_taken(Wide(&l::POST_SIZE)).plain("stair posts: {} wide"),
    PostCount: count(Post, "posts", 2, 2000).nouns("post, upright, newel").usual(32, 640).json("posts_count").beside(&[RowId::BayCount, RowId::BayClear, RowId::BayCentre]).enough(Holds(RowId::PostCount)),
    PostsBetween: count(Post, "posts between the ends", 0, 2000).nouns("line posts, intermediates").beside(&[RowId::BayCount, RowId::BayClear, RowId::BayCentre]),
    PostLength: length(Post, "posts' length", 12, 240).nouns("post").usual(576, 1152).plain("posts cut: {}").json("post_length").enough(Holds(RowId::PostLength)),
    PostTop: length(Post, "post from its top to the decking", 6, 120).nouns("above the deck, shoulder").asks("how far").usual(480, 832).json("shoulder_from_top").behind("from the post's top to the decking"),
    PostBelow: length(Post, "post below the decking", 0, 120).nouns("below the deck, buried").asks("how far").behind("of the post below the decking"),
    PostAt: length(Post, "place for a post", 1, 2400).nouns("post at").asks("where").feet(36, 61).json("posts_told"),
    PostMark: length(Post, "mark of a post", 0, 2400).or_nothing().nouns("mark, pencil mark").asks("where"),
    PostOut: length(Post, "mark of a post from the outside of the first", 0, 2400).nouns("mark, hooked on the outside").asks("where"),
    PostNear: length(Post, "near face of a post", 0, 2400).nouns("near face, mark").asks("where"),
    PostFar: length(Post, "far face of a post", 0, 2400).nouns("far face, mark").asks("where"),
    PostTrim: length(Post, "trim on the post", 0, 4).nouns("trim, wrap, box").asks("how thick"),
    PostMoved: length(Post, "way the post moved", 0, 120).nouns("off center, moved over").asks("how far"),
    PostOver: length(Post, "post over its trim", 1, 32).nouns("over the trim, boxed").asks("how wide"),
    PostBase: length(Post, "base under the post", 0, 12).nouns("post base, standoff").asks("how high"),
    PostNth: count(Post, "number of the post", 1, 2000).nouns("first, second").asks("which"),
    PostOffWall: length(Post, "post off the wall", 0, 48).nouns("off the siding, off the house").asks("how far").held_to(&l::LEVEL_GAP),
    KeepOff: length(Post, "distance to keep posts off", 1, 240).asks("how far").feet(0, 7).json("keep_off"),
    HoldBack: length(Post, "hold-back", 0, 12).nouns("held back, set back").asks("how far").or_nothing().usual(24, 64)
        .else_taken(Limit(&l::HOLD_BACK)).plain("hold-back: {}").json("hold_back").beside(&[RowId::CornerGap]),
    CornerGap: length(Post, "gap across the corner", 0, 24).nouns("corner gap, diagonal").asks("how wide").held_to(&l::LEVEL_GAP).json("corner_gap"),
    Mount: choice(Post, "mount").nouns("posts, mounting").asks("where").else_taken(Limit(&l::MOUNT)).plain("mount: {}").json("mount"),
    Fixing: choice(Post, "fixing").nouns("bolts, lags, screws").asks("what holds").plain("fixing: {}").json("fix"),
    HouseEnd: choice(Post, "house end").nouns("at the house, ledger post").asks("what").plain("house end: {}").json("house_end"),

    // ---- the deck's edge and its framing
    DeckSide: length(Deck, "deck side", 24, 2400).nouns("deck, side").feet(60, 97).json("deck"),
    DeckAlong: length(Deck, "deck along the house", 24, 2400).nouns("deck, width").asks("how wide, how long").feet(60, 97)
        .plain("deck: {} along the house").json("along_house"),
    DeckOut: length(Deck, "deck out from the house", 24, 2400).nouns("deck, depth").asks("how deep, how far out").feet(60, 97).plain("deck: {} out").json("out"),
    Perimeter: length(Deck, "deck's edge off the house", 24, 24000).nouns("perimeter, around").feet(60, 97),
    Shape: choice(Deck, "shape of the deck").nouns("octagon, wrap, balcony").asks("what"),
    Level: choice(Deck, "level of the deck").nouns("upper, lower").asks("which"),
    LevelDrop: length(Deck, "drop from level to level", 1, 240).nouns("drop, below, between levels").asks("how far"),
    BumpAlong: length(Deck, "bump-out along the edge", 6, 480).nouns("bump, bump-out").asks("how wide").feet(16, 24),
    BumpOut: length(Deck, "bump-out out from the edge", 2, 240).nouns("bump, bump-out").asks("how deep").feet(12, 18),
    DeckFall: length(Deck, "fall of the deck in a foot", 0, 2).nouns("pitch, slope, fall").asks("how much").usual(1, 8),
    FarUnder: length(Deck, "gap under at the far end", 0, 48).nouns("at the outer end").asks("how much").held_to(&l::LEVEL_GAP),
    DeckDiagonal: length(Deck, "deck's diagonal", 24, 3400).nouns("diagonal, for square").asks("how long").feet(60, 97).alike(Alike::Square),
    FacetCount: count(Deck, "sides of the shape", 3, 60).nouns("sides, facets"),
    AcrossFlats: length(Deck, "shape across its flats", 12, 2400).nouns("flat to flat").asks("how wide").feet(36, 61),
    AcrossPoints: length(Deck, "shape across its points", 12, 2400).nouns("point to point, across the circle").asks("how wide").feet(36, 61),
    AllAround: length(Deck, "deck's edge all around", 24, 24000).nouns("outside perimeter, all the way around").feet(60, 97),
    Overhang: length(Deck, "overhang", 0, 12).nouns("lip, nosing").asks("how far").or_nothing().usual(8, 40).plain("overhang: {}").json("overhang"),
    EndInset: length(Run, "posts in from each end", 0, 48).nouns("back from each end, held in").asks("how far"),
    Decking: length(Deck, "decking", 0, 4).nouns("decking, deck boards, planks").asks("how thick").usual(12, 28)
        .else_taken(Limit(&l::DECKING)).plain("decking: {} thick").json("decking"),
    LaidOver: length(Deck, "laid over the decking", 0, 4).nouns("laid on top, tiles, new boards over").asks("how thick"),
    DeckingSize: of(Deck, Kind::Lumber, "decking size").nouns("decking, deck boards").asks("what size"),
    Skirt: length(Deck, "skirt", 0, 3).nouns("skirt, fascia, trim board").asks("how thick").or_nothing().usual(8, 28).plain("skirt: {} thick").json("skirt"),
    Rim: length(Deck, "rim", 1, 8).nouns("rim, rim joist, band").asks("how thick").usual(24, 60).else_taken(Thick(&l::RIM_SIZE)).plain("rim: {} thick").json("rim"),
    RimSize: of(Deck, Kind::Lumber, "rim size").nouns("rim, rim joist, band").asks("what size"),
    RimTall: length(Deck, "rim height", 3, 24).nouns("rim, rim joist, band").asks("how tall, how deep").usual(80, 190).plain("rim: {} tall").json("rim_height"),
    Line: length(Deck, "baluster line", -12, 24).nouns("line, post line").asks("how far in").or_nothing().usual(-64, 64).plain("baluster line: {} inside the edge").json("line"),
    Joists: length(Deck, "joist spacing", 6, 48).nouns("joists").asks("how far apart").usual(192, 384).plain("joists: {} on centre").json("joists"),
    FirstJoist: length(Deck, "first joist", 0, 48).asks("where").or_nothing().plain("first joist: {} in").json("first_joist"),
    JoistsPerBay: count(Deck, "joists a bay", 1, 20).nouns("every third joist, every fourth joist"),
    BlockLength: length(Deck, "blocking between joists", 1, 48).nouns("blocking, blocks"),
    JoistsRun: choice(Deck, "direction of the joists").asks("which way").plain("joists run: {}").json("joists_run"),
    Blocking: choice(Deck, "blocking").asks("where").plain("blocking: {}").json("blocking"),
    View: choice(Deck, "side left and right are seen from").plain("left and right: {}").json("view"),
    KeptSides: count(Deck, "sides with guard", 0, 40).nouns("sides").asks("how many"),

    // ---- a post's foot
    NotchDepth: length(Foot, "notch", 0, 12).nouns("notch, lap, bite").asks("how deep, how much comes off").usual(8, 60)
        .held_to(&l::NOTCHED_POST).plain("notch: {} deep").json("notch").beside(&[RowId::NotchLeft]),
    NotchTall: length(Foot, "notch, top to bottom", 1, 60).nouns("notch, lap").asks("how tall, how long").usual(64, 260),
    NotchLeft: length(Foot, "left of the post at its notch", 0, 24).nouns("left, meat, remains").asks("how much is left").usual(16, 72).json("left").behind("left of the post at its notch"),
    NotchShare: of(Foot, Kind::Number, "share of the post left").nouns("left").asks("what share"),
    NotchPart: of(Foot, Kind::Number, "share of the post notched off").nouns("half, a third, a quarter").asks("what share"),
    NotchCut: length(Foot, "notch as it was cut", 0, 12).nouns("came out at").asks("how deep"),
    NotchBoth: length(Foot, "notch in both faces, each", 0, 12).nouns("off opposite sides, both faces").asks("how deep"),
    CornerShare: of(Foot, Kind::Number, "share of the post left, notched over a corner").nouns("still there, quarter out").asks("what share"),
    Shim: length(Foot, "shim", 0, 4).nouns("shim, packing").asks("how thick"),
    NotchSides: count(Foot, "sides notched", 1, 4).nouns("sides, ways, faces"),
    NotchCorner: choice(Foot, "notch over a corner").nouns("corner, quarter").asks("which corner"),
    Leg: length(Foot, "leg", 1, 60).nouns("leg, tail").usual(80, 260).json("leg").enough(Holds(RowId::Leg)),
    LegPast: length(Foot, "leg below the rim", -12, 24).nouns("past the rim, below the rim, shy of it").asks("how far"),
    NosingAt: choice(Foot, "nosing at the posts").asks("whole or cut").plain("nosing: {}").json("nosing"),
    AngledPosts: choice(Foot, "angled posts").asks("which way").plain("angled posts: {}").json("angled_posts"),
    NotchedAnyway: choice(Foot, "notched anyway").plain("notched anyway: {}").json("notch_anyway"),
    RailNotch: length(Foot, "notch at the rail", 0, 12).asks("how deep").plain("notch at the rail: {} deep").json("rail_notch"),
    Blade: length(Foot, "saw blade", 4, 20).nouns("saw, blade").asks("how big").else_taken(Limit(&l::SAW_BLADE)).plain("blade: {}").json("blade"),
    Bolt: length(Foot, "bolt", 0, 2).nouns("bolt, carriage bolt").asks("how thick, what size").usual(4, 14)
        .else_taken(Limit(&l::BOLT_SIZE)).held_to(&l::BOLT_SIZE).plain("bolts: {}").json("bolt"),
    BoltHole: length(Foot, "bolt's hole", 0, 3).nouns("hole, bit").asks("how wide"),
    HolePlay: length(Foot, "hole over the bolt", 0, 1).nouns("clearance, sloppy").asks("how much"),
    BoltEdge: length(Foot, "edge distance", 0, 12).nouns("upper bolt below the rim's top").asks("how far").else_taken(Limit(&l::BOLT_MARGIN)),
    BoltsApart: length(Foot, "bolts apart", 0, 24).nouns("bolt spacing").asks("how far apart").held_to(&l::BOLT_ROWS),
    BoltsMost: length(Foot, "most bolts apart", 0, 24).asks("how far apart").else_taken(Limit(&l::BOLT_ROWS)),
    BoltUpper: length(Foot, "upper bolt below the decking's top", 0, 36).nouns("top bolt").asks("how far down"),
    BoltLower: length(Foot, "lower bolt below the decking's top", 0, 36).nouns("bottom bolt").asks("how far down"),
    BoltPast: length(Foot, "leg below the lower bolt", 0, 12).nouns("end distance").asks("how far").held_to(&l::BOLT_MARGIN),
    BoltLength: length(Foot, "bolts' length", 1, 24).nouns("bolt").enough(Holds(RowId::BoltLength)),
    BlockThick: length(Foot, "block behind the rim", 0, 8).nouns("block, blocking").asks("how thick").or_nothing(),
    BoltCount: count(Foot, "bolts", 0, 8000).nouns("bolt").json("bolts").beside(&[RowId::BoltsPerPost]).enough(Holds(RowId::BoltCount)),
    BoltsPerPost: count(Foot, "bolts a post", 1, 40).nouns("bolts per post").held_to(&l::POST_BOLTS),
    HoldDown: of(Foot, Kind::Force, "pull the hold-down takes").nouns("hold-down, tension tie").asks("how much").held_to(&l::HOLD_DOWN),
    Finish: choice(Foot, "finish of the fasteners").nouns("stainless, galvanized").asks("what"),

    // ---- rails and caps
    TopRail: of(Rail, Kind::Lumber, "top rail").nouns("top rail, upper rail").asks("what size").plain("top rail: {}").json("top_rail"),
    BottomRail: of(Rail, Kind::Lumber, "bottom rail").nouns("bottom rail, lower rail").asks("what size").plain("bottom rail: {}").json("bottom_rail"),
    CapSize: of(Rail, Kind::Lumber, "cap").nouns("cap, cap rail, topper").asks("what size").plain("cap: {}"),
    TopRailLies: choice(Rail, "how the top rail lies").asks("how").plain("top rail lies: {}"),
    BottomRailLies: choice(Rail, "how the bottom rail lies").asks("how").plain("bottom rail lies: {}"),
    TopRailTall: length(Rail, "top rail, top to bottom", 0, 12).nouns("top rail").asks("how tall, how thick").usual(16, 60),
    BottomRailTall: length(Rail, "bottom rail, top to bottom", 0, 12).nouns("bottom rail").asks("how tall, how thick").or_nothing().usual(16, 60),
    Cap: length(Rail, "cap on the posts", 0, 6).nouns("cap").asks("how thick").or_nothing().usual(12, 28).plain("cap: {} on the posts").json("cap"),
    Above: length(Rail, "posts above the rail", 0, 24).nouns("stick up, proud").asks("how far").or_nothing().plain("posts above the rail: {}").json("above_rail"),
    RailLength: length(Rail, "rail length", 1, 480).nouns("rail").feet(12, 18).json("rail_length").enough(Holds(RowId::RailLength)),
    CapLength: length(Rail, "cap's length", 1, 480).nouns("cap, cap rail").feet(12, 18).enough(Holds(RowId::CapLength)),
    CapPast: length(Rail, "cap past the end post", 0, 12).nouns("cap hangs past").asks("how far").or_nothing(),
    LetIn: length(Rail, "rail let into the post", 0, 4).nouns("let in, housed").asks("how deep"),
    RailCount: count(Rail, "rails", 1, 2000).nouns("rail").json("rails").enough(Holds(RowId::RailCount)),
    RailsPerBay: count(Rail, "rails a bay", 1, 12).nouns("rails, two rails"),
    TopUnder: length(Rail, "underside of the top rail above the decking", 6, 96).nouns("under the top rail, underside").asks("how high").usual(480, 720),
    BottomTop: length(Rail, "top of the bottom rail above the decking", 0, 36).nouns("top of the bottom rail").asks("how high").usual(48, 144),
    RailsApart: length(Rail, "rails' tops apart", 6, 96).asks("how far apart").held_to(&l::POOL_RAILS_APART).behind("between the rails' tops"),
    RailsClear: length(Rail, "clear between the rails", 1, 96).nouns("between the two rails").asks("how much"),
    PanelTall: length(Rail, "panel, top to bottom", 1, 96).nouns("panel, section").asks("how tall"),
    Bracket: length(Rail, "bracket", 0, 6).nouns("bracket, hanger").asks("how much").or_nothing().plain("bracket: {} each end").json("bracket"),
    RailFixing: choice(Rail, "where the balusters stand").plain("balusters: {}").json("balusters_at"),

    // ---- balusters
    BalusterWidth: length(Baluster, "baluster", 0, 12).nouns("baluster, picket, spindle").asks("how wide, how thick").usual(8, 42)
        .else_taken(Wide(&l::BALUSTER_SIZE)).plain("balusters: {} wide").json("baluster"),
    BalusterSize: of(Baluster, Kind::Lumber, "baluster size").nouns("balusters, pickets, spindles").asks("what size"),
    BalusterLeast: length(Baluster, "least baluster width", 0, 12).nouns("skinniest, narrowest").asks("how wide"),
    InfillKind: choice(Baluster, "kind of infill").nouns("cable, glass, slats").asks("what"),
    BalusterCount: count(Baluster, "balusters", 0, 4000).nouns("baluster, picket, spindle").json("balusters").beside(&[RowId::Gap]).enough(Holds(RowId::BalusterCount)),
    BalusterTotal: count(Baluster, "balusters in all", 0, 20000).nouns("balusters, pickets, spindles").beside(&[RowId::PerBay, RowId::Gap]).enough(Holds(RowId::BalusterTotal)),
    Gap: length(Baluster, "gap", 0, 24).nouns("gap, space, reveal, air").asks("how wide, how far apart").usual(24, 70).held_to(&l::LEVEL_GAP).json("gap"),
    GapMax: length(Baluster, "gap limit", 0, 12).nouns("gap limit, biggest gap").asks("how wide").usual(48, 72).plain("gap limit: {}").json("gap_max").held_to(&l::LEVEL_GAP).as_a(Sense::Most),
    GapLimit: length(Baluster, "gap that holds", 0, 12).asks("how wide").held_to(&l::LEVEL_GAP).as_a(Sense::Most),
    SlopeGap: length(Stairs, "gap along the slope", 0, 36).nouns("along the slope, laid along the slope").asks("how wide"),
    SquareGap: length(Stairs, "gap square to the slope", 0, 24).nouns("square to the slope").asks("how wide").held_to(&l::STAIR_GAP),
    EndGap: length(Baluster, "gap at the posts", 0, 24).nouns("end gap, first gap").asks("how wide").usual(8, 70).held_to(&l::LEVEL_GAP),
    Pitch: length(Baluster, "balusters on center", 0, 24).nouns("spacing, on center").asks("how far apart").usual(48, 112).json("on_centre").beside(&[RowId::Gap]).behind("on center"),
    PerFoot: of(Baluster, Kind::Number, "balusters to the foot").nouns("per foot").asks("how many").beside(&[RowId::Gap]),
    SpaceCount: count(Baluster, "gaps", 1, 4001).nouns("spaces, gaps").beside(&[RowId::Gap]),
    PerBay: count(Baluster, "balusters a bay", 0, 400).nouns("per bay").beside(&[RowId::Gap]),
    FirstGap: length(Baluster, "first gap alone", 0, 24).nouns("first gap, start gap").asks("how wide").usual(8, 70),
    BalusterLength: length(Baluster, "balusters' length", 4, 96).nouns("baluster, picket").usual(384, 704).plain("balusters cut: {}").json("baluster_length").enough(Holds(RowId::BalusterLength)),
    Nth: count(Baluster, "number of the baluster", 1, 4000).nouns("first, second").asks("which"),
    Mark: length(Baluster, "mark of a baluster", 0, 2400).nouns("mark").asks("where"),
    MarkCentre: length(Baluster, "center of a baluster", 0, 2400).nouns("middle, center mark").asks("where"),
    MarkFar: length(Baluster, "far edge of a baluster", 0, 2400).nouns("far side").asks("where"),
    FirstCentre: length(Baluster, "center of the first baluster", 0, 48).nouns("first mark, middle of the first").asks("where"),
    BevelDrop: length(Baluster, "baluster's bevel, long side over short", 0, 24).nouns("longer for the bevel").asks("how much"),
    LongSide: length(Baluster, "baluster's long side", 4, 120).nouns("long point"),
    StartWith: choice(Baluster, "start").asks("how").plain("start: with a {}").json("start"),

    // ---- stairs
    StairWidth: length(Stairs, "stair opening", 18, 240).nouns("stairs, steps, hole").asks("how wide").feet(12, 20).usual(480, 1200)
        .held_to(&l::STAIR_WIDTH).plain("stairs: {} wide").json("width"),
    StairMeasure: choice(Stairs, "what the stairs' width lies between").plain("stairs: measured {}").json("measure"),
    StairAt: of(Stairs, Kind::Place, "place of the stairs").nouns("stairs").asks("where").json("at"),
    StairCount: count(Stairs, "flights of stairs", 0, 20).nouns("flight, stairs"),
    StairClear: length(Stairs, "stairs, clear between the posts", 6, 240).nouns("walk through, between the posts").asks("how wide").feet(12, 20)
        .held_to(&l::STAIR_WIDTH),
    StairTread: length(Stairs, "stairs, clear between the handrails", 6, 240).asks("how wide"),
    Recess: length(Stairs, "recess", 6, 240).nouns("let in, recessed").asks("how deep").feet(12, 18).json("recess"),
    TotalRise: length(Stairs, "total rise", 4, 400).nouns("total rise, deck to landing").asks("how high").usual(128, 2400)
        .plain("stairs: total rise {}").json("total_rise").held_to(&l::FLIGHT_RISE),
    TotalRun: length(Stairs, "total run", 4, 600).nouns("total run, reach").asks("how far out").feet(16, 24).plain("stairs: total run {}").json("total_run"),
    Risers: count(Stairs, "risers", 1, 60).nouns("riser, step").usual(32, 320).json("risers").beside(&[RowId::Rise]),
    HandrailRisers: count(Stairs, "risers for a handrail", 1, 60).held_to(&l::HANDRAIL_RISERS),
    Treads: count(Stairs, "treads", 0, 60).nouns("tread, step").usual(16, 320).json("treads").beside(&[RowId::Tread]),
    StairsPast: length(Stairs, "stairs past the deck's edge", 0, 600).nouns("poke out, past the rim").asks("how far out").feet(16, 24),
    Rise: length(Stairs, "riser", 1, 12).nouns("riser, rise, step").asks("how high").usual(88, 132).held_to(&l::RISER_MOST)
        .plain("stairs: rise {}").json("rise").alike(Alike::Within(&l::STAIR_SPREAD)),
    RiserMost: length(Stairs, "most riser", 4, 12).nouns("max riser, no riser over").asks("how high").usual(88, 132).held_to(&l::RISER_MOST),
    Tread: length(Stairs, "tread", 4, 60).nouns("tread, run").asks("how deep").usual(144, 208).held_to(&l::TREAD_LEAST).plain("stairs: tread {}").json("tread").alike(Alike::Within(&l::STAIR_SPREAD)),
    Slope: length(Stairs, "slope", 4, 800).nouns("slope, rake, diagonal").asks("how long").json("slope_length").beside(&[RowId::Angle]),
    StepSlope: length(Stairs, "slope of one step", 4, 80).nouns("nosing to nosing").asks("how long"),
    RakeLength: length(Stairs, "length along the rise and run", 4, 900).nouns("hypotenuse, rake").asks("how long"),
    RakeRun: length(Stairs, "level distance along the stairs", 0, 600).nouns("on the level"),
    RakeDrop: length(Stairs, "drop of the rail over it", 0, 400).nouns("drop, fall of the rail").asks("how far"),
    Angle: of(Stairs, Kind::Angle, "angle of the stairs").nouns("angle, pitch, steep").asks("how steep, what angle").held_to(&l::STEEPEST).json("angle_deg"),
    Nosing: length(Stairs, "nosing", 0, 4).nouns("nosing, overhang of the tread").asks("how far").or_nothing().usual(8, 24)
        .plain("stairs: nosing {}").json("nosing").held_to(&l::NOSING_LEAST).and_to(&l::NOSING_MOST),
    StairHeight: length(Stairs, "stair rail", 24, 60).nouns("stair rail, stair guard").asks("how high").usual(512, 640)
        .held_to(&l::STAIR_GUARD_LOW).else_taken(Limit(&l::STAIR_GUARD_HEIGHT)).plain("stairs: rail {} above the nosings").json("rail_height"),
    HandrailHeight: length(Stairs, "handrail", 20, 60).nouns("handrail, grab rail").asks("how high").held_to(&l::HANDRAIL_LOW).and_to(&l::HANDRAIL_HIGH),
    HandrailWidth: length(Stairs, "handrail's width", 0, 12).nouns("handrail, grab rail").asks("how wide").held_to(&l::GRIP_ROUND_LEAST).and_to(&l::GRIP_ROUND_MOST),
    HandrailPast: length(Stairs, "handrail past the nosings", 0, 48).nouns("extension, past the top nosing"),
    HandrailLength: length(Stairs, "handrail length", 1, 900).nouns("handrail"),
    RampRise: length(Stairs, "rise of the ramp", 0, 400).nouns("ramp").asks("how high"),
    RampRun: length(Stairs, "run of the ramp", 1, 4800).nouns("ramp").asks("how long").feet(16, 24),
    RampSlope: of(Stairs, Kind::Number, "run of the ramp to its rise").nouns("one in twelve"),
    RampLength: length(Stairs, "ramp along its slope", 1, 4900).nouns("ramp").feet(16, 24),
    OpenSides: choice(Stairs, "open sides").asks("which").json("open"),
    Newels: choice(Stairs, "newels").asks("where").json("newels"),
    Lands: choice(Stairs, "what the stairs land on").asks("what").json("lands"),
    Head: choice(Stairs, "top tread").asks("how").json("top_tread"),
    Between: choice(Stairs, "what stands between the treads").asks("open or closed").json("between_treads"),
    OpenRiser: length(Stairs, "opening between treads", 0, 12).nouns("open riser").asks("how tall").held_to(&l::OPEN_RISER).json("open_riser"),
    Landing: length(Stairs, "landing", 6, 240).nouns("landing, pad").asks("how deep").feet(12, 20).held_to(&l::LANDING).json("landing"),
    LandingUp: length(Stairs, "landing above ground", 0, 400).nouns("landing, pad, paver").asks("how high"),
    LandingWide: length(Stairs, "landing, side to side", 6, 240).nouns("landing, pad").asks("how wide").feet(12, 20),
    StairGap: length(Stairs, "gap on the stairs", 0, 12).asks("how wide").held_to(&l::STAIR_GAP),
    StairGapLimit: length(Stairs, "gap that holds on the stairs", 0, 12).held_to(&l::STAIR_GAP).as_a(Sense::Most),
    PerTread: count(Stairs, "balusters a tread", 1, 6).nouns("per tread"),
    StairBalusters: count(Stairs, "stair balusters", 0, 400).nouns("stair balusters").beside(&[RowId::PerTread]),
    TriangleBall: length(Stairs, "ball under the stair rail", 0, 24).nouns("triangle").asks("how big").held_to(&l::STAIR_TRIANGLE),
    HandrailSpace: length(Stairs, "handrail off the wall", 0, 12).held_to(&l::HANDRAIL_SPACE),

    // ---- gates
    GateAt: of(Gate, Kind::Place, "place of the gate").nouns("gate").asks("where").json("gate"),
    GateWidth: length(Gate, "gate", 20, 144).nouns("gate").asks("how wide").feet(8, 18).usual(448, 960).json("width").beside(&[RowId::Leaf]),
    GateOpening: length(Gate, "gate opening", 10, 144).nouns("opening, between the jambs").asks("how wide").feet(8, 18).usual(448, 1216).json("opening").beside(&[RowId::Leaf]).enough(Holds(RowId::GateOpening)),
    Leaf: length(Gate, "gate leaf", 12, 144).nouns("leaf, gate panel").asks("how wide").feet(8, 12).usual(384, 960).held_to(&l::GATE_LEAF).json("leaf"),
    LeafGap: length(Gate, "gap at the gate", 0, 12).asks("how wide").usual(2, 24).held_to(&l::LEVEL_GAP).json("leaf_gap"),
    HingeGap: length(Gate, "hinge gap", 0, 12).nouns("hinges, hinge side").asks("how wide").usual(2, 24).held_to(&l::LEVEL_GAP).else_taken(Limit(&l::HINGE_GAP)).json("hinge_gap"),
    LatchGap: length(Gate, "latch gap", 0, 12).nouns("latch, latch side").asks("how wide").usual(2, 24).held_to(&l::LEVEL_GAP).else_taken(Limit(&l::LATCH_GAP)).json("latch_gap"),
    MiddleGap: length(Gate, "gap between the leaves", 0, 4).nouns("meeting gap").asks("how wide").usual(2, 24),
    Leaves: count(Gate, "leaves", 1, 2).nouns("leaf, pair, double gate").json("leaves"),
    LeafHeight: length(Gate, "leaf's height", 12, 96).nouns("gate, leaf").asks("how high, how tall").usual(480, 832),
    GateUnder: length(Gate, "gap under the gate", 0, 24).nouns("under the leaf").asks("how much").usual(8, 64).held_to(&l::LEVEL_GAP),
    LeafDiagonal: length(Gate, "leaf's diagonal", 12, 200).nouns("brace, diagonal").asks("how long").json("diagonal").alike(Alike::Square),
    Stile: length(Gate, "stile", 0, 12).nouns("stile, frame").asks("how wide"),
    LatchHeight: length(Gate, "latch height", 12, 84).nouns("latch").asks("how high").held_to(&l::POOL_LATCH).json("latch_height"),
    Swing: choice(Gate, "swing").nouns("swing").asks("which way").json("swing"),
    Hinge: choice(Gate, "hinge side").nouns("hinges").asks("which side").json("hinge"),
    Latch: choice(Gate, "latch side").nouns("latch").asks("which side").json("latch"),
    SelfClosing: choice(Gate, "closing").json("self_closing"),

    // ---- the wood and what it carries
    Species: choice(Wood, "species").nouns("wood, species").asks("what").plain("species: {}").json("species"),
    LumberGrade: choice(Wood, "lumber grade").nouns("grade stamp").asks("what").plain("lumber grade: {}").json("lumber_grade"),
    Service: choice(Wood, "service").nouns("wet, dry").plain("service: {}").json("service"),
    Incised: choice(Wood, "incised").plain("incised: {}").json("incised"),
    Duration: choice(Wood, "load duration").plain("load duration: {}").json("load_duration"),
    Push: of(Wood, Kind::Force, "push at the top").nouns("load, push").asks("how much").else_taken(Limit(&l::TOP_LOAD)).held_to(&l::TOP_LOAD),
    LineLoad: of(Wood, Kind::Force, "load on a foot of the top rail").nouns("pounds a foot, line load").asks("how much"),
    BoltPull: of(Wood, Kind::Force, "pull on the upper bolt").nouns("pull, hold-down").asks("how hard").held_to(&l::HOLD_DOWN).as_a(Sense::Most),
    BayLoad: of(Wood, Kind::Force, "load on a bay's top rail").nouns("load on a bay").asks("how much"),
    BoltPush: of(Wood, Kind::Force, "push of the lower bolt").asks("how hard"),
    PostCarries: of(Wood, Kind::Force, "push the post carries").asks("how much").held_to(&l::TOP_LOAD),
    LegCarries: of(Wood, Kind::Force, "push what is left carries").asks("how much").held_to(&l::TOP_LOAD),
    PostRatio: of(Wood, Kind::Number, "post's bending over what is allowed").asks("how strong"),
    PostArm: length(Wood, "arm of the push at the upper bolt", 12, 150).asks("how long"),
    RailRatio: of(Wood, Kind::Number, "rail's bending over what is allowed").asks("how strong"),
    RailSag: length(Wood, "rail's sag", 0, 24).nouns("sag, bounce").asks("how much"),
    SagLimit: length(Wood, "most sag", 0, 24).held_to(&l::RAIL_SAG),

    // ---- sticks, pieces and money
    Stock: length(Order, "stick", 2, 480).nouns("stick, board, stock length").feet(24, 25).usual(1152, 3840).json("stock").enough(Holds(RowId::StickNeeded)),
    StickNeeded: length(Order, "stick needed", 1, 4800).asks("how long").feet(24, 25),
    StockSize: of(Order, Kind::Lumber, "stick size").nouns("sticks, boards").asks("what size"),
    PieceLength: length(Order, "piece", 0, 480).nouns("piece, cut").usual(96, 1920).json("cut"),
    PieceCount: count(Order, "pieces", 1, 20000).nouns("piece, cut").json("count").enough(Holds(RowId::PieceCount)),
    PerStick: count(Order, "pieces a stick", 0, 400).nouns("per stick, out of a stick").beside(&[RowId::LeftOver]).enough(Reached),
    StickCount: count(Order, "sticks", 0, 20000).nouns("stick, board, length").json("sticks").beside(&[RowId::LeftOver]).enough(Holds(RowId::StickCount)),
    PieceYield: count(Order, "pieces the sticks give", 0, 40000).nouns("out of the sticks, will they do").enough(Reached),
    PerPack: count(Order, "pieces in a pack", 1, 10000).nouns("box, pack, bundle"),
    Packs: count(Order, "packs", 1, 10000).nouns("box, pack, bundle").enough(Holds(RowId::Packs)),
    Screws: count(Order, "screws", 0, 100000).nouns("screw").enough(Holds(RowId::Screws)),
    ScrewsPer: count(Order, "screws a baluster", 1, 40).nouns("each, a picket").asks("how many"),
    ScrewsPerEnd: count(Order, "screws a rail end", 1, 40).nouns("a rail end"),
    WashersPerPost: count(Order, "washers a post", 1, 40).nouns("washers at each post"),
    Washers: count(Order, "washers", 0, 20000).nouns("washer").enough(Holds(RowId::Washers)),
    LeftOver: length(Order, "left over", 0, 480).nouns("left over, waste, offcut").asks("how much is left").json("left").behind("left over"),
    Kerf: length(Order, "kerf", 0, 1).nouns("kerf, saw cut").asks("how wide").or_nothing().usual(1, 4)
        .else_taken(Limit(&l::KERF)).plain("kerf: {}").json("kerf"),
    Lineal: length(Order, "length of stock in all", 1, 480000).nouns("lineal feet").asks("how many feet").feet(40000, 40001).enough(Holds(RowId::Lineal)),
    LinealExtra: length(Order, "length of stock with its waste", 1, 600000).nouns("with waste, to order").asks("how many feet").feet(40000, 40001),
    Waste: of(Order, Kind::Percent, "waste").nouns("waste, extra").asks("how much").plain("waste: {} %").json("waste"),
    Scrap: of(Order, Kind::Percent, "scrap").nouns("scrap, went to waste").asks("what percent"),
    Tax: of(Order, Kind::Percent, "tax").asks("how much").plain("tax: {} %").json("tax"),
    Markup: of(Order, Kind::Percent, "markup").asks("how much").plain("markup: {} %").json("markup"),
    Spares: count(Order, "spares", 0, 1000).nouns("spare, extra").plain("spares: {}").json("spares"),
    PieceCountExtra: count(Order, "pieces with spares and waste", 1, 40000).nouns("pieces"),
    Price: of(Order, Kind::Money, "price of one").nouns("price, each").asks("how much"),
    PricePerFoot: of(Order, Kind::Money, "price of a foot").nouns("per foot").asks("how much"),
    Labor: of(Order, Kind::Money, "labor").nouns("labor").asks("how much").plain("labour: {}").json("labour"),
    Goods: of(Order, Kind::Money, "cost of the goods").nouns("materials, lumber, before tax").asks("how much"),
    Discount: of(Order, Kind::Percent, "discount").nouns("off").asks("how much"),
    WeightEach: of(Order, Kind::Number, "pounds apiece").nouns("pound each, weighs").asks("how heavy"),
    WeightFoot: of(Order, Kind::Number, "pounds a foot").nouns("pound a foot").asks("how heavy"),
    Weight: of(Order, Kind::Number, "pounds in all").nouns("weight, load").asks("how heavy, how much"),
    Cost: of(Order, Kind::Money, "cost").nouns("cost, bill").asks("how much").json("cost"),
}

impl RowId {
    /// The first row, which a row has for an id until the table gives it its own.
    pub(super) const FIRST: RowId = RowId::HeightTop;

    /// Its name with an article: "the gap under".
    pub fn said(self) -> &'static str {
        static SAID: std::sync::LazyLock<Vec<&'static str>> =
            std::sync::LazyLock::new(|| ROWS.iter().map(|r| &*format!("the {}", r.name).leak()).collect());
        SAID[self as usize]
    }

    /// This quantity's row.
    pub fn row(self) -> &'static Row {
        // The table has a row for every id, in declaration order; a test holds it to that.
        &ROWS[self as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_id_finds_its_own_row() {
        for row in ROWS {
            assert_eq!(row.id.row().id, row.id);
        }
    }

    #[test]
    fn every_row_has_a_name_of_its_own_and_ranges_that_hold() {
        let names: BTreeSet<_> = ROWS.iter().map(|r| r.name).collect();
        assert_eq!(names.len(), ROWS.len());
        for row in ROWS {
            assert!(row.sane.0 < row.sane.1, "{}", row.name);
            assert!(row.usual.0 < row.usual.1, "{}", row.name);
            assert!(row.usual.0 >= row.sane.0 * 16 && row.usual.1 <= row.sane.1 * 16, "{}", row.name);
        }
    }

    #[test]
    fn a_plain_phrase_has_one_place_for_its_value() {
        for row in ROWS.iter().filter(|r| !r.plain.is_empty()) {
            assert_eq!(row.plain.matches("{}").count(), 1, "{}", row.name);
        }
    }
}
