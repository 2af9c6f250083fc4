//! Laws of every layout, over jobs at random.

mod common;

use common::{centres, frac, inches, job};
use proptest::prelude::*;
use railhand::job::{
    Basis, End, Gate, GateAt, HouseEnd, PostRole, PostSize, RunPatch, Setting, StairAt, StairOpening, Stairs, Told,
};
use railhand::layout::{BayKind, Layout, Placed, draw, lay_out};
use railhand::measure::{Length, Tape};

/// Lengths on a 1/8 in. grid, so that half a post is on the tape.
fn eighths(lo: i128, hi: i128) -> impl Strategy<Value = Length> {
    (lo * 8..=hi * 8).prop_map(|n| frac(n, 8))
}

fn any_length() -> impl Strategy<Value = Length> {
    prop_oneof![eighths(40, 600), (1000_i128..15000).prop_map(|mm| frac(mm * 5, 127))]
}

fn setting() -> impl Strategy<Value = Setting> {
    let role = prop::sample::select(&PostRole::ALL);
    prop_oneof![
        (role, eighths(2, 7)).prop_map(|(role, w)| Setting::Post(role, PostSize::Width(w))),
        eighths(30, 96).prop_map(Setting::ClearMax),
        eighths(30, 96).prop_map(Setting::CentreMax),
        (800_i128..2400).prop_map(|mm| Setting::ClearMax(frac(mm * 5, 127))),
        prop::sample::select(vec![HouseEnd::Post, HouseEnd::Bracket]).prop_map(Setting::HouseEnd),
    ]
}

fn end() -> impl Strategy<Value = Option<End>> {
    prop::option::weighted(0.9, prop::sample::select(&End::ALL))
}

fn gate() -> impl Strategy<Value = Gate> {
    let at = prop::sample::select(vec![
        GateAt::From,
        GateAt::To,
        GateAt::Middle,
        GateAt::Left,
        GateAt::Right,
        GateAt::Stairs,
        GateAt::OffFrom(Length::inches(30)),
        GateAt::OffTo(Length::inches(17)),
    ]);
    (at, prop::option::weighted(0.9, eighths(24, 60))).prop_map(|(at, width)| Gate::new(at, width))
}

fn stairs() -> impl Strategy<Value = StairOpening> {
    let at = (0..3, prop_oneof![Just(inches(0)), eighths(12, 120)]).prop_map(|(kind, off)| match kind {
        0 => StairAt::Middle,
        1 => StairAt::FromLeft(off),
        _ => StairAt::FromRight(off),
    });
    (eighths(30, 72), at).prop_map(|(width, at)| StairOpening::new(width, at))
}

fn patch() -> impl Strategy<Value = RunPatch> {
    let basis = prop::option::of(prop::sample::select(vec![Basis::Overall, Basis::Clear, Basis::Centre]));
    let fixed = (prop::option::weighted(0.3, gate()), prop::option::weighted(0.3, stairs()));
    let bays = prop::option::weighted(0.2, 1_u16..8);
    (any_length(), basis, end(), end(), fixed, bays).prop_map(|(length, basis, from, to, (gate, stairs), bays)| {
        RunPatch {
            length: Some(Told::plain(length)),
            basis,
            from,
            to,
            gate: Some(gate),
            stairs: stairs.map(Stairs::from),
            bays: Some(bays),
            ..RunPatch::default()
        }
    })
}

/// A layout of one run, where the random job is possible and can be laid out.
fn lay(settings: &[Setting], patch: &RunPatch) -> Option<Layout> {
    use railhand::job::{Fact, Job, RunId};
    let facts: Vec<Fact> = settings.iter().map(|s| Fact::Set(*s)).chain([Fact::Run(RunId(1), patch.clone())]).collect();
    let layout = lay_out(&Job::default().with_all(&facts).ok()?);
    layout.runs[0].result.is_ok().then_some(layout)
}

fn of(layout: &Layout) -> &Placed {
    layout.runs[0].result.as_ref().expect("only layouts that stand are handed on")
}

/// What of the end posts lies outside the told length, on each basis.
fn outside(p: &Placed, basis: Basis) -> Length {
    let at_end = |near: Length, width: Length| near.is_zero() || near + width == p.overall;
    let ends = p.posts.iter().filter(|post| at_end(post.near, post.width_length()));
    let widths: Length = ends.map(railhand::layout::Post::width_length).sum();
    match basis {
        Basis::Overall => inches(0),
        Basis::Clear => widths,
        Basis::Centre | Basis::Edge => widths / 2,
    }
}

/// Rail bays that pass a limit by marks as a tape in sixteenths reads them, worked out
/// again from the marks alone.
fn taped_faults(s: &[Setting], placed: &Placed) -> Vec<String> {
    let read = |f: &railhand::figure::Fig| Tape::SIXTEENTHS.round(f.as_length().expect("a mark is a length"));
    let told = |pick: fn(&Setting) -> Option<Length>| s.iter().rev().find_map(pick);
    let clear_most = told(|s| if let Setting::ClearMax(l) = s { Some(*l) } else { None });
    let centre_most = told(|s| if let Setting::CentreMax(l) = s { Some(*l) } else { None });
    // AWC DCA 6, from memory: 6 ft on centre, where nothing was told.
    let centre_most = centre_most.or(clear_most.is_none().then_some(inches(72)));
    let mut faults = Vec::new();
    for pair in placed.posts.windows(2) {
        let start = pair[0].near + pair[0].width_length();
        let bay = placed.bays.iter().find(|b| b.start == start).expect("a bay follows every post but the last");
        let centre = read(&pair[1].at) - read(&pair[0].at);
        let clear = read(&pair[1].near_face) - read(&pair[0].near_face) - pair[0].width_length();
        let passes = |most: Option<Length>, l: Length| most.is_some_and(|most| l > most);
        if bay.kind == BayKind::Rail && (passes(centre_most, centre) || passes(clear_most, clear)) {
            faults.push(format!("{centre:?} on centre, {clear:?} clear"));
        }
    }
    faults
}

fn mirrored(p: &RunPatch) -> RunPatch {
    let gate = p.gate.flatten().map(|g| Gate {
        at: match g.at {
            GateAt::From => GateAt::To,
            GateAt::To => GateAt::From,
            GateAt::Left => GateAt::Right,
            GateAt::Right => GateAt::Left,
            GateAt::OffFrom(by) => GateAt::OffTo(by),
            GateAt::OffTo(by) => GateAt::OffFrom(by),
            at @ (GateAt::Middle | GateAt::Stairs) => at,
        },
        ..g
    });
    let flipped = |s: &StairOpening| StairOpening { at: s.at.flipped(), ..*s };
    let stairs = p.stairs.as_ref().map(|all| all.iter().map(flipped).collect::<Vec<_>>().into());
    RunPatch { from: p.to, to: p.from, gate: Some(gate), stairs, ..p.clone() }
}

fn settings() -> impl Strategy<Value = Vec<Setting>> {
    prop::collection::vec(setting(), 0..5)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, ..ProptestConfig::default() })]

    #[test]
    fn posts_and_clears_and_openings_sum_to_the_run(s in settings(), p in patch()) {
        let Some(layout) = lay(&s, &p) else { return Ok(()) };
        let placed = of(&layout);
        let posts: Length = placed.posts.iter().map(railhand::layout::Post::width_length).sum();
        let clears: Length = placed.bays.iter().map(railhand::layout::Bay::clear_length).sum();
        let told = p.length.expect("every patch has a length").length;
        prop_assert_eq!(posts + clears - outside(placed, p.basis.unwrap_or_default()), told);
    }

    #[test]
    fn no_bay_passes_a_limit_on_the_tape(s in settings(), p in patch()) {
        let p = RunPatch { bays: None, ..p };
        let Some(layout) = lay(&s, &p) else { return Ok(()) };
        prop_assert_eq!(taped_faults(&s, of(&layout)), Vec::<String>::new());
    }

    /// Bays that split exactly to a limit off the tape's grid: the hardest case for rounding.
    #[test]
    fn no_bay_passes_a_metric_limit_on_the_tape(mm in 800_i128..2400, n in 2_i64..5, basis in 0..3) {
        let limit = frac(mm * 5, 127);
        let length = limit * n + frac(7, 2) * (n + 1);
        let basis = [Basis::Overall, Basis::Clear, Basis::Centre][basis as usize];
        let p = common::basis(common::run(length, End::Corner, End::Corner), basis);
        let s = [Setting::ClearMax(limit)];
        let layout = lay(&s, &p).expect("a run with room for its posts");
        prop_assert_eq!(taped_faults(&s, of(&layout)), Vec::<String>::new());
    }

    /// Nothing told is dropped or squeezed: the gate and the stairs are there at their
    /// told width, and a told bay count is kept.
    #[test]
    fn what_was_told_stands_in_the_layout(s in settings(), p in patch()) {
        let Some(layout) = lay(&s, &p) else { return Ok(()) };
        let placed = of(&layout);
        let widths = |kinds: &[BayKind]| -> Vec<Length> {
            placed.bays.iter().filter(|b| kinds.contains(&b.kind)).map(railhand::layout::Bay::clear_length).collect()
        };
        let along = p.stairs.clone().unwrap_or_default().along(p.length.map(|t| t.length));
        let stairs: Vec<Length> = along.iter().map(|s| s.width).collect();
        prop_assert_eq!(widths(&[BayKind::Stairs, BayKind::GatedStairs]), stairs);
        if let Some(gate) = p.gate.flatten() {
            let across = !widths(&[BayKind::GatedStairs]).is_empty();
            let end = match gate.at.place() { GateAt::From => p.from, GateAt::To => p.to, _ => None };
            let beyond = matches!(end, Some(End::StairHead | End::GatePost | End::BottomNewel));
            let within: Vec<Length> = gate.width.filter(|_| !across && !beyond).into_iter().collect();
            prop_assert_eq!(widths(&[BayKind::Gate]), within);
            prop_assert_eq!(placed.beyond.as_ref().and_then(|f| f.as_length()), gate.width.filter(|_| beyond));
        }
        if let Some(told) = p.bays.flatten() {
            prop_assert_eq!(placed.rail_bays().count(), usize::from(told));
        }
    }

    #[test]
    fn running_marks_strictly_increase(s in settings(), p in patch()) {
        let Some(layout) = lay(&s, &p) else { return Ok(()) };
        prop_assert!(centres(of(&layout)).windows(2).all(|m| m[0] < m[1]));
    }

    #[test]
    fn a_mirrored_run_gives_mirrored_places(s in settings(), p in patch()) {
        // Off the tape's grid a limit may round one way and not the other.
        let on_grid = |s: &Setting| !matches!(s, Setting::ClearMax(l) if !l.on_grid(16));
        let s: Vec<Setting> = s.into_iter().filter(on_grid).collect();
        let (Some(there), Some(back)) = (lay(&s, &p), lay(&s, &mirrored(&p))) else {
            prop_assert_eq!(lay(&s, &p).is_some(), lay(&s, &mirrored(&p)).is_some());
            return Ok(());
        };
        let (there, back) = (of(&there), of(&back));
        let run = p.length.expect("every patch has a length").length;
        let mut turned: Vec<Length> = centres(back).into_iter().map(|m| run - m).collect();
        turned.reverse();
        prop_assert_eq!(centres(there), turned);
    }

    #[test]
    fn a_drawing_keeps_its_width_and_shows_every_post(s in settings(), p in patch(), width in 30_usize..100) {
        let Some(layout) = lay(&s, &p) else { return Ok(()) };
        let drawn = draw(&layout.runs[0], width, layout.tape);
        prop_assert!(drawn.iter().all(|l| l.len() <= width && l.is_ascii()), "{drawn:#?}");
        let posts: usize = drawn.iter().map(|l| l.matches('#').count()).sum();
        prop_assert_eq!(posts, of(&layout).posts.len());
    }
}

/// The laws above hold of something: most random jobs can be laid out.
#[test]
fn random_jobs_are_mostly_laid_out() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let stands = |runner: &mut TestRunner| {
        let s = settings().new_tree(runner).expect("a setting list").current();
        let p = patch().new_tree(runner).expect("a patch").current();
        lay(&s, &p).is_some()
    };
    let standing = (0..200).filter(|_| stands(&mut runner)).count();
    assert!(standing > 100, "{standing} of 200");
    assert_eq!(centres(of(&lay_out(&job(&[], common::run(inches(60), End::Corner, End::Corner))))).len(), 2);
}
